// The edits that lead from one text to another line by line, so that an editor keeps its cursor and its scroll.

import type { TextEdit } from "../text/edits.ts";

/** Beyond this many differing lines the region between the first and the last of them is replaced as a whole. */
const mostDifferences = 400;

/** Edits in order of place that do not overlap; applied to `before` they give `after`. */
export function lineEdits(before: string, after: string): TextEdit[] {
	if (before === after) return [];
	const old = linesWithEnds(before);
	const now = linesWithEnds(after);
	let head = 0;
	while (head < old.length && old[head] === now[head]) head++;
	let tail = 0;
	while (
		tail < old.length - head &&
		tail < now.length - head &&
		old[old.length - 1 - tail] === now[now.length - 1 - tail]
	) {
		tail++;
	}
	const oldMiddle = old.slice(head, old.length - tail);
	const newMiddle = now.slice(head, now.length - tail);
	let at = 0;
	for (let i = 0; i < head; i++) at += (old[i] as string).length;
	return hunks(oldMiddle, newMiddle).map(({ from, to, lines }) => {
		const start = at + lengthOf(oldMiddle, 0, from);
		const end = start + lengthOf(oldMiddle, from, to);
		return narrowed(before.slice(start, end), start, lines.join(""));
	});
}

interface Hunk {
	readonly from: number;
	readonly to: number;
	readonly lines: readonly string[];
}

/** Runs of lines that differ; a formatter seldom moves lines, so what is equal is found by the shortest edit script. */
function hunks(old: readonly string[], now: readonly string[]): Hunk[] {
	const kept = commonLines(old, now);
	if (!kept) return [{ from: 0, to: old.length, lines: now }];
	const found: Hunk[] = [];
	let from = 0;
	let to = 0;
	for (const [i, j] of [...kept, [old.length, now.length] as const]) {
		if (i > from || j > to) {
			// Of as many lines on both sides each is changed by itself.
			if (i - from === j - to) {
				for (let k = 0; k < i - from; k++) {
					found.push({
						from: from + k,
						to: from + k + 1,
						lines: [now[to + k] as string],
					});
				}
			} else found.push({ from, to: i, lines: now.slice(to, j) });
		}
		from = i + 1;
		to = j + 1;
	}
	return found;
}

/** Pairs of equal lines in order (E. Myers, "An O(ND) difference algorithm", 1986); undefined if too many differ. */
function commonLines(
	old: readonly string[],
	now: readonly string[],
): (readonly [number, number])[] | undefined {
	const furthest = new Map<number, number>([[1, 0]]);
	const trace: Map<number, number>[] = [];
	const most = Math.min(old.length + now.length, mostDifferences);
	for (let d = 0; d <= most; d++) {
		trace.push(new Map(furthest));
		for (let k = -d; k <= d; k += 2) {
			let x = fromAbove(furthest, k, d)
				? (furthest.get(k + 1) ?? 0)
				: (furthest.get(k - 1) ?? 0) + 1;
			while (x < old.length && x - k < now.length && old[x] === now[x - k]) {
				x++;
			}
			furthest.set(k, x);
			if (x >= old.length && x - k >= now.length) {
				return walkBack(trace, old.length, now.length);
			}
		}
	}
	return undefined;
}

function fromAbove(
	furthest: ReadonlyMap<number, number>,
	k: number,
	d: number,
): boolean {
	return (
		k === -d ||
		(k !== d && (furthest.get(k - 1) ?? -1) < (furthest.get(k + 1) ?? -1))
	);
}

function walkBack(
	trace: readonly ReadonlyMap<number, number>[],
	oldLength: number,
	newLength: number,
): (readonly [number, number])[] {
	const pairs: (readonly [number, number])[] = [];
	let x = oldLength;
	let y = newLength;
	for (let d = trace.length - 1; d >= 0; d--) {
		const furthest = trace[d] as ReadonlyMap<number, number>;
		const k = x - y;
		const before = fromAbove(furthest, k, d) ? k + 1 : k - 1;
		const beforeX = d === 0 ? 0 : (furthest.get(before) ?? 0);
		const beforeY = d === 0 ? 0 : beforeX - before;
		while (x > beforeX && y > beforeY) pairs.push([--x, --y]);
		x = beforeX;
		y = beforeY;
	}
	return pairs.reverse();
}

/** Without what is the same at both ends. */
function narrowed(old: string, start: number, now: string): TextEdit {
	let head = 0;
	while (head < old.length && head < now.length && old[head] === now[head]) {
		head++;
	}
	let tail = 0;
	while (
		tail < old.length - head &&
		tail < now.length - head &&
		old[old.length - 1 - tail] === now[now.length - 1 - tail]
	) {
		tail++;
	}
	return {
		start: start + head,
		end: start + old.length - tail,
		text: now.slice(head, now.length - tail),
	};
}

function linesWithEnds(text: string): string[] {
	return text.match(/[^\r\n]*(?:\r\n|\r|\n)|[^\r\n]+$/g) ?? [];
}

function lengthOf(lines: readonly string[], from: number, to: number): number {
	let length = 0;
	for (let i = from; i < to; i++) length += (lines[i] as string).length;
	return length;
}
