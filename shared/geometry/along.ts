// Follows the axis of a fastener through a part: where it runs in wood.

import {
	type Box,
	type Outline,
	type Point2,
	planeAxes,
	type Solid,
	type Vec3,
} from "./solid.ts";

/** A stretch of a ray within a solid, as distances from its start, mm. */
export interface Stretch {
	readonly from: number;
	readonly to: number;
}

/**
 * The stretches of the ray start + t * direction, t >= 0, that run inside a solid, in order and apart from each other.
 * `direction` need not have unit length; distances are in mm. A ray along a surface counts as inside on the sides of
 * the box and outside in a cut; along an edge of an outline either may come out.
 */
export function stretchesAlong(
	solid: Solid,
	start: Vec3,
	direction: Vec3,
): readonly Stretch[] {
	const length = Math.hypot(...direction);
	if (!(length > 0) || !Number.isFinite(length)) return [];
	const unit: Vec3 = [
		direction[0] / length,
		direction[1] / length,
		direction[2] / length,
	];
	const whole = throughBox(solid.box, start, unit, true);
	if (whole === undefined) return [];
	const from = Math.max(0, whole.from);
	if (!(whole.to > from)) return [];
	let inside: readonly Stretch[] = [{ from, to: whole.to }];
	for (const outline of solid.outlines) {
		inside = common(inside, throughOutline(outline, start, unit));
	}
	for (const cut of solid.cuts) {
		const gone = throughBox(cut, start, unit, false);
		if (gone !== undefined) inside = without(inside, gone);
	}
	return inside;
}

/** Length of the ray within the solid, mm, all stretches together. See `stretchesAlong`. */
export function lengthInside(
	solid: Solid,
	start: Vec3,
	direction: Vec3,
): number {
	let sum = 0;
	for (const stretch of stretchesAlong(solid, start, direction)) {
		sum += stretch.to - stretch.from;
	}
	return sum;
}

function throughBox(
	box: Box,
	start: Vec3,
	unit: Vec3,
	closed: boolean,
): Stretch | undefined {
	let from = -Infinity;
	let to = Infinity;
	for (let axis = 0; axis < 3; axis++) {
		const s = start[axis] as number;
		const d = unit[axis] as number;
		const min = box.min[axis] as number;
		const max = box.max[axis] as number;
		if (!(max > min)) return undefined;
		if (d === 0) {
			if (closed ? s < min || s > max : s <= min || s >= max) return undefined;
			continue;
		}
		const a = (min - s) / d;
		const b = (max - s) / d;
		from = Math.max(from, Math.min(a, b));
		to = Math.min(to, Math.max(a, b));
	}
	return to > from ? { from, to } : undefined;
}

function throughOutline(
	outline: Outline,
	start: Vec3,
	unit: Vec3,
): readonly Stretch[] {
	const [u, v] = planeAxes[outline.plane];
	const from: Point2 = [start[u], start[v]];
	const du = unit[u];
	const dv = unit[v];
	if (du === 0 && dv === 0) {
		return insidePolygon(outline.points, from)
			? [{ from: -Infinity, to: Infinity }]
			: [];
	}
	const square = du * du + dv * dv;
	const hits: number[] = [];
	let previous = outline.points[outline.points.length - 1];
	if (previous === undefined) return [];
	let before = side(previous, from, du, dv);
	for (const point of outline.points) {
		const here = side(point, from, du, dv);
		// Half open, so that a corner on the ray is met once or twice, as it should be.
		if (before < 0 !== here < 0) {
			const t = before / (before - here);
			const hitU = previous[0] + (point[0] - previous[0]) * t;
			const hitV = previous[1] + (point[1] - previous[1]) * t;
			hits.push(((hitU - from[0]) * du + (hitV - from[1]) * dv) / square);
		}
		previous = point;
		before = here;
	}
	hits.sort((a, b) => a - b);
	const result: Stretch[] = [];
	for (let i = 1; i < hits.length; i += 2) {
		const a = hits[i - 1] as number;
		const b = hits[i] as number;
		const last = result[result.length - 1];
		if (last !== undefined && last.to === a) {
			result[result.length - 1] = { from: last.from, to: b };
		} else if (b > a) result.push({ from: a, to: b });
	}
	return result;
}

function side(point: Point2, from: Point2, du: number, dv: number): number {
	return du * (point[1] - from[1]) - dv * (point[0] - from[0]);
}

function common(
	a: readonly Stretch[],
	b: readonly Stretch[],
): readonly Stretch[] {
	const result: Stretch[] = [];
	for (const one of a) {
		for (const other of b) {
			const from = Math.max(one.from, other.from);
			const to = Math.min(one.to, other.to);
			if (to > from) result.push({ from, to });
		}
	}
	return result;
}

function without(
	stretches: readonly Stretch[],
	gone: Stretch,
): readonly Stretch[] {
	const result: Stretch[] = [];
	for (const one of stretches) {
		if (gone.to <= one.from || gone.from >= one.to) {
			result.push(one);
			continue;
		}
		if (gone.from > one.from) result.push({ from: one.from, to: gone.from });
		if (gone.to < one.to) result.push({ from: gone.to, to: one.to });
	}
	return result;
}

/** True where a point lies in a polygon (even-odd); on an edge either may come out. */
export function insidePolygon(
	points: readonly Point2[],
	point: Point2,
): boolean {
	let inside = false;
	let previous = points[points.length - 1];
	for (const next of points) {
		if (previous === undefined) break;
		if (previous[1] > point[1] !== next[1] > point[1]) {
			const t = (point[1] - previous[1]) / (next[1] - previous[1]);
			if (point[0] < previous[0] + (next[0] - previous[0]) * t) {
				inside = !inside;
			}
		}
		previous = next;
	}
	return inside;
}
