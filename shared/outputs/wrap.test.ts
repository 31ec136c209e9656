import { expect, test } from "vitest";
import { wrap } from "./wrap.ts";

test("lines break at blanks and never grow beyond the width", () => {
	expect(wrap("cut to fit after top and bottom", 12)).toEqual([
		"cut to fit",
		"after top",
		"and bottom",
	]);
	expect(wrap("twelve chars", 12)).toEqual(["twelve chars"]);
});

test("a long word stands alone, line breaks are blanks, nothing gives nothing", () => {
	expect(wrap("a case.left.inner b", 6)).toEqual(["a", "case.left.inner", "b"]);
	expect(wrap("one\r\ntwo\n", 20)).toEqual(["one two"]);
	expect(wrap(" \n ", 20)).toEqual([]);
});

test("width counts letters, not code units", () => {
	expect(wrap("🪚🪚🪚 🪚🪚", 6)).toEqual(["🪚🪚🪚 🪚🪚"]);
});
