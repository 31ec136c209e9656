// Random solids of the shapes that parts have, the same ones for the same seed.

import type { Placement } from "../../shared/geometry/place.ts";
import { handedness, type Orientation } from "../../shared/geometry/place.ts";
import {
	type Box,
	type Outline,
	type Plane,
	type Point2,
	planeAxes,
	type Solid,
	type Vec3,
} from "../../shared/geometry/solid.ts";

/** A repeatable stream of numbers. */
export interface Source {
	/** A number from low up to high. */
	real(low: number, high: number): number;
	/** A whole number from low to high, both included. */
	whole(low: number, high: number): number;
}

/** The stream of a seed (mulberry32, a small 32-bit generator). */
export function sourceOf(seed: number): Source {
	let state = (seed * 2654435761 + 12345) >>> 0;
	const next = (): number => {
		state = (state + 0x6d2b79f5) >>> 0;
		let t = state;
		t = Math.imul(t ^ (t >>> 15), t | 1);
		t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
		return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
	};
	return {
		real: (low, high) => low + (high - low) * next(),
		whole: (low, high) => low + Math.floor((high - low + 1) * next()),
	};
}

/** What a random solid has: outlines in the planes xy, yz, xz, and up to so many cuts. */
export interface RandomShape {
	readonly outlines: readonly [number, number, number];
	readonly cuts?: number;
}

/** A random part in its own axes, from a stick to a panel. */
export function randomSolid(source: Source, shape: RandomShape): Solid {
	const size: Vec3 = [
		source.real(40, 400),
		source.real(20, 200),
		source.real(5, 100),
	];
	const box: Box = { min: [0, 0, 0], max: size };
	const outlines: Outline[] = [];
	(["xy", "yz", "xz"] as const).forEach((plane, i) => {
		for (let k = 0; k < (shape.outlines[i] as number); k++) {
			outlines.push(randomOutline(source, plane, size));
		}
	});
	const cuts: Box[] = [];
	const count = source.whole(0, shape.cuts ?? 6);
	for (let i = 0; i < count; i++) cuts.push(randomCut(source, size));
	return { box, outlines, cuts };
}

/** A random place, never far from the origin; every second one is mirrored. */
export function inRandomPlace(source: Source): Placement {
	const orders = [
		["x", "y", "z"],
		["x", "z", "y"],
		["y", "x", "z"],
		["y", "z", "x"],
		["z", "x", "y"],
		["z", "y", "x"],
	] as const;
	const order = orders[source.whole(0, 5)] as (typeof orders)[number];
	const axes = order.map(
		(axis) => `${source.whole(0, 1) === 0 ? "+" : "-"}${axis}`,
	) as unknown as Orientation;
	return {
		origin: [source.real(-60, 60), source.real(-60, 60), source.real(-60, 60)],
		axes,
		mirrored: handedness(axes) === -1,
	};
}

/** A cut within, through, sticking out of or beside the box. */
function randomCut(source: Source, size: Vec3): Box {
	const min: [number, number, number] = [0, 0, 0];
	const max: [number, number, number] = [0, 0, 0];
	for (const axis of [0, 1, 2] as const) {
		const whole = size[axis];
		const way = source.whole(0, 3);
		const from = way === 0 ? -1 : source.real(-0.3, 0.9) * whole;
		min[axis] = from;
		max[axis] = way === 0 ? whole + 1 : from + source.real(0.05, 0.6) * whole;
	}
	return { min, max };
}

function randomOutline(source: Source, plane: Plane, size: Vec3): Outline {
	const [u, v] = planeAxes[plane];
	const width = size[u];
	const height = size[v];
	const scaled = (points: readonly Point2[]): Outline => ({
		plane,
		points: points.map(([a, b]): Point2 => [a * width, b * height]),
	});
	switch (source.whole(0, 4)) {
		case 0:
			return scaled(angledEnds(source));
		case 1:
			return scaled(notched(source));
		case 2:
			return scaled(taper(source));
		case 3:
			return scaled(star(source, 0.45, 0.65));
		default:
			return scaled(star(source, 0.15, 0.7));
	}
}

/** Both ends off square. */
function angledEnds(source: Source): readonly Point2[] {
	const low = source.real(-0.1, 0.3);
	const high = source.real(-0.1, 0.3);
	return [
		[low, 0],
		[1 - source.real(-0.1, 0.3), 0],
		[1 - source.real(-0.1, 0.3), 1],
		[high, 1],
	];
}

/** An L, with its sides exactly on the box. */
function notched(source: Source): readonly Point2[] {
	const u = source.real(0.2, 0.8);
	const v = source.real(0.2, 0.8);
	return [
		[0, 0],
		[1, 0],
		[1, v],
		[u, v],
		[u, 1],
		[0, 1],
	];
}

/** A face that falls away along a broken line. */
function taper(source: Source): readonly Point2[] {
	const steps = source.whole(2, 12);
	const face: Point2[] = [];
	for (let i = 0; i <= steps; i++) {
		face.push([1 - i / steps, 1 - source.real(0, 0.5)]);
	}
	return [[0, 0], [1, 0], ...face];
}

/** A polygon seen whole from its middle: hollow where the radii differ much. */
function star(source: Source, least: number, most: number): readonly Point2[] {
	const count = source.whole(3, 14);
	const points: Point2[] = [];
	for (let i = 0; i < count; i++) {
		const angle = (2 * Math.PI * (i + source.real(0, 0.8))) / count;
		const radius = source.real(least, most);
		points.push([
			0.5 + radius * Math.cos(angle),
			0.5 + radius * Math.sin(angle),
		]);
	}
	return points;
}
