// The one shape every part has: a box, shaped by outlines, with box-shaped cuts taken out.

/** A point, a direction or a size along x, y and z, in millimetres. */
export type Vec3 = readonly [number, number, number];

/** Index of a coordinate axis: 0 is x, 1 is y, 2 is z. */
export type Axis = 0 | 1 | 2;

/** A box from corner to corner in part or world coordinates, mm. It is empty where `min` reaches `max` on any axis. */
export interface Box {
	readonly min: Vec3;
	readonly max: Vec3;
}

/** A coordinate plane, named by its first (u) and second (v) axis. */
export type Plane = "xy" | "yz" | "xz";

/** A point of an outline as [u, v], mm. */
export type Point2 = readonly [number, number];

/**
 * A simple polygon in one coordinate plane, points [u, v] in mm, not closed by repeating the first.
 * Plane "xy" has u = x, v = y; "yz" has u = y, v = z; "xz" has u = x, v = z.
 * Points run counter-clockwise with u to the right and v up. That is how "xy" looks from +z and "yz" from +x;
 * "xz" looks so from -y, because x cross z is -y.
 * Volumes, rays and meshes do not depend on the sense; an outline that crosses itself is read by the even-odd rule.
 */
export interface Outline {
	readonly plane: Plane;
	readonly points: readonly Point2[];
}

/**
 * The part of `box` that lies within every outline extruded without end along its plane's normal, minus every cut
 * (boxes along the axes: dadoes, rabbets, grooves, mortises). Several outlines in one plane are intersected.
 * Cuts may overlap each other, stick out of the box or miss it.
 */
export interface Solid {
	readonly box: Box;
	readonly outlines: readonly Outline[];
	readonly cuts: readonly Box[];
}

/** The axes of a plane: [u, v]. */
export const planeAxes: Readonly<Record<Plane, readonly [Axis, Axis]>> = {
	xy: [0, 1],
	yz: [1, 2],
	xz: [0, 2],
};

/** The plane spanned by two different axes. */
export function planeOf(a: Axis, b: Axis): Plane {
	const sum = a + b;
	return sum === 1 ? "xy" : sum === 3 ? "yz" : "xz";
}

/** The axis that stands upright on a plane. */
export function normalOf(plane: Plane): Axis {
	return plane === "xy" ? 2 : plane === "yz" ? 0 : 1;
}

/** A plain box from the origin to the given size (length, width, thickness), mm. */
export function boxSolid(size: Vec3): Solid {
	return { box: { min: [0, 0, 0], max: size }, outlines: [], cuts: [] };
}

/** Size of a box along each axis, mm; negative where it is turned inside out. */
export function sizeOf(box: Box): Vec3 {
	return [
		box.max[0] - box.min[0],
		box.max[1] - box.min[1],
		box.max[2] - box.min[2],
	];
}

/** True where a box holds no volume. */
export function isEmpty(box: Box): boolean {
	return !(
		box.max[0] > box.min[0] &&
		box.max[1] > box.min[1] &&
		box.max[2] > box.min[2]
	);
}

/** The box that two boxes share; empty (see `isEmpty`) where they share none. */
export function commonBox(a: Box, b: Box): Box {
	return {
		min: [
			Math.max(a.min[0], b.min[0]),
			Math.max(a.min[1], b.min[1]),
			Math.max(a.min[2], b.min[2]),
		],
		max: [
			Math.min(a.max[0], b.max[0]),
			Math.min(a.max[1], b.max[1]),
			Math.min(a.max[2], b.max[2]),
		],
	};
}

/** The solid that two solids share: their common box, the outlines of both, the cuts of both. */
export function commonSolid(a: Solid, b: Solid): Solid {
	return {
		box: commonBox(a.box, b.box),
		outlines:
			a.outlines.length === 0
				? b.outlines
				: b.outlines.length === 0
					? a.outlines
					: [...a.outlines, ...b.outlines],
		cuts:
			a.cuts.length === 0
				? b.cuts
				: b.cuts.length === 0
					? a.cuts
					: [...a.cuts, ...b.cuts],
	};
}
