import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { codeBlock, codeSpan, escapeMarkdown } from "./markdown.ts";

describe("plain text", () => {
	test.each([
		["a link", "[see](http://x)", "\\[see\\]\\(http\\://x\\)"],
		["an image", "![x](y)", "\\!\\[x\\]\\(y\\)"],
		["a tag", "<b>&amp;", "\\<b\\>\\&amp;"],
		["an icon of a hover", "$(warning)", "\\$\\(warning\\)"],
		["a list", "- one", "\\- one"],
		["a numbered list", "1. one", "1\\. one"],
		["an indent that would be code", "    x", "x"],
		["a line break", "a\r\nb\nc", "a  \nb  \nc"],
		["a blank line", "a\n\nb", "a\n\nb"],
		["an underlined heading", "a\n===", "a  \n\\=\\=\\="],
		["a size", '2 1/4" x 3/4', '2 1/4" x 3/4'],
	])("%s", (_, text, markdown) => {
		expect(escapeMarkdown(text)).toBe(markdown);
	});

	test("without its backslashes it reads as before", () => {
		fc.assert(
			fc.property(fc.string(), (text) => {
				const read = escapeMarkdown(text).replace(/\\([!-/:-@[-`{-~])/g, "$1");
				expect(read).toBe(text.trim());
			}),
			{ seed: 1 },
		);
	});

	test("nothing that could act stands without a backslash", () => {
		fc.assert(
			fc.property(fc.string(), (text) => {
				const rest = escapeMarkdown(text).replace(/\\[!-/:-@[-`{-~]/g, "");
				expect(rest).not.toMatch(/[\\`*_[\]<>#!|~&$]/);
			}),
			{ seed: 2 },
		);
	});
});

/** CommonMark 0.31.2, section 6.1: the first run of as many backticks closes; one blank at both ends goes. */
function readSpan(markdown: string): string | undefined {
	const match = /^(`+)(.*?[^`])\1$/.exec(markdown);
	const inner = match?.[2];
	if (inner === undefined || inner.split(/[^`]+/).includes(match?.[1] ?? "")) {
		return undefined;
	}
	return /^ .* $/.test(inner) && inner.trim() !== ""
		? inner.slice(1, -1)
		: inner;
}

describe("code", () => {
	test.each([
		["width", "`width`"],
		["a`b", "``a`b``"],
		["`", "`` ` ``"],
		[" x ", "`  x  `"],
		["  ", "`  `"],
		["a\nb", "`a b`"],
		["", ""],
	])("%j", (text, markdown) => {
		expect(codeSpan(text)).toBe(markdown);
	});

	test("a span reads as what it was made of", () => {
		const texts = fc
			.array(fc.constantFrom("`", "``", " ", "a"), { minLength: 1 })
			.map((parts) => parts.join(""));
		fc.assert(
			fc.property(texts, (text) => {
				expect(readSpan(codeSpan(text))).toBe(text);
			}),
			{ seed: 3, numRuns: 2_000 },
		);
	});

	test("a block is not closed by what stands in it", () => {
		expect(codeBlock("a\n```\nb", "storyrod")).toBe(
			"````storyrod\na\n```\nb\n````",
		);
		expect(codeBlock("a")).toBe("```\na\n```");
	});
});
