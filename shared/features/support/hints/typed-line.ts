// Keeps hints still on the line that is being typed.
//
// Which line that is follows from the text itself: where it last changed. As long as changes stay on that line
// - a hint that stood there stays, as long as the word before it is there, even while the line cannot be read; what it says is
//   renewed as soon as the line can be read again;
// - no new hint comes up there: it would push the words at the cursor aside.
// When a change falls on another line, as a line end does, the line is shown as it is.

import type { LineIndex } from "../../../text/line-index.ts";
import type { Hint } from "./hint.ts";

/** A hint by the word before it: `of ply.half` and the second such word of its line are told apart. */
interface Held {
	readonly word: string;
	/** So many of the same word come before it on the line. */
	readonly nth: number;
	readonly hint: Hint;
}

/** What an editor shows of one document. */
export interface Shown {
	readonly text: string;
	readonly lines: LineIndex;
	/** By their lines. */
	readonly hints: ReadonlyMap<number, readonly Hint[]>;
	/** The line that is being typed, with the hints that stood on it. */
	readonly typed:
		| { readonly line: number; readonly held: readonly Held[] }
		| undefined;
}

/** What to show now; `hints` are those of a part of the text, lines `from` to `to`, both included. */
export function stillShown(
	before: Shown | undefined,
	text: string,
	lines: LineIndex,
	hints: readonly Hint[],
	from: number,
	to: number,
): { readonly shown: Shown; readonly hints: readonly Hint[] } {
	const typed = before && typedLine(before, text, lines);
	const now: Hint[] = [];
	for (const hint of hints) {
		if (lines.positionAt(hint.offset).line !== typed?.line) now.push(hint);
	}
	if (typed && from <= typed.line && typed.line <= to)
		now.push(...heldHints(typed, text, lines, hints));
	now.sort((a, b) => a.offset - b.offset);
	// Of the same text what was shown elsewhere is still there.
	const all = new Map<number, Hint[]>(
		before?.text === text
			? [...before.hints].map(([line, shown]) => [line, [...shown]])
			: [],
	);
	for (const line of all.keys())
		if (from <= line && line <= to) all.delete(line);
	for (const hint of now) {
		const { line } = lines.positionAt(hint.offset);
		const known = all.get(line);
		if (known) known.push(hint);
		else all.set(line, [hint]);
	}
	return { shown: { text, lines, hints: all, typed }, hints: now };
}

function typedLine(
	before: Shown,
	text: string,
	lines: LineIndex,
): Shown["typed"] {
	if (before.text === text) return before.typed;
	const old = before.text;
	const most = Math.min(old.length, text.length);
	let head = 0;
	while (head < most && old[head] === text[head]) head++;
	let tail = 0;
	while (
		tail < most - head &&
		old[old.length - 1 - tail] === text[text.length - 1 - tail]
	)
		tail++;
	const line = lines.positionAt(text.length - tail).line;
	const oldLine = before.lines.positionAt(old.length - tail).line;
	const stays =
		before.typed?.line === oldLine &&
		oldLine === line &&
		before.lines.positionAt(head).line === line;
	if (stays) return before.typed;
	const held = (before.hints.get(oldLine) ?? []).map((hint) => ({
		...anchorOf(old, before.lines.lineStart(oldLine), hint.offset),
		hint,
	}));
	return { line, held };
}

function heldHints(
	{ line, held }: NonNullable<Shown["typed"]>,
	text: string,
	lines: LineIndex,
	fresh: readonly Hint[],
): Hint[] {
	const start = lines.lineStart(line);
	const words = wordsOf(text.slice(start, lines.lineEnd(line)));
	return held.flatMap(({ word, nth, hint }) => {
		const place = words.filter((one) => one.word === word)[nth];
		if (!place) return [];
		const offset = start + place.end;
		return [
			fresh.find((one) => one.kind === hint.kind && one.offset === offset) ?? {
				...hint,
				offset,
			},
		];
	});
}

function anchorOf(
	text: string,
	start: number,
	offset: number,
): { readonly word: string; readonly nth: number } {
	const words = wordsOf(text.slice(start, offset));
	const word = words.at(-1)?.word ?? "";
	return { word, nth: words.filter((one) => one.word === word).length - 1 };
}

function wordsOf(
	line: string,
): { readonly word: string; readonly end: number }[] {
	return [...line.matchAll(/[^\s,;{}()]+/g)].map((match) => ({
		word: match[0],
		end: match.index + match[0].length,
	}));
}
