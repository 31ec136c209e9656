// Our own sentences with names in backticks, as Markdown: the names become code, the rest is escaped.

import { codeSpan, escapeMarkdown } from "../../text/markdown.ts";

export function prose(text: string): string {
	return text
		.split(/`([^`]*)`/)
		.map((part, index) => (index % 2 === 1 ? codeSpan(part) : escapeEnds(part)))
		.join("");
}

/** Escaping trims lines; the blanks beside a name stay. */
function escapeEnds(text: string): string {
	const before = /^\s*/.exec(text)?.[0] ?? "";
	const rest = text.slice(before.length);
	const after = /\s*$/.exec(rest)?.[0] ?? "";
	return before + escapeMarkdown(rest) + after;
}
