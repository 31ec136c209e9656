// Lays out rows of cells in straight columns for a terminal or a code block.

export type Alignment = "left" | "right";

export interface TableLayout {
	/** One for each column; columns without one stand left. */
	readonly align?: readonly Alignment[];
	/** Blanks between columns, 2 by default. */
	readonly gap?: number;
	/** A line of hyphens under the first row; no by default. */
	readonly header?: boolean;
}

/**
 * Lines without blanks at their ends, each closed by `\n`; no rows give an empty text. Widths are counted in code
 * points: letters that a terminal draws double-wide are not allowed for. A line break in a cell becomes a blank.
 */
export function textTable(
	rows: readonly (readonly string[])[],
	layout: TableLayout = {},
): string {
	const { align = [], gap = 2, header = false } = layout;
	const cells = rows.map((row) =>
		row.map((cell) => cell.replace(/\r\n|\r|\n/g, " ")),
	);
	const widths: number[] = [];
	for (const row of cells) {
		row.forEach((cell, column) => {
			widths[column] = Math.max(widths[column] ?? 0, codePoints(cell));
		});
	}
	const rule = widths.map((width) => "-".repeat(width));
	const all = header && cells.length > 0 ? cells.toSpliced(1, 0, rule) : cells;
	return all
		.map((row) => {
			const line = row
				.map((cell, column) => {
					const blanks = " ".repeat((widths[column] ?? 0) - codePoints(cell));
					return align[column] === "right" ? blanks + cell : cell + blanks;
				})
				.join(" ".repeat(gap));
			return `${line.trimEnd()}\n`;
		})
		.join("");
}

function codePoints(text: string): number {
	let count = 0;
	for (const _ of text) count += 1;
	return count;
}
