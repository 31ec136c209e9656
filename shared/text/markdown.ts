// Puts text from a stranger's file into Markdown so that it reads as itself: no link, image, tag or list comes of it.

/**
 * All ASCII punctuation that can begin or end something in CommonMark or in the common extensions (tables, strike
 * through, bare addresses, icons in hovers). A backslash before ASCII punctuation is always taken away again
 * (CommonMark 0.31.2, section 2.4).
 */
const special = /[\\`*_{}[\]()<>#+\-.!|~&$:@=]/g;

/** Plain text for a paragraph. Line breaks stay, blank lines part paragraphs, indents go (they would make code of it). */
export function escapeMarkdown(text: string): string {
	return lines(text)
		.map((line) => line.trim().replace(special, "\\$&"))
		.join("\n")
		.replace(/([^\n])\n(?=[^\n])/g, "$1  \n");
}

/** Text in backticks, on one line, whatever backticks it holds; empty text gives nothing. */
export function codeSpan(text: string): string {
	const line = lines(text).join(" ");
	if (line === "") return "";
	const fence = "`".repeat(longestRun(line) + 1);
	// One blank at each end is taken away again, and keeps fence and backticks apart (CommonMark 0.31.2, section 6.1).
	const pad =
		/^`|`$/.test(line) || (/^ .* $/.test(line) && line.trim() !== "")
			? " "
			: "";
	return fence + pad + line + pad + fence;
}

/** A fenced block that no line of the text can close. */
export function codeBlock(text: string, language = ""): string {
	const fence = "`".repeat(Math.max(3, longestRun(text) + 1));
	return `${fence}${language}\n${lines(text).join("\n")}\n${fence}`;
}

function lines(text: string): string[] {
	return text.split(/\r\n|\r|\n/);
}

function longestRun(text: string): number {
	const runs = text.match(/`+/g) ?? [];
	return runs.reduce((longest, run) => Math.max(longest, run.length), 0);
}
