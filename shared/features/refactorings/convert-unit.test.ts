// A piece in the other unit, to the sizes of that unit or exactly.

import { describe, expect, test } from "vitest";
import { shopFiles, tried } from "../../../tests/harness/refactoring.ts";

/** 1 in = 25.4 mm: what stands behind each size is the product. */
const bench = `//- main.rod
use ply from "./stock.rod"

piece a<|> {
  precision 1/32
  given w = 30 from 12 to 40  // over all
  given n = 3
  part b { of ply.three-quarter; size w / n x 11 17/64 }
  box d {
    outside w x 20 x 10 1/2
    bottom at 30 from floor
    panels top, bottom, left, right of ply.three-quarter
    back of ply.quarter rabbet 3/8
    join top, bottom to left, right { dado 3/16; screw #8 x 1 1/4 every 6 }
  }
}
${shopFiles}`;

test("to the millimetre that a maker would write, the largest change told", () => {
	const { titles, after } = tried(bench);
	// The top is housed 3/16 in = 4.7625 mm deep on both sides, and 5 now: 2 x (5 - 4.7625) = 0.475 mm longer.
	expect(titles).toContain(
		"Convert `a` to millimetres: nothing changes by more than 0.48 mm (`d.top`)",
	);
	expect(after("convert-unit a mm")).toEqual({
		text: `use ply from "./stock.rod"

piece a {
  unit mm
  precision 0.5
  given w = 762 from 305 to 1016  // over all
  given n = 3
  part b { of ply.three-quarter; size w / n x 286 }
  box d {
    outside w x 508 x 267
    bottom at 762 from floor
    panels top, bottom, left, right of ply.three-quarter
    back of ply.quarter rabbet 9.5
    join top, bottom to left, right { dado 5; screw #8 x 1 1/4 in every 152 }
  }
}
`,
		newFile: undefined,
		caution: "Nothing changes by more than 0.48 mm (`d.top`)",
	});
});

test("exactly: what has no short number keeps its unit, what the unit decides is written out", () => {
	const { titles, text } = tried(bench);
	expect(titles).toContain(
		"Convert `a` to millimetres exactly: 3 sizes keep their inches",
	);
	// 11 17/64 in = 286.146875 mm has six figures behind the point, 3/16 in = 4.7625 mm four.
	expect(text("convert-unit a mm exactly")).toBe(`use ply from "./stock.rod"

piece a {
  unit mm
  precision 0.5
  given w = 762 from 304.8 to 1016  // over all
  given n = 3
  part b { of ply.three-quarter; size w / n x 11 17/64 in }
  box d {
    outside w x 508 x 266.7
    bottom at 762 from floor
    panels top, bottom, left, right of ply.three-quarter
    back of ply.quarter rabbet 9.525 clearance 3/32 in
    join top, bottom to left, right { dado 3/16 in; screw #8 x 1 1/4 in every 152.4 }
  }
}
`);
});

test("to inches: fractions of the precision, thousandths where these are too coarse", () => {
	const { text } = tried(`//- main.rod
use ply from "./stock.rod"

piece a {
  unit <|>mm
  given w = 450
  part b { of ply.quarter; size w x 100; left at 0.4 right from c.left }
  part c { of ply.quarter; size w - 4.5 x 90 mm; bottom at 200 from floor }
  measured w 449.6
}
${shopFiles}`);
	// 450 / 25.4 = 17.7165 = 17 23/32; 100 = 3.937 = 3 15/16; 0.4 = 0.0157 = 0.016; 4.5 = 0.1772 = 11/64; 90 = 3.5433 = 3 17/32.
	expect(text("convert-unit a in")).toBe(`use ply from "./stock.rod"

piece a {
  unit in
  given w = 17 23/32
  part b { of ply.quarter; size w x 3 15/16; left at 0.016 right from c.left }
  part c { of ply.quarter; size w - 11/64 x 3 17/32 in; bottom at 7 7/8 from floor }
  measured w 449.6 mm
}
`);
});

test("what the rounding brings is told with it, and that words stay as they are", () => {
	const made = tried(`//- main.rod
use ply from "./stock.rod"

piece a<|> {
  box d {
    outside 20 x 20 x 10  // 20 is the height of the sill
    panels top, bottom, left, right of ply.three-quarter
    bottom at 30 from floor
    join top, bottom to left, right { dado 1/4 wide ply.three-quarter.thick + 0.004; glue }
  }
}
${shopFiles}`).after("convert-unit a mm");
	// 1/4 in = 6.35 mm, 6.5 now: the top is 0.3 mm longer; 20 in = 508 mm; 0.004 in = 0.1016 mm, 0.1 now.
	expect(made).toMatchObject({
		caution:
			"Nothing changes by more than 0.3 mm (`d.top`); numbers in comments and texts stay as they are",
	});
});

describe("a file", () => {
	const stock = `//- main.rod
unit in<|>

// Sheets
sheet ply {
  size 96 x 48
  variant three-quarter { sold-as 3/4; thick 45/64; tolerance 1/128; price 92 }
}
component c {
  part p { of ply.three-quarter; size 12 x 4 }
}
piece other {
  unit mm
  part p { of ply.three-quarter; size 300 x 100 }
}
`;

	test("is converted with all pieces that have its unit; goods keep their names", () => {
		// 45/64 in = 17.859 mm; 1/128 in = 0.198 mm; 96 in = 2438.4 mm.
		expect(tried(stock).text("convert-unit  mm")).toBe(`unit mm

// Sheets
sheet ply {
  size 2438.5 x 1219
  variant three-quarter { sold-as 3/4 in; thick 17.86; tolerance 0.2; price 92 }
}
component c {
  part p { of ply.three-quarter; size 305 x 102 }
}
piece other {
  unit mm
  part p { of ply.three-quarter; size 300 x 100 }
}
`);
	});

	test("is offered as a whole among what is done to files", () => {
		const { offers } = tried(stock, { wholeFile: true });
		expect(
			offers
				.filter(({ kind }) => kind === "source.convertUnit.storyrod")
				.map(({ title }) => title.replace(/:.*/, "")),
		).toEqual([
			"Convert the file to millimetres",
			"Convert the file to millimetres exactly",
			"Convert the file to inches",
			"Convert the file to inches exactly",
		]);
	});
});

test("a count stays one, also behind a name and in a component's given", () => {
	const { text } = tried(`//- main.rod
component shelves<|> {
  given count = 3
  given gap = 10
  mark clear = count * gap
  mark more = 2 * clear
  part p { of ply.quarter; size clear x more / count }
}
piece a {
  make s from shelves { set count = 4; set gap = 12 }
}
use ply from "./stock.rod"
${shopFiles}`);
	expect(text("convert-unit shelves mm")).toContain(`  unit mm
  given count = 3
  given gap = 254
  mark clear = count * gap
  mark more = 2 * clear
`);
});

test("a name that is both a length and a count is told", () => {
	expect(
		tried(`//- main.rod
use ply from "./stock.rod"
piece a<|> {
  given n = 3
  part b { of ply.quarter; size n x 12 in / n }
}
${shopFiles}`).titles.filter((title) => title.startsWith("Convert")),
	).toEqual([
		"Convert `a` to millimetres -- `n` is a length in one place and a number in another: give each a name of its own",
	]);
});
