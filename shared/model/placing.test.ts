// Places by one another: each axis by itself, circles only where there is one.

import { describe, expect, test } from "vitest";
import { built, inInches } from "../../tests/harness/built.ts";

const inside = (path: string, lines: string) => {
	const design = built(lines);
	const { min, max } = design.part(path);
	return { ids: design.ids, min: min.map(inInches), max: max.map(inInches) };
};

describe("things that are placed by one another on different axes", () => {
	test("a part stands on a box that it tells its left from", () => {
		const { ids, min } = inside(
			"foot",
			`piece chest {
  box case {
    outside 20 x 10 x 12
    panels top, bottom, left, right of ply.three-quarter
    bottom at foot.top
  }
  part foot { of oak.four-quarter; size 16 x 3; lies across facing front; left at 2 right from case.left; front at 1 back from case.front }
}`,
		);
		expect(ids).toEqual([]);
		expect(min).toEqual([2, 0, 12 - 1 - 3 / 4]);
	});

	test("two parts", () => {
		const text = `piece two {
  part one { of oak.four-quarter; size 16 x 3; left at 2 right from two.left; bottom at 4 up from floor }
  part two { of oak.four-quarter; size 10 x 3; left at 1 right from floor-mark.left; bottom at one.top }
  part floor-mark { of oak.four-quarter; size 4 x 4; front at two.back }
}`;
		expect(inside("one", text)).toMatchObject({ ids: [], min: [3, 4, 0] });
		expect(inside("two", text).min).toEqual([1, 4 + 3 / 4, 0]);
	});

	test("a plinth made from a component under a case that it is centred on", () => {
		const { ids, min } = inside(
			"plinth.rail",
			`component base {
  given width = 30
  part rail { of oak.four-quarter; size width x 4; lies across facing front }
}
piece chest {
  box case {
    outside 20 x 10 x 12
    panels top, bottom, left, right of ply.three-quarter
    bottom at plinth
    back at 1 forward from plinth.back
  }
  make plinth from base { set width = case.width - 4; centred across on case }
}`,
		);
		expect(ids).toEqual([]);
		expect(min).toEqual([2, 0, 0]);
	});

	test("the clear room of a box, and a panel by its own two faces", () => {
		const text = (line: string) => `piece chest {
  box case {
    outside 20 x 10 x 12
    panels top, bottom, left, right of ply.three-quarter
    bottom at foot
  }
  part foot { of oak.four-quarter; size 6 x 3; ${line} }
}`;
		expect(inside("foot", text("left at case.left.inside"))).toMatchObject({
			ids: [],
			min: [45 / 64, 0, 0],
		});
		expect(inside("foot", text("centred across on case.inside")).min[0]).toBe(
			(20 - 6) / 2,
		);
	});

	test("on the same axis they hang on each other", () => {
		const { ids } = built(`piece two {
  part one { of oak.four-quarter; size 16 x 3; left at two.right }
  part two { of oak.four-quarter; size 10 x 3; left at one.right }
}`);
		expect(ids).toEqual(["circle"]);
	});

	test("a line too many on an axis is told at each but the first", () => {
		const { ids } = built(`piece one {
  part base { of oak.four-quarter; size 16 x 3 }
  part one { of oak.four-quarter; size 16 x 3; left at base.left; right at base.right; centred across on base }
}`);
		expect(ids).toEqual(["placed-twice", "placed-twice"]);
	});
});
