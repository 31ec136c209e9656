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

	// Modulus of elasticity (million psi) and of rupture (psi) at 12 %: Wood Handbook FPL-GTR-190, Tables 5-3b and 12-1.
	it.each([
		["white oak", 1.78, 15200],
		["black cherry", 1.49, 12300],
		["white ash", 1.74, 15000],
		["yellow birch", 2.01, 16600],
		["American beech", 1.72, 14900],
		["yellow-poplar", 1.58, 10100],
		["red maple", 1.64, 13400],
		["Douglas-fir, coast", 1.95, 12400],
		["longleaf pine", 1.98, 14500],
	])(
		"has %s at %f million psi and %d psi, in MPa",
		(name, elasticity, rupture) => {
			// 1 psi = 0.00689476 MPa; the table keeps 10 MPa and 0.1 MPa.
			const wood = woodNamed(name);
			expect(
				Math.abs((wood?.elasticity ?? 0) - elasticity * 6894.76),
			).toBeLessThan(6);
			expect(
				Math.abs((wood?.rupture ?? 0) - rupture * 0.00689476),
			).toBeLessThan(0.06);
		},
	);

	// Shear along the grain and compression across it, psi at 12 %: Wood Handbook FPL-GTR-190, Table 5-3b.
	it.each([
		["black walnut", 1010, 1370],
		["black cherry", 690, 1700],
		["white ash", 1160, 1910],
		["yellow-poplar", 500, 1190],
	])(
		"has %s at %d psi across and %d psi in shear, in MPa",
		(name, crushing, shear) => {
			expect(woodNamed(name)?.crushing).toBeCloseTo(crushing * 0.00689476, 2);
			expect(woodNamed(name)?.shear).toBeCloseTo(shear * 0.00689476, 2);
		},
	);

	it("shrinks no wood more along the rays than along the rings (Wood Handbook, chapter 4)", () => {
		for (const { name, shrinkage, change } of woods) {
			expect(shrinkage.radial, name).toBeLessThan(shrinkage.tangential);
			expect(change.radial, name).toBeLessThan(change.tangential);
		}
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

	it("bends birch plywood both ways as its handbook says: 18 mm is 10048 along and 7452 across, together 17500 (from memory)", () => {
		const sort = panelNamed("birch plywood");
		expect(sort?.stiffness(17.6)).toEqual({ along: 10048, across: 7452 });
		expect(sort?.stiffness(12)).toEqual({ along: 10719, across: 6781 });
		for (let thick = 4; thick <= 30; thick += 0.5) {
			const { along = 0, across = 0 } = sort?.stiffness(thick) ?? {};
			expect(along + across).toBe(17500);
		}
	});

	it("bends softwood plywood within 6960 to 8550 MPa (Wood Handbook, Table 12-1)", () => {
		const along = panelNamed("softwood plywood")?.stiffness(18.3).along ?? 0;
		expect(along).toBeGreaterThanOrEqual(6960);
		expect(along).toBeLessThanOrEqual(8550);
	});

	it("keeps a panel's density within its printed range", () => {
		for (const name of [
			"birch plywood",
			"softwood plywood",
			"hardwood plywood",
			"mdf",
			"particleboard",
		]) {
			const sort = panelNamed(name);
			const [low = 0, high = 0] = sort?.densities ?? [];
			expect(low).toBeLessThan(high);
			expect(sort?.density).toBeGreaterThanOrEqual(low);
			expect(sort?.density).toBeLessThanOrEqual(high);
		}
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
