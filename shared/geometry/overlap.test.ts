// Parts that share space, touch, or stand apart.

import { describe, expect, test } from "vitest";
import {
	inRandomPlace,
	randomSolid,
	sourceOf,
} from "../../tests/harness/random-solids.ts";
import { boundsOf } from "./bounds.ts";
import { meetingOf, nearPairs, overlapOf, touching } from "./overlap.ts";
import { movedSolid, solidToWorld } from "./place.ts";
import { type Box, boxSolid, type Solid, type Vec3 } from "./solid.ts";

function at(origin: Vec3, size: Vec3, cuts: readonly Box[] = []): Solid {
	return { ...movedSolid(boxSolid(size), origin), cuts };
}

describe("Pairs that come near", () => {
	test("are the same as by trying all", () => {
		for (let seed = 0; seed < 30; seed++) {
			const source = sourceOf(seed);
			const boxes: Box[] = [];
			for (let i = 0; i < 60; i++) {
				const min: Vec3 = [
					source.real(0, 300),
					source.real(0, 200),
					source.real(0, 100),
				];
				// Whole sizes now and then, so that faces fall together.
				const size = source.whole(0, 1) === 0 ? 50 : source.real(0, 80);
				const low = min.map((c) =>
					source.whole(0, 1) === 0 ? Math.round(c / 50) * 50 : c,
				) as unknown as Vec3;
				boxes.push({
					min: low,
					max: [low[0] + size, low[1] + size, low[2] + size],
				});
			}
			for (const margin of [0, 5, -3]) {
				const expected: [number, number][] = [];
				for (let i = 0; i < boxes.length; i++) {
					for (let j = i + 1; j < boxes.length; j++) {
						const [a, b] = [boxes[i] as Box, boxes[j] as Box];
						const gaps = ([0, 1, 2] as const).map((k) =>
							Math.max(a.min[k] - b.max[k], b.min[k] - a.max[k]),
						);
						if (Math.max(...gaps) <= margin) expected.push([i, j]);
					}
				}
				expect(nearPairs(boxes, margin)).toEqual(expected);
			}
		}
	});

	test("empty boxes meet nothing", () => {
		const box: Box = { min: [0, 0, 0], max: [1, 1, 1] };
		expect(nearPairs([box, { min: [0, 0, 0], max: [0, 1, 1] }, box])).toEqual([
			[0, 2],
		]);
	});
});

describe("Overlap", () => {
	test("of two boxes: volume, depth and place", () => {
		const overlap = overlapOf(
			at([0, 0, 0], [100, 50, 20]),
			at([90, 10, 5], [100, 20, 30]),
		);
		expect(overlap).toEqual({
			volume: 10 * 20 * 15,
			depth: 10,
			box: { min: [90, 10, 5], max: [100, 30, 20] },
		});
	});

	test("a shelf in its dado is contact, one that is too long goes in deeper than the dado", () => {
		const dado: Box = { min: [12, 200, 0], max: [18, 218, 300] };
		const side = at([0, 0, 0], [18, 700, 300], [dado]);
		expect(overlapOf(side, at([12, 200, 0], [500, 18, 300]))).toBeUndefined();
		// Thicker by a rounding error on both faces: still contact.
		expect(
			overlapOf(side, at([12, 199.995, 0], [500, 18.01, 300])),
		).toBeUndefined();
		const long = overlapOf(side, at([11.5, 200, 0], [500, 18, 300]));
		expect(long?.depth).toBeCloseTo(0.5, 9);
		expect(long?.volume).toBeCloseTo(0.5 * 18 * 300, 6);
		const thick = overlapOf(side, at([12, 200, 0], [500, 19, 300]));
		expect(thick?.volume).toBeCloseTo(6 * 1 * 300, 6);
		expect(thick?.box.min[1]).toBe(218);
	});

	test("two mitred strips meet along their diagonal without overlap", () => {
		const bottom: Solid = {
			...at([0, 0, 0], [500, 40, 9]),
			outlines: [
				{
					plane: "xy",
					points: [
						[0, 0],
						[500, 0],
						[460, 40],
						[40, 40],
					],
				},
			],
		};
		const left: Solid = {
			...at([0, 0, 0], [40, 300, 9]),
			outlines: [
				{
					plane: "xy",
					points: [
						[0, 0],
						[40, 40],
						[40, 260],
						[0, 300],
					],
				},
			],
		};
		expect(overlapOf(bottom, left)).toBeUndefined();
		expect(touching(bottom, left)).toBe(true);
		// Pushed in by 1 mm along x the strips share a parallelogram 1 wide and 40 high.
		const pushed = overlapOf(bottom, movedSolid(left, [1, 0, 0]));
		expect(pushed?.volume).toBeCloseTo(1 * 40 * 9 - (1 * 1 * 9) / 2, 6);
		expect(pushed?.depth).toBeCloseTo(1, 6);
	});

	test("is symmetric and does not depend on where both stand", () => {
		let deep = 0;
		for (let seed = 0; seed < 200; seed++) {
			const source = sourceOf(seed);
			const [a, b] = [0, 1].map(() =>
				solidToWorld(
					inRandomPlace(source),
					randomSolid(source, {
						outlines: [source.whole(0, 1), source.whole(0, 1), 0],
					}),
				),
			) as [Solid, Solid];
			const one = overlapOf(a, b);
			const other = overlapOf(b, a);
			const by: Vec3 = [1234.5, -678.25, 90.125];
			const moved = overlapOf(movedSolid(a, by), movedSolid(b, by));
			expect(other === undefined).toBe(one === undefined);
			expect(moved === undefined).toBe(one === undefined);
			if (one === undefined || other === undefined || moved === undefined)
				continue;
			deep++;
			expect(other.volume / one.volume).toBeCloseTo(1, 9);
			expect(moved.volume / one.volume).toBeCloseTo(1, 8);
			expect(moved.depth).toBeCloseTo(one.depth, 6);
			for (const k of [0, 1, 2] as const) {
				expect(moved.box.min[k]).toBeCloseTo(one.box.min[k] + by[k], 6);
				expect(other.box.max[k]).toBeCloseTo(one.box.max[k], 6);
			}
		}
		expect(deep).toBeGreaterThan(20);
	});
});

describe("Meeting", () => {
	const side = at([0, 0, 0], [18, 700, 300]);

	test("face to face: area and way", () => {
		const shelf = at([18, 200, 0], [500, 18, 280]);
		const meeting = meetingOf(side, shelf);
		expect(meeting?.kind).toBe("touching");
		expect(meeting?.direction).toBe("+x");
		expect(meeting?.area).toBeCloseTo(18 * 280, 3);
		expect(meetingOf(shelf, side)?.direction).toBe("-x");
	});

	test("a gap within the tolerance is contact, a wider one is told", () => {
		expect(meetingOf(side, at([18.015, 200, 0], [500, 18, 280]))?.kind).toBe(
			"touching",
		);
		const apart = meetingOf(side, at([18.5, 200, 0], [500, 18, 280]));
		expect(apart?.kind).toBe("apart");
		expect(apart?.gap).toBeCloseTo(0.5, 9);
		expect(apart?.direction).toBe("+x");
	});

	test("edge to edge is no contact", () => {
		expect(touching(side, at([18, 700, 0], [500, 18, 280]))).toBe(false);
		expect(meetingOf(side, at([18, 700, 0], [500, 18, 280]))).toBeUndefined();
	});

	test("a loose shelf in a dado stands apart by its play", () => {
		const dado: Box = { min: [12, 200, 0], max: [18, 218, 300] };
		const loose = meetingOf(
			at([0, 0, 0], [18, 700, 300], [dado]),
			at([12.4, 200.1, 0], [500, 17.8, 300]),
		);
		expect(loose?.kind).toBe("apart");
		expect(loose?.gap).toBeCloseTo(0.1, 9);
	});

	test("overlapping solids say so", () => {
		const meeting = meetingOf(side, at([17, 200, 0], [500, 18, 280]));
		expect(meeting).toEqual({
			kind: "overlapping",
			direction: "+x",
			area: 0,
			gap: 0,
		});
	});

	test("a slanted end: the gap is to its nearest point", () => {
		// The end falls away from the side panel from bottom to top: nearest at the bottom, 2 mm off.
		const rail: Solid = {
			...at([20, 100, 0], [200, 40, 20]),
			outlines: [
				{
					plane: "xy",
					points: [
						[20, 100],
						[220, 100],
						[220, 140],
						[30, 140],
					],
				},
			],
		};
		const meeting = meetingOf(side, rail);
		expect(meeting?.kind).toBe("apart");
		// Up to where its edge is wider than the tolerance: 0.02 mm up is 0.02 * 10 / 40 further in.
		expect(meeting?.gap).toBeGreaterThan(1.999);
		expect(meeting?.gap).toBeLessThan(2.01);
	});
});

describe("Bounds", () => {
	test("follow outlines and cuts", () => {
		const solid: Solid = {
			...boxSolid([100, 50, 20]),
			outlines: [
				{
					plane: "xy",
					points: [
						[10, 0],
						[90, 0],
						[70, 45],
						[30, 45],
					],
				},
			],
			cuts: [
				{ min: [0, -1, 12], max: [100, 51, 30] },
				{ min: [80, -1, -1], max: [101, 51, 21] },
			],
		};
		expect(boundsOf(solid)).toEqual({ min: [10, 0, 0], max: [80, 45, 12] });
		expect(boundsOf({ ...solid, cuts: [solid.box] })).toBeUndefined();
		expect(
			boundsOf({
				...solid,
				outlines: [
					{
						plane: "yz",
						points: [
							[60, 0],
							[80, 0],
							[80, 20],
						],
					},
				],
			}),
		).toBeUndefined();
	});
});
