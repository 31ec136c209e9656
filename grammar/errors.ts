// Every fault of syntax, worded once: what is wrong and what would mend it. Ids are stable.

import type { Edit, Span, SyntaxFault } from "./tree/nodes.ts";

type Fix = NonNullable<SyntaxFault["fix"]>;

/** The fault's severity by id; the list of all ids there are. */
export const faultSeverities = {
	"block-without-head": "error",
	"brackets-too-deep": "error",
	"chained-comparison": "error",
	"dangling-doc": "hint",
	"dotted-call": "error",
	"empty-brackets": "error",
	"improper-fraction": "warning",
	"junk-in-brackets": "error",
	"leading-zero": "error",
	"loose-dot": "error",
	"loose-sign": "error",
	"missing-close-brace": "error",
	"missing-open-brace": "error",
	"missing-operand": "error",
	"missing-after-comma": "error",
	"missing-after-dot": "error",
	"more-faults": "error",
	"nested-too-deep": "error",
	"number-too-large": "error",
	"odd-blank": "hint",
	"open-bracket": "error",
	"open-text": "error",
	"operator-spacing": "error",
	"point-without-digits": "error",
	"single-quotes": "error",
	"square-brackets": "error",
	"stray-bracket": "error",
	"stray-close-brace": "error",
	"stray-open-brace": "error",
	"stray-comma": "error",
	"stray-percent": "error",
	"stray-sign": "error",
	"tangled-number": "error",
	"tangled-size-number": "error",
	"thousands-comma": "warning",
	"thread-name": "error",
	"two-blocks": "error",
	"two-sizes": "error",
	"typographic-sign": "hint",
	unexpected: "error",
	"unknown-escape": "warning",
	"words-after-block": "error",
	"wrong-comparison": "error",
	"x-reserved": "error",
	"zero-denominator": "error",
} as const satisfies Record<string, SyntaxFault["severity"]>;

export type FaultId = keyof typeof faultSeverities;

/** Where faults go. */
export interface FaultSink {
	push(fault: SyntaxFault): void;
}

/**
 * Puts a fault together; the severity comes from the table above. Its spans are its own: a tree that is moved along with
 * an edit moves the spans of its nodes and of its faults, each once.
 */
export function fault(
	id: FaultId,
	span: Span,
	message: string,
	fix?: Fix,
): SyntaxFault {
	const severity = faultSeverities[id];
	const made = { id, severity, span: copyOf(span), message };
	if (!fix) return made;
	const edits = fix.edits.map((edit) => ({
		span: copyOf(edit.span),
		text: edit.text,
	}));
	return { ...made, fix: { title: fix.title, edits } };
}

function copyOf({ start, end }: Span): Span {
	return { start, end };
}

export function replaceWith(span: Span, text: string): Fix {
	return { title: `Write \`${text}\``, edits: [{ span, text }] };
}

function quoted(text: string): string {
	const oneLine = text.replace(/\s+/g, " ");
	return `\`${oneLine.length > 30 ? `${oneLine.slice(0, 27)}...` : oneLine}\``;
}

// Braces and statements

/** `insertAt` is the end of the last line of the block, `column` the indentation of its header. */
export function missingCloseBrace(
	open: Span,
	insertAt: number,
	column: number,
) {
	return fault(
		"missing-close-brace",
		open,
		"This `{` is never closed; a `}` is missing where its block ends",
		{
			title: "Close the block with `}`",
			edits: [
				{
					span: { start: insertAt, end: insertAt },
					text: `\n${" ".repeat(column)}}`,
				},
			],
		},
	);
}

export function missingOpenBrace(header: Span) {
	return fault(
		"missing-open-brace",
		header,
		"The lines below stand in a block, but its `{` is missing; put `{` at the end of this line",
		{
			title: "Put `{` at the end of the line",
			edits: [{ span: { start: header.end, end: header.end }, text: " {" }],
		},
	);
}

export function strayCloseBrace(span: Span) {
	return fault(
		"stray-close-brace",
		span,
		"This `}` closes nothing; remove it",
		{ title: "Remove `}`", edits: [{ span, text: "" }] },
	);
}

export function strayOpenBrace(span: Span) {
	return fault(
		"stray-open-brace",
		span,
		"This `{` is one too many: only one block is closed below; remove it",
		{ title: "Remove `{`", edits: [{ span, text: "" }] },
	);
}

export function nestedTooDeep(span: Span, limit: number) {
	return fault(
		"nested-too-deep",
		span,
		`Blocks are nested deeper than ${limit}; what is inside is not read`,
	);
}

export function bracketsTooDeep(span: Span, limit: number) {
	return fault(
		"brackets-too-deep",
		span,
		`This is nested deeper than ${limit} and is not read; give parts of it a name with \`given\``,
	);
}

export function blockWithoutHead(span: Span) {
	return fault(
		"block-without-head",
		span,
		"A block needs a word before its `{` that says what it is",
	);
}

export function twoBlocks(span: Span) {
	return fault(
		"two-blocks",
		span,
		"A statement has one block; the second belongs on a line of its own, with a word before its `{`",
	);
}

export function wordsAfterBlock(span: Span) {
	return fault(
		"words-after-block",
		span,
		"A block ends its statement; put what follows on a line of its own",
		{
			title: "Begin a new statement with `;`",
			edits: [{ span: { start: span.start, end: span.start }, text: "; " }],
		},
	);
}

export function unexpected(span: Span) {
	return fault("unexpected", span, "This cannot stand here");
}

export function moreFaults(place: number, count: number) {
	return fault(
		"more-faults",
		{ start: place, end: place },
		`The text has ${count} more faults from here on that are not listed; mend the ones above first`,
	);
}

// Comments and blanks

export function danglingDoc(span: Span) {
	return fault(
		"dangling-doc",
		span,
		"This `///` line describes nothing: put it directly above a statement, or write `//`",
		{
			title: "Make it a plain comment",
			edits: [{ span: { start: span.start, end: span.start + 3 }, text: "//" }],
		},
	);
}

export function oddBlank(span: Span, zeroWidth: boolean) {
	return fault(
		"odd-blank",
		span,
		"This is an unusual blank, perhaps pasted from another program; use a plain one",
		{
			title: zeroWidth ? "Remove it" : "Use a plain blank",
			edits: [{ span, text: zeroWidth ? "" : " " }],
		},
	);
}

// Texts

export function openText(span: Span) {
	return fault(
		"open-text",
		span,
		'The text is not closed on its line; a `"` is missing',
	);
}

export function singleQuotes(span: Span, better: string | undefined) {
	return fault(
		"single-quotes",
		span,
		'Text stands in double quotes, `"..."`',
		better === undefined
			? undefined
			: {
					title: "Use double quotes",
					edits: [{ span, text: better }],
				},
	);
}

export function unknownEscape(span: Span, text: string) {
	return fault(
		"unknown-escape",
		span,
		`\`${text}\` means nothing in a text; for a backslash write \`\\\\\``,
		{ title: "Double the backslash", edits: [{ span, text: `\\${text}` }] },
	);
}

// Numbers

export function twoSizes(
	span: Span,
	left: string,
	right: string,
	better: string | undefined,
) {
	const mend =
		better === undefined
			? "put `,` or `x` between them, or an operator with blanks around it"
			: `for one size write ${quoted(better)}, else put \`,\` or \`x\` between them`;
	return fault(
		"two-sizes",
		span,
		`${quoted(left)} and ${quoted(right)} are two sizes side by side; ${mend}`,
		better === undefined ? undefined : replaceWith(span, better),
	);
}

/** A size and a place behind it: `dado 3/16 36 above bottom`. `place` is the place as far as it is read. */
export function sizeBeforePlace(
	span: Span,
	left: string,
	right: string,
	place: string,
) {
	const start = span.end - right.length;
	return fault(
		"two-sizes",
		span,
		`${quoted(left)} and ${quoted(right)} are two sizes side by side; lead the place in with \`at\`: ${quoted(`at ${place}`)}`,
		{
			title: "Write `at` before the place",
			edits: [{ span: { start, end: start }, text: "at " }],
		},
	);
}

export function leadingZero(span: Span, better: string) {
	return fault(
		"leading-zero",
		span,
		`A number does not begin with a needless 0; write \`${better}\``,
		replaceWith(span, better),
	);
}

/** `comma` is the span of the comma alone. */
export function thousandsComma(
	span: Span,
	comma: Span,
	text: string,
	certain: boolean,
) {
	const joined = text.replace(",", "");
	const made = fault(
		"thousands-comma",
		span,
		certain
			? `A comma separates sizes; for one number write \`${joined}\``
			: `\`${text}\` is read as two sizes; for one number write \`${joined}\`, for two put a blank after the comma`,
		{
			title: `Write \`${joined}\``,
			edits: [{ span: comma, text: "" }],
		},
	);
	return certain ? { ...made, severity: "error" as const } : made;
}

export function tangledNumber(
	span: Span,
	text: string,
	better: string | undefined,
) {
	return fault(
		"tangled-number",
		span,
		better === undefined
			? `${quoted(text)} is neither a number nor a name; a name begins with a letter, and a number ends with its unit`
			: `${quoted(text)} is neither a number nor a name; write \`${better}\``,
		better === undefined ? undefined : replaceWith(span, better),
	);
}

export function numberTooLarge(span: Span, text: string) {
	return fault(
		"number-too-large",
		span,
		`${quoted(text)} is too large or too fine for a size; a number has at most 30 digits`,
	);
}

export function zeroDenominator(span: Span, text: string) {
	return fault(
		"zero-denominator",
		span,
		`\`${text}\` divides by 0; the lower part of a fraction is 1 or more`,
	);
}

export function improperFraction(span: Span, text: string, below: string) {
	return fault(
		"improper-fraction",
		span,
		`The second part of \`${text}\` is not below ${below}; check the size`,
	);
}

export function pointWithoutDigits(
	span: Span,
	text: string,
	better: string | undefined,
) {
	return fault(
		"point-without-digits",
		span,
		better === undefined
			? `${quoted(text)} is not a number; a decimal has one point with digits on both sides`
			: `A decimal point has digits on both sides; write \`${better}\``,
		better === undefined ? undefined : replaceWith(span, better),
	);
}

export function strayPercent(span: Span) {
	return fault(
		"stray-percent",
		span,
		"`%` stands only right after a number; there is no operator for the remainder",
	);
}

export function threadName(span: Span, text: string) {
	return fault(
		"thread-name",
		span,
		`\`${text}\` is no size; write the name of a thread as text, \`"${text}"\``,
		{ title: "Write it as text", edits: [{ span, text: `"${text}"` }] },
	);
}

export function tangledSizeNumber(span: Span, text: string) {
	return fault(
		"tangled-size-number",
		span,
		text === "#"
			? "After `#` stands the number of a screw or a biscuit, as in `#8`"
			: `${quoted(text)} is not the number of a screw or a biscuit, as in \`#8\`; put anything else in quotes`,
	);
}

// Signs and operators

export function typographicSign(span: Span, text: string, better: string) {
	return fault(
		"typographic-sign",
		span,
		`\`${text}\` is read as \`${better}\`; write that`,
		replaceWith(span, better),
	);
}

export function wrongComparison(span: Span, text: string, better: string) {
	return fault(
		"wrong-comparison",
		span,
		`\`${text}\` is written \`${better}\``,
		replaceWith(span, better),
	);
}

export function chainedComparison(span: Span) {
	return fault(
		"chained-comparison",
		span,
		"One comparison at a time; write a second `must` for the other",
	);
}

export function operatorSpacing(span: Span, text: string, edits: Edit[]) {
	const single = edits.length <= 2;
	return fault(
		"operator-spacing",
		span,
		single
			? `\`${text}\` needs a blank on both sides; without them it could be part of a name or a fraction`
			: "Operators need a blank on both sides; without them they could be part of a name or a fraction",
		{
			title: single
				? `Put blanks around \`${text}\``
				: "Put blanks around the operators",
			edits,
		},
	);
}

export function hyphenInName(span: Span, name: string, hyphenAt: number) {
	const from = hyphenAt - span.start;
	return fault(
		"operator-spacing",
		span,
		`\`${name}\` is one name here; to subtract, put blanks around \`-\``,
		{
			title: "Put blanks around `-`",
			edits: [
				{
					span: { start: span.start + from, end: span.start + from + 1 },
					text: " - ",
				},
			],
		},
	);
}

export function looseSign(span: Span, sign: string) {
	return fault(
		"loose-sign",
		span,
		`\`${sign}\` has nothing before it; a sign touches its number, an operator stands between two`,
		{
			title: "Close the gap after the sign",
			edits: [{ span, text: sign }],
		},
	);
}

export function missingOperand(span: Span, operator: string, after: boolean) {
	return fault(
		"missing-operand",
		span,
		after
			? `After ${operator} a size is missing`
			: `Before ${operator} a size is missing`,
	);
}

export function xReserved(span: Span) {
	return fault("x-reserved", span, "`x` separates sizes, choose another name");
}

export function tightX(span: Span, text: string) {
	const better = `x ${text.slice(1)}`;
	return fault(
		"tangled-number",
		span,
		`\`${text}\` reads as a name; between sizes write \`${better}\``,
		replaceWith(span, better),
	);
}

export function strayComma(span: Span) {
	return fault(
		"stray-comma",
		span,
		"A comma stands between two things; nothing stands before this one",
		{ title: "Remove `,`", edits: [{ span, text: "" }] },
	);
}

export function missingAfterComma(span: Span) {
	return fault(
		"missing-after-comma",
		span,
		"After `,` another name or size is missing",
		{ title: "Remove `,`", edits: [{ span, text: "" }] },
	);
}

export function looseDot(span: Span, blanks: Edit[]) {
	return fault(
		"loose-dot",
		span,
		"A dot touches the names on both sides, as in `case.top`",
		blanks.length > 0
			? { title: "Close the gaps around the dot", edits: blanks }
			: undefined,
	);
}

export function missingAfterDot(span: Span) {
	return fault(
		"missing-after-dot",
		span,
		"After the dot a name is missing, as in `case.top`",
	);
}

export function straySign(span: Span, text: string) {
	if (text === ":") {
		return fault(
			"stray-sign",
			span,
			"A word and its value stand side by side, without `:`",
			{ title: "Remove `:`", edits: [{ span, text: "" }] },
		);
	}
	if (text === "'") {
		return fault(
			"stray-sign",
			span,
			"`'` means feet only right after a number; text stands in double quotes",
		);
	}
	const code = text.codePointAt(0) ?? 0;
	return fault(
		"stray-sign",
		span,
		code < 0x20 ||
			(code >= 0x7f && code < 0xa0) ||
			(code >= 0xd800 && code < 0xe000)
			? "A character that cannot be shown stands here; remove it"
			: `${quoted(text)} has no meaning here; remove it or put it in quotes`,
	);
}

// Brackets

export function openBracket(span: Span, text: string) {
	return fault(
		"open-bracket",
		span,
		`This \`${text}\` is never closed; \`)\` is missing`,
	);
}

export function strayBracket(span: Span, text: string) {
	return fault(
		"stray-bracket",
		span,
		`This \`${text}\` closes nothing; remove it`,
		{ title: `Remove \`${text}\``, edits: [{ span, text: "" }] },
	);
}

export function junkInBrackets(span: Span) {
	return fault(
		"junk-in-brackets",
		span,
		"Inside brackets stands one expression, or several with `,` between them",
	);
}

export function emptyBrackets(span: Span) {
	return fault("empty-brackets", span, "Nothing stands in these brackets");
}

export function squareBrackets(span: Span, close: Span | undefined) {
	const open = { start: span.start, end: span.start + 1 };
	return fault(
		"square-brackets",
		span,
		"Square brackets have no meaning; use `(` and `)`",
		close && {
			title: "Use round brackets",
			edits: [
				{ span: open, text: "(" },
				{ span: close, text: ")" },
			],
		},
	);
}

export function dottedCall(span: Span) {
	return fault(
		"dotted-call",
		span,
		"Only a plain name can be called, as in `max(a, b)`; put a blank before `(`",
	);
}
