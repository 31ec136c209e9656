// Names of sizes that are given up for what they stand for.

import { describe, expect, test } from "vitest";
import { shopFiles, tried } from "../../../tests/harness/refactoring.ts";

function piece(lines: string): string {
	return `//- main.rod
use ply from "./stock.rod"
use base from "./components.rod"

piece a {
${lines}
}
${shopFiles}`;
}

function after(lines: string): string {
	const text = tried(piece(lines)).text("inline-size");
	return text.slice(text.indexOf("piece a {\n") + 10, text.lastIndexOf("\n}"));
}

function titles(lines: string): string[] {
	return tried(piece(lines)).titles.filter((title) => title.includes("stands"));
}

test("the value stands where the name did, in brackets where it must be", () => {
	expect(
		after(`  given w = 30
  mark inner<|> = w - 2
  part b { of ply.quarter; size inner x 2 * inner }
  part c { of ply.quarter; size w - inner + 3 x 4; left at inner right from b.left }`),
	).toBe(`  given w = 30
  part b { of ply.quarter; size w - 2 x 2 * (w - 2) }
  part c { of ply.quarter; size w - (w - 2) + 3 x 4; left at w - 2 right from b.left }`);
});

test("a fraction behind a stroke is set in brackets", () => {
	expect(
		after(`  mark bit<|> = 3/8
  part b { of ply.quarter; size 3 / bit x bit * 9 }`),
	).toBe("  part b { of ply.quarter; size 3 / (3/8) x 3/8 * 9 }");
});

test("from a place where the name is used, too; comments stay", () => {
	expect(
		after(`  // As wide as the door lets through.
  given w = 30 from 20 to 34  // measured twice
  part b { of ply.quarter; size w<|> x 4 }`),
	).toBe(`  // As wide as the door lets through.
  // measured twice
  part b { of ply.quarter; size 30 x 4 }`);
	expect(
		titles(`  given w = 30 from 20 to 34
  part b { of ply.quarter; size w<|> x 4 }`),
	).toEqual(["Put `30` where `w` stands, and give up its range"]);
});

test("of a description a plain comment is left", () => {
	expect(
		after(`  /// Over all.
  given w<|> = 30
  part b { of ply.quarter; size w x 4 }`),
	).toBe(`  // Over all.
  part b { of ply.quarter; size 30 x 4 }`);
});

describe("is refused, with the reason,", () => {
	test("where a name of the value means something else", () => {
		expect(
			titles(`  given middle = 3
  mark w<|> = middle * 2
  box case {
    outside 40 x 20 x 9
    panels top, bottom, left, right of ply.three-quarter
    divider middle of ply.three-quarter w right from left.inside
  }`),
		).toEqual([
			"Put `middle * 2` where `w` stands -- `middle` means something else in a block that names `w`",
		]);
	});

	test("where it is measured or hangs on itself", () => {
		expect(
			titles(`  given w<|> = 3
  part b { of ply.quarter; size w x 4 }
  measured w 3.1`),
		).toEqual([
			"Put `3` where `w` stands -- `w` is measured: it needs its name",
		]);
		expect(titles("  mark w<|> = w + 1")).toEqual([
			"Put `w + 1` where `w` stands -- `w` hangs on itself",
		]);
	});

	test("where a line that cannot be read names it", () => {
		expect(
			titles(`  given w<|> = 3
  part b { of ply.quarter; size w y 4 }`),
		).toEqual([
			"Put `3` where `w` stands -- A line that cannot be read names `w`: mend it first",
		]);
	});

	test("where another file sets it or names it", () => {
		const source = shopFiles
			.replace("given width", "given wid<|>th")
			.replace(/^([\s\S]*)(\/\/- components[\s\S]*)$/, "$2$1");
		const users = `//- main.rod
use base from "./components.rod"
piece a {
  make foot from base { set width = 20 }
}
`;
		expect(tried(source + users).titles).toEqual([
			'Put `30` where `width` stands, and give up its range -- "./main.rod" sets `width` of `base`',
		]);
		expect(
			tried(
				source
					.replace("wid<|>th", "width")
					.replace("mark inner", "mark in<|>ner") +
					users
						.replace("set width = 20", "")
						.replace("}\n}", "}\n  mark clear = foot.inner\n}"),
			).titles,
		).toEqual([
			'Put `width - 2` where `inner` stands -- "./main.rod" names `foot.inner`',
		]);
	});
});

test("is refused where a file names it through another component", () => {
	expect(
		tried(`//- parts.rod
component base { mark inn<|>er = 3; part rail { of ply.half; size inner x 4 } }
use ply from "./stock.rod"
//- frames.rod
use base from "./parts.rod"
component frame { make foot from base { } }
//- main.rod
use frame from "./frames.rod"
piece a { make left-end from frame { }; mark clear = left-end.foot.inner }
//- stock.rod
sheet ply { variant half { thick 1/2 } }
`).titles,
	).toEqual([
		'Put `3` where `inner` stands -- "./main.rod" names `left-end.foot.inner`',
	]);
});

test("inside of a box the size of the piece is meant, whatever the box declares", () => {
	expect(
		after(`  given top = 20
  box case {
    outside 30 x to<|>p x 9
    panels top, bottom, left, right of ply.three-quarter
  }`),
	).toBe(`  box case {
    outside 30 x 20 x 9
    panels top, bottom, left, right of ply.three-quarter
  }`);
});

test("nothing where the name is no size", () => {
	expect(titles("  part b<|> { of ply.quarter; size 3 x 4 }")).toEqual([]);
});
