// The one table of tokens: pattern, what we call it to people, and the colour it gets. Lexer, layout, faults and the
// colouring grammar all read it. There are no keywords here: every word is a `Name`, the construct table decides.

import { createToken, Lexer, type TokenType } from "chevrotain";
import {
	footMark,
	inchMark,
	letter,
	numberPattern,
	oddBlank,
	oneBlank,
	unitEnd,
	unitWords,
	wordCharacter,
} from "./characters.ts";

/** How a token is coloured; `none` for what has no colour of its own. */
export type ColourKind =
	| "none"
	| "comment"
	| "string"
	| "number"
	| "name"
	| "operator"
	| "punctuation"
	| "invalid";

/** One line of the table. */
export interface TokenSpec {
	/** Source of a regular expression, or nothing for a token that only the layout makes. */
	readonly pattern?: string;
	/** What a message calls it. */
	readonly label: string;
	readonly colour: ColourKind;
	/** Where the lexer puts it if it is not part of the grammar. */
	readonly side?: "comments" | "oddBlanks" | "skipped";
	/** `Name` wins when it is longer. */
	readonly nameIfLonger?: true;
	/** Stands in a statement, as opposed to between statements. */
	readonly piece?: true;
}

const unit = `(?:${oneBlank}?(?:${unitWords.join("|")})${unitEnd}|${oneBlank}?%|${oneBlank}?[\\u00b0\\u00ba](?:${oneBlank}?[FC]${unitEnd})?|${inchMark}|${footMark})`;
const feetAndInches = `${numberPattern}${oneBlank}?${footMark}${oneBlank}?-?${numberPattern}${oneBlank}?${inchMark}`;

/** In the order in which the lexer tries them. */
export const tokenTable = {
	Blank: {
		pattern: "[ \\t]+",
		label: "blank",
		colour: "none",
		side: "skipped",
	},
	Newline: {
		pattern: "[\\r\\n][ \\t\\r\\n]*",
		label: "end of the line",
		colour: "none",
	},
	OddBlank: {
		pattern: `[${oddBlank}]+`,
		label: "unusual blank",
		colour: "none",
		side: "oddBlanks",
	},
	Comment: {
		pattern: "//[^\\r\\n]*",
		label: "comment",
		colour: "comment",
		side: "comments",
	},
	Text: {
		pattern: '"(?:[^"\\\\\\r\\n]|\\\\[^\\r\\n])*"',
		label: "text",
		colour: "string",
		piece: true,
	},
	OpenText: {
		pattern: '"[^\\r\\n]*',
		label: "open text",
		colour: "string",
		piece: true,
	},
	CurlyText: {
		pattern:
			'[\\u201c\\u201d\\u201e\\u00ab][^"\\u201c-\\u201e\\u00ab\\u00bb\\r\\n]*["\\u201c\\u201d\\u00bb]',
		label: "text",
		colour: "string",
		piece: true,
	},
	SingleQuotedText: {
		pattern: "'[^'\\r\\n]*'",
		label: "text",
		colour: "string",
		piece: true,
	},
	BadNumber: {
		pattern: `${numberPattern}(?!(?:${unitWords.join("|")})${unitEnd})(?:[eE][+-]?[0-9]+|[${letter}])(?:[${wordCharacter}]|[./][0-9])*`,
		label: "number",
		colour: "invalid",
		piece: true,
	},
	Measure: {
		pattern: `(?:${feetAndInches}|${numberPattern}${unit}?)`,
		label: "size",
		colour: "number",
		piece: true,
	},
	SizeNumber: {
		pattern: `#[0-9]+(?![${wordCharacter}]|[-./][${wordCharacter}])`,
		label: "size number",
		colour: "number",
		piece: true,
	},
	BadSizeNumber: {
		pattern: `#(?:[${wordCharacter}]|[-./][${wordCharacter}])*`,
		label: "size number",
		colour: "invalid",
		piece: true,
	},
	Cross: {
		pattern: "[x\\u00d7]",
		label: "`x`",
		colour: "operator",
		nameIfLonger: true,
		piece: true,
	},
	Name: {
		pattern: `[${letter}][${wordCharacter}]*(?:-[${wordCharacter}]+)*`,
		label: "name",
		colour: "name",
		piece: true,
	},
	LeftBrace: { pattern: "\\{", label: "`{`", colour: "punctuation" },
	RightBrace: { pattern: "\\}", label: "`}`", colour: "punctuation" },
	LeftBracket: {
		pattern: "\\(",
		label: "`(`",
		colour: "punctuation",
		piece: true,
	},
	RightBracket: {
		pattern: "\\)",
		label: "`)`",
		colour: "punctuation",
		piece: true,
	},
	LeftSquare: {
		pattern: "\\[",
		label: "`[`",
		colour: "punctuation",
		piece: true,
	},
	RightSquare: {
		pattern: "\\]",
		label: "`]`",
		colour: "punctuation",
		piece: true,
	},
	Comma: { pattern: ",", label: "`,`", colour: "punctuation", piece: true },
	Semicolon: { pattern: ";", label: "`;`", colour: "punctuation" },
	Dot: { pattern: "\\.", label: "`.`", colour: "punctuation", piece: true },
	Compare: {
		pattern: "(?:<=|>=|==|!=|=<|=>|<>|<|>|[\\u2264\\u2265\\u2260])",
		label: "comparison",
		colour: "operator",
		piece: true,
	},
	Equals: { pattern: "=", label: "`=`", colour: "operator", piece: true },
	Plus: { pattern: "\\+", label: "`+`", colour: "operator", piece: true },
	Minus: {
		pattern: "[-\\u2010-\\u2015\\u2212]",
		label: "`-`",
		colour: "operator",
		piece: true,
	},
	Times: { pattern: "\\*", label: "`*`", colour: "operator", piece: true },
	Over: {
		pattern: "[/\\u00f7\\u2044]",
		label: "`/`",
		colour: "operator",
		piece: true,
	},
	Percent: { pattern: "%", label: "`%`", colour: "invalid", piece: true },
	/** Whatever else: a sign, a control character, an emoji. Listed, and last, so the lexer reads every text. */
	Stray: {
		pattern:
			"(?:[!$&':;<=>?@\\\\^_`|~]|[\\u0000-\\u001f\\u007f]|[\\ud800-\\udbff][\\udc00-\\udfff]|[\\u0080-\\uffff])",
		label: "sign",
		colour: "invalid",
		piece: true,
	},
	/** Ends a statement; the layout makes it from line ends and `;`. */
	Separator: { label: "end of the statement", colour: "none" },
	/** A whole region nested too deep to be read, as one token. */
	TooDeep: { label: "block", colour: "invalid", piece: true },
} as const satisfies Record<string, TokenSpec>;

export type TokenName = keyof typeof tokenTable;

export const tokenNames = Object.keys(tokenTable) as readonly TokenName[];

/** Stands for every token that may be part of a statement. */
export const piece: TokenType = createToken({
	name: "Piece",
	pattern: Lexer.NA,
	label: "part of a statement",
});

/** The token types by name. */
export const tokens: Readonly<Record<TokenName, TokenType>> = makeTokens();

function makeTokens(): Record<TokenName, TokenType> {
	const made: Partial<Record<TokenName, TokenType>> = {};
	const nameToken = makeToken("Name", undefined);
	for (const name of tokenNames) {
		made[name] = name === "Name" ? nameToken : makeToken(name, nameToken);
	}
	return made as Record<TokenName, TokenType>;
}

function makeToken(
	name: TokenName,
	nameToken: TokenType | undefined,
): TokenType {
	const spec: TokenSpec = tokenTable[name];
	return createToken({
		name,
		label: spec.label,
		pattern: spec.pattern === undefined ? Lexer.NA : new RegExp(spec.pattern),
		...(spec.piece ? { categories: [piece] } : {}),
		...(spec.side
			? { group: spec.side === "skipped" ? Lexer.SKIPPED : spec.side }
			: {}),
		...(spec.nameIfLonger && nameToken ? { longer_alt: nameToken } : {}),
		...(name === "Newline" ? { line_breaks: true } : {}),
	});
}
