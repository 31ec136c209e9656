// Turns a solid into triangles, for drawing and for files that other programs read.

import { remainder } from "./cells.ts";
import { walkingAxis } from "./measure.ts";
import { crossAxes, type Strip, trapezoids, walk } from "./sections.ts";
import type { Axis, Box, Point2, Solid, Vec3 } from "./solid.ts";

/** A closed surface: corners used by several triangles stand once. */
export interface Mesh {
	/** x, y, z of each corner, mm. */
	readonly positions: readonly number[];
	/** Three corners for each triangle, counter-clockwise seen from outside. */
	readonly indices: readonly number[];
	/** Outward unit normal of each triangle: x, y, z. */
	readonly normals: readonly number[];
}

/** A mesh for flat shading: every triangle has corners of its own. */
export interface FlatMesh {
	/** x, y, z of each corner, mm; three corners after another make a triangle. */
	readonly positions: Float32Array;
	/** Outward unit normal at each corner. */
	readonly normals: Float32Array;
}

/** A flat convex face, counter-clockwise seen from outside. */
type Face = readonly Vec3[];

/** Points nearer to each other than this are one, mm. */
const merge = 1e-6;

/**
 * The surface of a solid as triangles, outlines in any planes and cuts included. Every edge of a triangle is met by
 * one that runs the other way, so the mesh is closed; where two parts of a solid only meet along an edge, that edge is met
 * twice. Details below a thousandth of a millimetre may be lost. A solid that reaches a kilometre from the origin, or has no
 * number for a size, has no triangles.
 */
export function trianglesOf(solid: Solid): Mesh {
	if (!isDrawable(solid.box))
		return { positions: [], indices: [], normals: [] };
	const axis = walkingAxis(solid.outlines);
	const inner = new Map<string, { up: Face[]; down: Face[] }>();
	const faces: Face[] = [];
	for (const cell of remainder(solid.box, solid.cuts)) {
		walk(cell, solid.outlines, axis, (strip) => {
			for (const piece of piecesOf(strip, axis)) {
				for (const face of piece) sortFace(face, inner, faces);
			}
			return true;
		});
	}
	// Faces along the axes may lie against a neighbour: only what stands free is surface.
	for (const [key, { up, down }] of inner) {
		const flat = Number(key[0]) as Axis;
		for (const face of up) faces.push(...freeOf(face, down, flat));
		for (const face of down) faces.push(...freeOf(face, up, flat));
	}
	return meshOf(faces);
}

function isDrawable(box: Box): boolean {
	return [...box.min, ...box.max].every((c) => Math.abs(c) < 1e6);
}

/** The same surface with corners and normals for each triangle. */
export function flatShaded(mesh: Mesh): FlatMesh {
	const count = mesh.indices.length;
	const positions = new Float32Array(count * 3);
	const normals = new Float32Array(count * 3);
	for (let corner = 0; corner < count; corner++) {
		const from = (mesh.indices[corner] as number) * 3;
		const triangle = Math.floor(corner / 3) * 3;
		for (let k = 0; k < 3; k++) {
			positions[corner * 3 + k] = mesh.positions[from + k] as number;
			normals[corner * 3 + k] = mesh.normals[triangle + k] as number;
		}
	}
	return { positions, normals };
}

/** The convex bodies of a strip, each as its faces. */
function piecesOf(strip: Strip, axis: Axis): readonly (readonly Face[])[] {
	const [u, v] = crossAxes(axis);
	const point = (s: number, pu: number, pv: number): Vec3 => {
		const result: [number, number, number] = [0, 0, 0];
		result[axis] = s;
		result[u] = pu;
		result[v] = pv;
		return result;
	};
	// x cross y is z and y cross z is x, but x cross z is -y.
	const turned = axis === 1;
	const outward = (face: Face): Face => (turned ? [...face].reverse() : face);
	const pieces: (readonly Face[])[] = [];
	for (const a of strip.u) {
		for (const b of strip.v) {
			const at = (end: 0 | 1): readonly [Vec3, Vec3, Vec3, Vec3] => {
				const s = end === 0 ? strip.from : strip.to;
				const [ul, uh] = end === 0 ? [a.lo0, a.hi0] : [a.lo1, a.hi1];
				const [vl, vh] = end === 0 ? [b.lo0, b.hi0] : [b.lo1, b.hi1];
				return [
					point(s, ul, vl),
					point(s, uh, vl),
					point(s, uh, vh),
					point(s, ul, vh),
				];
			};
			const [p, q, r, t] = at(0);
			const [P, Q, R, T] = at(1);
			const hull = [
				[t, r, q, p],
				[P, Q, R, T],
				[p, q, Q, P],
				[q, r, R, Q],
				[r, t, T, R],
				[t, p, P, T],
			].map(outward);
			if (strip.across === undefined) {
				pieces.push(hull);
				continue;
			}
			const low: Point2 = [Math.min(a.lo0, a.lo1), Math.min(b.lo0, b.lo1)];
			const high: Point2 = [Math.max(a.hi0, a.hi1), Math.max(b.hi0, b.hi1)];
			for (const outline of strip.across) {
				for (const trapezoid of trapezoids([outline], low, high)) {
					const part = clippedBody(hull, trapezoid, u, v);
					if (part.length > 0) pieces.push(part);
				}
			}
		}
	}
	return pieces;
}

/** The part of a convex body within a trapezoid (see `trapezoids`) that stands upright on the plane of u and v. */
function clippedBody(
	body: readonly Face[],
	trapezoid: readonly Point2[],
	u: Axis,
	v: Axis,
): readonly Face[] {
	const [a, b, c, d] = trapezoid as readonly [Point2, Point2, Point2, Point2];
	if (b[0] - a[0] < merge) return [];
	let part = body;
	const cut = (nu: number, nv: number, on: Point2): void => {
		const length = Math.hypot(nu, nv);
		const normal: [number, number, number] = [0, 0, 0];
		normal[u] = nu / length;
		normal[v] = nv / length;
		part = cutBody(part, normal, normal[u] * on[0] + normal[v] * on[1]);
	};
	// Its upright sides may have no length, and then still bound it.
	cut(-1, 0, a);
	cut(1, 0, b);
	cut(b[1] - a[1], a[0] - b[0], a);
	cut(d[1] - c[1], c[0] - d[0], c);
	return part;
}

/** The part of a convex body where dot(normal, point) is at most `limit`, closed again by a face of its own. */
function cutBody(
	body: readonly Face[],
	normal: Vec3,
	limit: number,
): readonly Face[] {
	// A plane along the axes gives its points that very coordinate, so that neighbours agree.
	const exact = normal.findIndex((n) => Math.abs(n) === 1);
	const settle = (point: Vec3): Vec3 => {
		if (exact < 0) return point;
		const settled: [number, number, number] = [...point];
		settled[exact] = limit * (normal[exact] as number);
		return settled;
	};
	const distance = (point: Vec3): number => {
		const d = dot(normal, point) - limit;
		return Math.abs(d) < merge / 10 ? 0 : d;
	};
	if (body.every((face) => face.every((point) => distance(point) <= 0))) {
		return body;
	}
	const kept: Face[] = [];
	const rim: Vec3[] = [];
	for (const face of body) {
		const result: Vec3[] = [];
		let previous = face[face.length - 1] as Vec3;
		let before = distance(previous);
		for (const point of face) {
			const here = distance(point);
			if ((before < 0 && here > 0) || (before > 0 && here < 0)) {
				const hit = settle(between(previous, point, before / (before - here)));
				result.push(hit);
				rim.push(hit);
			}
			if (here <= 0) result.push(point);
			if (here === 0) rim.push(point);
			previous = point;
			before = here;
		}
		if (result.length >= 3 && result.some((point) => distance(point) < 0)) {
			kept.push(result);
		}
	}
	if (kept.length === 0) return [];
	const lid = lidOf(rim, normal);
	if (lid.length >= 3) kept.push(lid);
	return kept;
}

/** The points of a flat convex rim, once each, in order around a normal. */
function lidOf(rim: readonly Vec3[], normal: Vec3): Face {
	const points: Vec3[] = [];
	for (const point of rim) {
		if (!points.some((other) => apart(other, point) < merge)) {
			points.push(point);
		}
	}
	const middle = middleOf(points);
	const least = [0, 1, 2].reduce((a, b) =>
		Math.abs(normal[b] as number) < Math.abs(normal[a] as number) ? b : a,
	);
	const e: Vec3 = [
		least === 0 ? 1 : 0,
		least === 1 ? 1 : 0,
		least === 2 ? 1 : 0,
	];
	const right = crossProduct(e, normal);
	const up = crossProduct(normal, right);
	const angle = (point: Vec3): number => {
		const from = minus(point, middle);
		return Math.atan2(dot(from, up), dot(from, right));
	};
	return points
		.map((point) => ({ point, angle: angle(point) }))
		.sort((a, b) => a.angle - b.angle)
		.map(({ point }) => point);
}

/** Puts a face with those along the axes, by its plane and sense, or with the finished ones. */
function sortFace(
	face: Face,
	inner: Map<string, { up: Face[]; down: Face[] }>,
	finished: Face[],
): void {
	const points = face.filter(
		(point, i) =>
			apart(point, face[(i + face.length - 1) % face.length] as Vec3) >= merge,
	);
	if (points.length < 3) return;
	const normal = areaVector(points);
	if (Math.hypot(...normal) < merge * merge) return;
	const first = points[0] as Vec3;
	for (const axis of [0, 1, 2] as const) {
		const c = first[axis];
		if (points.some((point) => Math.abs(point[axis] - c) > merge / 10)) {
			continue;
		}
		const key = `${axis}:${Math.round(c / merge)}`;
		let group = inner.get(key);
		if (group === undefined) {
			group = { up: [], down: [] };
			inner.set(key, group);
		}
		(normal[axis] > 0 ? group.up : group.down).push(points);
		return;
	}
	finished.push(points);
}

/** What of a face is not covered by faces that lie against it. */
function freeOf(
	face: Face,
	against: readonly Face[],
	flat: Axis,
): readonly Face[] {
	let free: readonly Face[] = [face];
	for (const other of against) {
		const next: Face[] = [];
		for (const part of free) next.push(...outside(part, other, flat));
		free = next;
	}
	return free;
}

/** The part of a convex face outside another in the same plane, as convex faces. */
function outside(face: Face, other: Face, flat: Axis): readonly Face[] {
	const [u, v] = crossAxes(flat);
	if (
		separated(face, other, u) ||
		separated(face, other, v) ||
		other.length < 3
	) {
		return [face];
	}
	const sense = areaVector(other)[flat] > 0 === (flat !== 1) ? 1 : -1;
	const pieces: Face[] = [];
	let rest: Face = face;
	for (let i = 0; i < other.length; i++) {
		const a = other[i] as Vec3;
		const b = other[(i + 1) % other.length] as Vec3;
		const du = b[u] - a[u];
		const dv = b[v] - a[v];
		const length = Math.hypot(du, dv);
		if (length < merge) continue;
		// Positive outside.
		const distance = (point: Vec3): number => {
			const d =
				((dv * (point[u] - a[u]) - du * (point[v] - a[v])) / length) * sense;
			return Math.abs(d) < merge / 2 ? 0 : d;
		};
		const away = side(rest, distance, 1);
		if (away.length >= 3 && away.some((point) => distance(point) > 0)) {
			pieces.push(away);
			rest = side(rest, distance, -1);
			if (rest.length < 3 || !rest.some((point) => distance(point) < 0)) {
				// Nothing of the face lies inside: it stays as it was.
				return [face];
			}
		}
	}
	return pieces;
}

function separated(face: Face, other: Face, axis: Axis): boolean {
	let [lowA, highA, lowB, highB] = [Infinity, -Infinity, Infinity, -Infinity];
	for (const point of face) {
		lowA = Math.min(lowA, point[axis]);
		highA = Math.max(highA, point[axis]);
	}
	for (const point of other) {
		lowB = Math.min(lowB, point[axis]);
		highB = Math.max(highB, point[axis]);
	}
	return lowA > highB - merge || lowB > highA - merge;
}

function side(
	face: Face,
	distance: (point: Vec3) => number,
	sense: 1 | -1,
): Face {
	const result: Vec3[] = [];
	let previous = face[face.length - 1] as Vec3;
	let before = sense * distance(previous);
	for (const point of face) {
		const here = sense * distance(point);
		if ((before < 0 && here > 0) || (before > 0 && here < 0)) {
			result.push(between(previous, point, before / (before - here)));
		}
		if (here >= 0) result.push(point);
		previous = point;
		before = here;
	}
	return result;
}

/** Joins faces into one mesh without gaps: a corner that lies on the edge of another face becomes a corner of it. */
function meshOf(faces: readonly Face[]): Mesh {
	const corners = new Corners();
	const loops = faces
		.map((face) => {
			const loop: number[] = [];
			for (const point of face) {
				const corner = corners.of(point);
				if (loop[loop.length - 1] !== corner) loop.push(corner);
			}
			while (loop.length > 1 && loop[0] === loop[loop.length - 1]) loop.pop();
			return loop;
		})
		.filter((loop) => loop.length >= 3);
	const points = corners.points;
	const order = points
		.map((_, i) => i)
		.sort((a, b) => (points[a] as Vec3)[0] - (points[b] as Vec3)[0]);
	const joined = loops.map((loop) => withCornersOnEdges(loop, points, order));
	const indices: number[] = [];
	const normals: number[] = [];
	joined.forEach((loop, i) => {
		const shape = (loops[i] as number[]).map(
			(corner) => points[corner] as Vec3,
		);
		const vector = areaVector(shape);
		const length = Math.hypot(...vector);
		const unit: Vec3 = [
			vector[0] / length,
			vector[1] / length,
			vector[2] / length,
		];
		const add = (a: number, b: number, c: number): void => {
			indices.push(a, b, c);
			normals.push(...unit);
		};
		if (loop.length === shape.length) {
			for (let k = 2; k < loop.length; k++) {
				add(loop[0] as number, loop[k - 1] as number, loop[k] as number);
			}
			return;
		}
		// Corners in line would make empty triangles in a fan from one of them, but not in one from the middle.
		const middle = points.push(middleOf(shape)) - 1;
		loop.forEach((corner, k) => {
			add(middle, corner, loop[(k + 1) % loop.length] as number);
		});
	});
	return { positions: points.flat(), indices, normals };
}

/** Width of the cells in which corners are looked up, mm. Odd, so that round sizes do not fall on their sides. */
const cellSize = 0.0137;

/** Corners found again by their place. */
class Corners {
	readonly points: Vec3[] = [];
	readonly #cells = new Map<string, number[]>();

	of(point: Vec3): number {
		// A place near the side of its cell is looked for on both sides of it.
		const low = point.map((c) => Math.floor((c - 2 * merge) / cellSize));
		const high = point.map((c) => Math.floor((c + 2 * merge) / cellSize));
		for (let x = low[0] as number; x <= (high[0] as number); x++) {
			for (let y = low[1] as number; y <= (high[1] as number); y++) {
				for (let z = low[2] as number; z <= (high[2] as number); z++) {
					for (const known of this.#cells.get(`${x},${y},${z}`) ?? []) {
						if (apart(this.points[known] as Vec3, point) < 2 * merge) {
							return known;
						}
					}
				}
			}
		}
		const index = this.points.push(point) - 1;
		const key = point.map((c) => Math.floor(c / cellSize)).join(",");
		const list = this.#cells.get(key);
		if (list === undefined) this.#cells.set(key, [index]);
		else list.push(index);
		return index;
	}
}

function withCornersOnEdges(
	loop: readonly number[],
	points: readonly Vec3[],
	order: readonly number[],
): readonly number[] {
	const result: number[] = [];
	loop.forEach((from, k) => {
		result.push(from);
		const to = loop[(k + 1) % loop.length] as number;
		const a = points[from] as Vec3;
		const b = points[to] as Vec3;
		const along = minus(b, a);
		const length = Math.hypot(...along);
		const low = Math.min(a[0], b[0]) - merge;
		const high = Math.max(a[0], b[0]) + merge;
		const found: { corner: number; t: number }[] = [];
		for (let i = firstFrom(order, points, low); i < order.length; i++) {
			const corner = order[i] as number;
			const point = points[corner] as Vec3;
			if (point[0] > high) break;
			if (corner === from || corner === to) continue;
			const offset = minus(point, a);
			const t = dot(offset, along) / length;
			if (t <= 0 || t >= length) continue;
			const aside = Math.hypot(...crossProduct(offset, along)) / length;
			if (aside < 4 * merge) found.push({ corner, t });
		}
		found.sort((one, other) => one.t - other.t);
		for (const { corner } of found) result.push(corner);
	});
	return result;
}

function firstFrom(
	order: readonly number[],
	points: readonly Vec3[],
	low: number,
): number {
	let start = 0;
	let end = order.length;
	while (start < end) {
		const middle = (start + end) >> 1;
		if ((points[order[middle] as number] as Vec3)[0] < low) start = middle + 1;
		else end = middle;
	}
	return start;
}

/** Normal of a flat polygon, with twice its area as length. */
function areaVector(face: Face): [number, number, number] {
	const sum: [number, number, number] = [0, 0, 0];
	const first = face[0] as Vec3;
	for (let i = 2; i < face.length; i++) {
		const part = crossProduct(
			minus(face[i - 1] as Vec3, first),
			minus(face[i] as Vec3, first),
		);
		sum[0] += part[0];
		sum[1] += part[1];
		sum[2] += part[2];
	}
	return sum;
}

function middleOf(points: readonly Vec3[]): Vec3 {
	const sum: [number, number, number] = [0, 0, 0];
	for (const point of points) {
		sum[0] += point[0] / points.length;
		sum[1] += point[1] / points.length;
		sum[2] += point[2] / points.length;
	}
	return sum;
}

function between(a: Vec3, b: Vec3, t: number): Vec3 {
	return [
		a[0] + (b[0] - a[0]) * t,
		a[1] + (b[1] - a[1]) * t,
		a[2] + (b[2] - a[2]) * t,
	];
}

function apart(a: Vec3, b: Vec3): number {
	return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
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
