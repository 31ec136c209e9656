// What pictures share: text that is safe in SVG, numbers of few digits, and how wide a text is taken to be.

/** XML 1.0 has no place for control characters, not even as references. */
export function escapeXml(text: string): string {
	return text
		.toWellFormed()
		.replace(/[\p{Cc}\ufffe\uffff]/gu, " ")
		.replaceAll("&", "&amp;")
		.replaceAll("<", "&lt;")
		.replaceAll(">", "&gt;")
		.replaceAll('"', "&quot;");
}

/** px with one digit behind the point, or none. */
export function px(value: number): string {
	const text = value.toFixed(1);
	return text.endsWith(".0") ? text.slice(0, -2) : text;
}

/** Of a font size, for the widest common sans-serif fonts, so that a text is rather taken too wide than too narrow. */
const widths: readonly (readonly [RegExp, number])[] = [
	[/[ijl.,:;'|!]/, 0.36],
	[/[ ft()[\]/r-]/, 0.43],
	[/[mwMW%@\u2014]/, 0.99],
	[/[A-Z&]/, 0.75],
	[/[0-9a-z+~<>=x#°_?$*"]/, 0.65],
	[/[ -\u02ff\u2010-\u203a]/, 0.8],
];

export function textWidth(text: string, size: number, bold = false): number {
	let sum = 0;
	for (const letter of text)
		sum += widths.find(([kind]) => kind.test(letter))?.[1] ?? 1.05;
	return sum * size * (bold ? 1.1 : 1);
}

/** Lines no wider than `width` px; a word that is wider is broken. */
export function wrapToWidth(
	text: string,
	width: number,
	size: number,
	bold = false,
): readonly string[] {
	const lines: string[] = [];
	let line = "";
	const fits = (one: string): boolean => textWidth(one, size, bold) <= width;
	for (const word of text.split(" ")) {
		const longer = line === "" ? word : `${line} ${word}`;
		if (fits(longer)) {
			line = longer;
			continue;
		}
		if (line !== "") lines.push(line);
		line = "";
		for (const letter of word) {
			if (line !== "" && !fits(line + letter)) {
				lines.push(line);
				line = "";
			}
			line += letter;
		}
	}
	if (line !== "") lines.push(line);
	return lines;
}
