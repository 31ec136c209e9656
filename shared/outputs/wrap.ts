// Breaks running text into lines for a terminal.

/**
 * Lines of at most `width` code points, broken at blanks; a word that is longer stands alone on a line of its own. The
 * text's own line breaks count as blanks. Empty text gives no line.
 */
export function wrap(text: string, width: number): readonly string[] {
	const lines: string[] = [];
	let line = "";
	let length = 0;
	for (const word of text.split(/\s+/)) {
		if (word === "") continue;
		const size = [...word].length;
		if (line !== "" && length + 1 + size > width) {
			lines.push(line);
			line = "";
			length = 0;
		}
		line = line === "" ? word : `${line} ${word}`;
		length += line === word ? size : size + 1;
	}
	if (line !== "") lines.push(line);
	return lines;
}
