// Lays out the statements that a selection touches, and nothing else: each reads as it would in the whole text's new layout.

import {
	type Block,
	type Comment,
	type FileNode,
	parse,
	type Span,
	type Statement,
} from "../../grammar/index.ts";
import { applyEdits, type TextEdit } from "../text/edits.ts";
import { format } from "./format.ts";
import { lineEdits } from "./line-edits.ts";
import { sameMeaning } from "./same-meaning.ts";

/**
 * Edits in order of place, none where nothing is to be changed or the layout is refused. A statement counts as touched when the
 * lines of the selection meet it; where they lie within its block, only the lines there do.
 */
export function formatRange(text: string, selected: Span): TextEdit[] {
	const { text: formatted, refused } = format(text);
	if (refused || formatted === text) return [];
	const lines = wholeLines(text, selected);
	if (lines.start === 0 && lines.end === text.length)
		return lineEdits(text, formatted);
	const old = parse(text).tree;
	const now = parse(formatted).tree;
	const stretch = touched(text, lines, old, now);
	if (!stretch) return [];
	const from = regionOf(text, old, stretch.old, lines);
	// Comments keep their order and their number: those taken along there are taken along here.
	const to = regionLike(formatted, now, stretch.now, from.comments);
	const edits = lineEdits(
		text.slice(from.span.start, from.span.end),
		formatted.slice(to.start, to.end),
	).map((edit) => ({
		...edit,
		start: edit.start + from.span.start,
		end: edit.end + from.span.start,
	}));
	// A line that shares its place with what stays could be read in another way.
	return sameMeaning(old, parse(applyEdits(text, edits)).tree) ? edits : [];
}

/** Neighbours in one body, and the same ones in the new layout. */
interface Stretch {
	readonly old: Ends;
	readonly now: Ends;
}

interface Ends {
	readonly first: Statement;
	readonly last: Statement;
}

/** The layout keeps every statement in its place, so the same way leads to it in both trees. */
function touched(
	text: string,
	lines: Span,
	old: FileNode | Block,
	now: FileNode | Block,
): Stretch | undefined {
	const indexes = old.statements.flatMap(({ span }, index) =>
		span.start < lines.end && lines.start < span.end ? [index] : [],
	);
	const [from] = indexes;
	const to = indexes.at(-1);
	if (from === undefined || to === undefined) return undefined;
	const [first, last] = [old.statements[from], old.statements[to]];
	const [nowFirst, nowLast] = [now.statements[from], now.statements[to]];
	if (!first || !last || !nowFirst || !nowLast) return undefined;
	const within =
		from === to &&
		first.block &&
		nowFirst.block &&
		isWithin(text, lines, first.block);
	if (within && first.block && nowFirst.block)
		return touched(text, lines, first.block, nowFirst.block);
	return {
		old: { first, last },
		now: { first: nowFirst, last: nowLast },
	};
}

/** Below the line of the opening brace and above that of the closing one. */
function isWithin(text: string, lines: Span, { span, closed }: Block): boolean {
	const opening = lineEndAt(text, span.start);
	const closing = closed ? lineStartAt(text, span.end - 1) : span.end;
	return lines.start > opening && lines.end <= closing;
}

interface Region {
	readonly span: Span;
	/** How many comments above it, and behind its end, belong to it. */
	readonly comments: { readonly above: number; readonly behind: number };
}

/** With the indentation before it, the lines of comments directly above it that are selected too, and a comment behind it. */
function regionOf(
	text: string,
	{ comments }: FileNode,
	{ first, last }: Ends,
	lines: Span,
): Region {
	let start = first.span.start;
	let above = 0;
	for (const comment of commentsBefore(comments, start)) {
		if (!comment.ownLine || comment.span.start < lines.start) break;
		if (/\S/.test(text.slice(comment.span.end, start))) break;
		start = comment.span.start;
		above++;
	}
	const behind = commentBehind(text, comments, last.span.end);
	return {
		span: {
			start: withIndent(text, start),
			end: behind?.span.end ?? last.span.end,
		},
		comments: { above, behind: behind ? 1 : 0 },
	};
}

function regionLike(
	text: string,
	{ comments }: FileNode,
	{ first, last }: Ends,
	{ above, behind }: Region["comments"],
): Span {
	const top = [...commentsBefore(comments, first.span.start)][above - 1];
	const after = behind > 0 && commentBehind(text, comments, last.span.end);
	return {
		start: withIndent(text, top?.span.start ?? first.span.start),
		end: after ? after.span.end : last.span.end,
	};
}

/** Nearest first. */
function* commentsBefore(
	comments: readonly Comment[],
	offset: number,
): Generator<Comment> {
	const last = comments.findLastIndex(({ span }) => span.end <= offset);
	for (let index = last; index >= 0; index--) yield comments[index] as Comment;
}

/** The one on the same line. */
function commentBehind(
	text: string,
	comments: readonly Comment[],
	end: number,
): Comment | undefined {
	const next = comments.find(({ span }) => span.start >= end);
	return next && /^[ \t;]*$/.test(text.slice(end, next.span.start))
		? next
		: undefined;
}

/** From the start of the line, where nothing but blanks stands before. */
function withIndent(text: string, at: number): number {
	const start = lineStartAt(text, at);
	return /^[ \t]*$/.test(text.slice(start, at)) ? start : at;
}

function wholeLines(text: string, { start, end }: Span): Span {
	// A selection that ends before the first character of a line does not touch it.
	const last = end > start && isLineEnd(text, end - 1) ? end - 1 : end;
	const to = lineEndAt(text, last);
	return {
		start: lineStartAt(text, start),
		end: /\S/.test(text.slice(to)) ? to : text.length,
	};
}

function lineStartAt(text: string, at: number): number {
	let start = at;
	while (start > 0 && !isLineEnd(text, start - 1)) start--;
	return start;
}

function lineEndAt(text: string, at: number): number {
	let end = at;
	while (end < text.length && !isLineEnd(text, end)) end++;
	return end;
}

function isLineEnd(text: string, at: number): boolean {
	const code = text.charCodeAt(at);
	return code === 10 || code === 13;
}
