// The built-in tables of woods and panels against published figures, and weights that follow from them.

import { describe, expect, it } from "vitest";
import { compile } from "../../shared/model/compile.ts";
import { sourcesOf } from "../../shared/sources/sources.ts";
import { panelNamed } from "../../shared/tables/panels.ts";
import { woodNamed, woods } from "../../shared/tables/woods.ts";

describe("woods", () => {
	// Specific gravity at 12 % moisture content: USDA Wood Handbook FPL-GTR-190, Tables 5-3b and 12-1.
	it.each([
		["black walnut", 0.55],
		["white oak", 0.68],
		["northern red oak", 0.63],
		["sugar maple", 0.63],
		["black cherry", 0.5],
		["white ash", 0.6],
		["yellow birch", 0.62],
		["American beech", 0.64],
		["yellow-poplar", 0.42],
		["eastern white pine", 0.35],
		["Douglas-fir, coast", 0.48],
		["longleaf pine", 0.59],
	])("has %s at a gravity of %f", (name, gravity) => {
		expect(woodNamed(name)?.gravity).toBe(gravity);
	});

	it("weighs each at 12 % moisture content: gravity x water x 1.12 (Wood Handbook, chapter 4)", () => {
		for (const wood of woods)
			expect(Math.abs(wood.density - wood.gravity * 1000 * 1.12)).toBeLessThan(
				1,
			);
	});
});

describe("panels", () => {
	it("holds sanded softwood plywood to ±1/64 in up to 3/4 in, ±3 % above (US PS 1-19)", () => {
		const sort = panelNamed("softwood plywood");
		for (const thick of [6.35, 12.7, 18.26, 19.05])
			expect(Math.abs((sort?.tolerance(thick) ?? 0) - 25.4 / 64)).toBeLessThan(
				0.005,
			);
		expect(sort?.tolerance(25.4)).toBeCloseTo(0.03 * 25.4, 6);
	});

	it("holds all-birch plywood of 18 mm within the limits of EN 315 (17.1 to 18.1: data sheet)", () => {
		const spread = panelNamed("birch plywood")?.tolerance(18) ?? 0;
		expect(spread).toBeCloseTo((18.1 - 17.1) / 2, 6);
	});

	it("holds fibreboard to ±0.2 mm up to 19 mm, ±0.3 above (EN 622-1, from memory)", () => {
		expect(panelNamed("mdf")?.tolerance(19)).toBe(0.2);
		expect(panelNamed("mdf")?.tolerance(25)).toBe(0.3);
	});

	it("weighs birch plywood of 18 mm at 685 kg/m3 (data sheet of an all-birch plywood)", () => {
		expect(panelNamed("birch plywood")?.density).toBe(685);
	});
});

describe("weights", () => {
	const text = `board oak { species "white oak"; variant plain { planed 25 mm } }
sheet birch { species "birch plywood"; variant eighteen { thick 18 mm } }
piece boards {
  unit mm
  part plank { of oak.plain; size 1000 x 200 }
  part panel { of birch.eighteen; size 1220 x 2440; bottom at 100 above plank }
}`;
	const [piece] = compile(
		sourcesOf(new Map([["/a.rod", text]])),
		"/a.rod",
	).pieces;
	const weight = (path: string): number => {
		const part = piece?.partByPath.get(path);
		return part
			? (part.volume / 1e9) * (part.stock.density ?? Number.NaN)
			: Number.NaN;
	};

	it("weighs a plank of white oak by the Handbook's density", () => {
		// 1 m x 0.2 m x 0.025 m = 0.005 m3; 0.68 x 1000 x 1.12 = 761.6 kg/m3, printed 762.
		expect(weight("plank")).toBeCloseTo(0.005 * 762, 6);
	});

	it("weighs a sheet of birch plywood by its data sheet", () => {
		// 1.22 m x 2.44 m x 0.018 m x 685 kg/m3 = 36.7 kg.
		expect(weight("panel")).toBeCloseTo(1.22 * 2.44 * 0.018 * 685, 6);
	});
});
