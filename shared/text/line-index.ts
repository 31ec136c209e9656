// Turns offsets into lines and characters and back, as editors count them: UTF-16 code units, lines from zero.

/** Zero-based line, and UTF-16 code units from its start. */
export interface Position {
	readonly line: number;
	readonly character: number;
}

/** Built once for a text; every answer lies inside that text, whatever is asked. */
export interface LineIndex {
	/** At least one: an empty text has one empty line. */
	readonly lineCount: number;
	/** The offset at which a line begins. */
	lineStart(line: number): number;
	/** The offset behind the last character of a line, its line break not in it. */
	lineEnd(line: number): number;
	/** An offset inside a line break answers with the end of its line. */
	positionAt(offset: number): Position;
	/** A character behind the end of its line answers with that end. */
	offsetAt(position: Position): number;
	/**
	 * The index of `text`, which is this text with the characters from `start` to `end` replaced: only what is new is looked
	 * through.
	 */
	edited(text: string, start: number, end: number): LineIndex;
}

const lineFeed = 10;
const carriageReturn = 13;

/** Lines end with `\n`, `\r\n` or a lone `\r`. */
export function indexLines(text: string): LineIndex {
	return new Lines(text, [0, ...startsIn(text, 0, text.length)]);
}

/** Where lines begin that end with a break between two offsets. */
function startsIn(text: string, from: number, to: number): number[] {
	const starts: number[] = [];
	for (let i = from; i < to; i += 1) {
		const code = text.charCodeAt(i);
		if (
			code === lineFeed ||
			(code === carriageReturn && text.charCodeAt(i + 1) !== lineFeed)
		)
			starts.push(i + 1);
	}
	return starts;
}

class Lines implements LineIndex {
	private readonly text: string;
	private readonly starts: readonly number[];

	constructor(text: string, starts: readonly number[]) {
		this.text = text;
		this.starts = starts;
	}

	get lineCount(): number {
		return this.starts.length;
	}

	lineStart(line: number): number {
		// The list holds a number for every line; the fallback only satisfies the types.
		return this.starts[clamp(line, 0, this.lineCount - 1)] ?? 0;
	}

	lineEnd(line: number): number {
		const on = clamp(line, 0, this.lineCount - 1);
		const next = this.starts[on + 1];
		if (next === undefined) return this.text.length;
		const { text } = this;
		const crLf =
			text.charCodeAt(next - 1) === lineFeed &&
			text.charCodeAt(next - 2) === carriageReturn;
		return next - (crLf ? 2 : 1);
	}

	positionAt(offset: number): Position {
		const at = clamp(offset, 0, this.text.length);
		const line = firstAbove(this.starts, at) - 1;
		return {
			line,
			character: Math.min(at, this.lineEnd(line)) - this.lineStart(line),
		};
	}

	offsetAt({ line, character }: Position): number {
		if (line < 0) return 0;
		if (line >= this.lineCount) return this.text.length;
		const start = this.lineStart(line);
		return clamp(
			start + clamp(character, 0, this.text.length),
			start,
			this.lineEnd(line),
		);
	}

	edited(text: string, start: number, end: number): LineIndex {
		const { starts } = this;
		const by = text.length - this.text.length;
		// A break before the edit may become half of one with what is put behind it: its line is looked at again.
		const kept = starts.slice(0, Math.max(1, firstAbove(starts, start - 1)));
		const made = startsIn(text, Math.max(0, start - 1), end + by);
		const moved = starts.slice(firstAbove(starts, end));
		if (by !== 0)
			for (let i = 0; i < moved.length; i++) (moved[i] as number) += by;
		return new Lines(text, kept.concat(made, moved));
	}
}

/** Index of the first member above a number, in a list that rises. */
function firstAbove(list: readonly number[], bound: number): number {
	let low = 0;
	let high = list.length;
	while (low < high) {
		const middle = (low + high) >> 1;
		if ((list[middle] as number) > bound) high = middle;
		else low = middle + 1;
	}
	return low;
}

/** Whole and within bounds; what is no number at all counts as the lower bound. */
function clamp(value: number, low: number, high: number): number {
	return value > low ? Math.min(Math.trunc(value), high) : low;
}
