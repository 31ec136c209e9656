// Puts a part where it stands: from its own axes (along the grain, across, thickness) to the world and back.

import {
	type Axis,
	type Box,
	type Outline,
	type Point2,
	planeAxes,
	planeOf,
	type Solid,
	type Vec3,
} from "./solid.ts";

/** A world axis with its sense. The world seen from the front: x to the right, y up, z toward the viewer. */
export type Direction = "+x" | "-x" | "+y" | "-y" | "+z" | "-z";

/**
 * Where the three axes of a part point in the world: [length, width, thickness]. Each world axis is named once.
 * Right-handed, except in a mirrored placement.
 */
export type Orientation = readonly [Direction, Direction, Direction];

/**
 * The place of a part: world = origin + each local coordinate along its direction, mm.
 * Local axes are x along the grain (length), y across it (width), z through it (thickness).
 */
export interface Placement {
	/** Where the local origin stands in the world, mm. */
	readonly origin: Vec3;
	readonly axes: Orientation;
	/** True where the part is the mirror image of its local solid: the axes are then left-handed. */
	readonly mirrored?: boolean;
}

/** The part stands in the world as it lies in its own axes. */
export const unplaced: Placement = {
	origin: [0, 0, 0],
	axes: ["+x", "+y", "+z"],
};

const axisIndex: Readonly<Record<Direction, Axis>> = {
	"+x": 0,
	"-x": 0,
	"+y": 1,
	"-y": 1,
	"+z": 2,
	"-z": 2,
};

const opposites: Readonly<Record<Direction, Direction>> = {
	"+x": "-x",
	"-x": "+x",
	"+y": "-y",
	"-y": "+y",
	"+z": "-z",
	"-z": "+z",
};

/** The world axis of a direction. */
export function axisOf(direction: Direction): Axis {
	return axisIndex[direction];
}

/** 1 or -1: the sense of a direction along its axis. */
export function signOf(direction: Direction): 1 | -1 {
	return direction.charCodeAt(0) === 43 ? 1 : -1;
}

/** The direction that points the other way. */
export function opposite(direction: Direction): Direction {
	return opposites[direction];
}

/** The unit vector of a direction. */
export function unitOf(direction: Direction): Vec3 {
	const sign = signOf(direction);
	const axis = axisOf(direction);
	return [axis === 0 ? sign : 0, axis === 1 ? sign : 0, axis === 2 ? sign : 0];
}

/** 1 for right-handed axes, -1 for left-handed ones, 0 where an axis is named twice. */
export function handedness(axes: Orientation): 1 | -1 | 0 {
	const [a, b, c] = [axisOf(axes[0]), axisOf(axes[1]), axisOf(axes[2])];
	if (a === b || b === c || a === c) return 0;
	const sign = signOf(axes[0]) * signOf(axes[1]) * signOf(axes[2]);
	const cyclic = (b - a + 3) % 3 === 1;
	return (cyclic ? sign : -sign) as 1 | -1;
}

/** The third direction that makes a right-handed orientation of two; undefined where both lie on one axis. */
export function thirdOf(
	length: Direction,
	width: Direction,
): Direction | undefined {
	for (const third of ["+x", "-x", "+y", "-y", "+z", "-z"] as const) {
		if (handedness([length, width, third]) === 1) return third;
	}
	return undefined;
}

/** True where the axes are a signed permutation whose handedness agrees with `mirrored`. */
export function isPlacement(place: Placement): boolean {
	return handedness(place.axes) === (place.mirrored === true ? -1 : 1);
}

/** A local point in the world, mm. */
export function pointToWorld(place: Placement, point: Vec3): Vec3 {
	const world: [number, number, number] = [...place.origin];
	for (let i = 0; i < 3; i++) {
		const direction = place.axes[i] as Direction;
		world[axisOf(direction)] += signOf(direction) * (point[i] as number);
	}
	return world;
}

/** A world point in the part's own axes, mm. */
export function pointToLocal(place: Placement, point: Vec3): Vec3 {
	return toLocal(place, [
		point[0] - place.origin[0],
		point[1] - place.origin[1],
		point[2] - place.origin[2],
	]);
}

/** A local direction (not a point) in the world. */
export function directionToWorld(place: Placement, vector: Vec3): Vec3 {
	return pointToWorld({ origin: [0, 0, 0], axes: place.axes }, vector);
}

/** A world direction (not a point) in the part's own axes. */
export function directionToLocal(place: Placement, vector: Vec3): Vec3 {
	return toLocal(place, vector);
}

/** A local box in the world, mm. */
export function boxToWorld(place: Placement, box: Box): Box {
	const min: [number, number, number] = [0, 0, 0];
	const max: [number, number, number] = [0, 0, 0];
	for (let i = 0; i < 3; i++) {
		const direction = place.axes[i] as Direction;
		const axis = axisOf(direction);
		const from = place.origin[axis] as number;
		const low = box.min[i] as number;
		const high = box.max[i] as number;
		// A reversed axis swaps the ends, so that an empty box stays empty.
		const forward = signOf(direction) === 1;
		min[axis] = forward ? from + low : from - high;
		max[axis] = forward ? from + high : from - low;
	}
	return { min, max };
}

/** A world box in the part's own axes, mm. */
export function boxToLocal(place: Placement, box: Box): Box {
	return boxToWorld(inverse(place), box);
}

/** A local solid in the world, mm. Outlines keep their counter-clockwise sense, also through a mirror. */
export function solidToWorld(place: Placement, solid: Solid): Solid {
	return {
		box: boxToWorld(place, solid.box),
		outlines: solid.outlines.map((outline) =>
			outlineThrough(outline, place.origin, place.axes),
		),
		cuts: solid.cuts.map((cut) => boxToWorld(place, cut)),
	};
}

/** A world solid in the part's own axes, mm. */
export function solidToLocal(place: Placement, solid: Solid): Solid {
	return solidToWorld(inverse(place), solid);
}

/** The placement that undoes another. */
export function inverse(place: Placement): Placement {
	const axes: [Direction, Direction, Direction] = ["+x", "+y", "+z"];
	for (let i = 0; i < 3; i++) {
		const direction = place.axes[i] as Direction;
		const back = (["+x", "+y", "+z"] as const)[i] as Direction;
		axes[axisOf(direction)] = signOf(direction) === 1 ? back : opposite(back);
	}
	const [x, y, z] = place.origin;
	const origin = toLocal(place, [-x, -y, -z]);
	return place.mirrored === undefined
		? { origin, axes }
		: { origin, axes, mirrored: place.mirrored };
}

/** The same part mirrored about the world plane x = c, mm. Mirrored twice it is the first again. */
export function mirrored(place: Placement, c: number): Placement {
	const flip = (direction: Direction): Direction =>
		axisOf(direction) === 0 ? opposite(direction) : direction;
	const [length, width, thickness] = place.axes;
	return {
		origin: [2 * c - place.origin[0], place.origin[1], place.origin[2]],
		axes: [flip(length), flip(width), flip(thickness)],
		mirrored: place.mirrored !== true,
	};
}

/** A world box mirrored about the world plane x = c, mm. */
export function mirroredBox(box: Box, c: number): Box {
	return boxToWorld(mirrored(unplaced, c), box);
}

/** A world solid mirrored about the world plane x = c, mm. */
export function mirroredSolid(solid: Solid, c: number): Solid {
	return solidToWorld(mirrored(unplaced, c), solid);
}

/** A world solid moved by a vector, mm. */
export function movedSolid(solid: Solid, by: Vec3): Solid {
	return solidToWorld({ origin: by, axes: unplaced.axes }, solid);
}

function toLocal(place: Placement, vector: Vec3): Vec3 {
	const part = (direction: Direction): number => {
		const value = vector[axisOf(direction)] as number;
		return signOf(direction) === 1 ? value : 0 - value;
	};
	const [length, width, thickness] = place.axes;
	return [part(length), part(width), part(thickness)];
}

function outlineThrough(
	outline: Outline,
	origin: Vec3,
	axes: Orientation,
): Outline {
	const [u, v] = planeAxes[outline.plane];
	const du = axes[u];
	const dv = axes[v];
	const au = axisOf(du);
	const av = axisOf(dv);
	const su = signOf(du);
	const sv = signOf(dv);
	const plane = planeOf(au, av);
	const swapped = planeAxes[plane][0] !== au;
	const points = outline.points.map((point): Point2 => {
		const pu = origin[au] + su * point[0];
		const pv = origin[av] + sv * point[1];
		return swapped ? [pv, pu] : [pu, pv];
	});
	// A swap or one reversed axis turns the sense of the polygon round.
	if ((su * sv === 1) === swapped) points.reverse();
	return { plane, points };
}
