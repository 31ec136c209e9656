// A part goes to its place and comes back, also through a mirror.

import { describe, expect, test } from "vitest";
import {
	inRandomPlace,
	randomSolid,
	sourceOf,
} from "../../tests/harness/random-solids.ts";
import { measure } from "./measure.ts";
import {
	directionToLocal,
	directionToWorld,
	handedness,
	inverse,
	isPlacement,
	mirrored,
	mirroredSolid,
	type Placement,
	pointToLocal,
	pointToWorld,
	solidToLocal,
	solidToWorld,
	thirdOf,
} from "./place.ts";
import { isEmpty, type Outline, type Solid } from "./solid.ts";

/** Twice the signed area: positive where the points run counter-clockwise. */
function turn(outline: Outline): number {
	let sum = 0;
	outline.points.forEach(([u, v], i) => {
		const next = outline.points[(i + 1) % outline.points.length] as readonly [
			number,
			number,
		];
		sum += u * next[1] - v * next[0];
	});
	return sum;
}

function expectSame(a: Solid, b: Solid): void {
	expect(a.outlines.map((o) => o.plane)).toEqual(
		b.outlines.map((o) => o.plane),
	);
	const numbers = (solid: Solid): number[] => [
		...solid.box.min,
		...solid.box.max,
		...solid.cuts.flatMap((cut) => [...cut.min, ...cut.max]),
		// A mirror turns the order of the points round; as a set they stay.
		...solid.outlines.flatMap((o) =>
			[...o.points].sort((p, q) => p[0] - q[0] || p[1] - q[1]).flat(),
		),
	];
	const left = numbers(a);
	numbers(b).forEach((value, i) => {
		expect(left[i]).toBeCloseTo(value, 9);
	});
}

describe("Placement", () => {
	test("a side panel stands upright: length up, width to the back, thickness to the right", () => {
		// Up cross back is y cross -z = -x, so its thickness runs to the left.
		expect(thirdOf("+y", "-z")).toBe("-x");
		const place: Placement = { origin: [18, 100, 0], axes: ["+y", "-z", "-x"] };
		expect(isPlacement(place)).toBe(true);
		expect(pointToWorld(place, [700, 300, 18])).toEqual([0, 800, -300]);
		expect(pointToLocal(place, [0, 800, -300])).toEqual([700, 300, 18]);
	});

	test("left-handed axes are refused unless the part is mirrored", () => {
		expect(handedness(["+x", "+y", "-z"])).toBe(-1);
		expect(handedness(["+x", "+x", "-z"])).toBe(0);
		expect(isPlacement({ origin: [0, 0, 0], axes: ["+x", "+y", "-z"] })).toBe(
			false,
		);
		expect(
			isPlacement({
				origin: [0, 0, 0],
				axes: ["+x", "+y", "-z"],
				mirrored: true,
			}),
		).toBe(true);
		expect(
			isPlacement({
				origin: [0, 0, 0],
				axes: ["+x", "+y", "+y"],
				mirrored: true,
			}),
		).toBe(false);
		expect(thirdOf("+x", "-x")).toBeUndefined();
	});

	test("there and back is the same; volume and sense stay; the centre goes along", () => {
		for (let seed = 0; seed < 200; seed++) {
			const source = sourceOf(seed);
			const solid = randomSolid(source, { outlines: [1, 1, 1] });
			const place = inRandomPlace(source);
			expect(isPlacement(place)).toBe(true);
			expect(isPlacement(inverse(place))).toBe(true);
			const world = solidToWorld(place, solid);
			expectSame(solidToLocal(place, world), solid);
			world.outlines.forEach((outline, i) => {
				const before = turn(solid.outlines[i] as Outline);
				expect(turn(outline)).toBeCloseTo(before, 6);
			});
			const here = measure(solid);
			const there = measure(world);
			expect(there.volume).toBeCloseTo(here.volume, 4);
			if (here.volume === 0) continue;
			pointToWorld(place, here.centre).forEach((c, i) => {
				expect(there.centre[i]).toBeCloseTo(c, 6);
			});
		}
	});

	test("a mirrored copy stands at the same distance on the other side of x = c", () => {
		const source = sourceOf(7);
		const solid = randomSolid(source, { outlines: [1, 0, 1] });
		const place: Placement = {
			origin: [100, 20, 30],
			axes: ["+y", "-z", "-x"],
		};
		const other = mirrored(place, 350);
		expect(isPlacement(other)).toBe(true);
		const [x, y, z] = pointToWorld(place, [5, 6, 7]);
		expect(pointToWorld(other, [5, 6, 7])).toEqual([700 - x, y, z]);
		expectSame(
			solidToWorld(other, solid),
			mirroredSolid(solidToWorld(place, solid), 350),
		);
		expect(mirrored(other, 350)).toEqual({ ...place, mirrored: false });
	});

	test("directions turn without moving", () => {
		const place: Placement = { origin: [9, 9, 9], axes: ["+y", "-z", "-x"] };
		expect(directionToWorld(place, [1, 2, 3])).toEqual([-3, 1, -2]);
		expect(directionToLocal(place, [-3, 1, -2])).toEqual([1, 2, 3]);
	});

	test("an empty box stays empty", () => {
		const place: Placement = { origin: [0, 0, 0], axes: ["-x", "-y", "+z"] };
		const solid: Solid = {
			box: { min: [5, 0, 0], max: [3, 1, 1] },
			outlines: [],
			cuts: [],
		};
		expect(isEmpty(solidToWorld(place, solid).box)).toBe(true);
	});
});
