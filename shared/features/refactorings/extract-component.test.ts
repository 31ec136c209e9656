// Parts that become a component, and the piece that makes it.

import { describe, expect, test } from "vitest";
import { shopFiles, tried } from "../../../tests/harness/refactoring.ts";

const start = `//- main.rod
use ply from "./stock.rod"

/// A thing.
piece a {
  unit mm

  given w = 300 from 100 to 400
  part top { of ply.quarter; size w x 200; bottom at 400 from floor }
`;

test("takes what it needs from outside as givens, and is named where its parts were", () => {
	const { titles, text } = tried(`${start}
  // The two.
  <|part b { of ply.quarter; size w - 20 x top.width }
  part c { of ply.quarter; size 2 * 100 x w; left at b.right }|>  // the second

  join b to c { butt; glue }
  finish oil { on b, top }
}
${shopFiles}`);
	expect(titles).toContain(
		"Make a component of these 2, with the line that joins them",
	);
	expect(text("extract-component")).toBe(`use ply from "./stock.rod"

component assembly {
  unit mm
  given w = 300
  given top-width = 200

  // The two.
  part b { of ply.quarter; size w - 20 x top-width }
  part c { of ply.quarter; size 2 * 100 x w; left at b.right }  // the second

  join b to c { butt; glue }
}

/// A thing.
piece a {
  unit mm

  given w = 300 from 100 to 400
  part top { of ply.quarter; size w x 200; bottom at 400 from floor }

  make made from assembly {
    set w = w
    set top-width = top.width
  }

  finish oil { on made.b, top }
}
`);
});

test("in a new file takes its materials along", () => {
	const made = tried(`${start}  <|part b { of ply.quarter; size w - 20 x 40 }|>
}
${shopFiles}`).after("extract-component-in-file");
	expect(made).toEqual({
		text: `use ply from "./stock.rod"
use b-unit from "./b-unit.rod"

/// A thing.
piece a {
  unit mm

  given w = 300 from 100 to 400
  part top { of ply.quarter; size w x 200; bottom at 400 from floor }
  make made from b-unit {
    set w = w
  }
}
`,
		newFile: `use ply from "./stock.rod"
unit mm

component b-unit {
  given w = 300

  part b { of ply.quarter; size w - 20 x 40 }
}
`,
		caution: undefined,
	});
});

test("a new file is offered only where the editor can make one", () => {
	const source = `${start}  <|part b { of ply.quarter; size w - 20 x 40 }|>\n}\n${shopFiles}`;
	expect(tried(source, { canCreate: false }).titles).toEqual([
		"Make a component of this",
	]);
	expect(tried(source).titles).toEqual([
		"Make a component of this",
		'Make a component of this in a new file "./b-unit.rod"',
	]);
});

test("a new file cannot take what is declared here", () => {
	expect(
		tried(`sheet ply { variant half { thick 1/2 } }
piece a {
  <|part b { of ply.half; size 9 x 4 }|>
}
`).titles,
	).toEqual([
		"Make a component of this",
		'Make a component of this in a new file "./b-unit.rod" -- `ply` is declared in this file: a new file that this one uses cannot take it from here',
	]);
});

describe("is refused, with the reason,", () => {
	const reasons = (lines: string): string[] =>
		tried(`${start}${lines}\n}\n${shopFiles}`).titles.filter((one) =>
			one.startsWith("Make a component"),
		);

	test("where a face of something outside is needed", () => {
		expect(
			reasons("  <|part b { of ply.quarter; size 9 x 4; bottom at top.top }|>"),
		).toEqual([
			"Make a component of this -- `top.top` is outside of the selection: a component has only what is handed in, and that are sizes",
		]);
	});

	test("where a line can only stand in a piece", () => {
		expect(
			reasons(`  <|part b { of ply.quarter; size 9 x 4 }
  load 3 kg on b|>`),
		).toEqual([
			"Make a component of these 2 -- A `load` line stays in the piece: leave it out of the selection",
		]);
	});

	test("where the lines have a fault", () => {
		expect(
			reasons("  <|part b { of ply.half; size 9 x 4 }|>").join("\n"),
		).toContain("There is an error in these lines: `ply` has no `half`");
	});

	test("where a part would not stand the same: here the leg stands on veneer", () => {
		const made = tried(`${start}  <|box case {
    outside 300 x 200 x 100
    bottom at 700 from floor
    panels top, bottom, left, right of ply.three-quarter
  }
  leg l {
    against outside case.left
    set-back 2 from case.front
    layer only of ply.three-quarter 40 wide from floor up to 50 above case.bottom
  }|>
  veneer skin { on case.left; of skins.oak }
}
veneer skins { variant oak { thick 0.6 mm; size 2440 mm x 600 mm } }
${shopFiles}`).after("extract-component");
		expect(made).toBe("`l.only` would not be cut the same any more");
	});
});

test("nothing for a selection within a line, or of no parts", () => {
	const none = (lines: string): void =>
		expect(
			tried(`${start}${lines}\n}\n${shopFiles}`).titles.filter((one) =>
				one.startsWith("Make a component"),
			),
		).toEqual([]);
	none("  part b { of <|ply.quarter|>; size 9 x 4 }");
	none("  <|mark m = w - 3|>");
});
