// Fastener axes in wood, against closed forms and against the triangles of the same solid.

import { describe, expect, test } from "vitest";
import {
	randomSolid,
	type Source,
	sourceOf,
} from "../../tests/harness/random-solids.ts";
import { lengthInside, stretchesAlong } from "./along.ts";
import {
	clearanceBetween,
	coverOf,
	type Envelope,
	roundEnvelope,
	staysInside,
} from "./cover.ts";
import { boxSolid, type Solid, type Vec3 } from "./solid.ts";
import { type Mesh, trianglesOf } from "./triangles.ts";

function corner(mesh: Mesh, i: number): Vec3 {
	const at = (mesh.indices[i] as number) * 3;
	return [
		mesh.positions[at],
		mesh.positions[at + 1],
		mesh.positions[at + 2],
	] as unknown as Vec3;
}

function randomUnit(source: Source): Vec3 {
	for (;;) {
		const v: Vec3 = [
			source.real(-1, 1),
			source.real(-1, 1),
			source.real(-1, 1),
		];
		const length = Math.hypot(...v);
		if (length > 0.1 && length < 1)
			return [v[0] / length, v[1] / length, v[2] / length];
	}
}

function minus(a: Vec3, b: Vec3): Vec3 {
	return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

function dot(a: Vec3, b: Vec3): number {
	return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

function crossed(a: Vec3, b: Vec3): Vec3 {
	return [
		a[1] * b[2] - a[2] * b[1],
		a[2] * b[0] - a[0] * b[2],
		a[0] * b[1] - a[1] * b[0],
	];
}

/** Where a ray meets the triangles, in order (Moeller and Trumbore). */
function hits(mesh: Mesh, start: Vec3, direction: Vec3): number[] {
	const result: number[] = [];
	for (let i = 0; i < mesh.indices.length; i += 3) {
		const [a, b, c] = [
			corner(mesh, i),
			corner(mesh, i + 1),
			corner(mesh, i + 2),
		];
		const [e, f] = [minus(b, a), minus(c, a)];
		const p = crossed(direction, f);
		const d = dot(e, p);
		if (Math.abs(d) < 1e-12) continue;
		const s = minus(start, a);
		const u = dot(s, p) / d;
		const q = crossed(s, e);
		const v = dot(direction, q) / d;
		if (u < 0 || v < 0 || u + v > 1) continue;
		result.push(dot(f, q) / d);
	}
	return result.sort((one, other) => one - other);
}

describe("A ray in a solid", () => {
	test("through a box, a dado and out at the far side", () => {
		const solid: Solid = {
			...boxSolid([100, 50, 20]),
			cuts: [{ min: [40, -1, 10], max: [52, 51, 21] }],
		};
		expect(stretchesAlong(solid, [-5, 25, 15], [1, 0, 0])).toEqual([
			{ from: 5, to: 45 },
			{ from: 57, to: 105 },
		]);
		expect(stretchesAlong(solid, [-5, 25, 5], [2, 0, 0])).toEqual([
			{ from: 5, to: 105 },
		]);
		expect(lengthInside(solid, [10, 25, 15], [1, 0, 0])).toBe(30 + 48);
		expect(stretchesAlong(solid, [-5, 60, 5], [1, 0, 0])).toEqual([]);
		expect(stretchesAlong(solid, [0, 0, 0], [0, 0, 0])).toEqual([]);
	});

	test("at a slant: 45 degrees through a plate runs its thickness times the root of two", () => {
		expect(
			lengthInside(boxSolid([100, 50, 20]), [10, 25, 0], [1, 0, 1]),
		).toBeCloseTo(20 * Math.SQRT2, 9);
	});

	test("along and across an outline", () => {
		// A wedge 100 long, 50 high: at height 20 it is 100 * (1 - 20 / 50) = 60 long.
		const wedge: Solid = {
			...boxSolid([100, 50, 20]),
			outlines: [
				{
					plane: "xy",
					points: [
						[0, 0],
						[100, 0],
						[0, 50],
					],
				},
			],
		};
		expect(lengthInside(wedge, [-5, 20, 10], [1, 0, 0])).toBeCloseTo(60, 9);
		expect(lengthInside(wedge, [30, 20, -5], [0, 0, 1])).toBeCloseTo(20, 9);
		expect(lengthInside(wedge, [70, 20, -5], [0, 0, 1])).toBe(0);
	});

	test("through corners of an outline, and past one", () => {
		const diamond: Solid = {
			box: { min: [-50, -50, 0], max: [50, 50, 20] },
			outlines: [
				{
					plane: "xy",
					points: [
						[30, 0],
						[0, 20],
						[-30, 0],
						[0, -20],
					],
				},
			],
			cuts: [],
		};
		expect(stretchesAlong(diamond, [-60, 0, 10], [1, 0, 0])).toEqual([
			{ from: 30, to: 90 },
		]);
		expect(stretchesAlong(diamond, [0, 60, 10], [0, -1, 0])).toEqual([
			{ from: 40, to: 80 },
		]);
		expect(lengthInside(diamond, [-60, 20, 10], [1, 0, 0])).toBe(0);
		expect(lengthInside(diamond, [-60, -20, 10], [1, 0, 0])).toBe(0);
	});

	test("agrees with its triangles", () => {
		let met = 0;
		for (let seed = 0; seed < 150; seed++) {
			const source = sourceOf(seed);
			const solid = randomSolid(source, {
				outlines: [source.whole(0, 1), source.whole(0, 1), source.whole(0, 1)],
				cuts: 4,
			});
			const mesh = trianglesOf(solid);
			const size = solid.box.max;
			const direction = randomUnit(source);
			const middle: Vec3 = [
				size[0] * source.real(0.2, 0.8),
				size[1] * source.real(0.2, 0.8),
				size[2] * source.real(0.2, 0.8),
			];
			const start: Vec3 = [
				middle[0] - 600 * direction[0],
				middle[1] - 600 * direction[1],
				middle[2] - 600 * direction[2],
			];
			const ends = stretchesAlong(solid, start, direction).flatMap((s) => [
				s.from,
				s.to,
			]);
			const expected = hits(mesh, start, direction);
			expect(ends.length, `seed ${seed}`).toBe(expected.length);
			ends.forEach((t, i) => {
				expect(t).toBeCloseTo(expected[i] as number, 4);
			});
			if (ends.length > 0) met++;
		}
		expect(met).toBeGreaterThan(80);
	});
});

describe("Cover", () => {
	const panel = boxSolid([300, 200, 18]);

	test("a brad in the edge of a panel, off its middle", () => {
		// 1.2 mm thick, driven 30 deep at 7 mm from one face: 7 - 0.6 = 6.4 remain there.
		const brad = roundEnvelope([100, 0.6, 7], [100, 30, 7], 0.6);
		const found = coverOf(panel, brad);
		expect(found.distance).toBeCloseTo(0, 9);
		const inside = coverOf(
			panel,
			roundEnvelope([100, 20, 7], [100, 50, 7], 0.6),
		);
		expect(inside.distance).toBeCloseTo(6.4, 9);
		expect(inside.surface).toEqual({ kind: "side", axis: 2, end: "min" });
	});

	test("a screw that comes out tells by how much", () => {
		const found = coverOf(
			panel,
			roundEnvelope([100, 100, 5], [100, 100, 20], 2),
		);
		expect(found.distance).toBeCloseTo(18 - 20 - 2, 9);
		expect(found.surface).toEqual({ kind: "side", axis: 2, end: "max" });
		expect(
			staysInside(panel, roundEnvelope([100, 100, 5], [100, 100, 10], 2), 3),
		).toBe(true);
		expect(
			staysInside(panel, roundEnvelope([100, 100, 5], [100, 100, 10], 2), 3.01),
		).toBe(false);
	});

	test("a biscuit near a dado and near a tapered face", () => {
		const biscuit: Envelope = {
			centre: [100, 50, 9],
			axes: [
				[1, 0, 0],
				[0, 1, 0],
				[0, 0, 1],
			],
			half: [25, 9, 2],
			radius: 0,
		};
		const dado: Solid = {
			...panel,
			cuts: [{ min: [130, -1, 12], max: [142, 201, 18] }],
		};
		// From the corner at x 125, z 11 to the dado's edge at x 130, z 12.
		const found = coverOf(dado, biscuit);
		expect(found.distance).toBeCloseTo(Math.hypot(5, 1), 9);
		expect(found.surface).toEqual({ kind: "cut", cut: 0 });
		const tapered: Solid = {
			...panel,
			outlines: [
				{
					plane: "xy",
					points: [
						[0, 0],
						[300, 0],
						[300, 40],
						[0, 80],
					],
				},
			],
		};
		// The face falls 40 in 300; nearest is the corner x 125, y 59: (80 - 125 * 40 / 300 - 59) across the slope.
		const slope = 40 / 300;
		const near = coverOf(
			{ ...tapered, box: { min: [-99, -99, -99], max: [399, 299, 99] } },
			biscuit,
		);
		expect(near.distance).toBeCloseTo(
			(80 - 125 * slope - 59) / Math.hypot(1, slope),
			9,
		);
		expect(near.surface).toEqual({ kind: "outline", outline: 0, edge: 2 });
	});

	test("a biscuit that a cut runs through stands in waste", () => {
		const biscuit: Envelope = {
			centre: [100, 50, 9],
			axes: [
				[1, 0, 0],
				[0, 1, 0],
				[0, 0, 1],
			],
			half: [25, 9, 2],
			radius: 0,
		};
		const groove: Solid = {
			...panel,
			cuts: [{ min: [-1, 55, 8], max: [301, 63, 19] }],
		};
		// The groove takes 59 - 55 = 4 of its width and 11 - 8 = 3 of its height: 3 is the shorter way out.
		expect(coverOf(groove, biscuit).distance).toBeCloseTo(-3, 9);
		const wedge: Solid = {
			...panel,
			outlines: [
				{
					plane: "xy",
					points: [
						[0, 0],
						[300, 0],
						[300, 200],
					],
				},
			],
		};
		// The outline's long edge is the line y = 2 x / 3; the corner x 75, y 59 stands (59 - 50) / hypot(1, 2/3) outside.
		expect(coverOf(wedge, biscuit).distance).toBeCloseTo(
			-9 / Math.hypot(1, 2 / 3),
			9,
		);
	});

	test("never exceeds the distance to any point of the surface, and some point comes near it", () => {
		let tried = 0;
		for (let seed = 0; seed < 300; seed++) {
			const source = sourceOf(seed);
			const solid = randomSolid(source, {
				outlines: [source.whole(0, 1), source.whole(0, 1), 0],
				cuts: 2,
			});
			const x = randomUnit(source);
			const y0 = crossed(x, randomUnit(source));
			const length = Math.hypot(...y0);
			const y: Vec3 = [y0[0] / length, y0[1] / length, y0[2] / length];
			const size = solid.box.max;
			const envelope: Envelope = {
				centre: [
					size[0] * source.real(0.2, 0.8),
					size[1] * source.real(0.2, 0.8),
					size[2] * source.real(0.2, 0.8),
				],
				axes: [x, y, crossed(x, y)],
				half: [source.real(1, 8), source.real(0, 4), source.real(0, 2)],
				radius: source.real(0, 1),
			};
			const cover = coverOf(solid, envelope).distance;
			if (cover < 0.5) continue;
			tried++;
			const mesh = trianglesOf(solid);
			let nearest = Infinity;
			for (let i = 0; i < mesh.indices.length; i += 3) {
				const [a, b, c] = [
					corner(mesh, i),
					corner(mesh, i + 1),
					corner(mesh, i + 2),
				];
				const steps = 24;
				for (let p = 0; p <= steps; p++) {
					for (let q = 0; q <= steps - p; q++) {
						const [s, t] = [p / steps, q / steps];
						const point = a.map(
							(_, k) =>
								(a[k] as number) * (1 - s - t) +
								(b[k] as number) * s +
								(c[k] as number) * t,
						) as unknown as Vec3;
						const from = minus(point, envelope.centre);
						const away = envelope.axes.map((axis, k) =>
							Math.max(
								0,
								Math.abs(dot(from, axis)) - (envelope.half[k] as number),
							),
						);
						nearest = Math.min(nearest, Math.hypot(...away) - envelope.radius);
					}
				}
			}
			expect(nearest, `seed ${seed}`).toBeGreaterThan(cover - 1e-6);
			expect(nearest, `seed ${seed}`).toBeLessThan(cover + 8);
		}
		expect(tried).toBeGreaterThan(50);
	});

	test("a cube on its point under a ceiling: only the ceiling's own face parts them", () => {
		const third = 1 / Math.sqrt(3);
		const [h, q] = [Math.SQRT1_2, 1 / Math.sqrt(6)];
		const cube: Envelope = {
			centre: [0, 0, 0],
			// Rows of a turn that brings the diagonal (1, 1, 1) upright.
			axes: [
				[h, q, third],
				[-h, q, third],
				[0, -2 * q, third],
			],
			half: [5, 5, 5],
			radius: 0,
		};
		// Its point stands half a diagonal above its middle: 5 times the root of 3.
		const top = 5 * Math.sqrt(3);
		const ceiling = (height: number): Solid => ({
			box: { min: [-200, -200, -200], max: [200, 200, 200] },
			outlines: [],
			cuts: [{ min: [-90, -80, height], max: [70, 60, height + 50] }],
		});
		expect(coverOf(ceiling(top + 1), cube).distance).toBeCloseTo(1, 9);
		expect(coverOf(ceiling(top - 1), cube).distance).toBeCloseTo(-1, 9);
	});

	test("two fasteners: parallel, crossing and meeting", () => {
		const a = roundEnvelope([0, 0, 0], [30, 0, 0], 2);
		expect(
			clearanceBetween(a, roundEnvelope([0, 10, 0], [30, 10, 0], 3)),
		).toBeCloseTo(10 - 2 - 3, 9);
		expect(
			clearanceBetween(a, roundEnvelope([15, -20, 6], [15, 20, 6], 1)),
		).toBeCloseTo(6 - 2 - 1, 9);
		expect(
			clearanceBetween(a, roundEnvelope([36, 8, 0], [36, 20, 0], 1)),
		).toBeCloseTo(10 - 2 - 1, 9);
		expect(
			clearanceBetween(a, roundEnvelope([15, -20, 1], [15, 20, 1], 1)),
		).toBeCloseTo(1 - 2 - 1, 9);
	});
});
