import { describe, expect, test } from "vitest";
import {
	asItMeasures,
	inches,
	millimetres,
} from "../../tests/harness/piece.ts";
import { Rational } from "../units/rational.ts";
import {
	exactText,
	explainLine,
	explainTree,
	movers,
	shownText,
} from "./explain.ts";
import {
	fact,
	minus,
	named,
	over,
	plus,
	type Size,
	stated,
	times,
	zero,
} from "./size.ts";
import type { Display } from "./types.ts";

const inInches: Display = { unit: "in", precision: Rational.of(1, 32) };
const inMillimetres: Display = { unit: "mm", precision: Rational.of(1, 2) };

const width = named("width", inches("54"));
const ply = asItMeasures("ply.three-quarter", inches("45/64"), 0.4);

describe("one line", () => {
	test("a board between two panels", () => {
		// 54 - 2 x 45/64 = 54 - 90/64 = 52 38/64 = 52 19/32
		const length = minus(width, times(2, ply));
		expect(explainLine(length, inInches)).toBe(
			"52 19/32 = width 54 - 2 x 45/64 (ply.three-quarter as it measures)",
		);
	});

	test("equal terms are taken together, what cancels is left out", () => {
		const left = plus(zero, ply);
		const right = minus(plus(zero, width), ply);
		expect(explainLine(minus(right, left), inInches)).toBe(
			"52 19/32 = width 54 - 2 x 45/64 (ply.three-quarter as it measures)",
		);
		expect(explainLine(minus(plus(width, ply), width), inInches)).toBe(
			"45/64 (~23/32) = 45/64 (ply.three-quarter as it measures)",
		);
	});

	test("brackets only where they are needed", () => {
		const bays = over(minus(width, times(4, ply)), 3);
		// (54 - 4 x 45/64) / 3 = (54 - 2 13/16) / 3 = 51 3/16 / 3 = 17 1/16
		expect(explainLine(bays, inInches)).toBe(
			"17 1/16 = (width 54 - 4 x 45/64 (ply.three-quarter as it measures)) / 3",
		);
		const half = times(2, minus(width, inches("1")));
		expect(explainLine(half, inInches)).toBe("106 = 2 x (width 54 - 1)");
		const turned = minus(inches("60"), minus(width, inches("1")));
		expect(explainLine(turned, inInches)).toBe("7 = 60 - width 54 + 1");
		const twice = over(width, named("n", over(inches("2"), 1)));
		expect(explainLine(twice, inInches)).toContain("width 54 / n 2");
		const behind: Size = {
			...width,
			why: {
				kind: "product",
				operator: "/",
				left: width,
				right: times(2, width),
			},
		};
		expect(explainLine(behind, inInches)).toBe(
			"54 = width 54 / (2 x width 54)",
		);
	});

	test("a size that is just stated, known or asked for by a name", () => {
		expect(explainLine(inches("54"), inInches)).toBe("54, as written");
		expect(explainLine(width, inInches)).toBe("54, as written");
		expect(explainLine(named("case.width", width), inInches)).toBe(
			"54 = width 54",
		);
		expect(explainLine(named("width", width), inInches)).toBe("54, as written");
		expect(explainLine(ply, inInches)).toBe(
			"45/64 (~23/32), ply.three-quarter as it measures",
		);
		expect(
			explainLine(fact("common practice", times(2, width)), inInches),
		).toBe("108 = 2 x width 54 (common practice)");
	});

	test("functions and angles", () => {
		const most: Size = {
			...width,
			why: { kind: "function", name: "max", args: [width, inches("40")] },
		};
		expect(explainLine(most, inInches)).toBe("54 = max(width 54, 40)");
		const bevel = stated(Rational.of(45), "45 deg", "angle");
		expect(explainLine(bevel, inInches)).toBe("45 deg, as written");
	});
});

describe("rounding is never told as exact", () => {
	test("in inches", () => {
		const third = over(inches("10"), 3);
		expect(exactText(third, "in")).toBe("~3.3333");
		expect(shownText(third, inInches)).toBe("~3 11/32");
		expect(explainLine(third, inInches)).toBe("~3 11/32 = 10 / 3");
	});

	test("a size that is round in the other unit keeps it", () => {
		expect(exactText(millimetres("400"), "in")).toBe("400 mm");
		expect(shownText(millimetres("400"), inInches)).toBe("400 mm (~15 3/4)");
		expect(exactText(inches("45/64"), "mm")).toBe("45/64 in");
		expect(shownText(inches("45/64"), inMillimetres)).toBe("45/64 in (~18)");
		expect(exactText(inches("3/4"), "mm")).toBe("19.05");
	});

	test("what trigonometry gave is never exact", () => {
		const slanted: Size = { ...inches("10"), exact: false };
		expect(exactText(slanted, "in")).toBe("~10");
		expect(shownText(slanted, inInches)).toBe("~10");
	});

	test("a fraction that the unit cannot show stays as written", () => {
		expect(explainLine(plus(inches("1/3"), inches("1")), inInches)).toBe(
			"~1 11/32 = 1/3 + 1",
		);
	});
});

test("the tree goes down to what was written, and tells a name once", () => {
	const thick = named("ply.three-quarter.thick", ply);
	const bay = named("bay", over(minus(width, times(4, thick)), 3));
	const length = plus(bay, times(2, named("tongue", millimetres("8"))));
	const shelf = minus(plus(length, bay), named("room", times(3, bay)));
	expect(
		explainTree(shelf, inInches, "case.shelf.length"),
	).toMatchInlineSnapshot(`
		"case.shelf.length ~-16 7/16 = 2 x bay 17 1/16 + 2 x tongue 8 mm - room 51 3/16
		  bay 17 1/16 = (width 54 - 4 x ply.three-quarter.thick 45/64) / 3
		    width 54, as written
		    ply.three-quarter.thick 45/64 (~23/32), ply.three-quarter as it measures
		  tongue 8 mm (~5/16), as written
		  room 51 3/16 = 3 x bay 17 1/16
		"
	`);
	expect(explainTree(width, inInches)).toBe("54, as written\n");
});

test("what moves a size is told with its share", () => {
	const length = minus(width, times(2, ply));
	// 0.4 mm / 25.4 = 0.01575 in
	expect(movers(length, inInches)).toEqual([
		"-2 x ply.three-quarter, as it measures (~0.016 in either way)",
	]);
	expect(movers(length, inMillimetres)).toEqual([
		"-2 x ply.three-quarter, as it measures (0.4 mm either way)",
	]);
	expect(movers(width, inInches)).toEqual([]);
});

describe("stories of any size stay within bounds", () => {
	test("a sum of ten thousand terms", () => {
		let sum = inches("1");
		for (let i = 0; i < 10_000; i += 1) sum = plus(sum, inches(`${i}/128`));
		expect(explainLine(sum, inInches).length).toBeLessThan(2_000);
		expect(explainTree(sum, inInches).length).toBeLessThan(4_000);
	});

	test("names that double what is behind them", () => {
		let size = inches("1/1");
		for (let i = 0; i < 60; i += 1) {
			const half = named(`n${i}`, size);
			size = over(plus(half, half), 2);
		}
		const tree = explainTree(size, inInches);
		expect(tree.split("\n").length).toBeLessThan(70);
	});

	test("sums that double without a name between", () => {
		let size: Size = inches("1/1024");
		for (let i = 0; i < 40; i += 1) size = plus(size, size);
		const line = explainLine(size, inInches);
		expect(line.length).toBeLessThan(2_000);
		// What was left out is not passed over.
		expect(line).toContain("+ …");
	});
});
