import { expect, test } from "vitest";
import { applyEdits, overlap, type TextEdit } from "./edits.ts";

function edit(start: number, end: number, text: string): TextEdit {
	return { start, end, text };
}

test("edits are told in the offsets of the old text, in any order", () => {
	const edits = [edit(4, 7, "trim"), edit(0, 3, "shelf"), edit(7, 7, "s")];
	expect(applyEdits("leg cap", edits)).toBe("shelf trims");
	expect(edits[0]?.start).toBe(4);
});

test("insertions at one place keep their order and come before a replacement", () => {
	const edits = [edit(1, 2, "X"), edit(1, 1, "1"), edit(1, 1, "2")];
	expect(applyEdits("abc", edits)).toBe("a12Xc");
});

test("edits that touch are none that overlap", () => {
	const edits = [edit(0, 1, "x"), edit(1, 2, "y")];
	expect(overlap(edits)).toBeUndefined();
	expect(applyEdits("ab", edits)).toBe("xy");
});

test("an overlap is named and refused", () => {
	const first = edit(0, 2, "x");
	const second = edit(1, 3, "y");
	expect(overlap([second, first])).toEqual([first, second]);
	expect(() => applyEdits("abc", [first, second])).toThrow(RangeError);
});

test.each([
	["behind the end", edit(2, 4, "")],
	["before the start", edit(-1, 0, "")],
	["backwards", edit(2, 1, "")],
	["at no number", edit(Number.NaN, 1, "")],
])("an edit %s is refused", (_, bad) => {
	expect(() => applyEdits("abc", [bad])).toThrow(RangeError);
});
