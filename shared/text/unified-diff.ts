// What differs between two texts, as the unified format of `diff -u` has it, so that other tools can read and apply it.

import type { TextEdit } from "./edits.ts";

/** Lines shown around what differs. */
const context = 3;

/** Half-open ranges of lines, from zero. */
interface Change {
	readonly from: number;
	readonly to: number;
	readonly nowFrom: number;
	readonly nowTo: number;
}

/**
 * Empty if the texts are equal. `edits` lead from one to the other, in order of place; they say where to look, so that lines
 * are paired as they were changed. Line ends stand as they are in the texts.
 */
export function unifiedDiff(
	before: string,
	after: string,
	edits: readonly TextEdit[],
	names: { readonly before: string; readonly after: string },
): string {
	const old = linesOf(before);
	const now = linesOf(after);
	const changes = changesOf(old, now, edits);
	if (changes.length === 0) return "";
	const out = [`--- ${names.before}\n`, `+++ ${names.after}\n`];
	for (const group of groupsOf(changes)) out.push(hunk(old, now, group));
	return out.join("");
}

function changesOf(
	old: readonly string[],
	now: readonly string[],
	edits: readonly TextEdit[],
): Change[] {
	const oldStarts = startsOf(old);
	const nowStarts = startsOf(now);
	const changes: Change[] = [];
	let moved = 0;
	for (const { start, end, text } of edits) {
		const nowStart = start + moved;
		moved += text.length - (end - start);
		const nowEnd = end + moved;
		const change = trimmed(old, now, {
			from: lineAt(oldStarts, start),
			to: Math.min(old.length, lineAt(oldStarts, end) + 1),
			nowFrom: lineAt(nowStarts, nowStart),
			nowTo: Math.min(now.length, lineAt(nowStarts, nowEnd) + 1),
		});
		const last = changes.at(-1);
		if (change.from === change.to && change.nowFrom === change.nowTo) continue;
		if (last && change.from <= last.to) {
			changes[changes.length - 1] = trimmed(old, now, {
				...change,
				from: last.from,
				nowFrom: last.nowFrom,
			});
		} else changes.push(change);
	}
	return changes;
}

/** Without the lines at both ends that are the same. */
function trimmed(
	old: readonly string[],
	now: readonly string[],
	{ from, to, nowFrom, nowTo }: Change,
): Change {
	let [a, b, c, d] = [from, to, nowFrom, nowTo];
	while (a < b && c < d && old[a] === now[c]) {
		a++;
		c++;
	}
	while (a < b && c < d && old[b - 1] === now[d - 1]) {
		b--;
		d--;
	}
	return { from: a, to: b, nowFrom: c, nowTo: d };
}

/** Changes whose surroundings meet are shown together. */
function groupsOf(changes: readonly Change[]): Change[][] {
	const groups: Change[][] = [];
	for (const change of changes) {
		const last = groups.at(-1)?.at(-1);
		if (last && change.from - last.to <= 2 * context)
			groups.at(-1)?.push(change);
		else groups.push([change]);
	}
	return groups;
}

function hunk(
	old: readonly string[],
	now: readonly string[],
	changes: readonly Change[],
): string {
	const first = changes[0] as Change;
	const last = changes.at(-1) as Change;
	const above = Math.min(context, first.from);
	const below = Math.min(context, old.length - last.to);
	const from = first.from - above;
	const to = last.to + below;
	const nowFrom = first.nowFrom - above;
	const nowTo = last.nowTo + below;
	const out = [
		`@@ -${rangeText(from, to - from)} +${rangeText(nowFrom, nowTo - nowFrom)} @@\n`,
	];
	let at = from;
	for (const change of changes) {
		for (const line of old.slice(at, change.from)) out.push(shown(" ", line));
		for (const line of old.slice(change.from, change.to))
			out.push(shown("-", line));
		for (const line of now.slice(change.nowFrom, change.nowTo))
			out.push(shown("+", line));
		at = change.to;
	}
	for (const line of old.slice(at, to)) out.push(shown(" ", line));
	return out.join("");
}

/** An empty range is told by the line before it. */
function rangeText(from: number, count: number): string {
	const start = count === 0 ? from : from + 1;
	return count === 1 ? `${start}` : `${start},${count}`;
}

function shown(sign: string, line: string): string {
	return line.endsWith("\n")
		? sign + line
		: `${sign}${line}\n\\ No newline at end of file\n`;
}

/** With their line feeds; a lone carriage return is part of its line, as for other tools. */
function linesOf(text: string): string[] {
	return text.match(/[^\n]*\n|[^\n]+$/g) ?? [];
}

/** Of the lines, and of what comes behind the last line feed. */
function startsOf(lines: readonly string[]): number[] {
	const starts = [0];
	let at = 0;
	for (const line of lines) {
		at += line.length;
		if (line.endsWith("\n")) starts.push(at);
	}
	return starts;
}

/** The last line that begins at or before an offset. */
function lineAt(starts: readonly number[], offset: number): number {
	let low = 0;
	let high = starts.length;
	while (low < high) {
		const middle = (low + high) >> 1;
		if ((starts[middle] as number) <= offset) low = middle + 1;
		else high = middle;
	}
	return low - 1;
}
