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
}

const lineFeed = 10;
const carriageReturn = 13;

/** Lines end with `\n`, `\r\n` or a lone `\r`. */
export function indexLines(text: string): LineIndex {
	const starts = [0];
	const ends: number[] = [];
	for (let i = 0; i < text.length; i += 1) {
		const code = text.charCodeAt(i);
		if (code !== lineFeed && code !== carriageReturn) continue;
		ends.push(i);
		if (code === carriageReturn && text.charCodeAt(i + 1) === lineFeed) i += 1;
		starts.push(i + 1);
	}
	ends.push(text.length);

	const lineCount = starts.length;
	// Both lists hold a number for every line; the fallbacks only satisfy the types.
	const startOf = (line: number): number => starts[line] ?? 0;
	const endOf = (line: number): number => ends[line] ?? text.length;
	const clampLine = (line: number): number => clamp(line, 0, lineCount - 1);

	return {
		lineCount,
		lineStart: (line) => startOf(clampLine(line)),
		lineEnd: (line) => endOf(clampLine(line)),
		positionAt(offset) {
			const at = clamp(offset, 0, text.length);
			let low = 0;
			let high = lineCount - 1;
			while (low < high) {
				const middle = (low + high + 1) >> 1;
				if (startOf(middle) <= at) low = middle;
				else high = middle - 1;
			}
			return { line: low, character: Math.min(at, endOf(low)) - startOf(low) };
		},
		offsetAt({ line, character }) {
			if (line < 0) return 0;
			if (line >= lineCount) return text.length;
			const on = clampLine(line);
			const start = startOf(on);
			return clamp(start + clamp(character, 0, text.length), start, endOf(on));
		},
	};
}

/** Whole and within bounds; what is no number at all counts as the lower bound. */
function clamp(value: number, low: number, high: number): number {
	return value > low ? Math.min(Math.trunc(value), high) : low;
}
