// Sizes that are written more than once, and the given that they become.

import { describe, expect, test } from "vitest";
import { shopFiles, tried } from "../../../tests/harness/refactoring.ts";

function piece(lines: string): string {
	return `//- main.rod
use ply, oak from "./stock.rod"

piece a {
${lines}
}
${shopFiles}`;
}

/** The lines of the piece after. */
function after(lines: string): string {
	const text = tried(piece(lines)).text("number-to-given");
	return text.slice(text.indexOf("piece a {\n") + 10, text.lastIndexOf("\n}"));
}

test("all that measure the same become one given, behind the others", () => {
	expect(
		after(`  given w = 30  // over the sides
  part b { of ply.quarter; size w x 1<|>2 }
  part c { of ply.quarter; size w x 12; left at 12 right from b.left }`),
	).toBe(`  given w = 30  // over the sides
  given width = 12
  part b { of ply.quarter; size w x width }
  part c { of ply.quarter; size w x width; left at width right from b.left }`);
});

test("the spelling is kept, other spellings of the same are found", () => {
	expect(
		after(`  unit in
  part b { of ply.quarter; size 1<|>2 3/4 x 4 }
  part c { of ply.quarter; size 12.75 x 5 }`),
	).toBe(`  unit in
  given length = 12 3/4
  part b { of ply.quarter; size length x 4 }
  part c { of ply.quarter; size length x 5 }`);
});

test("what counts is no length", () => {
	expect(
		after(`  part b { of ply.quarter; size 2 * 7 x 2<|> }
  part c { of ply.quarter; size 3 * 7 x 2 }`),
	).toBe(`  given width = 2
  part b { of ply.quarter; size 2 * 7 x width }
  part c { of ply.quarter; size 3 * 7 x width }`);
	expect(
		tried(
			piece(`  part b { of ply.quarter; size 2<|> * 7 x 2 }
  part c { of ply.quarter; size 2 * 7 x 2 }`),
		).titles.filter((title) => title.includes("given")),
	).toEqual([]);
});

test("an angle is no length of the same number", () => {
	expect(
		after(`  part b { of oak.six-quarter; size 12 x 3; end left { angled 1<|>2 deg } }
  part c { of oak.six-quarter; size 12 x 3; end left { angled 12 deg } }`),
	).toBe(`  given slant = 12 deg
  part b { of oak.six-quarter; size 12 x 3; end left { angled slant } }
  part c { of oak.six-quarter; size 12 x 3; end left { angled slant } }`);
});

describe("is not offered for", () => {
	const none = (lines: string): void =>
		expect(
			tried(piece(lines)).titles.filter((title) => title.includes("given")),
		).toEqual([]);

	test("a size that stands once", () =>
		none("  part b { of ply.quarter; size 1<|>2 x 4 }"));

	test("a size in another piece", () =>
		none(`  part b { of ply.quarter; size 1<|>2 x 4 }
}
piece other {
  part b { of ply.quarter; size 12 x 4 }`));

	test("the size of a screw, which is bought by it", () =>
		none(`  part b { of ply.quarter; size 9 x 4 }
  part c { of ply.quarter; size 9 x 4; bottom at b.top }
  join b to c { screw #8 x 1<|>; }
  join c to b { screw #8 x 1 }`));

	test("a given of the same size", () =>
		none(`  given w = 1<|>2 from 10 to 14
  given d = 12
  part b { of ply.quarter; size w x d }`));
});

test("the name is free, and says whose it is where the plain one is taken", () => {
	expect(
		tried(
			piece(`  given length = 40
  part b { of ply.quarter; size 1<|>2 x 4 }
  part c { of ply.quarter; size 12 x length }`),
		).titles[0],
	).toBe("Make `12` a given `b-length`, in 2 places");
});

test("works beside a line that cannot be read", () => {
	expect(
		after(`  part b { of ply.quarter; size 1<|>2 x 4 }
  prat x { of }
  part c { of ply.quarter; size 12 x 5 }`),
	).toContain(
		"  given length = 12\n  part b { of ply.quarter; size length x 4 }",
	);
});
