// Lays a profile that is drawn along a blank into the world: along y, and across x or z.

import type { AngledEnd } from "../../geometry/profile.ts";
import { type Outline, type Point2, planeOf } from "../../geometry/solid.ts";

export interface Ends {
	readonly start?: AngledEnd;
	readonly end?: AngledEnd;
}

/** Points [along y, across the axis] moved to the world; `from` is where both are 0, mm. */
export function pathOutline(
	points: readonly Point2[],
	axis: 0 | 2,
	from: readonly [number, number],
): Outline {
	const moved = points.map(([u, v]): Point2 => [u + from[0], v + from[1]]);
	return worldOutline(moved, 1, axis);
}

/** An outline of points [a, b] on two world axes, in the sense that outlines have. */
export function worldOutline(
	points: readonly Point2[],
	a: 0 | 1 | 2,
	b: 0 | 1 | 2,
): Outline {
	// The planes name their lower axis first.
	const ordered = a < b ? [...points] : points.map(([u, v]): Point2 => [v, u]);
	return {
		plane: planeOf(a, b),
		points: areaOf(ordered) < 0 ? ordered.reverse() : ordered,
	};
}

/** Twice the area, positive where the points run counter-clockwise. */
function areaOf(points: readonly Point2[]): number {
	let sum = 0;
	points.forEach((point, index) => {
		const next = points[(index + 1) % points.length] as Point2;
		sum += point[0] * next[1] - next[0] * point[1];
	});
	return sum;
}
