// Finds parts that share space, parts that meet face to face, and the gap between those that do not.

import { aroundBoth, boundsOf, shapedBounds } from "./bounds.ts";
import { remainder } from "./cells.ts";
import { measure, shapedVolume } from "./measure.ts";
import { axisOf, type Direction, movedSolid, signOf } from "./place.ts";
import { trapezoids } from "./sections.ts";
import {
	type Axis,
	type Box,
	commonSolid,
	isEmpty,
	type Outline,
	type Point2,
	planeAxes,
	type Solid,
	sizeOf,
	type Vec3,
} from "./solid.ts";

/** An overlap no deeper than this, and a gap no wider, is contact: 0.02 mm is far below what a saw can hold. */
export const contactTolerance = 0.02;

/** Two solids that share space. */
export interface Overlap {
	/** Volume that they share, cubic mm. */
	readonly volume: number;
	/**
	 * How deep they go into each other, mm: of the lines along each axis that run in the overlap the longest, of the
	 * three axes the least. Exact for faces along the axes; up to 1.42 times the true depth for slanted ones.
	 */
	readonly depth: number;
	/** Where they overlap, mm. */
	readonly box: Box;
}

/** What two solids have to do with each other. */
export interface Meeting {
	readonly kind: "overlapping" | "touching" | "apart";
	/** The way from the first to the second solid across the contact or the gap. */
	readonly direction: Direction;
	/** Contact area projected along `direction`, square mm; 0 where they do not touch. */
	readonly area: number;
	/** Shortest free way along `direction`, mm; 0 where they touch or overlap. */
	readonly gap: number;
}

/** How many pairs of so many boxes are looked at: thousands in one place would otherwise make millions. */
export function mostPairs(boxes: number): number {
	return 1000 + 20 * boxes;
}

/**
 * Pairs [i, j], i < j, of boxes that come within `margin` mm of each other (negative: that overlap by more than
 * this on every axis), in ascending order. Empty boxes meet nothing. Sweeps along the axis on which the boxes are spread
 * widest, so that time grows with the number of boxes that stand side by side. Boxes that can be built have few
 * neighbours each; of more than `mostPairs` the rest is left out.
 */
export function nearPairs(
	boxes: readonly Box[],
	margin = 0,
): readonly (readonly [number, number])[] {
	const live: number[] = [];
	boxes.forEach((box, i) => {
		if (!isEmpty(box)) live.push(i);
	});
	const axis = widestAxis(boxes, live);
	const [u, v] = axis === 0 ? [1, 2] : axis === 1 ? [0, 2] : [0, 1];
	const box = (i: number): Box => boxes[i] as Box;
	live.sort((a, b) => box(a).min[axis] - box(b).min[axis] || a - b);
	const pairs: [number, number][] = [];
	const most = mostPairs(boxes.length);
	let open: number[] = [];
	for (const i of live) {
		if (pairs.length >= most) break;
		const one = box(i);
		const still: number[] = [];
		for (const j of open) {
			const other = box(j);
			if (one.min[axis] - other.max[axis] > margin) continue;
			still.push(j);
			if (
				near(one, other, u as Axis, margin) &&
				near(one, other, v as Axis, margin) &&
				near(one, other, axis, margin)
			) {
				pairs.push(i < j ? [i, j] : [j, i]);
			}
		}
		still.push(i);
		open = still;
	}
	return pairs.sort((a, b) => a[0] - b[0] || a[1] - b[1]);
}

/**
 * The space that two solids in world coordinates share; undefined where there is none or where it is nowhere deeper
 * than the tolerance. The volume is exact to floating rounding.
 */
export function overlapOf(
	a: Solid,
	b: Solid,
	tolerance: number = contactTolerance,
): Overlap | undefined {
	const common = commonSolid(a, b);
	if (isEmpty(common.box)) return undefined;
	let depth = 0;
	let around: Box | undefined;
	for (const cell of remainder(common.box, common.cuts)) {
		const bounds = shapedBounds(cell, common.outlines);
		if (bounds === undefined) continue;
		const cellDepth = Math.min(...longestLines(bounds, common.outlines));
		if (cellDepth <= tolerance) continue;
		depth = Math.max(depth, cellDepth);
		around = around === undefined ? bounds : aroundBoth(around, bounds);
	}
	if (around === undefined) return undefined;
	const volume = measure(common).volume;
	return volume > 0 ? { volume, depth, box: around } : undefined;
}

/** True where two solids share some area of their faces, or overlap. See `meetingOf`. */
export function touching(
	a: Solid,
	b: Solid,
	tolerance: number = contactTolerance,
): boolean {
	const meeting = meetingOf(a, b, tolerance);
	return meeting !== undefined && meeting.kind !== "apart";
}

/**
 * How two solids meet: overlapping deeper than the tolerance, touching over some area of their faces (no further apart
 * than the tolerance), or apart with the shortest gap along an axis. Undefined where no line along an axis joins them.
 * Contact along an edge or at a corner only is no contact. Contact areas are exact for flat faces; gaps are exact
 * between plain and housed boxes, and found to 0.001 mm by halving where outlines shape one of them; a point or a sharp edge
 * counts from where it is wider than the tolerance.
 */
export function meetingOf(
	a: Solid,
	b: Solid,
	tolerance: number = contactTolerance,
): Meeting | undefined {
	const deep = overlapOf(a, b, tolerance);
	if (deep !== undefined) {
		return {
			kind: "overlapping",
			direction: wayThrough(a, b, deep.box),
			area: 0,
			gap: 0,
		};
	}
	let contact: Meeting | undefined;
	for (const direction of directions) {
		const area = contactArea(a, b, direction, tolerance);
		if (area > (contact?.area ?? 0)) {
			contact = { kind: "touching", direction, area, gap: 0 };
		}
	}
	if (contact !== undefined) return contact;
	let apart: Meeting | undefined;
	for (const direction of directions) {
		const gap = gapAlong(a, b, direction, tolerance);
		if (gap !== undefined && (apart === undefined || gap < apart.gap)) {
			apart = { kind: "apart", direction, area: 0, gap };
		}
	}
	return apart;
}

const directions: readonly Direction[] = ["+x", "-x", "+y", "-y", "+z", "-z"];

function widestAxis(boxes: readonly Box[], live: readonly number[]): Axis {
	let best: Axis = 0;
	let widest = -1;
	for (const axis of [0, 1, 2] as const) {
		// The spread of the middles against the usual size tells how many boxes stand side by side.
		let low = Infinity;
		let high = -Infinity;
		for (const i of live) {
			const box = boxes[i] as Box;
			const middle = (box.min[axis] + box.max[axis]) / 2;
			low = Math.min(low, middle);
			high = Math.max(high, middle);
		}
		if (high - low > widest) {
			widest = high - low;
			best = axis;
		}
	}
	return best;
}

function near(a: Box, b: Box, axis: Axis, margin: number): boolean {
	return (
		a.min[axis] - b.max[axis] <= margin && b.min[axis] - a.max[axis] <= margin
	);
}

/** Of the lines along each axis within bounds and outlines, the longest (or a little more where outlines cross). */
function longestLines(
	bounds: Box,
	outlines: readonly Outline[],
): [number, number, number] {
	const longest: [number, number, number] = [
		bounds.max[0] - bounds.min[0],
		bounds.max[1] - bounds.min[1],
		bounds.max[2] - bounds.min[2],
	];
	for (const plane of ["xy", "yz", "xz"] as const) {
		const own = outlines
			.filter((outline) => outline.plane === plane)
			.map((outline) => outline.points);
		if (own.length === 0) continue;
		const [u, v] = planeAxes[plane];
		const min: Point2 = [bounds.min[u], bounds.min[v]];
		const max: Point2 = [bounds.max[u], bounds.max[v]];
		longest[v] = Math.min(longest[v], longestAcross(own, min, max));
		const turned = own.map((points) =>
			points.map((point): Point2 => [point[1], point[0]]),
		);
		longest[u] = Math.min(
			longest[u],
			longestAcross(turned, [min[1], min[0]], [max[1], max[0]]),
		);
	}
	return longest;
}

function longestAcross(
	outlines: readonly (readonly Point2[])[],
	min: Point2,
	max: Point2,
): number {
	let longest = 0;
	for (const trapezoid of trapezoids(outlines, min, max)) {
		const [a, b, c, d] = trapezoid as readonly [Point2, Point2, Point2, Point2];
		longest = Math.max(longest, d[1] - a[1], c[1] - b[1]);
	}
	return longest;
}

/** The shortest way on which the second solid would leave the first. */
function wayThrough(a: Solid, b: Solid, overlap: Box): Direction {
	let best: Direction = "+x";
	let least = Infinity;
	for (const axis of [0, 1, 2] as const) {
		const depth = overlap.max[axis] - overlap.min[axis];
		if (depth >= least) continue;
		least = depth;
		const middleA = a.box.min[axis] + a.box.max[axis];
		const middleB = b.box.min[axis] + b.box.max[axis];
		best = directions[axis * 2 + (middleB >= middleA ? 0 : 1)] as Direction;
	}
	return best;
}

function shifted(solid: Solid, direction: Direction, by: number): Solid {
	const axis = axisOf(direction);
	const step = signOf(direction) * by;
	const vector: Vec3 = [
		axis === 0 ? step : 0,
		axis === 1 ? step : 0,
		axis === 2 ? step : 0,
	];
	return movedSolid(solid, vector);
}

/**
 * Pushes the second solid toward the first by one and by two tolerances; once they meet, the overlap grows by the contact
 * area times the way. Slivers no wider than the tolerance allows are not area.
 */
function contactArea(
	a: Solid,
	b: Solid,
	direction: Direction,
	tolerance: number,
): number {
	const once = pushedVolume(a, b, direction, tolerance, tolerance);
	const twice = pushedVolume(a, b, direction, 2 * tolerance, tolerance);
	const area = (twice - once) / tolerance;
	// A face narrower than a few tolerances both ways is an edge.
	return area > 100 * tolerance * tolerance ? area : 0;
}

function pushedVolume(
	a: Solid,
	b: Solid,
	direction: Direction,
	by: number,
	tolerance: number,
): number {
	const common = commonSolid(a, shifted(b, direction, -by));
	if (isEmpty(common.box)) return 0;
	const axis = axisOf(direction);
	let volume = 0;
	for (const cell of remainder(common.box, common.cuts)) {
		const bounds = shapedBounds(cell, common.outlines);
		if (bounds === undefined) continue;
		if (Math.min(...across(sizeOf(bounds), axis)) <= 4 * tolerance) continue;
		volume += shapedVolume(cell, common.outlines);
	}
	return volume;
}

function across(values: Vec3, axis: Axis): readonly [number, number] {
	return axis === 0
		? [values[1], values[2]]
		: axis === 1
			? [values[0], values[2]]
			: [values[0], values[1]];
}

function gapAlong(
	a: Solid,
	b: Solid,
	direction: Direction,
	tolerance: number,
): number | undefined {
	return a.outlines.length === 0 && b.outlines.length === 0
		? housedGap(a, b, direction, tolerance)
		: shapedGap(a, b, direction, tolerance);
}

function housedGap(
	a: Solid,
	b: Solid,
	direction: Direction,
	tolerance: number,
): number | undefined {
	const axis = axisOf(direction);
	const forward = signOf(direction) === 1;
	const cellsB = remainder(b.box, b.cuts);
	let least: number | undefined;
	for (const one of remainder(a.box, a.cuts)) {
		for (const other of cellsB) {
			const gap = forward
				? other.min[axis] - one.max[axis]
				: one.min[axis] - other.max[axis];
			if (gap < -tolerance || (least !== undefined && gap >= least)) continue;
			const shared: Vec3 = [
				Math.min(one.max[0], other.max[0]) - Math.max(one.min[0], other.min[0]),
				Math.min(one.max[1], other.max[1]) - Math.max(one.min[1], other.min[1]),
				Math.min(one.max[2], other.max[2]) - Math.max(one.min[2], other.min[2]),
			];
			if (Math.min(...across(shared, axis)) > tolerance) {
				least = Math.max(0, gap);
			}
		}
	}
	return least;
}

function shapedGap(
	a: Solid,
	b: Solid,
	direction: Direction,
	tolerance: number,
): number | undefined {
	const axis = axisOf(direction);
	const boundsA = boundsOf(a);
	const boundsB = boundsOf(b);
	if (boundsA === undefined || boundsB === undefined) return undefined;
	const forward = signOf(direction) === 1;
	const nearest = forward
		? boundsB.min[axis] - boundsA.max[axis]
		: boundsA.min[axis] - boundsB.max[axis];
	const farthest = forward
		? boundsB.max[axis] - boundsA.min[axis]
		: boundsA.max[axis] - boundsB.min[axis];
	if (farthest <= 0) return undefined;
	const meets = (by: number): boolean =>
		sharesWidth(a, shifted(b, direction, -by), axis, tolerance);
	const start = Math.max(0, nearest);
	const steps = 32;
	let free = start;
	for (let i = 1; i < steps; i++) {
		const by = start + ((farthest - start) * i) / steps;
		if (meets(by)) return halved(meets, free, by);
		free = by;
	}
	return undefined;
}

/** True where two solids share space that is wider than the tolerance both ways across an axis. */
function sharesWidth(
	a: Solid,
	b: Solid,
	axis: Axis,
	tolerance: number,
): boolean {
	const common = commonSolid(a, b);
	if (isEmpty(common.box)) return false;
	for (const cell of remainder(common.box, common.cuts)) {
		const bounds = shapedBounds(cell, common.outlines);
		if (bounds === undefined) continue;
		if (Math.min(...across(sizeOf(bounds), axis)) > tolerance) return true;
	}
	return false;
}

/** Where, between a push that leaves them free and one that makes them meet, two solids first meet. */
function halved(
	meets: (by: number) => boolean,
	free: number,
	meeting: number,
): number {
	let low = free;
	let high = meeting;
	// Sixty halvings are more than any number of millimetres needs, and end also where sizes are not numbers.
	for (let i = 0; i < 60 && high - low > 0.0005; i++) {
		const middle = (low + high) / 2;
		if (meets(middle)) high = middle;
		else low = middle;
	}
	return high;
}
