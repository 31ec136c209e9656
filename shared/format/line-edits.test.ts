// Edits by lines: what they give when applied, and how little they touch.

import fc from "fast-check";
import { expect, test } from "vitest";
import { applyEdits } from "../text/edits.ts";
import { lineEdits } from "./line-edits.ts";

test("each changed line is an edit of its own, as narrow as it can be", () => {
	expect(lineEdits("a\n  b\nc\nd  e\n", "a\nb\nc\nd e\n")).toEqual([
		{ start: 2, end: 4, text: "" },
		{ start: 10, end: 11, text: "" },
	]);
});

test("no difference, no edit", () => {
	expect(lineEdits("a\r\nb", "a\r\nb")).toEqual([]);
});

test("applied to the first text they give the second", () => {
	const line = fc.constantFrom("a", "b", "  a", "", "unit mm", "x  y");
	const text = fc
		.array(fc.tuple(line, fc.constantFrom("\n", "\r\n", "\n")), {
			maxLength: 30,
		})
		.map((lines) => lines.map((pair) => pair.join("")).join(""));
	fc.assert(
		fc.property(text, text, (before, after) => {
			const edits = lineEdits(before, after);
			expect(applyEdits(before, edits)).toBe(after);
		}),
		{ numRuns: 2000 },
	);
});

test("texts that differ in thousands of lines are replaced in one edit, in good time", () => {
	const before = Array.from({ length: 20_000 }, (_, i) => `  a ${i}\n`).join(
		"",
	);
	const after = `${before.replaceAll("  a", "b")}more\n`;
	const edits = lineEdits(before, after);
	expect(edits.length).toBe(1);
	expect(applyEdits(before, edits)).toBe(after);
});
