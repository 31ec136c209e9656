// Tells how much wood covers a fastener, biscuit or dowel on every side, and how far two of them stand apart.

import { insidePolygon } from "./along.ts";
import {
	type Axis,
	type Box,
	isEmpty,
	type Outline,
	type Point2,
	planeAxes,
	type Solid,
	type Vec3,
} from "./solid.ts";

/**
 * The space that a fastener, biscuit or dowel takes up: a box in any position, swollen by a radius.
 * A dowel or screw is a thin core [half its length, 0, 0] with its radius (its ends are then round and reach past the core).
 */
export interface Envelope {
	readonly centre: Vec3;
	/** Three unit vectors at right angles. */
	readonly axes: readonly [Vec3, Vec3, Vec3];
	/** Half the size along each axis, mm; 0 makes it flat or a line. */
	readonly half: Vec3;
	/** Added all around, mm. */
	readonly radius: number;
}

/** The thinnest wood around an envelope. */
export interface Cover {
	/** Distance from the envelope to the nearest surface, mm; negative: how far it comes out there. */
	readonly distance: number;
	/** Which surface that is: a side of the box, an edge of an outline, or a cut, by index. */
	readonly surface:
		| {
				readonly kind: "side";
				readonly axis: Axis;
				readonly end: "min" | "max";
		  }
		| {
				readonly kind: "outline";
				readonly outline: number;
				readonly edge: number;
		  }
		| { readonly kind: "cut"; readonly cut: number };
}

/** The envelope of a round fastener from one point to another, both in mm: a line swollen by its radius. */
export function roundEnvelope(from: Vec3, to: Vec3, radius: number): Envelope {
	const along: Vec3 = [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
	const length = Math.hypot(...along);
	const x: Vec3 =
		length > 0
			? [along[0] / length, along[1] / length, along[2] / length]
			: [1, 0, 0];
	const least = leastAxis(x);
	const y = unit(
		crossProduct(x, [
			least === 0 ? 1 : 0,
			least === 1 ? 1 : 0,
			least === 2 ? 1 : 0,
		]),
	);
	return {
		centre: [
			(from[0] + to[0]) / 2,
			(from[1] + to[1]) / 2,
			(from[2] + to[2]) / 2,
		],
		axes: [x, y, crossProduct(x, y)],
		half: [length / 2, 0, 0],
		radius,
	};
}

/**
 * The smallest cover of an envelope in a solid. A surface counts with all of its plane: the part of a cut or an outline
 * that lies outside the box is never nearer than the box itself. Exact where the envelope lies inside; where it comes out,
 * the distance tells by how much (for a cut: the shortest way out of it).
 */
export function coverOf(solid: Solid, envelope: Envelope): Cover {
	const corners = cornersOf(envelope);
	const around = boxAround(corners);
	let best: Cover = {
		distance: Infinity,
		surface: { kind: "side", axis: 0, end: "min" },
	};
	const offer = (distance: number, surface: Cover["surface"]): void => {
		if (distance - envelope.radius < best.distance) {
			best = { distance: distance - envelope.radius, surface };
		}
	};
	for (const axis of [0, 1, 2] as const) {
		offer(around.min[axis] - solid.box.min[axis], {
			kind: "side",
			axis,
			end: "min",
		});
		offer(solid.box.max[axis] - around.max[axis], {
			kind: "side",
			axis,
			end: "max",
		});
	}
	solid.outlines.forEach((outline, i) => {
		const [distance, edge] = coverInOutline(outline, corners);
		offer(distance, { kind: "outline", outline: i, edge });
	});
	solid.cuts.forEach((cut, i) => {
		if (isEmpty(cut)) return;
		// A box around the envelope is never farther than the envelope, so most cuts drop out here.
		if (boxDistance(around, cut) - envelope.radius >= best.distance) return;
		offer(distanceBetween(envelope, envelopeOf(cut)), { kind: "cut", cut: i });
	});
	return best;
}

/** True where an envelope stays inside a solid with at least `cover` mm of wood on every side. */
export function staysInside(
	solid: Solid,
	envelope: Envelope,
	cover: number,
): boolean {
	return coverOf(solid, envelope).distance >= cover;
}

/** Free distance between two envelopes, mm; negative where they meet: how far one must move to be free of the other. */
export function clearanceBetween(a: Envelope, b: Envelope): number {
	return distanceBetween(a, b) - a.radius - b.radius;
}

/** A box along the axes as an envelope. */
export function envelopeOf(box: Box): Envelope {
	return {
		centre: [
			(box.min[0] + box.max[0]) / 2,
			(box.min[1] + box.max[1]) / 2,
			(box.min[2] + box.max[2]) / 2,
		],
		axes: [
			[1, 0, 0],
			[0, 1, 0],
			[0, 0, 1],
		],
		half: [
			(box.max[0] - box.min[0]) / 2,
			(box.max[1] - box.min[1]) / 2,
			(box.max[2] - box.min[2]) / 2,
		],
		radius: 0,
	};
}

/** Cover of projected corners in an outline, and the edge that decides it. */
function coverInOutline(
	outline: Outline,
	corners: readonly Vec3[],
): readonly [number, number] {
	const [u, v] = planeAxes[outline.plane];
	const hull = convexHull(
		corners.map((corner): Point2 => [corner[u], corner[v]]),
	);
	const points = outline.points;
	if (points.length === 0) return [-Infinity, 0];
	// How far the corners that stick out stand from the outline.
	let outside = 0;
	let outsideEdge = 0;
	for (const corner of hull) {
		if (insidePolygon(points, corner)) continue;
		const [distance, edge] = distanceToPolygon(points, corner);
		if (distance > outside) {
			outside = distance;
			outsideEdge = edge;
		}
	}
	if (outside > 0) return [-outside, outsideEdge];
	let nearest = Infinity;
	let nearestEdge = 0;
	for (let i = 0; i < points.length; i++) {
		const a = points[i] as Point2;
		const b = points[(i + 1) % points.length] as Point2;
		const distance = segmentToHull(a, b, hull);
		if (distance < nearest) {
			nearest = distance;
			nearestEdge = i;
		}
	}
	return [nearest, nearestEdge];
}

function distanceToPolygon(
	points: readonly Point2[],
	point: Point2,
): readonly [number, number] {
	let nearest = Infinity;
	let edge = 0;
	for (let i = 0; i < points.length; i++) {
		const distance = pointToSegment(
			point,
			points[i] as Point2,
			points[(i + 1) % points.length] as Point2,
		);
		if (distance < nearest) {
			nearest = distance;
			edge = i;
		}
	}
	return [nearest, edge];
}

function pointToSegment(point: Point2, a: Point2, b: Point2): number {
	const du = b[0] - a[0];
	const dv = b[1] - a[1];
	const square = du * du + dv * dv;
	const along =
		square > 0 ? ((point[0] - a[0]) * du + (point[1] - a[1]) * dv) / square : 0;
	const t = Math.min(1, Math.max(0, along));
	return Math.hypot(point[0] - a[0] - du * t, point[1] - a[1] - dv * t);
}

/** Distance from a segment to a convex polygon; negative where it enters: how deep. */
function segmentToHull(a: Point2, b: Point2, hull: readonly Point2[]): number {
	let nearest = Infinity;
	let apart = -Infinity;
	for (let i = 0; i < hull.length; i++) {
		const p = hull[i] as Point2;
		const q = hull[(i + 1) % hull.length] as Point2;
		nearest = Math.min(
			nearest,
			pointToSegment(p, a, b),
			pointToSegment(a, p, q),
			pointToSegment(b, p, q),
		);
		const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
		if (length === 0) continue;
		// Outward side of a counter-clockwise hull edge.
		const nu = (q[1] - p[1]) / length;
		const nv = (p[0] - q[0]) / length;
		apart = Math.max(
			apart,
			Math.min(
				(a[0] - p[0]) * nu + (a[1] - p[1]) * nv,
				(b[0] - p[0]) * nu + (b[1] - p[1]) * nv,
			),
		);
	}
	// The normal of the segment itself may part them too.
	const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
	if (length > 0) {
		const nu = (b[1] - a[1]) / length;
		const nv = (a[0] - b[0]) / length;
		let low = Infinity;
		let high = -Infinity;
		for (const p of hull) {
			const d = (p[0] - a[0]) * nu + (p[1] - a[1]) * nv;
			low = Math.min(low, d);
			high = Math.max(high, d);
		}
		apart = Math.max(apart, low, -high);
	}
	return apart < 0 ? apart : nearest;
}

/** Convex hull, counter-clockwise (Andrew's monotone chain). */
function convexHull(points: readonly Point2[]): readonly Point2[] {
	const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
	const chain = (ordered: readonly Point2[]): Point2[] => {
		const half: Point2[] = [];
		for (const point of ordered) {
			while (half.length >= 2) {
				const a = half[half.length - 2] as Point2;
				const b = half[half.length - 1] as Point2;
				const turn =
					(b[0] - a[0]) * (point[1] - a[1]) - (b[1] - a[1]) * (point[0] - a[0]);
				if (turn > 0) break;
				half.pop();
			}
			half.push(point);
		}
		half.pop();
		return half;
	};
	const hull = [...chain(sorted), ...chain(sorted.reverse())];
	return hull.length > 0 ? hull : sorted.slice(0, 1);
}

function cornersOf(envelope: Envelope): readonly Vec3[] {
	const { centre, axes, half } = envelope;
	const corners: Vec3[] = [];
	for (let i = 0; i < 8; i++) {
		const a = (i & 1 ? 1 : -1) * half[0];
		const b = (i & 2 ? 1 : -1) * half[1];
		const c = (i & 4 ? 1 : -1) * half[2];
		corners.push([
			centre[0] + a * axes[0][0] + b * axes[1][0] + c * axes[2][0],
			centre[1] + a * axes[0][1] + b * axes[1][1] + c * axes[2][1],
			centre[2] + a * axes[0][2] + b * axes[1][2] + c * axes[2][2],
		]);
	}
	return corners;
}

function boxAround(points: readonly Vec3[]): Box {
	const min: [number, number, number] = [Infinity, Infinity, Infinity];
	const max: [number, number, number] = [-Infinity, -Infinity, -Infinity];
	for (const point of points) {
		for (let axis = 0; axis < 3; axis++) {
			min[axis] = Math.min(min[axis] as number, point[axis] as number);
			max[axis] = Math.max(max[axis] as number, point[axis] as number);
		}
	}
	return { min, max };
}

function boxDistance(a: Box, b: Box): number {
	const gap = (axis: Axis): number =>
		Math.max(0, a.min[axis] - b.max[axis], b.min[axis] - a.max[axis]);
	return Math.hypot(gap(0), gap(1), gap(2));
}

/**
 * Distance between the cores of two envelopes; negative where they meet: the shortest way apart along the normals of
 * their faces and across their edges (separating axes).
 */
function distanceBetween(a: Envelope, b: Envelope): number {
	const between: Vec3 = [
		b.centre[0] - a.centre[0],
		b.centre[1] - a.centre[1],
		b.centre[2] - a.centre[2],
	];
	let apart = -Infinity;
	const tryAxis = (axis: Vec3): void => {
		const length = Math.hypot(...axis);
		if (length < 1e-9) return;
		const gap =
			(Math.abs(dot(axis, between)) - reach(a, axis) - reach(b, axis)) / length;
		apart = Math.max(apart, gap);
	};
	for (const axis of a.axes) tryAxis(axis);
	for (const axis of b.axes) tryAxis(axis);
	for (const one of a.axes) {
		for (const other of b.axes) tryAxis(crossProduct(one, other));
	}
	if (apart <= 0) return apart;
	// Apart: a corner of one against the other, or an edge against an edge.
	let nearest = Infinity;
	const cornersA = cornersOf(a);
	const cornersB = cornersOf(b);
	for (const corner of cornersA) {
		nearest = Math.min(nearest, pointToEnvelope(corner, b));
	}
	for (const corner of cornersB) {
		nearest = Math.min(nearest, pointToEnvelope(corner, a));
	}
	for (const [p, q] of edgeCorners) {
		for (const [r, s] of edgeCorners) {
			nearest = Math.min(
				nearest,
				segmentDistance(
					cornersA[p] as Vec3,
					cornersA[q] as Vec3,
					cornersB[r] as Vec3,
					cornersB[s] as Vec3,
				),
			);
		}
	}
	return nearest;
}

/** The twelve edges of a box, by the corners that they join (see `cornersOf`). */
const edgeCorners: readonly (readonly [number, number])[] = [
	[0, 1],
	[2, 3],
	[4, 5],
	[6, 7],
	[0, 2],
	[1, 3],
	[4, 6],
	[5, 7],
	[0, 4],
	[1, 5],
	[2, 6],
	[3, 7],
];

/** How far the core of an envelope reaches from its centre along a vector, times the length of the vector. */
function reach(envelope: Envelope, axis: Vec3): number {
	return (
		envelope.half[0] * Math.abs(dot(envelope.axes[0], axis)) +
		envelope.half[1] * Math.abs(dot(envelope.axes[1], axis)) +
		envelope.half[2] * Math.abs(dot(envelope.axes[2], axis))
	);
}

function pointToEnvelope(point: Vec3, envelope: Envelope): number {
	const from: Vec3 = [
		point[0] - envelope.centre[0],
		point[1] - envelope.centre[1],
		point[2] - envelope.centre[2],
	];
	const beyond = (axis: Axis): number =>
		Math.max(0, Math.abs(dot(from, envelope.axes[axis])) - envelope.half[axis]);
	return Math.hypot(beyond(0), beyond(1), beyond(2));
}

/** Shortest distance between two segments in space: the closest points of their lines, held to the segments. */
function segmentDistance(a: Vec3, b: Vec3, c: Vec3, d: Vec3): number {
	const u = minus(b, a);
	const v = minus(d, c);
	const w = minus(a, c);
	const uu = dot(u, u);
	const vv = dot(v, v);
	const uv = dot(u, v);
	const uw = dot(u, w);
	const vw = dot(v, w);
	const clamp = (t: number): number => Math.min(1, Math.max(0, t));
	const determinant = uu * vv - uv * uv;
	let s =
		determinant > 1e-12 * uu * vv
			? clamp((uv * vw - vv * uw) / determinant)
			: 0;
	let t = vv > 0 ? (uv * s + vw) / vv : 0;
	if (t < 0 || t > 1) {
		t = clamp(t);
		s = uu > 0 ? clamp((uv * t - uw) / uu) : 0;
	}
	return Math.hypot(
		w[0] + s * u[0] - t * v[0],
		w[1] + s * u[1] - t * v[1],
		w[2] + s * u[2] - t * v[2],
	);
}

function minus(a: Vec3, b: Vec3): Vec3 {
	return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

function dot(a: Vec3, b: Vec3): number {
	return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

function crossProduct(a: Vec3, b: Vec3): Vec3 {
	return [
		a[1] * b[2] - a[2] * b[1],
		a[2] * b[0] - a[0] * b[2],
		a[0] * b[1] - a[1] * b[0],
	];
}

function unit(vector: Vec3): Vec3 {
	const length = Math.hypot(...vector);
	return [vector[0] / length, vector[1] / length, vector[2] / length];
}

function leastAxis(vector: Vec3): Axis {
	const size = vector.map(Math.abs);
	return size.indexOf(Math.min(...size)) as Axis;
}
