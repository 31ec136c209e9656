// Line ends become separators of statements: a statement goes on over a line end only where it must and its lines are deeper.

import type { IToken } from "chevrotain";
import {
	asksForMore,
	columnOf,
	lineStartAfter,
	virtualToken,
} from "./balance.ts";
import { type FaultSink, nestedTooDeep } from "./errors.ts";
import { endOf } from "./lexer.ts";
import { tokens } from "./tokens.ts";

/** Blocks nested deeper than this are not read. It keeps every recursion over the tree small. */
export const depthLimit = 200;

/** Tokens for the parser, from tokens whose braces balance: line ends and `;` turned into separators, nothing nested too deep. */
export function layOut(
	text: string,
	all: readonly IToken[],
	faults: FaultSink,
): IToken[] {
	const out: IToken[] = [];
	let lineColumn = columnOf(text, 0, all[0]?.startOffset ?? 0);
	/** Column of the line on which the running statement began, -1 between statements. */
	let statementColumn = -1;
	let brackets = 0;
	let depth = 0;
	let newline: IToken | undefined;
	let previous: IToken | undefined;

	for (let i = 0; i < all.length; i++) {
		let token = all[i] as IToken;
		const type = token.tokenType;
		if (type === tokens.Newline) {
			newline = token;
			continue;
		}
		// A brace that was put in stands at the end of the line before.
		if (newline && token.image !== "") {
			lineColumn = columnOf(text, lineStartAfter(newline), token.startOffset);
			if (
				statementColumn >= 0 &&
				previous &&
				!goesOn(previous, token, lineColumn, statementColumn, brackets)
			) {
				out.push(separator(newline));
				statementColumn = -1;
				brackets = 0;
			}
			newline = undefined;
		}
		switch (type) {
			case tokens.Semicolon:
				token = separator(token);
				statementColumn = -1;
				brackets = 0;
				break;
			case tokens.LeftBrace:
				brackets = 0;
				if (depth === depthLimit) {
					const close = partnerOf(all, i);
					token = tooDeep(text, token, all[close] as IToken);
					faults.push(
						nestedTooDeep(
							{ start: token.startOffset, end: token.startOffset + 1 },
							depthLimit,
						),
					);
					i = close;
				} else {
					depth++;
					statementColumn = -1;
				}
				break;
			case tokens.RightBrace:
				depth--;
				brackets = 0;
				// The statement that the block belongs to is still open: its line end must separate it from the next.
				statementColumn = lineColumn;
				break;
			case tokens.LeftBracket:
			case tokens.LeftSquare:
				if (statementColumn < 0) statementColumn = lineColumn;
				brackets++;
				break;
			case tokens.RightBracket:
			case tokens.RightSquare:
				if (statementColumn < 0) statementColumn = lineColumn;
				if (brackets > 0) brackets--;
				break;
			default:
				if (statementColumn < 0) statementColumn = lineColumn;
		}
		out.push(token);
		previous = token;
	}
	return out;
}

function goesOn(
	previous: IToken,
	token: IToken,
	column: number,
	statementColumn: number,
	brackets: number,
): boolean {
	const type = token.tokenType;
	// A brace below its header is the header's, whichever way its owner likes to set it.
	if (type === tokens.LeftBrace)
		return previous.tokenType !== tokens.RightBrace;
	if (brackets > 0) {
		return (
			column > statementColumn ||
			type === tokens.RightBracket ||
			type === tokens.RightSquare
		);
	}
	return column > statementColumn && asksForMore(previous);
}

function separator(from: IToken): IToken {
	const made = virtualToken(tokens.Separator, from.startOffset);
	made.image = from.image;
	return made;
}

/** Index of the `}` that belongs to the `{` at `open`; the braces balance. */
function partnerOf(all: readonly IToken[], open: number): number {
	let depth = 0;
	for (let i = open; i < all.length; i++) {
		const type = (all[i] as IToken).tokenType;
		if (type === tokens.LeftBrace) depth++;
		else if (type === tokens.RightBrace && --depth === 0) return i;
	}
	return all.length - 1;
}

function tooDeep(text: string, open: IToken, close: IToken): IToken {
	const made = virtualToken(tokens.TooDeep, open.startOffset);
	made.image = text.slice(open.startOffset, endOf(close));
	return made;
}
