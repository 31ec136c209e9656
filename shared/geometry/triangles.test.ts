// The mesh of a solid is closed and holds the volume that measuring tells.

import { describe, expect, test } from "vitest";
import { randomSolid, sourceOf } from "../../tests/harness/random-solids.ts";
import { measure } from "./measure.ts";
import { boxSolid, type Solid } from "./solid.ts";
import { flatShaded, type Mesh, trianglesOf } from "./triangles.ts";

/** Edges whose two ways are not used equally often. */
function openEdges(mesh: Mesh): number {
	const count = new Map<string, number>();
	for (let i = 0; i < mesh.indices.length; i += 3) {
		for (let k = 0; k < 3; k++) {
			const a = mesh.indices[i + k] as number;
			const b = mesh.indices[i + ((k + 1) % 3)] as number;
			const key = a < b ? `${a} ${b}` : `${b} ${a}`;
			count.set(key, (count.get(key) ?? 0) + (a < b ? 1 : -1));
		}
	}
	return [...count.values()].filter((sum) => sum !== 0).length;
}

/** Volume by the divergence theorem. */
function meshVolume(mesh: Mesh): number {
	let six = 0;
	const p = (corner: number, k: number): number =>
		mesh.positions[(mesh.indices[corner] as number) * 3 + k] as number;
	for (let i = 0; i < mesh.indices.length; i += 3) {
		six +=
			p(i, 0) * (p(i + 1, 1) * p(i + 2, 2) - p(i + 1, 2) * p(i + 2, 1)) +
			p(i, 1) * (p(i + 1, 2) * p(i + 2, 0) - p(i + 1, 0) * p(i + 2, 2)) +
			p(i, 2) * (p(i + 1, 0) * p(i + 2, 1) - p(i + 1, 1) * p(i + 2, 0));
	}
	return six / 6;
}

function expectClosed(solid: Solid, name: string): void {
	const mesh = trianglesOf(solid);
	expect(openEdges(mesh), `${name}: open edges`).toBe(0);
	const size = solid.box.max[0] * solid.box.max[1] * solid.box.max[2];
	expect(
		Math.abs(meshVolume(mesh) - measure(solid).volume) / size,
		`${name}: volume`,
	).toBeLessThan(1e-6);
}

describe("Triangles", () => {
	test("a plain box has eight corners and twelve triangles that face outward", () => {
		const mesh = trianglesOf(boxSolid([30, 20, 10]));
		expect(mesh.positions).toHaveLength(24);
		expect(mesh.indices).toHaveLength(36);
		expect(openEdges(mesh)).toBe(0);
		expect(meshVolume(mesh)).toBeCloseTo(30 * 20 * 10, 9);
		const flat = flatShaded(mesh);
		expect(flat.positions).toHaveLength(108);
		for (let i = 0; i < flat.positions.length; i += 3) {
			const away =
				((flat.positions[i] as number) - 15) * (flat.normals[i] as number) +
				((flat.positions[i + 1] as number) - 10) *
					(flat.normals[i + 1] as number) +
				((flat.positions[i + 2] as number) - 5) *
					(flat.normals[i + 2] as number);
			expect(away).toBeGreaterThan(4.9);
		}
	});

	test("an empty solid has none", () => {
		const mesh = trianglesOf({
			...boxSolid([30, 20, 10]),
			cuts: [{ min: [-1, -1, -1], max: [31, 21, 11] }],
		});
		expect(mesh).toEqual({ positions: [], indices: [], normals: [] });
	});

	test("two parts that share an edge only stay closed", () => {
		expectClosed(
			{
				...boxSolid([20, 20, 10]),
				cuts: [
					{ min: [0, 0, 0], max: [10, 10, 10] },
					{ min: [10, 10, 0], max: [20, 20, 10] },
				],
			},
			"chequer",
		);
	});

	test.each([
		["cuts only", [0, 0, 0]],
		["one outline", [1, 0, 0]],
		["one outline", [0, 1, 0]],
		["one outline", [0, 0, 1]],
		["two outlines", [1, 1, 0]],
		["two outlines", [0, 1, 1]],
		["two outlines", [1, 0, 1]],
		["two in one plane", [2, 0, 0]],
		["three outlines", [1, 1, 1]],
	] as const)("random solids are closed: %s %j", (name, outlines) => {
		for (let seed = 0; seed < 40; seed++) {
			const solid = randomSolid(sourceOf(seed), { outlines, cuts: 3 });
			expectClosed(solid, `${name} ${seed}`);
		}
	});
});
