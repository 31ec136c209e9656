// The flat tokens of one statement to its items: commas, `x`, comparisons, sums and products by rank.

import type { IToken } from "chevrotain";
import {
	bracketsTooDeep,
	chainedComparison,
	dottedCall,
	emptyBrackets,
	type FaultSink,
	hyphenInName,
	junkInBrackets,
	looseDot,
	looseSign,
	missingAfterComma,
	missingAfterDot,
	missingOperand,
	openBracket,
	openText,
	operatorSpacing,
	pointWithoutDigits,
	singleQuotes,
	sizeBeforePlace,
	squareBrackets,
	strayBracket,
	strayComma,
	strayPercent,
	straySign,
	tangledSizeNumber,
	threadName,
	tightX,
	twoSizes,
	typographicSign,
	unknownEscape,
	wrongComparison,
	xReserved,
} from "../errors.ts";
import { endOf } from "../lexer.ts";
import { tokens } from "../tokens.ts";
import { type MeasureReader, tangledNumberFault } from "./measure.ts";
import type {
	BadNode,
	BinaryNode,
	CompareNode,
	Edit,
	Expression,
	Item,
	NameNode,
	Span,
	SyntaxFault,
} from "./nodes.ts";

/** Expressions are not built higher than this, so that walking over one never exhausts the stack. */
export const heightLimit = 200;

/** The faults of one statement, kept apart by kind until it is known which of them only follow from another. */
export interface StatementFaults {
	/** Each stands for itself: a token that is wrong whatever stands around it. */
	readonly own: SyntaxFault[];
	/** The first thing wrong in how the tokens stand together. */
	structure: SyntaxFault | undefined;
	/** Operators without blanks, mended together. */
	readonly spacing: { span: Span; text: string; edits: Edit[] }[];
	/** Warnings and hints: what was read all the same. */
	readonly soft: SyntaxFault[];
}

/** Where the climber is in a statement. */
export interface Climb {
	readonly text: string;
	pieces: readonly IToken[];
	readonly readMeasure: MeasureReader;
	readonly faults: StatementFaults;
	at: number;
	/** How many brackets are open. */
	depth: number;
	/** Height of the expression that was read last. */
	height: number;
}

export function noFaults(): StatementFaults {
	return { own: [], structure: undefined, spacing: [], soft: [] };
}

/** All items of the statement. Every piece is consumed. */
export function readItems(climb: Climb): Item[] {
	const items: Item[] = [];
	const { pieces } = climb;
	while (climb.at < pieces.length) {
		const token = pieces[climb.at] as IToken;
		switch (token.tokenType) {
			case tokens.Equals:
				climb.at++;
				items.push({ kind: "equals", span: spanOf(token) });
				break;
			case tokens.Comma:
				climb.at++;
				structure(climb, strayComma(spanOf(token)));
				break;
			case tokens.RightBracket:
			case tokens.RightSquare:
				climb.at++;
				structure(climb, strayBracket(spanOf(token), token.image));
				items.push(bad(spanOf(token)));
				break;
			case tokens.Dot:
				items.push(readStrayDot(climb, token));
				break;
			default:
				checkTwoSizes(climb, token);
				items.push(readList(climb, false));
		}
	}
	return items;
}

/** One or more sizes with commas between them. */
function readList(climb: Climb, inBrackets: boolean): Expression {
	const first = readCross(climb, inBrackets);
	if (pieceType(climb) !== tokens.Comma) return first;
	const elements = [first];
	let height = climb.height;
	while (pieceType(climb) === tokens.Comma) {
		const comma = climb.pieces[climb.at++] as IToken;
		if (!beginsExpression(climb)) {
			structure(climb, missingAfterComma(spanOf(comma)));
			continue;
		}
		elements.push(readCross(climb, inBrackets));
		height = Math.max(height, climb.height);
	}
	if (elements.length === 1) return first;
	return limited(climb, height, {
		kind: "list",
		span: over(first, elements.at(-1) as Expression),
		elements,
	});
}

function readCross(climb: Climb, inBrackets: boolean): Expression {
	const first = readComparison(climb, inBrackets);
	if (!isCross(climb)) return first;
	const sizes = [first];
	let height = climb.height;
	while (isCross(climb)) {
		const cross = climb.pieces[climb.at++] as IToken;
		if (cross.image === "X") {
			climb.faults.soft.push(typographicSign(spanOf(cross), "X", "x"));
		}
		if (beginsExpression(climb)) {
			sizes.push(readComparison(climb, inBrackets));
			height = Math.max(height, climb.height);
		} else {
			structure(
				climb,
				first.kind === "path" && cross.image === "x" && sizes.length === 1
					? xReserved(spanOf(cross))
					: missingOperand(spanOf(cross), `\`${cross.image}\``, true),
			);
			sizes.push(bad(emptyAt(endOf(cross))));
		}
	}
	return limited(climb, height, {
		kind: "cross",
		span: over(first, sizes.at(-1) as Expression),
		sizes,
	});
}

function readComparison(climb: Climb, inBrackets: boolean): Expression {
	let left = readSum(climb, inBrackets);
	let count = 0;
	while (pieceType(climb) === tokens.Compare) {
		const token = climb.pieces[climb.at++] as IToken;
		if (++count === 2) structure(climb, chainedComparison(spanOf(token)));
		const leftHeight = climb.height;
		const right = readOperand(climb, token, (c) => readSum(c, inBrackets));
		left = limited(climb, Math.max(leftHeight, climb.height), {
			kind: "compare",
			span: over(left, right),
			operator: comparisonOf(climb, token),
			operatorSpan: spanOf(token),
			left,
			right,
		});
	}
	return left;
}

const comparisons: ReadonlyMap<string, CompareNode["operator"]> = new Map([
	["<=", "<="],
	[">=", ">="],
	["==", "=="],
	["!=", "!="],
	["<", "<"],
	[">", ">"],
	["=<", "<="],
	["=>", ">="],
	["<>", "!="],
	["≤", "<="],
	["≥", ">="],
	["≠", "!="],
]);

function comparisonOf(climb: Climb, token: IToken): CompareNode["operator"] {
	const operator = comparisons.get(token.image) ?? "==";
	if (operator !== token.image) {
		const make = token.image.length === 1 ? typographicSign : wrongComparison;
		const made = make(spanOf(token), token.image, operator);
		if (made.severity === "error") climb.faults.own.push(made);
		else climb.faults.soft.push(made);
	}
	return operator;
}

function readSum(climb: Climb, inBrackets: boolean): Expression {
	let left = readProduct(climb);
	for (;;) {
		const type = pieceType(climb);
		if (type !== tokens.Plus && type !== tokens.Minus) return left;
		const token = climb.pieces[climb.at] as IToken;
		// `width -1/2`: a name and a signed size beside it. In brackets nothing stands side by side.
		if (!inBrackets && isSign(climb, token)) return left;
		climb.at++;
		left = readBinary(climb, left, token, readProduct);
	}
}

function readProduct(climb: Climb): Expression {
	let left = readUnary(climb);
	for (;;) {
		const type = pieceType(climb);
		if (type !== tokens.Times && type !== tokens.Over) return left;
		const token = climb.pieces[climb.at++] as IToken;
		left = readBinary(climb, left, token, readUnary);
	}
}

function readBinary(
	climb: Climb,
	left: Expression,
	token: IToken,
	readRight: (climb: Climb) => Expression,
): Expression {
	checkSpacing(climb, left, token);
	const leftHeight = climb.height;
	const right = readOperand(climb, token, readRight);
	return limited(climb, Math.max(leftHeight, climb.height), {
		kind: "binary",
		span: over(left, right),
		operator: operatorOf(climb, token),
		operatorSpan: spanOf(token),
		left,
		right,
	});
}

function readOperand(
	climb: Climb,
	operator: IToken,
	read: (climb: Climb) => Expression,
): Expression {
	if (beginsExpression(climb)) return read(climb);
	structure(
		climb,
		missingOperand(spanOf(operator), `\`${operator.image}\``, true),
	);
	climb.height = 1;
	return bad(emptyAt(endOf(operator)));
}

function operatorOf(climb: Climb, token: IToken): BinaryNode["operator"] {
	switch (token.tokenType) {
		case tokens.Plus:
			return "+";
		case tokens.Times:
			return "*";
		case tokens.Over:
			if (token.image !== "/") {
				climb.faults.soft.push(
					typographicSign(spanOf(token), token.image, "/"),
				);
			}
			return "/";
		default:
			if (token.image !== "-") {
				climb.faults.soft.push(
					typographicSign(spanOf(token), token.image, "-"),
				);
			}
			return "-";
	}
}

function readUnary(climb: Climb): Expression {
	const begin = pieceType(climb);
	if (begin !== tokens.Minus && begin !== tokens.Plus) return readAtom(climb);
	const signs: IToken[] = [];
	for (;;) {
		const type = pieceType(climb);
		if (type !== tokens.Plus && type !== tokens.Minus) break;
		signs.push(climb.pieces[climb.at++] as IToken);
	}
	const last = signs.at(-1) as IToken;
	if (blankAt(climb.text, endOf(last))) {
		const next = climb.pieces[climb.at];
		if (next && beginsExpression(climb)) {
			structure(
				climb,
				looseSign(
					{ start: last.startOffset, end: next.startOffset },
					last.image,
				),
			);
		}
	}
	let operand = readOperand(climb, last, readAtom);
	for (let i = signs.length - 1; i >= 0; i--) {
		const sign = signs[i] as IToken;
		operand = limited(climb, climb.height, {
			kind: "unary",
			span: { start: sign.startOffset, end: operand.span.end },
			operator: operatorOf(climb, sign) === "+" ? "+" : "-",
			operand,
		});
	}
	return operand;
}

function readAtom(climb: Climb): Expression {
	const token = climb.pieces[climb.at];
	climb.height = 1;
	if (!token) return bad(emptyAt(climb.text.length));
	if (token.tokenType === tokens.Name) return readPath(climb);
	const span = spanOf(token);
	const { own, soft } = climb.faults;
	switch (token.tokenType) {
		case tokens.Measure:
			climb.at++;
			if (isThreadName(climb, token)) {
				const pitch = climb.pieces[climb.at + 1] as IToken;
				climb.at += 2;
				const whole = { start: span.start, end: endOf(pitch) };
				own.push(threadName(whole, climb.text.slice(whole.start, whole.end)));
				return bad(whole);
			}
			return climb.readMeasure(span, token.image);
		case tokens.SizeNumber: {
			climb.at++;
			const number = Number(token.image.slice(1));
			if (number > 9999) own.push(tangledSizeNumber(span, token.image));
			return number > 9999 ? bad(span) : { kind: "size-number", span, number };
		}
		case tokens.Text:
			climb.at++;
			return { kind: "text", span, value: textValue(climb, token) };
		case tokens.LeftBracket:
		case tokens.LeftSquare:
			return readGroup(climb);
		case tokens.Cross:
			climb.at++;
			if (token.image !== "x" || (climb.at > 2 && beginsNumber(climb))) {
				structure(climb, missingOperand(span, `\`${token.image}\``, false));
				return bad(span);
			}
			return readReservedX(climb, token);
		case tokens.BadNumber:
			climb.at++;
			own.push(tangledNumberFault(span, token.image));
			return bad(span);
		case tokens.BadSizeNumber:
			climb.at++;
			own.push(
				/^#[0-9]+-[0-9]+$/.test(token.image)
					? threadName(span, token.image)
					: tangledSizeNumber(span, token.image),
			);
			return bad(span);
		case tokens.OpenText:
			climb.at++;
			own.push(openText(span));
			return bad(span);
		case tokens.CurlyText: {
			climb.at++;
			const value = token.image.slice(1, -1);
			const better = `"${value.replaceAll("\\", "\\\\")}"`;
			soft.push(typographicSign(span, token.image, better));
			return { kind: "text", span, value };
		}
		case tokens.SingleQuotedText: {
			climb.at++;
			const value = token.image.slice(1, -1);
			const plain = !/["\\]/.test(value);
			own.push(singleQuotes(span, plain ? `"${value}"` : undefined));
			return bad(span);
		}
		case tokens.Percent:
			climb.at++;
			own.push(strayPercent(span));
			return bad(span);
		case tokens.TooDeep:
			climb.at++;
			return bad(span);
		case tokens.Stray:
			return readStray(climb, token);
		default:
			// An operator or a comma where a size should be; the caller goes on with it.
			structure(climb, missingOperand(span, `\`${token.image}\``, false));
			return bad(emptyAt(span.start));
	}
}

function readStray(climb: Climb, first: IToken): BadNode {
	let end = first.startOffset;
	while (
		pieceType(climb) === tokens.Stray &&
		(climb.pieces[climb.at] as IToken).startOffset === end
	) {
		end = endOf(climb.pieces[climb.at++] as IToken);
	}
	const span = { start: first.startOffset, end };
	climb.faults.own.push(straySign(span, climb.text.slice(span.start, end)));
	return bad(span);
}

function readReservedX(climb: Climb, token: IToken): Expression {
	const span = spanOf(token);
	structure(climb, xReserved(span));
	climb.height = 1;
	return { kind: "path", span, segments: [{ kind: "name", span, text: "x" }] };
}

/** `name`, `name.name.x`, `name(...)`, everything tight. */
function readPath(climb: Climb): Expression {
	const { pieces } = climb;
	const first = pieces[climb.at] as IToken;
	const before = pieces[climb.at - 1];
	climb.at++;
	if (
		/^x[0-9]/.test(first.image) &&
		before &&
		(before.tokenType === tokens.Measure ||
			before.tokenType === tokens.BadNumber)
	) {
		const span = spanOf(first);
		climb.faults.own.push(tightX(span, first.image));
		return bad(span);
	}
	const name = nameOf(first);
	const segments = [name];
	let end = endOf(first);
	while (pieceType(climb) === tokens.Dot) {
		const dot = pieces[climb.at] as IToken;
		if (dot.startOffset !== end) break;
		climb.at++;
		end = endOf(dot);
		const next = pieces[climb.at];
		if (next && next.startOffset === end && isNameLike(next)) {
			climb.at++;
			segments.push(nameOf(next));
			end = endOf(next);
			continue;
		}
		if (next && next.startOffset === end && next.tokenType === tokens.Measure) {
			climb.at++;
			end = endOf(next);
		}
		structure(climb, missingAfterDot({ start: dot.startOffset, end }));
		break;
	}
	const open = pieces[climb.at];
	if (open?.tokenType === tokens.LeftBracket && open.startOffset === end) {
		if (segments.length === 1) return readCall(climb, name);
		structure(climb, dottedCall({ start: first.startOffset, end }));
	}
	climb.height = 1;
	const span =
		end === name.span.end ? name.span : { start: first.startOffset, end };
	return { kind: "path", span, segments };
}

function readCall(climb: Climb, callee: NameNode): Expression {
	const open = climb.pieces[climb.at++] as IToken;
	if (climb.depth >= heightLimit) {
		return skipDeep(climb, callee.span.start, open);
	}
	climb.depth++;
	const args: Expression[] = [];
	let height = 0;
	if (!closesBracket(climb)) {
		for (;;) {
			if (!beginsExpression(climb)) break;
			args.push(readCross(climb, true));
			height = Math.max(height, climb.height);
			if (pieceType(climb) !== tokens.Comma) break;
			const comma = climb.pieces[climb.at++] as IToken;
			if (!beginsExpression(climb)) {
				structure(climb, missingAfterComma(spanOf(comma)));
			}
		}
	}
	const end = closeBracket(climb, open);
	climb.depth--;
	return limited(climb, height, {
		kind: "call",
		span: { start: callee.span.start, end },
		callee,
		args,
	});
}

function readGroup(climb: Climb): Expression {
	const open = climb.pieces[climb.at++] as IToken;
	if (climb.depth >= heightLimit)
		return skipDeep(climb, open.startOffset, open);
	climb.depth++;
	let inner: Expression;
	if (closesBracket(climb)) {
		const close = climb.pieces[climb.at] as IToken;
		structure(
			climb,
			emptyBrackets({ start: open.startOffset, end: endOf(close) }),
		);
		inner = bad(emptyAt(endOf(open)));
		climb.height = 1;
	} else if (climb.at < climb.pieces.length) {
		inner = readList(climb, true);
	} else {
		inner = bad(emptyAt(endOf(open)));
		climb.height = 1;
	}
	const height = climb.height;
	const end = closeBracket(climb, open);
	climb.depth--;
	return limited(climb, height, {
		kind: "group",
		span: { start: open.startOffset, end },
		inner,
	});
}

/** Goes behind the bracket that closes `open`; the end of what was read. */
function closeBracket(climb: Climb, open: IToken): number {
	const { pieces } = climb;
	const start = climb.at;
	let junk: IToken | undefined;
	if (start < pieces.length && !closesBracket(climb)) {
		junk = pieces[start] as IToken;
		skipToClose(climb);
	}
	const close = pieces[climb.at];
	const openSpan = spanOf(open);
	if (!close) {
		structure(climb, openBracket(openSpan, open.image));
		return Math.max(endOf(open), endOf(pieces[climb.at - 1] as IToken));
	}
	climb.at++;
	const span = { start: open.startOffset, end: endOf(close) };
	if (junk) {
		const before = climb.at;
		climb.at = start;
		checkTwoSizes(climb, junk);
		climb.at = before;
		structure(
			climb,
			junkInBrackets({
				start: junk.startOffset,
				end: endOf(pieces[before - 2] as IToken),
			}),
		);
	}
	if (open.image === "[" || close.image === "]") {
		structure(climb, squareBrackets(span, spanOf(close)));
	}
	return span.end;
}

/** To the bracket that closes the one that is open here, or to the end of the statement. */
function skipToClose(climb: Climb): void {
	let open = 0;
	for (; climb.at < climb.pieces.length; climb.at++) {
		const type = pieceType(climb);
		if (type === tokens.LeftBracket || type === tokens.LeftSquare) open++;
		else if (type === tokens.RightBracket || type === tokens.RightSquare) {
			if (open === 0) return;
			open--;
		}
	}
}

function skipDeep(climb: Climb, start: number, open: IToken): BadNode {
	skipToClose(climb);
	if (climb.at < climb.pieces.length) climb.at++;
	structure(climb, bracketsTooDeep(spanOf(open), heightLimit));
	climb.height = 1;
	return bad({ start, end: endOf(climb.pieces[climb.at - 1] as IToken) });
}

/** A dot that touches no name before it: `.5`, `2.`, `case .top`. */
function readStrayDot(climb: Climb, dot: IToken): BadNode {
	const { pieces, text } = climb;
	const before = pieces[climb.at - 1];
	climb.at++;
	const afterNumber =
		before?.tokenType === tokens.Measure && endOf(before) === dot.startOffset;
	let end = endOf(dot);
	let next = pieces[climb.at];
	if (next?.tokenType === tokens.Measure && next.startOffset === end) {
		climb.at++;
		end = endOf(next);
		const start = afterNumber ? before.startOffset : dot.startOffset;
		const image = text.slice(start, end);
		structure(
			climb,
			pointWithoutDigits(
				{ start, end },
				image,
				!afterNumber && /^\.[0-9]+(?:\s?[a-z]+)?$/.test(image)
					? `0${image}`
					: undefined,
			),
		);
		return bad({ start: dot.startOffset, end });
	}
	if (afterNumber) {
		const span = { start: before.startOffset, end };
		structure(
			climb,
			pointWithoutDigits(
				span,
				text.slice(span.start, end),
				text.slice(span.start, dot.startOffset),
			),
		);
		return bad(spanOf(dot));
	}
	const edits: Edit[] = [];
	next = pieces[climb.at];
	if (before?.tokenType === tokens.Name && next && isNameLike(next)) {
		edits.push({
			span: { start: endOf(before), end: next.startOffset },
			text: ".",
		});
	}
	structure(climb, looseDot(spanOf(dot), edits));
	return bad(spanOf(dot));
}

/** Two numbers beside each other are never right; find out what was meant. */
function checkTwoSizes(climb: Climb, token: IToken): void {
	const { pieces, text } = climb;
	const before = pieces[climb.at - 1];
	if (before?.tokenType !== tokens.Measure) return;
	let second: IToken | undefined = token;
	const sign =
		token.tokenType === tokens.Minus || token.tokenType === tokens.Plus;
	if (sign) second = pieces[climb.at + 1];
	if (second?.tokenType !== tokens.Measure) return;
	let end = endOf(second);
	let better: string | undefined;
	const left = before.image;
	const right = second.image;
	if (sign) {
		better = `${left} ${token.image} ${right}`;
	} else if (/^[0-9]+$/.test(left) && /^[0-9]+\/[0-9]/.test(right)) {
		better = `${left} ${right}`;
	} else if (/^[0-9]{1,3}$/.test(left) && /^[0-9]{3}(?![0-9/])/.test(right)) {
		better = left + right;
	} else if (/^[0-9]+ ?ft$/.test(left) && /^[0-9/ .]+$/.test(right)) {
		better = `${left} ${right} in`;
	} else if (/^[0-9]+'$/.test(left) && /^[0-9/ .]+$/.test(right)) {
		better = `${left} ${right}"`;
	} else if (/^[0-9]+$/.test(left) && /^[0-9]+$/.test(right)) {
		// `2 1 /4`: the fraction lies in pieces behind it.
		const slash = pieces[climb.at + 1];
		const lower = pieces[climb.at + 2];
		if (slash?.image === "/" && lower?.tokenType === tokens.Measure) {
			end = endOf(lower);
			better = `${left} ${right}/${lower.image}`;
		}
	}
	const span = { start: before.startOffset, end };
	const written = text.slice(token.startOffset, end);
	const place = placeWords.exec(text.slice(end, end + 80))?.[0];
	structure(
		climb,
		place && !sign
			? sizeBeforePlace(span, left, written, `${written}${place}`)
			: twoSizes(span, left, written, better),
	);
}

/** What makes a place of the size before it: ` above bottom`, ` up from floor`. */
const placeWords =
	/^[ \t]+(?:(?:up|down|left|right|forward|back)[ \t]+)?(?:from|above|below)[ \t]+[\w.-]+/;

/** `+`, `-`, `*` and `/` have a blank on both sides. */
function checkSpacing(climb: Climb, left: Expression, token: IToken): void {
	const { text } = climb;
	const start = token.startOffset;
	const end = endOf(token);
	const before = blankAt(text, start - 1);
	const after = blankAt(text, end);
	if (before && after) return;
	const edits: Edit[] = [];
	const name = climb.pieces[climb.at - 2];
	const next = climb.pieces[climb.at];
	if (
		!before &&
		!after &&
		token.image === "/" &&
		left.kind === "path" &&
		name?.tokenType === tokens.Name &&
		next?.tokenType === tokens.Measure &&
		/-[0-9]+$/.test(name.image)
	) {
		const hyphen = name.startOffset + name.image.lastIndexOf("-");
		structure(climb, hyphenInName(spanOf(name), name.image, hyphen));
		return;
	}
	if (!before) edits.push({ span: emptyAt(start), text: " " });
	if (!after) edits.push({ span: emptyAt(end), text: " " });
	climb.faults.spacing.push({ span: { start, end }, text: token.image, edits });
}

/** Reports the faults of a statement that are worth telling, not those that only follow from another, and clears them. */
export function settleFaults(faults: StatementFaults, report: FaultSink): void {
	const { own, soft, spacing } = faults;
	for (const fault of soft) report.push(fault);
	if (own.length > 0) {
		for (const fault of own) report.push(fault);
	} else if (faults.structure) {
		report.push(faults.structure);
	} else if (spacing.length > 0) {
		const first = spacing[0] as (typeof spacing)[number];
		const last = spacing.at(-1) as typeof first;
		report.push(
			operatorSpacing(
				{ start: first.span.start, end: last.span.end },
				first.text,
				spacing.flatMap((one) => one.edits),
			),
		);
	}
	own.length = 0;
	soft.length = 0;
	spacing.length = 0;
	faults.structure = undefined;
}

// Small questions

function structure(climb: Climb, fault: SyntaxFault): void {
	climb.faults.structure ??= fault;
}

function pieceType(climb: Climb) {
	return climb.pieces[climb.at]?.tokenType;
}

/** The piece here separates sizes. */
function isCross(climb: Climb): boolean {
	const { pieces, at } = climb;
	const token = pieces[at];
	const next = pieces[at + 1];
	if (token?.tokenType === tokens.Name) {
		// A capital between two numbers can mean nothing else.
		return (
			token.image === "X" &&
			pieces[at - 1]?.tokenType === tokens.Measure &&
			next?.tokenType === tokens.Measure
		);
	}
	if (token?.tokenType !== tokens.Cross) return false;
	if (token.image === "×") return true;
	// Right behind the head stands a name, if anything: `given x`, `use x from ..`.
	if (at === 1 && pieces[0]?.tokenType === tokens.Name) return false;
	// `x.y` is a name that cannot be.
	return !(next?.tokenType === tokens.Dot && next.startOffset === endOf(token));
}

function beginsExpression(climb: Climb): boolean {
	switch (pieceType(climb)) {
		case undefined:
		case tokens.Comma:
		case tokens.RightBracket:
		case tokens.RightSquare:
		case tokens.Equals:
		case tokens.Compare:
		case tokens.Times:
		case tokens.Over:
		case tokens.Dot:
			return false;
		default:
			return true;
	}
}

function beginsNumber(climb: Climb): boolean {
	const type = pieceType(climb);
	return (
		type === tokens.Measure ||
		type === tokens.Minus ||
		type === tokens.BadNumber
	);
}

function closesBracket(climb: Climb): boolean {
	const type = pieceType(climb);
	return type === tokens.RightBracket || type === tokens.RightSquare;
}

function isNameLike(token: IToken): boolean {
	return (
		token.tokenType === tokens.Name ||
		(token.tokenType === tokens.Cross && token.image === "x")
	);
}

/** A blank before and none behind: the sign of a number, not an operator. */
function isSign(climb: Climb, token: IToken): boolean {
	return (
		blankAt(climb.text, token.startOffset - 1) &&
		!blankAt(climb.text, endOf(token))
	);
}

/** `1/4-20`: a fraction, a hyphen and two digits, all tight. */
function isThreadName(climb: Climb, measure: IToken): boolean {
	const hyphen = climb.pieces[climb.at];
	const pitch = climb.pieces[climb.at + 1];
	return (
		hyphen?.image === "-" &&
		hyphen.startOffset === endOf(measure) &&
		pitch !== undefined &&
		pitch.startOffset === endOf(hyphen) &&
		/^[0-9]+\/[0-9]+$/.test(measure.image) &&
		/^[0-9]{2}$/.test(pitch.image)
	);
}

function blankAt(text: string, at: number): boolean {
	const code = text.charCodeAt(at);
	return (
		code <= 32 ||
		Number.isNaN(code) ||
		code === 0xa0 ||
		(code >= 0x2000 && code <= 0x200d)
	);
}

function textValue(climb: Climb, token: IToken): string {
	const inner = token.image.slice(1, -1);
	if (!inner.includes("\\")) return inner;
	return inner.replace(/\\(.)/gu, (whole, escaped: string, at: number) => {
		switch (escaped) {
			case '"':
			case "\\":
				return escaped;
			case "n":
				return "\n";
			case "t":
				return "\t";
			default: {
				const start = token.startOffset + 1 + at;
				climb.faults.soft.push(
					unknownEscape({ start, end: start + whole.length }, whole),
				);
				return whole;
			}
		}
	});
}

function limited<Made extends Expression>(
	climb: Climb,
	height: number,
	node: Made,
): Made | BadNode {
	climb.height = height + 1;
	if (climb.height <= heightLimit) return node;
	structure(climb, bracketsTooDeep(node.span, heightLimit));
	climb.height = 1;
	return bad(node.span);
}

function nameOf(token: IToken): NameNode {
	return { kind: "name", span: spanOf(token), text: token.image };
}

function spanOf(token: IToken): Span {
	return { start: token.startOffset, end: endOf(token) };
}

function over(first: Expression, last: Expression): Span {
	return { start: first.span.start, end: last.span.end };
}

function emptyAt(at: number): Span {
	return { start: at, end: at };
}

function bad(span: Span): BadNode {
	return { kind: "bad", span };
}
