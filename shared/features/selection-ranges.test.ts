// What "select more" takes, step by step.

import { expect, test } from "vitest";
import { parse } from "../../grammar/index.ts";
import { readFixture } from "../../tests/harness/fixture.ts";
import { selectionRanges } from "./selection-ranges.ts";

/** Line ends and the blanks around them as `/`. */
function steps(source: string): string[] {
	const { file, offset } = readFixture(source).cursor;
	return selectionRanges(file.text, parse(file.text).tree, offset).map(
		({ start, end }) => file.text.slice(start, end).replace(/\s*\n\s*/g, "/"),
	);
}

test("a word, its slot, its line, its block, the box, the piece with its description, the file", () => {
	expect(
		steps(`unit in
/// Low.
piece a {
  box case {
    divider middle of ply.half 2 1/4 right from ca<|>se.left
  }
}
`),
	).toEqual([
		"case",
		"case.left",
		"2 1/4 right from case.left",
		"divider middle of ply.half 2 1/4 right from case.left",
		"/divider middle of ply.half 2 1/4 right from case.left/",
		"{/divider middle of ply.half 2 1/4 right from case.left/}",
		"box case {/divider middle of ply.half 2 1/4 right from case.left/}",
		"/box case {/divider middle of ply.half 2 1/4 right from case.left/}/",
		"{/box case {/divider middle of ply.half 2 1/4 right from case.left/}/}",
		"piece a {/box case {/divider middle of ply.half 2 1/4 right from case.left/}/}",
		"/// Low./piece a {/box case {/divider middle of ply.half 2 1/4 right from case.left/}/}",
		"unit in//// Low./piece a {/box case {/divider middle of ply.half 2 1/4 right from case.left/}/}/",
	]);
});

test("a part of an expression, its bracket, the sizes of the line", () => {
	expect(steps("outside (wid<|>th - 2) x 14 x 15")).toEqual([
		"width",
		"width - 2",
		"(width - 2)",
		"(width - 2) x 14 x 15",
		"outside (width - 2) x 14 x 15",
	]);
});

test("a comment, then what it stands in", () => {
	expect(steps("piece a {\n  unit in // wh<|>y\n}")).toEqual([
		"// why",
		"/unit in // why/",
		"{/unit in // why/}",
		"piece a {/unit in // why/}",
	]);
});

test("a line of a comment, then all its lines", () => {
	expect(steps("// on<|>e\n// two\nunit in\n")).toEqual([
		"// one",
		"// one/// two",
		"// one/// two/unit in/",
	]);
});
