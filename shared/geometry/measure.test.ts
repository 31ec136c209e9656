// Volumes and centres of gravity against closed forms, with the arithmetic written out.

import { describe, expect, test } from "vitest";
import { disjointBoxes, remainder } from "./cells.ts";
import { measure, volumeOf } from "./measure.ts";
import { type Box, boxSolid, type Outline, type Solid } from "./solid.ts";

/** The same solid far from the origin loses nothing. */
function expectMeasure(
	solid: Solid,
	volume: number,
	centre: readonly [number, number, number],
): void {
	const found = measure(solid);
	expect(found.volume / volume).toBeCloseTo(1, 12);
	found.centre.forEach((c, i) => {
		expect(c).toBeCloseTo(centre[i] as number, 9);
	});
}

describe("Measure", () => {
	test("a box: length times width times thickness, centre in the middle", () => {
		expectMeasure(boxSolid([600, 300, 18]), 600 * 300 * 18, [300, 150, 9]);
	});

	test("a wedge: half the box, centre a third from the square corner", () => {
		const wedge: Outline = {
			plane: "xy",
			points: [
				[0, 0],
				[90, 0],
				[0, 60],
			],
		};
		expectMeasure(
			{ ...boxSolid([90, 60, 20]), outlines: [wedge] },
			(90 * 60 * 20) / 2,
			[90 / 3, 60 / 3, 10],
		);
	});

	test("a mitred strip in each plane: the mean of its two lengths", () => {
		// Long side 500, short side 500 - 2 * 40 = 420, width 40: area 460 * 40.
		// Centre of a trapezoid from its long side: width / 3 * (long + 2 * short) / (long + short).
		const points = [
			[0, 0],
			[500, 0],
			[460, 40],
			[40, 40],
		] as const;
		const across = ((40 / 3) * (500 + 2 * 420)) / (500 + 420);
		const volume = 460 * 40 * 9;
		expectMeasure(
			{ ...boxSolid([500, 40, 9]), outlines: [{ plane: "xy", points }] },
			volume,
			[250, across, 4.5],
		);
		expectMeasure(
			{ ...boxSolid([9, 500, 40]), outlines: [{ plane: "yz", points }] },
			volume,
			[4.5, 250, across],
		);
		expectMeasure(
			{ ...boxSolid([500, 9, 40]), outlines: [{ plane: "xz", points }] },
			volume,
			[250, 4.5, across],
		);
	});

	test("a leg tapered on two faces: the integral of width times depth over its height", () => {
		// Along x from 0 to h the width falls from a to b and the depth from c to d, both from one face.
		const [h, a, b, c, d] = [700, 60, 25, 45, 30];
		const solid: Solid = {
			...boxSolid([h, a, c]),
			outlines: [
				{
					plane: "xy",
					points: [
						[0, 0],
						[h, 0],
						[h, b],
						[0, a],
					],
				},
				{
					plane: "xz",
					points: [
						[0, 0],
						[h, 0],
						[h, d],
						[0, c],
					],
				},
			],
		};
		// With w = a + (b - a) t and e = c + (d - c) t, t from 0 to 1:
		// integral of w e = a c + (a (d - c) + c (b - a)) / 2 + (b - a) (d - c) / 3.
		const mean =
			a * c + (a * (d - c) + c * (b - a)) / 2 + ((b - a) * (d - c)) / 3;
		// integral of t w e, and of w^2 e / 2 and w e^2 / 2 for the other two moments.
		const first =
			(a * c) / 2 + (a * (d - c) + c * (b - a)) / 3 + ((b - a) * (d - c)) / 4;
		const [p, q] = [b - a, d - c];
		const squareW =
			a * a * c +
			(2 * a * p * c + a * a * q) / 2 +
			(p * p * c + 2 * a * p * q) / 3 +
			(p * p * q) / 4;
		const squareE =
			c * c * a +
			(2 * c * q * a + c * c * p) / 2 +
			(q * q * a + 2 * c * q * p) / 3 +
			(q * q * p) / 4;
		expectMeasure(solid, h * mean, [
			(h * first) / mean,
			squareW / 2 / mean,
			squareE / 2 / mean,
		]);
	});

	test("an octahedron-like solid of three outlines", () => {
		// |x|+|y| <= r, |y|+|z| <= r and |x|+|z| <= r: a rhombic dodecahedron, volume 2 r^3 (edge r sqrt(3) / 2, 16/9 sqrt(3) edge^3).
		const r = 30;
		const points = [
			[r, 0],
			[0, r],
			[-r, 0],
			[0, -r],
		] as const;
		const edge = (r * Math.sqrt(3)) / 2;
		expectMeasure(
			{
				box: { min: [-r, -r, -r], max: [r, r, r] },
				outlines: [
					{ plane: "xy", points },
					{ plane: "yz", points },
					{ plane: "xz", points },
				],
				cuts: [],
			},
			(16 / 9) * Math.sqrt(3) * edge ** 3,
			[0, 0, 0],
		);
	});

	test("cuts that overlap, stick out and miss are each taken once", () => {
		// A panel 400 x 300 x 18 with a dado 12 wide and 6 deep, a crossing groove 8 wide and 4 deep, and a rabbet past the end.
		const cuts: Box[] = [
			{ min: [100, -5, 12], max: [112, 305, 18] },
			{ min: [-5, 50, 14], max: [405, 58, 30] },
			{ min: [390, -5, 10], max: [500, 400, 40] },
			{ min: [500, 0, 0], max: [600, 300, 18] },
			{ min: [10, 10, 10], max: [10, 20, 20] },
		];
		const gone =
			12 * 300 * 6 + // dado
			400 * 8 * 4 - // groove
			12 * 8 * 4 + // where they cross
			10 * 300 * 8 - // rabbet: 390 to 400, 10 to 18
			10 * 8 * 4; // where the groove runs into it
		expect(volumeOf({ ...boxSolid([400, 300, 18]), cuts })).toBeCloseTo(
			400 * 300 * 18 - gone,
			6,
		);
	});

	test("a cut through all of it leaves nothing, and the centre stays a number", () => {
		const cuts: Box[] = [{ min: [-1, -1, -1], max: [11, 11, 11] }];
		expect(measure({ ...boxSolid([10, 10, 10]), cuts })).toEqual({
			volume: 0,
			centre: [5, 5, 5],
		});
	});

	test("bad shapes neither crash nor hang", () => {
		const box = boxSolid([10, 10, 10]);
		const outline = (points: Outline["points"]): Solid => ({
			...box,
			outlines: [
				{ plane: "xy", points },
				{ plane: "xz", points },
			],
		});
		expect(volumeOf(outline([]))).toBe(0);
		expect(volumeOf(outline([[1, 1]]))).toBe(0);
		expect(
			volumeOf(
				outline([
					[1, 1],
					[9, 9],
				]),
			),
		).toBe(0);
		expect(volumeOf({ ...box, box: { min: [5, 5, 5], max: [1, 9, 9] } })).toBe(
			0,
		);
		const bad = Number.NaN;
		expect(volumeOf(boxSolid([bad, 1, 1]))).toBe(0);
		measure(
			outline([
				[bad, 0],
				[9, Infinity],
				[0, 9],
			]),
		);
	});

	test("the sense of an outline and a first point given twice do not matter", () => {
		const points = [
			[0, 0],
			[100, 0],
			[80, 40],
			[0, 40],
		] as const;
		const other: Outline = {
			plane: "xz",
			points: [
				[0, 0],
				[100, 0],
				[100, 10],
				[0, 20],
			],
		};
		const solid = (own: Outline["points"]): Solid => ({
			...boxSolid([100, 40, 20]),
			outlines: [{ plane: "xy", points: own }, other],
		});
		const expected = measure(solid(points));
		const turned = measure(solid([...points].reverse()));
		const closed = measure(solid([...points, points[0]]));
		expect(turned.volume).toBeCloseTo(expected.volume, 9);
		expect(closed.volume).toBeCloseTo(expected.volume, 9);
	});
});

describe("Boxes without overlap", () => {
	test("the union keeps its volume and no two share any", () => {
		const boxes: Box[] = [
			{ min: [0, 0, 0], max: [10, 10, 10] },
			{ min: [5, 5, 5], max: [15, 15, 15] },
			{ min: [2, 2, 2], max: [4, 4, 4] },
		];
		const parts = disjointBoxes(boxes);
		const volume = parts.reduce(
			(sum, box) => sum + volumeOf({ box, outlines: [], cuts: [] }),
			0,
		);
		// Two cubes of 1000 share 5 x 5 x 5; the third lies within the first.
		expect(volume).toBe(1000 + 1000 - 125);
		for (const a of parts) {
			for (const b of parts) {
				if (a === b) continue;
				expect(volumeOf({ box: a, outlines: [], cuts: [] })).toBe(
					remainder(a, [b]).reduce(
						(sum, box) => sum + volumeOf({ box, outlines: [], cuts: [] }),
						0,
					),
				);
			}
		}
	});
});
