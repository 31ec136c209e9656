// Differences as `diff -u` writes them. The law is tried by a reader of that format that knows nothing of how it was made.

import fc from "fast-check";
import { expect, test } from "vitest";
import { lineEdits } from "../format/line-edits.ts";
import { unifiedDiff } from "./unified-diff.ts";

const names = { before: "a.rod", after: "a.rod, laid out" };

function diff(before: string, after: string): string {
	return unifiedDiff(before, after, lineEdits(before, after), names);
}

test("a changed line with three lines around it", () => {
	const lines = ["1", "2", "3", "4", "x", "6", "7", "8", "9", ""];
	const before = lines.join("\n");
	expect(diff(before, before.replace("x", "y"))).toBe(
		"--- a.rod\n+++ a.rod, laid out\n@@ -2,7 +2,7 @@\n 2\n 3\n 4\n-x\n+y\n 6\n 7\n 8\n",
	);
});

test("lines that come, that go, and a last line without an end", () => {
	expect(diff("a\nb\n", "a\nnew\nb\n")).toContain(
		"@@ -1,2 +1,3 @@\n a\n+new\n b\n",
	);
	expect(diff("a\nold\nb\n", "a\nb\n")).toContain(
		"@@ -1,3 +1,2 @@\n a\n-old\n b\n",
	);
	expect(diff("a", "a\n")).toContain(
		"@@ -1 +1 @@\n-a\n\\ No newline at end of file\n+a\n",
	);
	expect(diff("", "a\n")).toContain("@@ -0,0 +1 @@\n+a\n");
});

test("nothing for equal texts", () => {
	expect(diff("a\n", "a\n")).toBe("");
});

/** Applies the hunks; throws where a line that must be there is not. */
function patched(before: string, patch: string): string {
	const old = before.match(/[^\n]*\n|[^\n]+$/g) ?? [];
	const out: string[] = [];
	let at = 0;
	const lines = patch.split("\n").slice(2, -1);
	for (let index = 0; index < lines.length; index++) {
		const line = lines[index] as string;
		const header = /^@@ -(\d+)(?:,(\d+))? \+\d+(?:,\d+)? @@$/.exec(line);
		if (header) {
			const start = Number(header[1]) - (header[2] === "0" ? 0 : 1);
			while (at < start) out.push(old[at++] as string);
			continue;
		}
		const isLast = lines[index + 1]?.startsWith("\\");
		const content = line.slice(1) + (isLast ? "" : "\n");
		if (line.startsWith("+")) out.push(content);
		else if (line.startsWith(" ") || line.startsWith("-")) {
			if (old[at] !== content) throw new Error(`Not there: ${line}`);
			at++;
			if (line.startsWith(" ")) out.push(content);
		}
	}
	return [...out, ...old.slice(at)].join("");
}

test("applied to the old text it gives the new one", () => {
	const text = fc
		.array(fc.constantFrom("a", "b", "c", "", "  a", "\r"), { maxLength: 30 })
		.chain((lines) =>
			fc.constantFrom(lines.join("\n"), `${lines.join("\n")}\n`),
		);
	fc.assert(
		fc.property(text, text, (before, after) => {
			const patch = diff(before, after);
			expect(patched(before, patch)).toBe(after);
		}),
		{ numRuns: 400 },
	);
});
