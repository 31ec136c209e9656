// Stack-ups against worked examples and tables.

import { describe, expect, it } from "vitest";
import { Rational } from "../units/rational.ts";
import { fedBy, minus, type Size, type Source, stated, times } from "./size.ts";
import { normalBelow, shareWithin, spreadOf } from "./stack-up.ts";

const mm = (tenths: number, source?: Source): Size => {
	const size = stated(Rational.of(tenths, 10), `${tenths / 10} mm`);
	return source ? fedBy(size, source) : size;
};
const source = (id: string, tolerance: number): Source => ({
	id,
	label: id,
	tolerance,
});

/** Project reference of fits and tolerances, section on stack-up: worst case sum |a t|, root-sum-square sqrt(sum (a t)^2). */
describe("worked examples", () => {
	it("1: a groove of 18.0 ±0.1 for birch plywood of 17.1 to 18.1", () => {
		// The data sheet's limits 17.1 and 18.1 are 17.6 ±0.5.
		const gap = minus(
			mm(180, source("router", 0.1)),
			mm(176, source("sheet", 0.5)),
		);
		expect(gap.value.eq(Rational.of(4, 10))).toBe(true);
		const { worst, expected } = spreadOf(gap.feeds);
		// -0.20 to 1.00 and -0.11 to 0.91, as printed there.
		expect(worst).toBeCloseTo(0.6, 12);
		expect(expected).toBeCloseTo(Math.sqrt(0.1 ** 2 + 0.5 ** 2), 12);
		expect((0.4 - worst).toFixed(2)).toBe("-0.20");
		expect((0.4 + worst).toFixed(2)).toBe("1.00");
		expect((0.4 - expected).toFixed(2)).toBe("-0.11");
		expect((0.4 + expected).toFixed(2)).toBe("0.91");
	});

	it("2: a carcass of 800 ±0.8 (ISO 2768-1, class m) less two sides of 17.6 ±0.5", () => {
		const inside = minus(
			minus(mm(8000, source("saw", 0.8)), mm(176, source("left sheet", 0.5))),
			mm(176, source("right sheet", 0.5)),
		);
		expect(inside.value.eq(Rational.of(7648, 10))).toBe(true);
		const { worst, expected } = spreadOf(inside.feeds);
		expect(worst).toBeCloseTo(1.8, 12);
		expect(expected.toFixed(3)).toBe("1.068");
	});

	it("2, with both sides from one sheet: they move together and add straight", () => {
		const sheet = source("sheet", 0.5);
		const inside = minus(
			mm(8000, source("saw", 0.8)),
			times(2, mm(176, sheet)),
		);
		const { worst, expected } = spreadOf(inside.feeds);
		expect(worst).toBeCloseTo(0.8 + 2 * 0.5, 12);
		expect(expected).toBeCloseTo(Math.sqrt(0.8 ** 2 + (2 * 0.5) ** 2), 12);
	});
});

it("cancels what moves the opening and the member alike", () => {
	const sheet = source("sheet", 0.5);
	const width = fedBy(mm(177, sheet), source("router", 0.1));
	const { expected, sources } = spreadOf(minus(width, mm(176, sheet)).feeds);
	expect(expected).toBeCloseTo(0.1, 12);
	expect(sources.map((one) => one.source.id)).toEqual(["router"]);
});

it("lists the sources by what they bring, shares adding up to 1", () => {
	const gap = minus(
		mm(180, source("router", 0.3)),
		mm(176, source("sheet", 0.4)),
	);
	const { sources } = spreadOf(gap.feeds);
	expect(sources.map((one) => one.source.id)).toEqual(["sheet", "router"]);
	// 0.4^2 = 0.16 and 0.3^2 = 0.09 of 0.25.
	expect(sources[0]?.share).toBeCloseTo(0.64, 12);
	expect(sources[1]?.share).toBeCloseTo(0.36, 12);
});

/** NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.1, cumulative standard normal distribution. */
it("knows the normal distribution", () => {
	for (const [z, below] of [
		[0, 0.5],
		[0.5, 0.69146],
		[1, 0.84134],
		[1.96, 0.975],
		[2, 0.97725],
		[3, 0.99865],
	] as const) {
		expect(normalBelow(z)).toBeCloseTo(below, 5);
		expect(normalBelow(-z)).toBeCloseTo(1 - below, 5);
	}
});

it("tells the share that fits, a tolerance being three standard deviations", () => {
	// The range is ±3 sigma about the middle: 99.73 %.
	expect(shareWithin(0.1, 0.1, 0, 0.2)).toBeCloseTo(0.9973, 4);
	// One sigma to each side: 68.27 %.
	expect(shareWithin(0.1, 0.3, 0, 0.2)).toBeCloseTo(0.6827, 4);
	expect(shareWithin(0.1, 0, 0, 0.2)).toBe(1);
	expect(shareWithin(0.3, 0, 0, 0.2)).toBe(0);
});
