// Lines in the order of the language, with their comments.

import { expect, test } from "vitest";
import { tried } from "../../../tests/harness/refactoring.ts";

test("lines of a block, each with what is said of it", () => {
	const { titles, text } = tried(`piece a {
  part b {<|>
    size 12 x 3 // the size
    // What it is cut from:
    // the last sheet.
    of ply.quarter; lies across facing front
  }
}
`);
	expect(titles).toContain("Sort the lines of `b`");
	expect(text("sort-lines")).toBe(`piece a {
  part b {
    // What it is cut from:
    // the last sheet.
    of ply.quarter
    size 12 x 3  // the size
    lies across facing front
  }
}
`);
});

test("materials by name, but none over a heading", () => {
	expect(
		tried(`unit in<|>

// ---- Sheets ----

/// By the inch.
sheet ply { variant half { thick 1/2 } }

sheet birch { variant nine { thick 9 mm } }

// ---- Boards ----

board oak { variant one { planed 3/4 } }
board ash { variant one { planed 3/4 } }
`).text("sort-lines"),
	).toBe(`unit in

// ---- Sheets ----

sheet birch { variant nine { thick 9 mm } }

/// By the inch.
sheet ply { variant half { thick 1/2 } }

// ---- Boards ----

board ash { variant one { planed 3/4 } }
board oak { variant one { planed 3/4 } }
`);
});

test("lines of one kind keep their order: layers stand from the inside outward", () => {
	expect(
		tried(`use ply from "./stock.rod"
piece a {
  part seat { of ply.half; size 20 x 20; top at 18 from floor }
  leg l {<|>
    layer inner of ply.half 2 wide from floor up to seat
    heavy 1/8
    layer outer of ply.half 2 wide from floor up to seat
    against under seat
  }
}
//- stock.rod
sheet ply { variant half { thick 1/2 } }
`).text("sort-lines"),
	).toContain(`  leg l {
    against under seat
    layer inner of ply.half 2 wide from floor up to seat
    layer outer of ply.half 2 wide from floor up to seat
    heavy 1/8
  }
`);
});

test("nothing where the order says something, or is right already", () => {
	const none = (text: string): void =>
		expect(tried(text).titles.filter((one) => one.startsWith("Sort"))).toEqual(
			[],
		);
	none(
		"piece a {\n  finish f {<|> sand 180 before; coats 2 of oil; sand 320 between }\n}\n",
	);
	none("piece a {\n  part b {<|> of ply.half; size 12 x 3 }\n}\n");
});

test("refuses where a line cannot be read", () => {
	expect(
		tried(
			"piece a {\n  part b {<|>\n    size 12 x 3\n    off ply\n    of ply.half\n  }\n}\n",
		).titles,
	).toContain(
		"Sort the lines of `b` -- A line in this block cannot be read: mend it first",
	);
});
