// The door of the grammar: text in, syntax tree and faults out. It never throws and takes time linear in the text.

import type { IToken } from "chevrotain";
import { balanceBraces, bracesBalance } from "./balance.ts";
import { type FaultSink, moreFaults, oddBlank, unexpected } from "./errors.ts";
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
	// One list for each pass: within a pass faults come in order of place, so the first ones are all that is needed.
	const blanks = new FaultList();
	const layout = new FaultList();
	const building = new FaultList();
	for (const blank of lexed.oddBlanks) reportBlank(blank, blanks);
	const balanced = bracesBalance(lexed.tokens);
	const { statements, refused } = parseStatements(
		layOut(
			text,
			balanced ? lexed.tokens : balanceBraces(text, lexed.tokens, layout),
			layout,
		),
	);
	for (const token of refused) {
		const start = Math.min(token.startOffset || 0, text.length);
		layout.push(unexpected({ start, end: Math.min(text.length, start + 1) }));
	}
	const tree = buildFile(
		text,
		statements,
		readComments(text, lexed.comments),
		building,
	);
	return { tree, faults: listed([blanks, layout, building]), balanced };
}

function reportBlank(blank: IToken, faults: FaultSink): void {
	const start = blank.startOffset;
	const isByteOrderMark = start === 0 && blank.image === "\ufeff";
	if (isByteOrderMark) return;
	const zeroWidth = /^[\u200b-\u200d\u2060\ufeff]+$/.test(blank.image);
	faults.push(oddBlank({ start, end: endOf(blank) }, zeroWidth));
}

function listed(lists: readonly FaultList[]): SyntaxFault[] {
	const all = lists.flatMap((list) => list.kept);
	all.sort((a, b) => a.span.start - b.span.start || a.span.end - b.span.end);
	const count = lists.reduce((sum, list) => sum + list.count, 0);
	if (count <= faultLimit) return all;
	const place = (all[faultLimit] as SyntaxFault).span.start;
	return [...all.slice(0, faultLimit), moreFaults(place, count - faultLimit)];
}

/** Keeps the first faults and counts the others. */
class FaultList implements FaultSink {
	readonly kept: SyntaxFault[] = [];
	count = 0;

	push(fault: SyntaxFault): void {
		this.count++;
		if (this.kept.length <= faultLimit) this.kept.push(fault);
	}
}
