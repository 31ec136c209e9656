// Beams, sections and creep against published cases and the worked examples of a handbook's formulas.

import { describe, expect, it } from "vitest";
import { type Beam, bend, mostBent } from "../../shared/mechanics/beams.ts";
import { creepFactors } from "../../shared/mechanics/creep.ts";
import { composite, secondMoment } from "../../shared/mechanics/sections.ts";

/** A beam of length 1000 mm and E I 1e9 N mm2 under 1 N/mm or 1000 N. */
const length = 1000;
const stiffness = 1e9;
const uniform = { kind: "uniform", from: 0, to: length, perLength: 1 } as const;
const middle = { kind: "point", at: length / 2, force: 1000 } as const;
const simple = [
	{ at: 0, kind: "pinned" },
	{ at: length, kind: "pinned" },
] as const;
const bothFixed = [
	{ at: 0, kind: "fixed" },
	{ at: length, kind: "fixed" },
] as const;
const cantilever = [{ at: 0, kind: "fixed" }] as const;
const propped = [
	{ at: 0, kind: "fixed" },
	{ at: length, kind: "pinned" },
] as const;

function bentOf(
	supports: Beam["supports"],
	loads: Beam["loads"],
	span = length,
) {
	const bent = bend({ length: span, stiffness, supports, loads });
	if (!bent) throw new Error("nothing holds it");
	return bent;
}

/** W L^3 / E I for a total load of 1000 N, mm. */
const unit = (1000 * length ** 3) / stiffness;

describe("deflections: Wood Handbook (FPL-GTR-190) Eq. 9-2, bending part, k_b of Table 9-1", () => {
	it.each([
		["uniform, simple ends, at the middle", simple, [uniform], 500, 5 / 384],
		[
			"uniform, both ends fixed, at the middle",
			bothFixed,
			[uniform],
			500,
			1 / 384,
		],
		["uniform, cantilever, at the tip", cantilever, [uniform], 1000, 1 / 8],
		["point in the middle, simple ends", simple, [middle], 500, 1 / 48],
		["point in the middle, both ends fixed", bothFixed, [middle], 500, 1 / 192],
		[
			"half at each quarter point, simple ends, at the middle",
			simple,
			[
				{ kind: "point", at: 250, force: 500 },
				{ kind: "point", at: 750, force: 500 },
			],
			500,
			11 / 768,
		],
		[
			"point at the tip of a cantilever",
			cantilever,
			[{ kind: "point", at: 1000, force: 1000 }],
			1000,
			1 / 3,
		],
	] as const)("%s", (_, supports, loads, at, k) => {
		expect(bentOf(supports, loads).deflectionAt(at)).toBeCloseTo(k * unit, 9);
	});
});

describe("moments: elementary statics, from memory", () => {
	it.each([
		["uniform, simple ends: w L^2 / 8", simple, [uniform], 500, 1 / 8],
		[
			"uniform, both ends fixed, at the middle: w L^2 / 24",
			bothFixed,
			[uniform],
			500,
			1 / 24,
		],
		["point in the middle, simple ends: P L / 4", simple, [middle], 500, 1 / 4],
		[
			"point in the middle, both ends fixed: P L / 8",
			bothFixed,
			[middle],
			500,
			1 / 8,
		],
	] as const)("%s", (_, supports, loads, at, k) => {
		expect(bentOf(supports, loads).momentAt(at)).toBeCloseTo(k * 1e6, 5);
	});

	it.each([
		["uniform, both ends fixed: w L^2 / 12", bothFixed, [uniform], 1 / 12],
		["uniform, cantilever: w L^2 / 2", cantilever, [uniform], 1 / 2],
		[
			"uniform, one end fixed, the other simple: w L^2 / 8",
			propped,
			[uniform],
			1 / 8,
		],
		[
			"point in the middle, both ends fixed: P L / 8",
			bothFixed,
			[middle],
			1 / 8,
		],
	] as const)("at the fixed end, %s", (_, supports, loads, k) => {
		const bent = bentOf(supports, loads);
		expect(-(bent.reactions[0]?.moment ?? 0)).toBeCloseTo(k * 1e6, 5);
	});
});

describe("one end fixed, the other simple", () => {
	// From memory: w L^4 / 185 E I at 0.4215 L from the simple end (elementary statics; 185 is 184.6 rounded).
	it("bends most by w L^4 / 185 E I", () => {
		const top = mostBent(bentOf(propped, [uniform]), 0, length);
		expect(top.deflection / unit).toBeCloseTo(1 / 184.6, 5);
		expect((length - top.at) / length).toBeCloseTo(0.4215, 3);
	});
});

describe("continuous over equal spans, uniform load: coefficients in every handbook of steel, from memory", () => {
	const spans = (count: number) => ({
		supports: Array.from(
			{ length: count + 1 },
			(_, i) => ({ at: i * length, kind: "pinned" }) as const,
		),
		loads: [{ ...uniform, to: count * length }],
	});
	it.each([
		[2, [0.375, 1.25, 0.375]],
		[3, [0.4, 1.1, 1.1, 0.4]],
		[4, [0.393, 1.143, 0.929, 1.143, 0.393]],
	] as const)("reactions of %i spans, in w L", (count, expected) => {
		const { supports, loads } = spans(count);
		const bent = bentOf(supports, loads, count * length);
		expect(bent.reactions.map(({ force }) => Math.round(force) / 1000)).toEqual(
			expected,
		);
	});

	it.each([
		// w L^4 / 185 E I, w L^4 / 145 E I and w L^4 / 154 E I in the outer span.
		[2, 0.0054],
		[3, 0.0069],
		[4, 0.0065],
	] as const)("most deflection of %i spans, in w L^4 / E I", (count, k) => {
		const { supports, loads } = spans(count);
		const bent = bentOf(supports, loads, count * length);
		expect(mostBent(bent, 0, length).deflection / unit).toBeCloseTo(k, 4);
	});

	it("stays right over thirty spans: inner spans as if fixed at both ends", () => {
		const { supports, loads } = spans(30);
		const bent = bentOf(supports, loads, 30 * length);
		expect(
			mostBent(bent, 15 * length, 16 * length).deflection / unit,
		).toBeCloseTo(1 / 384, 6);
	});

	it("lifts the far span of two when only one carries a point: 23/48 ... R = 13/32, 22/32, -3/32 of P", () => {
		// Two equal spans, P in the middle of the first: AISC beam diagrams, from memory.
		const bent = bentOf(
			[0, 1000, 2000].map((at) => ({ at, kind: "pinned" }) as const),
			[middle],
			2000,
		);
		expect(bent.reactions.map(({ force }) => (force * 32) / 1000)).toEqual([
			expect.closeTo(13, 9),
			expect.closeTo(22, 9),
			expect.closeTo(-3, 9),
		]);
	});
});

describe("an overhang", () => {
	// Superposition of the two cases above: point P at the tip a beyond a span L: P a^2 (L + a) / 3 E I at the tip, from memory.
	it("bends at its tip by P a^2 (L + a) / 3 E I and lifts the far end", () => {
		const bent = bentOf(
			simple,
			[{ kind: "point", at: 1300, force: 1000 }],
			1300,
		);
		expect(bent.deflectionAt(1300)).toBeCloseTo(
			(1000 * 300 ** 2 * 1300) / (3 * stiffness),
			9,
		);
		expect(bent.reactions[0]?.force).toBeCloseTo(-300, 9);
	});
});

describe("what does not hold", () => {
	it.each([
		["nothing", []],
		["a single pin", [{ at: 500, kind: "pinned" }]],
	] as const)("%s gives no answer", (_, supports) => {
		expect(
			bend({ length, stiffness, supports, loads: [uniform] }),
		).toBeUndefined();
	});

	it.each([Number.NaN, 0, -1])("nor does a stiffness of %d", (wrong) => {
		expect(
			bend({ length, stiffness: wrong, supports: simple, loads: [] }),
		).toBeUndefined();
	});
});

const inch = 25.4;
/** N/mm for lb/in, MPa for psi. */
const pound = 4.4482216152605;
const psi = pound / inch ** 2;

/** Worked by hand with the formulas above and checked by a separate script; woods from the Wood Handbook, Table 5-3b. */
describe("worked shelves", () => {
	function shelf(width: number, thick: number, elasticity: number): number {
		return elasticity * secondMoment(width, thick);
	}

	it("red oak, 36 in span, 10 in deep, 3/4 in thick, 25 lb per ft: 0.0712 in, fixed ends 0.01424 in", () => {
		const span = 36 * inch;
		const oak = shelf(10 * inch, 0.75 * inch, 1.82e6 * psi);
		const load = {
			kind: "uniform",
			from: 0,
			to: span,
			perLength: ((25 / 12) * pound) / inch,
		} as const;
		const at = (kind: "pinned" | "fixed") =>
			bend({
				length: span,
				stiffness: oak,
				supports: [
					{ at: 0, kind },
					{ at: span, kind },
				],
				loads: [load],
			});
		expect((at("pinned")?.deflectionAt(span / 2) ?? 0) / inch).toBeCloseTo(
			0.0712,
			4,
		);
		expect((at("fixed")?.deflectionAt(span / 2) ?? 0) / inch).toBeCloseTo(
			0.01424,
			5,
		);
		// Stress M h / 2 I: 360 psi.
		const moment = at("pinned")?.momentAt(span / 2) ?? 0;
		const stress =
			(moment * 0.375 * inch) / secondMoment(10 * inch, 0.75 * inch);
		expect(stress / psi).toBeCloseTo(360, 6);
	});

	it("birch plywood 18 mm, 300 mm deep, 900 mm span, 40 kg/m: 2.287 mm; 781.9 mm is the longest span at L/600", () => {
		const birch = shelf(300, 18, 10048);
		const sag = (span: number): number =>
			bend({
				length: span,
				stiffness: birch,
				supports: [
					{ at: 0, kind: "pinned" },
					{ at: span, kind: "pinned" },
				],
				loads: [{ kind: "uniform", from: 0, to: span, perLength: 0.39227 }],
			})?.deflectionAt(span / 2) ?? 0;
		expect(secondMoment(300, 18)).toBe(145800);
		expect(sag(900)).toBeCloseTo(2.287, 3);
		expect(sag(781.9) * 600).toBeCloseTo(781.9, 0);
		// Over the years, by Eurocode 5 for plywood: 4.12 mm.
		expect(sag(900) * creepFactors.plywood.factor).toBeCloseTo(4.12, 2);
	});

	it("maple top overhanging 12 in, 24 in wide, 1 in thick, 10 lb/ft2 and 50 lb at the edge: 0.00905 in", () => {
		const span = 12 * inch;
		const bent = bend({
			length: span,
			stiffness: shelf(24 * inch, inch, 1.83e6 * psi),
			supports: [{ at: 0, kind: "fixed" }],
			loads: [
				{
					kind: "uniform",
					from: 0,
					to: span,
					// 10 lb/ft2 over 24 in is 20 lb per ft.
					perLength: ((20 / 12) * pound) / inch,
				},
				{ kind: "point", at: span, force: 50 * pound },
			],
		});
		expect((bent?.deflectionAt(span) ?? 0) / inch).toBeCloseTo(0.00905, 5);
	});

	it("plywood 0.703 in with a 3/4 x 1 1/2 in maple strip flush at its top: axis 0.4225 in down, 1.0455e6 lb in2, 0.0436 in", () => {
		const height = 1.5 * inch;
		const { stiffness: glued, neutral } = composite([
			{
				elasticity: 1.2e6 * psi,
				width: 11.25 * inch,
				height: 0.703 * inch,
				bottom: height - 0.703 * inch,
			},
			{ elasticity: 1.83e6 * psi, width: 0.75 * inch, height, bottom: 0 },
		]);
		expect((height - neutral) / inch).toBeCloseTo(0.4225, 4);
		expect(glued / (psi * inch ** 4)).toBeCloseTo(1.0455e6, -2);
		const bare = shelf(12 * inch, 0.703 * inch, 1.2e6 * psi);
		expect(glued / bare).toBeCloseTo(2.51, 2);
		const span = 36 * inch;
		const sag = (ei: number) =>
			(bend({
				length: span,
				stiffness: ei,
				supports: [
					{ at: 0, kind: "pinned" },
					{ at: span, kind: "pinned" },
				],
				loads: [
					{
						kind: "uniform",
						from: 0,
						to: span,
						perLength: ((25 / 12) * pound) / inch,
					},
				],
			})?.deflectionAt(span / 2) ?? 0) / inch;
		expect(sag(glued)).toBeCloseTo(0.0436, 4);
		expect(sag(bare)).toBeCloseTo(0.1093, 4);
	});
});

it("a section of one layer is the plain rectangle: b h^3 / 12", () => {
	const { stiffness: plain, neutral } = composite([
		{ elasticity: 10000, width: 300, height: 18, bottom: 5 },
	]);
	expect(plain).toBeCloseTo(10000 * 145800, 3);
	expect(neutral).toBe(14);
});
