// Offsets to lines and back, whatever is asked.

import fc from "fast-check";
import { expect, test } from "vitest";
import { indexLines } from "./line-index.ts";

test("all three line breaks, and characters outside the basic plane", () => {
	const text = "a\r\n🪵b\n\rc";
	const index = indexLines(text);
	expect(index.lineCount).toBe(4);
	const lines = Array.from({ length: index.lineCount }, (_, line) =>
		text.slice(index.lineStart(line), index.lineEnd(line)),
	);
	expect(lines).toEqual(["a", "🪵b", "", "c"]);
	// The log takes two UTF-16 code units.
	expect(index.positionAt(text.indexOf("b"))).toEqual({
		line: 1,
		character: 2,
	});
});

test("an offset between carriage return and line feed is the end of its line", () => {
	expect(indexLines("ab\r\nc").positionAt(3)).toEqual({
		line: 0,
		character: 2,
	});
});

test("an empty text has one empty line", () => {
	const index = indexLines("");
	expect(index.lineCount).toBe(1);
	expect(index.positionAt(7)).toEqual({ line: 0, character: 0 });
	expect(index.offsetAt({ line: 3, character: 3 })).toBe(0);
});

test("what is no place at all answers with one inside the text", () => {
	const index = indexLines("ab\ncd");
	expect(index.positionAt(Number.NaN)).toEqual({ line: 0, character: 0 });
	expect(index.positionAt(Number.POSITIVE_INFINITY)).toEqual({
		line: 1,
		character: 2,
	});
	expect(index.offsetAt({ line: Number.NaN, character: 1 })).toBe(1);
	expect(index.offsetAt({ line: 0.5, character: 1.5 })).toBe(1);
	expect(index.lineStart(-1)).toBe(0);
	expect(index.lineEnd(9)).toBe(5);
});

test("the index of an edited text is the one of the text", () => {
	const text = fc
		.array(fc.constantFrom("a", "\r", "\n", "\r\n", "🪵"), { maxLength: 12 })
		.map((bits) => bits.join(""));
	fc.assert(
		fc.property(text, text, fc.nat(20), fc.nat(20), (old, put, a, b) => {
			const [start, end] = [Math.min(a, b), Math.max(a, b)].map((at) =>
				Math.min(at, old.length),
			) as [number, number];
			const now = old.slice(0, start) + put + old.slice(end);
			const edited = indexLines(old).edited(now, start, end);
			const fresh = indexLines(now);
			expect(edited.lineCount).toBe(fresh.lineCount);
			for (let at = 0; at <= now.length; at++)
				expect(edited.positionAt(at)).toEqual(fresh.positionAt(at));
		}),
		{ numRuns: 500 },
	);
});
