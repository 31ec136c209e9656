// A table in Markdown from cells that are Markdown already.

/** A cell's line breaks become blanks, its bare strokes are escaped. Ends with a line break. */
export function markdownTable(
	head: readonly string[],
	rows: readonly (readonly string[])[],
): string {
	const line = (cells: readonly string[]): string =>
		`| ${cells.map(cell).join(" | ")} |\n`;
	return [
		line(head),
		`|${" --- |".repeat(head.length)}\n`,
		...rows.map(line),
	].join("");
}

function cell(text: string): string {
	// A stroke that has a backslash in front already is left alone.
	return text.replace(/\r\n|\r|\n/g, " ").replace(/(?<!\\)\|/g, "\\|");
}
