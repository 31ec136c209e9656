// Text to tokens. Every text has tokens to its last character: what means nothing is a `Stray` token, never an error.

import { type IToken, Lexer } from "chevrotain";
import { tokenNames, tokens } from "./tokens.ts";

/** All tokens that count, and beside them what does not: comments and unusual blanks, each in order of place. */
export interface LexedText {
	readonly tokens: IToken[];
	readonly comments: readonly IToken[];
	readonly oddBlanks: readonly IToken[];
}

const lexer = new Lexer(
	tokenNames
		.filter((name) => tokens[name].PATTERN !== Lexer.NA)
		.map((name) => tokens[name]),
	{
		positionTracking: "onlyOffset",
		ensureOptimizations: true,
		skipValidations: true,
	},
);

export function lex(text: string): LexedText {
	const result = lexer.tokenize(text);
	return {
		tokens: result.tokens,
		comments: result.groups.comments ?? [],
		oddBlanks: result.groups.oddBlanks ?? [],
	};
}

/** Offset behind the last character of a token. */
export function endOf(token: IToken): number {
	return token.startOffset + token.image.length;
}
