// What a stock file says of a wood or sheet comes before the tables.

import { describe, expect, test } from "vitest";
import { changeByShrinkage, movingBy } from "../mechanics/movement.ts";
import { compile } from "../model/compile.ts";
import type { Part } from "../model/types.ts";
import { sourcesOf } from "../sources/sources.ts";
import { changeOf } from "./moving.ts";
import { stuffOf } from "./sagging/stiffness.ts";
import { holdingGravity } from "./standing-weights.ts";

const across = { wood: 0.08, plywood: 0.5 };

function partOf(lines: string, kind: "board" | "sheet" = "board"): Part {
	const thick = kind === "board" ? "planed 3/4" : "thick 3/4; size 96 x 48";
	const text = `${kind} stuff {\n${lines}\n  variant plain { ${thick} }\n}
piece one { part plank { of stuff.plain; size 40 x 8 } }`;
	const design = compile(sourcesOf(new Map([["/a.rod", text]])), "/a.rod");
	expect(
		design.findings.filter(({ severity }) => severity === "error"),
	).toEqual([]);
	return design.pieces[0]?.parts[0] as Part;
}

describe("stiffness", () => {
	test("comes from the species where nothing is said", () => {
		const oak = stuffOf(partOf('species "white oak"'), 0, across);
		expect(oak?.elasticity).toBeGreaterThan(12_000);
	});

	test("replaces that of the species, along the grain and across", () => {
		const part = partOf('species "white oak"\n  stiffness 10 GPa across 0.7');
		expect(stuffOf(part, 0, across)?.elasticity).toBe(10_000);
		expect(stuffOf(part, 2, across)?.elasticity).toBe(700);
	});

	test("is read in a million pounds per square inch, too", () => {
		// 1 psi = 6894.757 Pa (NIST SP 811): 1.78 Mpsi = 12 273 MPa.
		const part = partOf('species "white oak"\n  stiffness 1.78 Mpsi');
		expect(stuffOf(part, 0, across)?.elasticity).toBeCloseTo(
			1.78 * 6894.757,
			0,
		);
	});

	test("is enough for a sheet or wood that no table knows", () => {
		const lines = "density 600 kg per m3\n  stiffness 9 GPa across 3";
		expect(stuffOf(partOf(lines), 0, across)?.elasticity).toBe(9000);
		expect(stuffOf(partOf(lines, "sheet"), 2, across)?.elasticity).toBe(3000);
	});
});

describe("shrinkage", () => {
	test("gives the coefficient that the Handbook's own shrinkage implies", () => {
		// Northern red oak: 8.6 % and 4.0 % imply 0.00304 and 0.00137 at 10 % moisture (equation 13-2, worked out by hand:
		// 1 / (3000 / 8.6 - 20) and 1 / (3000 / 4 - 20)).
		const { change } = movingBy({ tangential: 8.6, radial: 4 });
		expect(change.tangential).toBeCloseTo(1 / (3000 / 8.6 - 20), 9);
		expect(change.tangential).toBeCloseTo(0.00304, 5);
		expect(change.radial).toBeCloseTo(0.00137, 5);
	});

	test("replaces that of the species", () => {
		const part = partOf(
			'species "white oak"\n  sawn flat\n  shrinks 5 % tangential 3 % radial',
		);
		const moved = changeOf(part, 2, 8, 12) as number;
		// Along the rings, from 8 to 12 %, by the slope at 10 %.
		expect(moved).toBeCloseTo(4 / (3000 / 5 - 20), 6);
		expect(moved).toBeCloseTo(changeByShrinkage(5, 8, 12), 4);
	});
});

test("a weight that is said comes before the species' own for what holds fasteners", () => {
	expect(holdingGravity(partOf('species "white oak"').stock)).toBe(0.68);
	// 560 kg/m3 at 12 % moisture is a gravity of 560 / 1120.
	const light = partOf('species "white oak"\n  density 560 kg per m3');
	expect(holdingGravity(light.stock)).toBeCloseTo(0.5, 9);
});

test("what cannot be is told", () => {
	for (const line of [
		"stiffness 0 GPa",
		"stiffness 3 GPa across 0",
		"shrinks 0 % tangential 4 % radial",
		"shrinks 60 % tangential 4 % radial",
		"shrinks 8 tangential 4 radial",
	]) {
		const text = `board stuff { species "white oak"; ${line}; variant plain { planed 3/4 } }
piece one { part plank { of stuff.plain; size 40 x 8 } }`;
		const { findings } = compile(
			sourcesOf(new Map([["/a.rod", text]])),
			"/a.rod",
		);
		expect(findings.length, line).toBeGreaterThan(0);
	}
});
