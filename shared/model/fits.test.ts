// The ranges of the fits against what a shop at its default tolerances can hold.

import { describe, expect, test } from "vitest";
import { built } from "../../tests/harness/built.ts";
import { numberOf } from "./size.ts";
import { halfRanges } from "./stack-up.ts";

describe("a back at the default clearance and the default tolerances of the shop", () => {
	// 0.72 in falls between the marks of the rule, so that both opening and back are rounded.
	const cases = ["in", "mm"].flatMap((unit) =>
		["rabbet", "groove", "inset"].map((how) => [unit, how] as const),
	);
	test.each(cases)("goes in even at worst: %s, %s", (unit, how) => {
		const mm = unit === "mm";
		const { ids, piece } = built(`sheet odd {
  species "hardwood plywood"
  size 96 x 48
  variant three-quarter { sold-as 3/4; thick 0.72 }
}
piece rack {
  unit ${unit}
  box case {
    outside ${mm ? "800 x 500 x 250" : "30 x 20 x 10"}
    panels top, bottom, left, right of odd.three-quarter
    back of ply.quarter ${how} ${mm ? "9.5" : "3/8"}
  }
}`);
		expect(ids).toEqual([]);
		const fits = piece.joints
			.filter(({ member }) => member.path === "case.back")
			.flatMap((joint) => joint.fits)
			.filter(({ what }) => /^(width|height) of the back/.test(what));
		expect(fits).toHaveLength(2);
		for (const { gap, low, high } of fits) {
			const { worst } = halfRanges(gap.feeds);
			expect(numberOf(gap) - worst).toBeGreaterThanOrEqual(
				low.toNumber() - 1e-9,
			);
			expect(numberOf(gap) + worst).toBeLessThanOrEqual(high.toNumber() + 1e-9);
		}
	});
});
