// Movement of named woods against the printed coefficients and worked examples: USDA Wood Handbook FPL-GTR-190, chapter 13.

import { describe, expect, it, test } from "vitest";
import { equilibriumMoistureFahrenheit } from "../../shared/mechanics/moisture.ts";
import {
	changeByCoefficient,
	changeByShrinkage,
	changeOfBoard,
	type Sawn,
} from "../../shared/mechanics/movement.ts";
import { type Wood, woodNamed, woods } from "../../shared/tables/woods.ts";

function wood(name: string): Wood {
	const found = woodNamed(name);
	if (!found) throw new Error(`The tables have no ${name}`);
	return found;
}

/** Change of a width, in its own unit. */
function change(
	name: string,
	sawn: Sawn,
	width: number,
	from: number,
	to: number,
): number {
	return width * changeOfBoard(wood(name), "across", sawn, from, to);
}

describe("a width from one moisture to another", () => {
	it("black walnut, flat-sawn, 24 in, 6 to 9 %", () => {
		// Coefficient 0.00274: Wood Handbook Table 13-5. 24 x 0.00274 x 3 = 0.19728.
		expect(change("black walnut", "flat", 24, 6, 9)).toBeCloseTo(0.19728, 5);
	});

	it("white oak, quarter-sawn, 400 mm, 8 to 12 %", () => {
		// Coefficient 0.00180: Table 13-5, white oaks. 400 x 0.00180 x 4 = 2.88.
		expect(change("white oak", "quarter", 400, 8, 12)).toBeCloseTo(2.88, 6);
	});

	it("white oak, flat-sawn, 400 mm, 8 to 12 %", () => {
		// Coefficient 0.00365: Table 13-5, white oaks. 400 x 0.00365 x 4 = 5.84.
		expect(change("white oak", "flat", 400, 8, 12)).toBeCloseTo(5.84, 6);
	});

	it("white fir, flat-sawn, 9 1/8 in, 8 to 11 %: the Handbook's own example (from memory)", () => {
		// Coefficient 0.00245: 9.125 x 0.00245 x 3 = 0.0671 in.
		expect(9.125 * changeByCoefficient(0.00245, 8, 11)).toBeCloseTo(0.0671, 4);
		// Tangential shrinkage 7.0 %, Table 4-3: 9.125 x 3 / (3000 / 7 - 30 + 8) = 0.0673 in.
		expect(9.125 * changeByShrinkage(7, 8, 11)).toBeCloseTo(0.0673, 4);
	});

	it("black cherry, 12 in, from a heated winter to a damp summer", () => {
		// Table 4-2's equation: 68 °F and 25 % give 5.38 %, 75 °F and 60 % give 10.88 %.
		const dry = equilibriumMoistureFahrenheit(68, 0.25);
		const wet = equilibriumMoistureFahrenheit(75, 0.6);
		expect(dry).toBeCloseTo(5.38, 2);
		expect(wet).toBeCloseTo(10.88, 2);
		// Coefficients 0.00248 and 0.00126, Table 13-5: 12 x 0.00248 x 5.50 = 0.164 in, 12 x 0.00126 x 5.50 = 0.083 in.
		expect(12 * changeByCoefficient(0.00248, dry, wet)).toBeCloseTo(0.164, 3);
		expect(12 * changeByCoefficient(0.00126, dry, wet)).toBeCloseTo(0.083, 3);
		// Below 6 % the board goes by its shrinkage; over the whole way that is no more than 2 % off.
		const flat = change("black cherry", "flat", 12, dry, wet);
		expect(Math.abs(flat / 0.164 - 1)).toBeLessThan(0.02);
	});

	it("American beech, 600 mm, 6 to 12 %: both formulas within 2 %", () => {
		// Coefficient 0.00431, Table 13-5: 600 x 0.00431 x 6 = 15.516.
		expect(change("American beech", "flat", 600, 6, 12)).toBeCloseTo(15.516, 6);
		// Tangential shrinkage 11.9 %, Table 4-3: 600 x 6 / (3000 / 11.9 - 30 + 6) = 15.78.
		expect(600 * changeByShrinkage(11.9, 6, 12)).toBeCloseTo(15.78, 2);
	});

	it("moves by about 1 % for 4 % of moisture across the grain (American Wood Council's rule of thumb)", () => {
		for (const one of woods) {
			const mean = changeOfBoard(one, "across", "rift", 8, 12);
			expect(mean, one.name).toBeGreaterThan(0.005);
			expect(mean, one.name).toBeLessThan(0.014);
		}
	});
});

describe("the printed coefficients", () => {
	// Wood Handbook Table 13-5, in the order radial, tangential.
	test.each([
		["black walnut", 0.0019, 0.00274],
		["sugar maple", 0.00165, 0.00353],
		["black cherry", 0.00126, 0.00248],
		["white ash", 0.00169, 0.00274],
		["yellow birch", 0.00256, 0.00338],
		["American beech", 0.0019, 0.00431],
		["American basswood", 0.0023, 0.0033],
		["quaking aspen", 0.00119, 0.00234],
	])(
		"%s moves by them: flat across, quarter through",
		(name, radial, tangential) => {
			expect(changeOfBoard(wood(name), "across", "flat", 8, 9)).toBeCloseTo(
				tangential,
				9,
			);
			expect(changeOfBoard(wood(name), "across", "quarter", 8, 9)).toBeCloseTo(
				radial,
				9,
			);
			expect(changeOfBoard(wood(name), "through", "flat", 8, 9)).toBeCloseTo(
				radial,
				9,
			);
			expect(changeOfBoard(wood(name), "through", "quarter", 8, 9)).toBeCloseTo(
				tangential,
				9,
			);
		},
	);

	it("follow from the shrinkage: C = 1 / (start x 100 / S - start + 10), 30 or 22 % being the start (footnotes of Table 13-5, from memory)", () => {
		// Printed for groups of oaks, and from older shrinkage for mahogany and teak.
		const others = [
			"white oak",
			"northern red oak",
			"Honduran mahogany",
			"teak",
		];
		for (const one of woods) {
			if (others.includes(one.name)) continue;
			for (const way of ["radial", "tangential"] as const)
				expect(
					1 /
						((one.shrinksFrom * 100) / one.shrinkage[way] -
							one.shrinksFrom +
							10),
					`${one.name}, ${way}`,
				).toBeCloseTo(one.change[way], 4);
		}
	});
});

describe("a board over the whole range", () => {
	it("shrinks by its printed shrinkage from green to oven-dry", () => {
		for (const one of woods) {
			const dry = changeByShrinkage(
				one.shrinkage.tangential,
				one.shrinksFrom,
				0,
				one.shrinksFrom,
			);
			expect(dry, one.name).toBeCloseTo(-one.shrinkage.tangential / 100, 9);
		}
	});

	it("comes back to its size", () => {
		for (const sawn of ["flat", "quarter", "rift"] as const)
			for (const [from, to] of [
				[5, 9],
				[4, 18],
				[8, 12],
				[13, 20],
			] as const) {
				const there = changeOfBoard(
					wood("white ash"),
					"across",
					sawn,
					from,
					to,
				);
				const back = changeOfBoard(wood("white ash"), "across", sawn, to, from);
				expect((1 + there) * (1 + back)).toBeCloseTo(1, 3);
			}
	});

	it("never jumps, and stops where the wood is wet through", () => {
		const one = wood("sugar maple");
		let last = -Infinity;
		for (let to = 0; to <= 40; to += 0.25) {
			const now = changeOfBoard(one, "across", "flat", 10, to);
			expect(now).toBeGreaterThanOrEqual(last);
			if (Number.isFinite(last)) expect(now - last).toBeLessThan(0.0015);
			last = now;
		}
		expect(changeOfBoard(one, "across", "flat", 30, 40)).toBe(0);
	});

	it("hardly moves along the grain: 0.1 to 0.2 % from green to oven-dry (Wood Handbook, chapter 4)", () => {
		const dry = changeOfBoard(wood("white oak"), "along", "flat", 30, 0);
		expect(dry).toBeLessThanOrEqual(-0.001);
		expect(dry).toBeGreaterThanOrEqual(-0.002);
	});
});
