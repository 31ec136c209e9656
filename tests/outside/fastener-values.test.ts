// What fixings hold, against the tables and worked examples of the NDS; the source stands beside each figure.

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
	bendingYield,
	combinedUse,
	dowelBearing,
	duration,
	headPullThrough,
	type LateralCase,
	lagWithdrawal,
	lateralValue,
	nailWithdrawal,
	reduction,
	screwWithdrawal,
	steelScrew,
} from "../../shared/mechanics/fastener-values.ts";
import { screwDiameter } from "../../shared/model/fastener-sizes.ts";
import { screwFigures } from "../../shared/tables/fixings.ts";

const inch = 25.4;
const pound = 4.4482216152605;
const psi = pound / (inch * inch);
const poundPerInch = pound / inch;

describe("withdrawal", () => {
	// ANSI/AWC NDS Table 12.2A, lag screws, lb per inch of thread; read in a copy of the table.
	const lagSizes = [1 / 4, 5 / 16, 3 / 8, 1 / 2, 5 / 8, 3 / 4, 1];
	const lags: readonly (readonly [number, readonly number[]])[] = [
		[0.73, [397, 469, 538, 668, 789, 905, 1123]],
		[0.67, [349, 413, 473, 587, 694, 796, 987]],
		[0.55, [260, 307, 352, 437, 516, 592, 734]],
		[0.5, [225, 266, 305, 378, 447, 513, 636]],
		[0.43, [Number.NaN, 212, 243, 302, 357, 409, 508]],
		[0.42, [173, 205, 235, 291, 344, 395, 490]],
		[0.36, [137, 163, 186, 231, 273, 313, 389]],
		[0.31, [110, 130, 149, 185, 218, 250, 311]],
	];
	it.each(
		lags.flatMap(([gravity, row]) =>
			row.flatMap((printed, at) =>
				Number.isNaN(printed)
					? []
					: [[gravity, lagSizes[at] as number, printed] as const],
			),
		),
	)("lag screw, G %d, %d in: %d lb/in", (gravity, size, printed) => {
		const found = lagWithdrawal(gravity, size * inch) / poundPerInch;
		expect(Math.abs(found - printed)).toBeLessThan(0.55);
	});

	// Wood screws: NDS 12.2-2 (read), written out as 2850 G^2 (0.060 + 0.013 N); NDS Table 12.2B prints it in whole pounds (from memory).
	const screws: readonly (readonly [number, readonly number[]])[] = [
		[0.42, [56.3, 69.4, 82.4, 95.5, 108.6, 121.7]],
		[0.5, [79.8, 98.3, 116.9, 135.4, 153.9, 172.4]],
		[0.55, [96.6, 119.0, 141.4, 163.8, 186.2, 208.6]],
		[0.63, [126.7, 156.1, 185.5, 214.9, 244.3, 273.7]],
	];
	it.each(
		screws.flatMap(([gravity, row]) =>
			row.map((printed, at) => [gravity, 4 + 2 * at, printed] as const),
		),
	)("wood screw, G %d, #%d: %d lb/in", (gravity, number, printed) => {
		const found =
			screwWithdrawal(gravity, screwDiameter(number)) / poundPerInch;
		expect(found).toBeCloseTo(printed, 0);
		expect(Math.abs(found - printed)).toBeLessThan(0.06);
	});

	it("wood screw #10 in G 0.45: 109 lb/in (table of an engineering site, read)", () => {
		expect(
			Math.floor(screwWithdrawal(0.45, screwDiameter(10)) / poundPerInch),
		).toBe(109);
	});

	// Nails: NDS 12.2-3 (from memory), 1380 G^(5/2) D; NDS Table 12.2C in whole pounds (from memory).
	const nailSizes = [0.113, 0.131, 0.148, 0.162];
	const nails: readonly (readonly [number, readonly number[]])[] = [
		[0.42, [17.8, 20.7, 23.3, 25.6]],
		[0.5, [27.6, 32.0, 36.1, 39.5]],
		[0.55, [35.0, 40.6, 45.8, 50.2]],
	];
	it.each(
		nails.flatMap(([gravity, row]) =>
			row.map(
				(printed, at) => [gravity, nailSizes[at] as number, printed] as const,
			),
		),
	)("nail, G %d, %d in: %d lb/in", (gravity, size, printed) => {
		const found = nailWithdrawal(gravity, size * inch) / poundPerInch;
		expect(Math.abs(found - printed)).toBeLessThan(0.06);
	});

	it("the average of tests is 5.7, 5.5 and 4.5 times the design value (Wood Handbook chapter 8, from memory)", () => {
		// 7850 G^2.5 D, 15700 G^2 D, 8100 G^1.5 D^0.75, each in lb per inch.
		const g = 0.5;
		const d = 0.15;
		const perInch = (value: number): number => value / poundPerInch;
		expect(
			(7850 * g ** 2.5 * d) / perInch(nailWithdrawal(g, d * inch)),
		).toBeCloseTo(5.7, 1);
		expect(
			(15_700 * g ** 2 * d) / perInch(screwWithdrawal(g, d * inch)),
		).toBeCloseTo(5.5, 1);
		expect(
			(8100 * g ** 1.5 * d ** 0.75) / perInch(lagWithdrawal(g, d * inch)),
		).toBeCloseTo(4.5, 1);
	});

	it("a head in thin and in thick panels (NDS 2018, 12.2-6a and b, from memory)", () => {
		// 1/4 in ply under a #10 head of 0.385 in, G 0.50: 690 x 3.14159 x 0.385 x 0.25 x 0.25 = 52.16 lb.
		expect(headPullThrough(0.5, 0.385 * inch, 0.25 * inch) / pound).toBeCloseTo(
			52.16,
			1,
		);
		// Thicker than 2.5 heads: 1725 x 3.14159 x 0.385^2 x 0.25 = 200.8 lb, however thick.
		for (const thick of [0.9625, 1.5, 3])
			expect(
				headPullThrough(0.5, 0.385 * inch, thick * inch) / pound,
			).toBeCloseTo(200.8, 1);
	});
});

describe("sizes", () => {
	// ASME B18.6.1, read; roots: NDS Appendix L, from memory.
	it.each([
		[4, 0.112, 0.086],
		[6, 0.138, 0.113],
		[8, 0.164, 0.131],
		[10, 0.19, 0.152],
		[12, 0.216, 0.171],
		[14, 0.242, 0.196],
	])("#%d is %d in, its root %d in", (number, shank, root) => {
		const diameter = screwDiameter(number);
		expect(diameter / inch).toBeCloseTo(shank, 6);
		expect(screwFigures(number, diameter).root / inch).toBeCloseTo(root, 6);
	});

	it("between and beyond the rows, a root is thinner than its shank", () => {
		let last = 0;
		for (let number = 0; number <= 24; number++) {
			const diameter = screwDiameter(number);
			const { root, head } = screwFigures(number, diameter);
			expect(root).toBeGreaterThan(last);
			expect(root).toBeLessThan(diameter);
			expect(head).toBeGreaterThan(1.8 * diameter);
			last = root;
		}
		expect(screwFigures(undefined, 4).root).toBeCloseTo(3.08, 6);
	});

	// NDS Appendix I, from memory.
	it.each([
		[0.112, 100_000],
		[0.138, 100_000],
		[0.164, 90_000],
		[0.19, 80_000],
		[0.216, 80_000],
		[0.242, 70_000],
		[0.3, 60_000],
		[0.375, 45_000],
	])("a wire of %d in yields at %d psi", (size, strength) => {
		expect(bendingYield(size * inch) / psi).toBeCloseTo(strength, 3);
	});
});

describe("lateral, single shear", () => {
	// NDS Table 12.3.3 for fasteners thinner than 1/4 in.
	it.each([
		[0.55, 5550],
		[0.5, 4650],
		[0.46, 4000],
		[0.43, 3500],
		[0.42, 3350],
		[0.36, 2550],
	])("G %d bears %d psi", (gravity, printed) => {
		expect(dowelBearing(gravity, 0.19 * inch) / psi).toBeCloseTo(printed, 3);
	});

	it("1/4 in and thicker: 11200 G along, 6100 G^1.45 / D^0.5 across (NDS 12.3.3, the second read)", () => {
		// 11200 x 0.5 = 5600; 6100 x 0.5^1.45 / 0.5^0.5 = 6100 x 0.36602 / 0.70711 = 3157.6, to 50 psi: 3150.
		expect(dowelBearing(0.5, 0.5 * inch, "along") / psi).toBeCloseTo(5600, 3);
		expect(dowelBearing(0.5, 0.5 * inch, "across") / psi).toBeCloseTo(3150, 3);
	});

	it("thin fasteners are reduced by K_D (NDS Table 12.3.1B, from memory)", () => {
		expect(reduction(0.17 * inch)).toBe(2.2);
		// 10 x 0.2 + 0.5
		expect(reduction(0.2 * inch)).toBeCloseTo(2.5, 9);
	});

	it("#10 screw, 3/4 in plywood G 0.50 on a stud G 0.42, 1 3/4 in deep: worked example, checked by a second program", () => {
		const found = lateralValue({
			diameter: 0.152 * inch,
			bendingYield: 80_000 * psi,
			main: { length: 1.75 * inch, bearing: 3350 * psi },
			side: { length: 0.75 * inch, bearing: 4650 * psi },
		});
		const pounds = Object.fromEntries(
			Object.entries(found?.modes ?? {}).map(([mode, value]) => [
				mode,
				Math.round((value / pound) * 10) / 10,
			]),
		);
		expect(pounds).toEqual({
			Im: 405,
			Is: 241,
			II: 146.2,
			IIIm: 154.7,
			IIIs: 99.6,
			IV: 107,
		});
		expect(found?.mode).toBe("IIIs");
		expect((found?.value ?? 0) / pound).toBeCloseTo(99.6, 1);
	});

	// NDS Table 12N, common nails, 1 1/2 in side member; figures from memory, the equations agree within 0.6 lb.
	it.each([
		["8d", 0.131, 2.5, [106, 97, 82]],
		["10d", 0.148, 3, [128, 118, 100]],
		["16d", 0.162, 3.5, [154, 141, 120]],
	] as const)("%s common nail", (_, size, long, printed) => {
		for (const [at, gravity] of [0.55, 0.5, 0.42].entries()) {
			const bearing = dowelBearing(gravity, size * inch);
			const found = lateralValue({
				diameter: size * inch,
				bendingYield: bendingYield(size * inch),
				main: { length: (long - 1.5) * inch, bearing },
				side: { length: 1.5 * inch, bearing },
			});
			const pounds = (found?.value ?? 0) / pound;
			expect(Math.abs(pounds - (printed[at] as number))).toBeLessThan(0.8);
		}
	});

	it("agrees with the equations of NDS Table 12.3.1A wherever there is no gap", () => {
		// A second way to the same: the k-factors as they are printed, in lb and inches.
		const byTable = (
			d: number,
			fyb: number,
			lm: number,
			fem: number,
			ls: number,
			fes: number,
		): number => {
			const rd = d <= 0.17 ? 2.2 : 10 * d + 0.5;
			const re = fem / fes;
			const rt = lm / ls;
			const k1 =
				(Math.sqrt(re + 2 * re ** 2 * (1 + rt + rt ** 2) + rt ** 2 * re ** 3) -
					re * (1 + rt)) /
				(1 + re);
			const k2 =
				-1 +
				Math.sqrt(
					2 * (1 + re) +
						(2 * fyb * (1 + 2 * re) * d ** 2) / (3 * fem * lm ** 2),
				);
			const k3 =
				-1 +
				Math.sqrt(
					(2 * (1 + re)) / re +
						(2 * fyb * (2 + re) * d ** 2) / (3 * fem * ls ** 2),
				);
			return Math.min(
				(d * lm * fem) / rd,
				(d * ls * fes) / rd,
				(k1 * d * ls * fes) / rd,
				(k2 * d * lm * fem) / ((1 + 2 * re) * rd),
				(k3 * d * ls * fem) / ((2 + re) * rd),
				((d * d) / rd) * Math.sqrt((2 * fem * fyb) / (3 * (1 + re))),
			);
		};
		const within = (min: number, max: number) =>
			fc.double({ min, max, noNaN: true });
		fc.assert(
			fc.property(
				within(0.04, 0.24),
				within(45_000, 100_000),
				within(0.2, 4),
				within(1500, 8000),
				within(0.2, 3),
				within(1500, 8000),
				(d, fyb, lm, fem, ls, fes) => {
					const found = lateralValue({
						diameter: d * inch,
						bendingYield: fyb * psi,
						main: { length: lm * inch, bearing: fem * psi },
						side: { length: ls * inch, bearing: fes * psi },
					});
					const table = byTable(d, fyb, lm, fem, ls, fes);
					expect(
						Math.abs((found?.value ?? 0) / pound / table - 1),
					).toBeLessThan(1e-9);
				},
			),
		);
	});

	it("a layer that bears nothing lessens it, and no length or strength is no value", () => {
		const base: LateralCase = {
			diameter: 3.86,
			bendingYield: 551.6,
			main: { length: 44, bearing: 23.1 },
			side: { length: 18, bearing: 32.1 },
		};
		let last = Number.POSITIVE_INFINITY;
		for (const gap of [0, 5, 12.5, 25, 100]) {
			const value = lateralValue({ ...base, gap })?.value ?? Number.NaN;
			expect(value).toBeGreaterThan(0);
			expect(value).toBeLessThanOrEqual(last);
			last = value;
		}
		expect(
			lateralValue({ ...base, main: { length: 0, bearing: 23 } }),
		).toBeUndefined();
		expect(lateralValue({ ...base, gap: Number.NaN })).toBeUndefined();
	});
});

describe("together", () => {
	// Reference sheet on cleats: 2, 3, 4 screws #10 under T 829.4 N and V 392.3 N; W' 119.4 lb, Z' 99.6 lb (NDS 12.4.1, from memory).
	it.each([
		[2, 0.9],
		[3, 0.6],
		[4, 0.45],
	])("%d screws use %d of what they hold", (screws, share) => {
		const use = combinedUse(
			829.4 / screws,
			392.3 / screws,
			119.4 * pound,
			99.6 * pound,
		);
		expect(use).toBeCloseTo(share, 2);
	});

	it("is the plain share where only one of them acts", () => {
		expect(combinedUse(100, 0, 400, 300)).toBe(0.25);
		expect(combinedUse(0, 150, 400, 300)).toBe(0.5);
		expect(combinedUse(0, 0, 400, 300)).toBe(0);
	});

	it("durations (NDS Table 2.3.2, from memory)", () => {
		expect(duration).toEqual({ permanent: 0.9, stored: 1, short: 1.6 });
	});

	it("a #8 screw in 25 gauge steel: 0.85 x 0.455 x 4.166 x 310 / 3 and 4.2 sqrt(0.455^3 x 4.166) x 310 / 3 N", () => {
		// 0.85 x 0.455 = 0.38675; x 4.1656 = 1.61105; x 310 / 3 = 166.5. 0.0941964 x 4.1656 = 0.392385, root 0.626406; x 4.2 x 103.333 = 271.9.
		const { withdrawal, lateral } = steelScrew(screwDiameter(8), 0.455, 310);
		expect(withdrawal).toBeCloseTo(166.5, 1);
		expect(lateral).toBeCloseTo(271.9, 1);
	});
});
