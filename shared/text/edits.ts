// Applies changes to a text, all of them told in the offsets of the text as it was.

/** Replaces the half-open range `start`..`end` (UTF-16 offsets); an empty range inserts. */
export interface TextEdit {
	readonly start: number;
	readonly end: number;
	readonly text: string;
}

/** In order of place; an insertion comes before a replacement that starts there, insertions at one place stay in order. */
export function sortEdits(edits: readonly TextEdit[]): readonly TextEdit[] {
	return edits.toSorted((a, b) => a.start - b.start || a.end - b.end);
}

/** The first two edits that touch the same characters, for a caller that has to refuse; undefined if none do. */
export function overlap(
	edits: readonly TextEdit[],
): readonly [TextEdit, TextEdit] | undefined {
	let before: TextEdit | undefined;
	for (const edit of sortEdits(edits)) {
		if (before !== undefined && edit.start < before.end) return [before, edit];
		before = edit;
	}
	return undefined;
}

/** The text after all edits. RangeError, a fault of the caller, if two overlap or one does not lie in the text. */
export function applyEdits(text: string, edits: readonly TextEdit[]): string {
	const parts: string[] = [];
	let done = 0;
	for (const edit of sortEdits(edits)) {
		const { start, end } = edit;
		if (!(start >= done && end >= start && end <= text.length)) {
			throw new RangeError(
				`Edit ${start}..${end} overlaps another or leaves the text`,
			);
		}
		parts.push(text.slice(done, start), edit.text);
		done = end;
	}
	parts.push(text.slice(done));
	return parts.join("");
}
