// The door of the grammar: text in, syntax tree and faults out. It never throws and takes time linear in the text.

import type { IToken } from "chevrotain";
import { moreFaults, oddBlank, unexpected } from "./errors.ts";
import { layOut } from "./layout.ts";
import { endOf, lex } from "./lexer.ts";
import { parseStatements } from "./parser.ts";
import { buildFile } from "./tree/build.ts";
import { readComments } from "./tree/comments.ts";
import type { ParseResult, SyntaxFault } from "./tree/nodes.ts";

export type { ParseResult } from "./tree/nodes.ts";

/** At most this many faults are listed; a last one tells how many there are beside them. */
export const faultLimit = 1000;

/**
 * Reads a `.rod` text. There is a tree for every text, however broken. Faults come in order of place, at most
 * `faultLimit` of them and then one with the id `more-faults`.
 */
export function parse(text: string): ParseResult {
	const lexed = lex(text);
	const faults: SyntaxFault[] = [];
	for (const blank of lexed.oddBlanks) reportBlank(blank, faults);
	const { statements, refused } = parseStatements(
		layOut(text, lexed.tokens, faults),
	);
	for (const token of refused) {
		const start = Math.min(token.startOffset || 0, text.length);
		faults.push(unexpected({ start, end: Math.min(text.length, start + 1) }));
	}
	const tree = buildFile(
		text,
		statements,
		readComments(text, lexed.comments),
		(fault) => faults.push(fault),
	);
	return { tree, faults: listed(faults) };
}

function reportBlank(blank: IToken, faults: SyntaxFault[]): void {
	const start = blank.startOffset;
	const isByteOrderMark = start === 0 && blank.image === "\ufeff";
	if (isByteOrderMark) return;
	const zeroWidth = /^[\u200b-\u200d\u2060\ufeff]+$/.test(blank.image);
	faults.push(oddBlank({ start, end: endOf(blank) }, zeroWidth));
}

function listed(faults: SyntaxFault[]): SyntaxFault[] {
	faults.sort((a, b) => a.span.start - b.span.start || a.span.end - b.span.end);
	if (faults.length <= faultLimit) return faults;
	const more = faults.length - faultLimit;
	const kept = faults.slice(0, faultLimit);
	const place = (faults[faultLimit] as SyntaxFault).span.start;
	return [...kept, moreFaults(place, more)];
}
