// Braces that do not balance are mended from the indentation, so that one lost brace does not cost the rest of the file.

import type { IToken } from "chevrotain";
import {
	type FaultSink,
	missingCloseBrace,
	missingOpenBrace,
	strayCloseBrace,
	strayOpenBrace,
} from "./errors.ts";
import { endOf } from "./lexer.ts";
import { tokens } from "./tokens.ts";
import type { Span } from "./tree/nodes.ts";

/** Tab stops for comparing indentation; a file that mixes tabs and blanks otherwise cannot be read by eye either. */
const tabWidth = 4;

/** Column in which a token stands, 0 for the first, tabs counted to their stops. `lineStart` is where its line begins. */
export function columnOf(text: string, lineStart: number, at: number): number {
	let column = 0;
	for (let i = lineStart; i < at; i++) {
		column =
			text.charCodeAt(i) === 9
				? column - (column % tabWidth) + tabWidth
				: column + 1;
	}
	return column;
}

/** Where the line begins on which the token behind this newline token stands. */
export function lineStartAfter(newline: IToken): number {
	const image = newline.image;
	return (
		newline.startOffset +
		Math.max(image.lastIndexOf("\n"), image.lastIndexOf("\r")) +
		1
	);
}

/** A token of no width that does not stand in the text. */
export function virtualToken(
	tokenType: (typeof tokens)["LeftBrace"],
	at: number,
): IToken {
	return {
		image: "",
		startOffset: at,
		tokenTypeIdx: tokenType.tokenTypeIdx as number,
		tokenType,
	};
}

export function bracesBalance(all: readonly IToken[]): boolean {
	let depth = 0;
	for (const token of all) {
		if (token.tokenType === tokens.LeftBrace) depth++;
		else if (token.tokenType === tokens.RightBrace && --depth < 0) return false;
	}
	return depth === 0;
}

/** One line with at least one token on it. */
interface Line {
	/** Index of its first token and of the one behind its last, line ends not counted. */
	readonly first: number;
	readonly behind: number;
	readonly start: number;
	readonly column: number;
}

interface OpenBlock {
	readonly token: IToken;
	/** Column of the line on which its statement began. */
	readonly column: number;
	/** Line on which the brace stands. */
	readonly line: number;
	/** Where the brace stands among the tokens written. */
	readonly at: number;
}

/**
 * The same tokens with balanced braces: some `}` and `{` of no width added, some `}` dropped. Linear in the tokens.
 *
 * A line at or left of the line of an open block closes that block; a `}` at the beginning of a line closes the block
 * that was opened at its column; a `}` inside a line closes a block of that line; a header with deeper lines below it and
 * a `}` at its own column behind them gets its `{` back.
 */
export function balanceBraces(
	text: string,
	all: readonly IToken[],
	faults: FaultSink,
): IToken[] {
	const lines = linesOf(text, all);
	const nextShallow = nextNotDeeper(lines);
	const out: IToken[] = [];
	const open: OpenBlock[] = [];

	/** Closes the innermost block at `at`; `before` is the line behind which a mend would close it. */
	const closeVirtually = (at: number, before: number) => {
		const block = open.pop() as OpenBlock;
		out.push(virtualToken(tokens.RightBrace, at));
		if (block.token.image === "" || hiddenInText(all, lines[block.line], "}")) {
			return;
		}
		const last = all[(lines[before] as Line).behind - 1] as IToken;
		faults.push(
			missingCloseBrace(
				spanOf(block.token),
				lineEnd(text, endOf(last)),
				block.column,
			),
		);
	};

	let written = 0;
	/** The line on which the running statement began. */
	let head = 0;
	/** The line before got its `{` back. */
	let reopened = false;
	for (let number = 0; number < lines.length; number++) {
		const line = lines[number] as Line;
		if (reopened || !continues(all, lines, number, head)) head = number;
		reopened = false;
		const { column } = lines[head] as Line;
		for (; written < line.first; written++) out.push(all[written] as IToken);
		const leadingBrace =
			(all[line.first] as IToken).tokenType === tokens.RightBrace;
		const stays = leadingBrace ? line.column : line.column - 1;
		while ((open.at(-1)?.column ?? -1) > stays) {
			closeVirtually(line.start, number - 1);
		}
		let leading = true;
		// On a line with a `}` too many the one that cuts a statement in two is it.
		let surplus = leadingBrace ? 0 : surplusOf(all, line);
		for (let i = line.first; i < line.behind; i++) {
			const token = all[i] as IToken;
			if (token.tokenType === tokens.LeftBrace) {
				open.push({ token, column, line: number, at: out.length });
				out.push(token);
			} else if (token.tokenType === tokens.RightBrace) {
				const top = open.at(-1);
				const closes =
					top !== undefined &&
					!(surplus > 0 && inMidStatement(all[i + 1])) &&
					(top.line === number ||
						(leading && top.column === line.column) ||
						(i === line.behind - 1 && blockEndsHere(all, lines, number, top)));
				if (closes) {
					open.pop();
					out.push(token);
				} else if (!hiddenBefore(all, lines, number)) {
					surplus--;
					faults.push(strayCloseBrace(spanOf(token)));
				}
			} else {
				out.push(token);
			}
			leading = leading && token.tokenType === tokens.RightBrace;
		}
		written = line.behind;
		const closing = lines[nextShallow[head] as number];
		const closers =
			closing?.column === column ? leadingBraces(all, closing) : 0;
		dropSurplus(open, number, closers, out, faults);
		if (closers > 0 && lostItsBrace(all, lines, number, open.at(-1))) {
			const last = all[line.behind - 1] as IToken;
			const brace = virtualToken(tokens.LeftBrace, endOf(last));
			open.push({ token: brace, column, line: number, at: out.length });
			out.push(brace);
			reopened = true;
			if (!hiddenInText(all, line, "{")) {
				const { start } = spanOf(all[line.first] as IToken);
				faults.push(missingOpenBrace({ start, end: endOf(last) }));
			}
		}
	}
	for (; written < all.length; written++) out.push(all[written] as IToken);
	while (open.length > 0) {
		closeVirtually(text.length, lines.length - 1);
	}
	return out;
}

/** The line goes on with the statement that began on the line `head`, because the line before asks for more. */
function continues(
	all: readonly IToken[],
	lines: readonly Line[],
	number: number,
	head: number,
): boolean {
	const before = lines[number - 1];
	return (
		before !== undefined &&
		(lines[number] as Line).column > (lines[head] as Line).column &&
		asksForMore(all[before.behind - 1] as IToken)
	);
}

/** How many more `}` than `{` a line has. */
function surplusOf(all: readonly IToken[], line: Line): number {
	let surplus = 0;
	for (let i = line.first; i < line.behind; i++) {
		const type = (all[i] as IToken).tokenType;
		if (type === tokens.RightBrace) surplus++;
		else if (type === tokens.LeftBrace) surplus--;
	}
	return surplus;
}

/** A `}` before this token stands in the middle of a statement. */
function inMidStatement(next: IToken | undefined): boolean {
	switch (next?.tokenType) {
		case undefined:
		case tokens.Newline:
		case tokens.Semicolon:
		case tokens.RightBrace:
		case tokens.LeftBrace:
			return false;
		default:
			return true;
	}
}

function lineEnd(text: string, from: number): number {
	for (let i = from; i < text.length; i++) {
		const code = text.charCodeAt(i);
		if (code === 10 || code === 13) return i;
	}
	return text.length;
}

/** How many `}` a line begins with. */
function leadingBraces(all: readonly IToken[], line: Line): number {
	let count = 0;
	while (
		line.first + count < line.behind &&
		(all[line.first + count] as IToken).tokenType === tokens.RightBrace
	) {
		count++;
	}
	return count;
}

/** A line that opens more blocks than the line that closes it closes has a `{` too many: the first ones go. */
function dropSurplus(
	open: OpenBlock[],
	number: number,
	closers: number,
	out: IToken[],
	faults: FaultSink,
): void {
	if (closers === 0) return;
	let first = open.length;
	while (first > 0 && open[first - 1]?.line === number) first--;
	const surplus = open.length - first - closers;
	if (surplus <= 0) return;
	const dropped = open.splice(first, surplus);
	for (const block of dropped) faults.push(strayOpenBrace(spanOf(block.token)));
	const gone = new Set(dropped.map((block) => block.token));
	const tail = out.splice((dropped[0] as OpenBlock).at);
	for (const token of tail) if (!gone.has(token)) out.push(token);
}

function linesOf(text: string, all: readonly IToken[]): Line[] {
	const lines: Line[] = [];
	let start = 0;
	let first = 0;
	for (let i = 0; i <= all.length; i++) {
		const token = all[i];
		if (token && token.tokenType !== tokens.Newline) continue;
		if (i > first) {
			const at = (all[first] as IToken).startOffset;
			lines.push({
				first,
				behind: i,
				start,
				column: columnOf(text, start, at),
			});
		}
		if (token) start = lineStartAfter(token);
		first = i + 1;
	}
	return lines;
}

/** For each line the next one that is indented as deep or less; `lines.length` if there is none. */
function nextNotDeeper(lines: readonly Line[]): Int32Array {
	const next = new Int32Array(lines.length).fill(lines.length);
	const waiting: number[] = [];
	for (let i = 0; i < lines.length; i++) {
		const column = (lines[i] as Line).column;
		while (
			waiting.length > 0 &&
			(lines[waiting.at(-1) as number] as Line).column >= column
		) {
			next[waiting.pop() as number] = i;
		}
		waiting.push(i);
	}
	return next;
}

/** A `}` that ends a line closes a block of an earlier line if the next line is not inside that block any more. */
function blockEndsHere(
	all: readonly IToken[],
	lines: readonly Line[],
	number: number,
	top: OpenBlock,
): boolean {
	const next = lines[number + 1];
	if (!next || next.column > top.column) return false;
	const itself =
		next.column === top.column &&
		(all[next.first] as IToken).tokenType === tokens.RightBrace;
	return !itself;
}

/** The line is a header whose `{` is missing; that a `}` stands behind its lines is known already. */
function lostItsBrace(
	all: readonly IToken[],
	lines: readonly Line[],
	number: number,
	top: OpenBlock | undefined,
): boolean {
	const line = lines[number] as Line;
	const below = lines[number + 1];
	if (!below || below.column <= line.column || top?.line === number) {
		return false;
	}
	// Behind a comma the header may go on and bring its `{` on the next line.
	const goesOn =
		asksForMore(all[line.behind - 1] as IToken) &&
		(all[below.behind - 1] as IToken).tokenType === tokens.LeftBrace;
	return (all[line.first] as IToken).tokenType === tokens.Name && !goesOn;
}

function spanOf(token: IToken): Span {
	return { start: token.startOffset, end: endOf(token) };
}

/** The token leaves its statement open: a comma or an operator. */
export function asksForMore(token: IToken): boolean {
	switch (token.tokenType) {
		case tokens.Comma:
		case tokens.Cross:
		case tokens.Compare:
		case tokens.Equals:
		case tokens.Plus:
		case tokens.Minus:
		case tokens.Times:
		case tokens.Over:
			return true;
		default:
			return false;
	}
}

/** An open text on the line swallowed the brace: that is the one fault to report. */
function hiddenInText(
	all: readonly IToken[],
	line: Line | undefined,
	brace: string,
): boolean {
	const last = line && all[line.behind - 1];
	return last?.tokenType === tokens.OpenText && last.image.includes(brace);
}

/** A `{` was swallowed by an open text on an earlier line at the column of this `}`. */
function hiddenBefore(
	all: readonly IToken[],
	lines: readonly Line[],
	number: number,
): boolean {
	const column = (lines[number] as Line).column;
	for (let i = number - 1; i >= 0 && i > number - 50; i--) {
		const line = lines[i] as Line;
		if (line.column <= column) return hiddenInText(all, line, "{");
	}
	return false;
}
