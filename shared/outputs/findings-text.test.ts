import { describe, expect, test } from "vitest";
import type { Finding } from "../model/types.ts";
import { placeFindings, type Texts } from "./findings.ts";
import { findingsSummary, findingsText } from "./findings-text.ts";

const uri = "file:///a.rod";

function textsOf(text: string): Texts {
	return { nameOf: () => "a.rod", textOf: () => text };
}

function finding(
	text: string,
	marked: string,
	more: Partial<Finding> = {},
): Finding {
	const start = text.indexOf(marked);
	return {
		id: "gap",
		severity: "warning",
		origin: { uri, span: { start, end: start + marked.length } },
		message: "Too wide",
		related: [],
		fixes: [],
		...more,
	};
}

function told(text: string, findings: readonly Finding[], columns = 100) {
	const texts = textsOf(text);
	return findingsText(placeFindings(findings, texts), texts, { columns });
}

describe("the mark stands under the place", () => {
	test("with all there is to tell", () => {
		const text = "piece a {\n  given width = 20\n}\n";
		const one = finding(text, "width", {
			related: [
				{ origin: { uri, span: { start: 0, end: 5 } }, message: "In here" },
			],
			fixes: [{ title: "Take it away", edits: [] }],
		});
		expect(told(text, [one])).toBe(
			[
				"a.rod:2:9 warning gap Too wide",
				"  2 |   given width = 20",
				"    |         ^^^^^",
				"  see  a.rod:1:1 In here",
				"  mend Take it away",
				"",
			].join("\n"),
		);
	});

	test("behind tabs and letters of two code units", () => {
		const text = '\t"🪚🪚" width\n';
		const [, line, mark] = told(text, [finding(text, "width")]).split("\n");
		expect(line).toBe('  1 | \t"🪚🪚" width');
		// The tab stays a tab; each saw is one letter.
		expect(mark).toBe(`    | \t${" ".repeat(5)}^^^^^`);
	});

	test("on the first line of a place of many", () => {
		const text = "join a to b {\n  glue\n}\n";
		const [, line, mark] = told(text, [finding(text, text.trim())]).split("\n");
		expect(line).toBe("  1 | join a to b {");
		expect(mark).toBe("    | ^^^^^^^^^^^^^");
	});

	test("at the end of a line and of the text", () => {
		const text = "given width =";
		const end = finding(text, "=", {
			origin: { uri, span: { start: text.length, end: text.length } },
		});
		expect(told(text, [end])).toContain(`    | ${" ".repeat(13)}^`);
	});

	test("in a long line that is cropped round it", () => {
		const text = `${"x ".repeat(500)}HERE ${"y ".repeat(500)}`;
		const [, line = "", mark = ""] = told(
			text,
			[finding(text, "HERE")],
			60,
		).split("\n");
		expect(line.length).toBeLessThanOrEqual(60);
		expect(line.slice(mark.indexOf("^"), mark.lastIndexOf("^") + 1)).toBe(
			"HERE",
		);
	});
});

test("findings are told in order and each once", () => {
	const text = "one two\nthree\n";
	const texts = textsOf(text);
	const placed = placeFindings(
		[
			finding(text, "three"),
			finding(text, "two", { severity: "hint" }),
			finding(text, "two", { severity: "error", id: "other" }),
			finding(text, "three"),
		],
		texts,
	);
	expect(
		placed.map(({ finding: { id }, place }) => `${place.line} ${id}`),
	).toEqual(["1 other", "1 gap", "2 gap"]);
	expect(findingsSummary(placed)).toBe("1 error, 1 warning, 1 hint");
	expect(findingsSummary([])).toBe("nothing to tell");
});

test("a file that cannot be read any more still has its findings", () => {
	const texts: Texts = { nameOf: () => "a.rod", textOf: () => undefined };
	const placed = placeFindings([finding("x", "x")], texts);
	expect(findingsText(placed, texts)).toBe("a.rod:1:1 warning gap Too wide\n");
});
