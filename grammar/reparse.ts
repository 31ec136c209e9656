// Reads a text anew after an edit, and keeps what the edit did not touch: typing costs what is typed, not the whole file.

import { faultLimit, parse } from "./parse.ts";
import { commentsAbove } from "./tree/comments.ts";
import { moveComment, moveFault, moveStatement } from "./tree/move.ts";
import type { ParseResult, Statement } from "./tree/nodes.ts";

/** A text with what was read from it. */
export interface ReadText {
	readonly text: string;
	readonly result: ParseResult;
}

/**
 * The same as `parse(text)`, but statements of the file that did not change are the very objects of the result before.
 * Those behind the edit are moved in place, spans and all, so whoever holds one of their spans sees it move; the result
 * before must not be used any more.
 */
export function reparse(previous: ReadText, text: string): ParseResult {
	if (previous.text === text) return previous.result;
	const edit = editBetween(previous.text, text);
	// A byte order mark is no fault as long as it stands first: what is kept would not know that it no longer does.
	const middle =
		startsMarked(previous.text) === startsMarked(text)
			? readMiddle(previous, text, edit)
			: undefined;
	return middle ?? readAll(previous, text, edit);
}

function startsMarked(text: string): boolean {
	return text.charCodeAt(0) === 0xfeff;
}

/** What both texts begin and end with, in UTF-16 code units; the rest was replaced. */
interface TextEdit {
	readonly before: number;
	readonly after: number;
}

/** Texts are compared in blocks first, which is a comparison of memory. */
const blockLength = 4096;

function editBetween(old: string, now: string): TextEdit {
	const most = Math.min(old.length, now.length);
	let before = 0;
	while (
		before + blockLength <= most &&
		old.slice(before, before + blockLength) ===
			now.slice(before, before + blockLength)
	) {
		before += blockLength;
	}
	while (before < most && old.charCodeAt(before) === now.charCodeAt(before)) {
		before++;
	}
	const left = most - before;
	const fromEnd = (text: string, at: number, length: number) =>
		text.slice(text.length - at - length, text.length - at);
	let after = 0;
	while (
		after + blockLength <= left &&
		fromEnd(old, after, blockLength) === fromEnd(now, after, blockLength)
	) {
		after += blockLength;
	}
	while (
		after < left &&
		old.charCodeAt(old.length - after - 1) ===
			now.charCodeAt(now.length - after - 1)
	) {
		after++;
	}
	return { before, after };
}

/**
 * Keeps the statements before and behind the edit and reads the lines between. Undefined where that might not be what
 * reading the whole text gives: the braces of the old text or of these lines do not balance, or the list of faults was
 * cut off.
 *
 * No token but a line end crosses a line, and a line that begins in its first column with a letter never goes on with the
 * line before. So the tokens and the layout of such a line and of those below it do not depend on what stands above, once
 * the braces above balance; nor do its `///` lines, if the lines with comments directly above it are taken along.
 */
function readMiddle(
	{ text: old, result }: ReadText,
	text: string,
	edit: TextEdit,
): ParseResult | undefined {
	const { statements, comments } = result.tree;
	if (!result.balanced || result.faults.length > faultLimit) return undefined;
	const by = text.length - old.length;

	/** Where the lines of a statement begin in the old text, those of its comments among them. */
	const topOf = (statement: Statement): number =>
		lineStart(old, commentsAbove(old, comments, statement.span.start));

	// The last statement before the edit is read again: the edit may go on with it.
	let first = lowerBound(statements, (one) => one.span.start >= edit.before);
	do first--;
	while (first >= 0 && !beginsLine(old, statements[first] as Statement));
	const start = first < 0 ? 0 : topOf(statements[first] as Statement);

	const changedTo = old.length - edit.after;
	let behind = lowerBound(statements, (one) => one.span.start >= changedTo);
	let end = text.length;
	for (; behind < statements.length; behind++) {
		const statement = statements[behind] as Statement;
		if (!beginsLine(old, statement)) continue;
		const top = topOf(statement);
		if (top < changedTo || !canBegin(text, top + by)) continue;
		end = top + by;
		break;
	}
	if (start === 0 && end === text.length) return undefined;

	const middle = parse(text.slice(start, end));
	const head = {
		statements: statements.slice(0, Math.max(0, first)),
		comments: comments.slice(
			0,
			lowerBound(comments, (one) => one.span.start >= start),
		),
		faults: result.faults.filter((one) => one.span.start < start),
	};
	const tail = {
		statements: statements.slice(behind),
		comments: comments.slice(
			lowerBound(comments, (one) => one.span.start >= end - by),
		),
		faults: result.faults.filter((one) => one.span.start >= end - by),
	};
	const count = head.faults.length + middle.faults.length + tail.faults.length;
	if (!middle.balanced || count > faultLimit) return undefined;
	moveAll(middle.tree.statements, start);
	for (const comment of middle.tree.comments) moveComment(comment, start);
	for (const fault of middle.faults) moveFault(fault, start);
	moveAll(tail.statements, by);
	for (const comment of tail.comments) moveComment(comment, by);
	for (const fault of tail.faults) moveFault(fault, by);
	return {
		tree: {
			kind: "file",
			span: { start: 0, end: text.length },
			statements: [
				...head.statements,
				...middle.tree.statements,
				...tail.statements,
			],
			comments: [...head.comments, ...middle.tree.comments, ...tail.comments],
		},
		faults: [...head.faults, ...middle.faults, ...tail.faults],
		balanced: true,
	};
}

/** Reads the whole text, and puts back the old object of each statement before and behind the edit that reads the same. */
function readAll(
	{ text: old, result }: ReadText,
	text: string,
	edit: TextEdit,
): ParseResult {
	const made = parse(text);
	const by = text.length - old.length;
	const kept = result.tree.statements;
	const statements = [...made.tree.statements];
	let first = 0;
	for (; first < Math.min(kept.length, statements.length); first++) {
		const statement = kept[first] as Statement;
		if (statement.span.end > edit.before) break;
		if (same(statement, statements[first], 0)) statements[first] = statement;
	}
	for (
		let i = kept.length - 1, j = statements.length - 1;
		i >= first && j >= first;
		i--, j--
	) {
		const statement = kept[i] as Statement;
		if (statement.span.start < old.length - edit.after) break;
		if (!same(statement, statements[j], by)) continue;
		moveStatement(statement, by);
		statements[j] = statement;
	}
	return { ...made, tree: { ...made.tree, statements } };
}

/** Whether two parts of trees are equal, when all places in the first are moved. */
function same(a: unknown, b: unknown, by: number): boolean {
	if (typeof a !== "object" || a === null) return a === b;
	if (typeof b !== "object" || b === null) return false;
	if (Array.isArray(a)) {
		return (
			Array.isArray(b) &&
			a.length === b.length &&
			a.every((one, index) => same(one, b[index], by))
		);
	}
	if ("start" in a && "end" in a) {
		const other = b as { start: number; end: number };
		return (
			(a.start as number) + by === other.start &&
			(a.end as number) + by === other.end
		);
	}
	const left = a as Record<string, unknown>;
	const right = b as Record<string, unknown>;
	for (const key in left) if (!same(left[key], right[key], by)) return false;
	return true;
}

function moveAll(statements: readonly Statement[], by: number): void {
	if (by === 0) return;
	for (const statement of statements) moveStatement(statement, by);
}

/** The statement begins with a letter in the first column, so nothing that stands before can go on with it. */
function beginsLine(text: string, { span }: Statement): boolean {
	return (
		(span.start === 0 || isLineEnd(text, span.start - 1)) &&
		/[A-Za-z_]/.test(text.charAt(span.start))
	);
}

function lineStart(text: string, at: number): number {
	let start = at;
	while (start > 0 && !isLineEnd(text, start - 1)) start--;
	return start;
}

function isLineEnd(text: string, at: number): boolean {
	const code = text.charCodeAt(at);
	return code === 10 || code === 13;
}

/** A kept part may begin here: at the start of a line, and no comment stands on the line above that would belong to it. */
function canBegin(text: string, at: number): boolean {
	if (at === 0) return true;
	if (!isLineEnd(text, at - 1)) return false;
	const above = text.slice(lineStart(text, lineEndBefore(text, at)), at);
	return !/^[ \t\ufeff]*\/\//.test(above);
}

/** Where the line end before the line start `at` begins. */
function lineEndBefore(text: string, at: number): number {
	const crLf = text.charCodeAt(at - 1) === 10 && text.charCodeAt(at - 2) === 13;
	return at - (crLf ? 2 : 1);
}

/** Index of the first member that `reached` holds for; it holds for all behind it. */
function lowerBound<T>(
	list: readonly T[],
	reached: (one: T) => boolean,
): number {
	let low = 0;
	let high = list.length;
	while (low < high) {
		const middle = (low + high) >> 1;
		if (reached(list[middle] as T)) high = middle;
		else low = middle + 1;
	}
	return low;
}
