// How checks show sizes: by the marks of the tape where a size lies on one, in decimals where it does not.

import { describe, expect, it } from "vitest";
import { stated } from "../model/size.ts";
import type { Display } from "../model/types.ts";
import { Rational } from "../units/rational.ts";
import {
	listed,
	percent,
	plainSize,
	show,
	showFine,
	showSizes,
	writtenLike,
} from "./words.ts";

const inch: Display = { unit: "in", precision: Rational.of(1, 32) };
const metric: Display = { unit: "mm", precision: Rational.of(1, 2) };

describe("show", () => {
	it("uses marks, then 64ths, then decimals", () => {
		// An inch is 25.4 mm.
		expect(show(inch, (25.4 * 1) / 4)).toBe("1/4 in");
		expect(show(inch, Rational.of(254 * 45, 640))).toBe("45/64 in");
		expect(show(inch, 0.1)).toBe("0.004 in");
		expect(show(inch, 25.4 * 54)).toBe("54 in");
		expect(show(inch, -25.4 / 2)).toBe("-1/2 in");
		expect(show(metric, 12.5)).toBe("12.5 mm");
		expect(show(metric, 12.3)).toBe("12.3 mm");
		expect(show(metric, 0.25)).toBe("0.25 mm");
		expect(show(metric, 0)).toBe("0 mm");
	});

	it("does not round a small amount away", () => {
		// 0.004 mm is nearer to no mark than to nothing, and nothing would be a lie.
		expect(show(metric, 0.004)).toBe("0 mm");
		expect(show(metric, 0.006)).toBe("0.01 mm");
		expect(show(inch, 0.39)).toBe("0.015 in");
	});

	it("takes what is far too large", () => {
		expect(show(metric, 1e300)).toMatch(/mm$/);
		expect(show(inch, Number.NaN)).toMatch(/in$/);
	});
});

it("always shows gaps in decimals", () => {
	expect(showFine(inch, 25.4 / 64)).toBe("0.016 in");
	expect(showFine(metric, 10)).toBe("10 mm");
	expect(showFine(metric, -0.001)).toBe("0 mm");
});

it("shows sizes side by side", () => {
	expect(showSizes(inch, 25.4 * 20.5, 25.4 * 10)).toBe("20 1/2 x 10 in");
});

it("writes a size as the one before it is written", () => {
	const bareInch = stated(Rational.of(254 * 3, 40), "3/4");
	const withUnit = stated(Rational.of(254 * 3, 40), "3/4 in");
	const wanted = Rational.of(254 * 5, 40);
	expect(writtenLike(inch, bareInch, wanted)).toBe("1 1/4");
	expect(writtenLike(inch, withUnit, wanted)).toBe("1 1/4 in");
	// Bare inches in a piece that shows millimetres: the figure needs its unit.
	expect(writtenLike(metric, bareInch, Rational.of(30))).toBe("30 mm");
	expect(
		writtenLike(metric, stated(Rational.of(18), "18"), Rational.of(20)),
	).toBe("20");
});

it("finds the plainest size in a range, the nearest to what is wanted", () => {
	const of = (mm: number): Rational => Rational.near(mm, 10_000);
	// 18.0 to 18.3 holds 18; 18.1 to 18.4 holds tenths.
	expect(plainSize(metric, of(18), of(18.3), of(18.1))?.text).toBe("18");
	expect(plainSize(metric, of(18.1), of(18.4), of(18.2))?.text).toBe("18.2");
	expect(plainSize(metric, of(18.001), of(18.002), of(18.001))).toBeUndefined();
	// 45/64 in = 17.859 mm lies within 17.8 to 17.9.
	expect(plainSize(inch, of(17.8), of(17.9), of(17.86))?.text).toBe("45/64");
});

it("says shares and lists in a maker's way", () => {
	expect([0, 0.001, 0.5, 0.999, 1].map(percent)).toEqual([
		"0 %",
		"less than 1 %",
		"50 %",
		"more than 99 %",
		"100 %",
	]);
	expect(listed(["a"])).toBe("a");
	expect(listed(["a", "b", "c"])).toBe("a, b and c");
	expect(listed(["a", "b", "c", "d", "e"])).toBe("a, b, c and 2 more");
});
