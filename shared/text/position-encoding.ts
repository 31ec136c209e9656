// Positions as editors other than those of the browser's kind count them: in bytes of UTF-8, or in whole characters.

import type { LineIndex, Position } from "./line-index.ts";

/** What the `character` of a position counts. */
export type PositionEncoding = "utf-8" | "utf-16" | "utf-32";

/** The same lines, their positions counted in another unit; a position inside a character means its start. */
export function encodedLines(
	text: string,
	lines: LineIndex,
	encoding: PositionEncoding,
): LineIndex {
	if (encoding === "utf-16") return lines;
	const unitsOf = encoding === "utf-8" ? bytesOf : () => 1;
	return {
		lineCount: lines.lineCount,
		lineStart: (line) => lines.lineStart(line),
		lineEnd: (line) => lines.lineEnd(line),
		positionAt(offset): Position {
			const { line, character } = lines.positionAt(offset);
			const end = lines.lineStart(line) + character;
			let units = 0;
			for (let at = lines.lineStart(line); at < end; ) {
				const code = text.codePointAt(at) as number;
				const next = at + lengthOf(code);
				if (next > end) break;
				units += unitsOf(code);
				at = next;
			}
			return { line, character: units };
		},
		offsetAt({ line, character }): number {
			if (line < 0 || line >= lines.lineCount)
				return lines.offsetAt({ line, character });
			const end = lines.lineEnd(line);
			let at = lines.lineStart(line);
			for (let left = character; at < end; ) {
				const code = text.codePointAt(at) as number;
				left -= unitsOf(code);
				// Also for what is no number.
				if (!(left >= 0)) break;
				at += lengthOf(code);
			}
			return at;
		},
		edited: (now, start, end) =>
			encodedLines(now, lines.edited(now, start, end), encoding),
	};
}

/** UTF-16 code units of a character. */
function lengthOf(code: number): number {
	return code > 0xffff ? 2 : 1;
}

/** A lone half of a pair counts like the replacement character that stands for it: three bytes. */
function bytesOf(code: number): number {
	if (code < 0x80) return 1;
	if (code < 0x800) return 2;
	return code > 0xffff ? 4 : 3;
}
