// Walks a shaped box along one axis, in strips within which every edge of the cross-section is a straight line.

import {
	type Axis,
	type Box,
	normalOf,
	type Outline,
	type Point2,
	planeAxes,
	planeOf,
} from "./solid.ts";

/** A stretch of one cross axis whose two ends move in a straight line from the start (0) to the end (1) of a strip. */
export interface Span {
	readonly lo0: number;
	readonly lo1: number;
	readonly hi0: number;
	readonly hi1: number;
}

/**
 * A strip of a solid from `from` to `to` along the walking axis. Its cross-section is every u span times every v span,
 * and, where `across` is given, only what of that lies in one of these polygons (they share no area).
 */
export interface Strip {
	readonly from: number;
	readonly to: number;
	readonly u: readonly Span[];
	readonly v: readonly Span[];
	readonly across: readonly (readonly Point2[])[] | undefined;
}

/** Lines that a strip should also be split at, where an edge of the cross-section passes them. */
export interface ExtraLines {
	readonly s?: readonly number[];
	readonly u?: readonly number[];
	readonly v?: readonly number[];
}

/** An edge of an outline seen along the walking axis, its lower end first. */
interface Edge {
	readonly s0: number;
	readonly s1: number;
	readonly w0: number;
	readonly w1: number;
	readonly outline: number;
}

/** The outlines that lie in one plane with the walking axis, and the box they are clipped to. */
interface Profile {
	/** Sorted by where they begin. */
	readonly edges: readonly Edge[];
	readonly outlines: number;
	readonly min: number;
	readonly max: number;
	readonly extra: readonly number[];
}

/** An edge within one strip: where it is at the start and at the end. */
interface Line {
	readonly a: number;
	readonly b: number;
	readonly outline: number;
}

/** The two cross axes of a walking axis, in order: x has [y, z], y has [x, z], z has [x, y]. */
export function crossAxes(axis: Axis): readonly [Axis, Axis] {
	return axis === 0 ? [1, 2] : axis === 1 ? [0, 2] : [0, 1];
}

/**
 * Visits the strips of box and outlines along `axis`, from low to high, leaving out those that are empty.
 * The visitor returns false to stop.
 */
export function walk(
	box: Box,
	outlines: readonly Outline[],
	axis: Axis,
	visit: (strip: Strip) => boolean | undefined,
	lines: ExtraLines = {},
): void {
	const [u, v] = crossAxes(axis);
	const start = box.min[axis];
	const end = box.max[axis];
	const boxAcross =
		box.max[u] > box.min[u] && box.max[v] > box.min[v] && end > start;
	if (!boxAcross) return;
	const profileU = profileOf(box, outlines, axis, u, lines.u ?? []);
	const profileV = profileOf(box, outlines, axis, v, lines.v ?? []);
	const across = acrossOf(box, outlines, axis);
	if (across !== undefined && across.length === 0) return;
	const breaks = breaksOf(start, end, profileU, profileV, lines.s ?? []);
	const activeU = new Active(profileU.edges);
	const activeV = new Active(profileV.edges);
	for (let i = 1; i < breaks.length; i++) {
		const from = breaks[i - 1] as number;
		const to = breaks[i] as number;
		const linesU = activeU.at(from, to);
		const linesV = activeV.at(from, to);
		if (profileU.outlines > 0 && linesU.length === 0) continue;
		if (profileV.outlines > 0 && linesV.length === 0) continue;
		const parts = [0, 1];
		crossings(profileU, linesU, parts);
		crossings(profileV, linesV, parts);
		sortNumbers(parts);
		for (let k = 1; k < parts.length; k++) {
			const p = parts[k - 1] as number;
			const q = parts[k] as number;
			if (!(q > p)) continue;
			const spansU = spansOf(profileU, linesU, p, q);
			if (spansU.length === 0) continue;
			const spansV = spansOf(profileV, linesV, p, q);
			if (spansV.length === 0) continue;
			const strip = {
				from: p === 0 ? from : from + (to - from) * p,
				to: q === 1 ? to : from + (to - from) * q,
				u: spansU,
				v: spansV,
				across,
			};
			const more =
				across === undefined ? visit(strip) : visitAcross(strip, across, visit);
			if (more === false) return;
		}
	}
}

/**
 * The part of a rectangle that lies within every outline of one plane, as trapezoids that share no area,
 * with sides along the plane's second axis.
 */
export function trapezoids(
	outlines: readonly (readonly Point2[])[],
	min: Point2,
	max: Point2,
): readonly (readonly Point2[])[] {
	const box: Box = { min: [min[0], min[1], 0], max: [max[0], max[1], 1] };
	const flat = outlines.map((points): Outline => ({ plane: "xy", points }));
	const result: Point2[][] = [];
	walk(box, flat, 0, (strip) => {
		for (const span of strip.u) {
			result.push([
				[strip.from, span.lo0],
				[strip.to, span.lo1],
				[strip.to, span.hi1],
				[strip.from, span.hi0],
			]);
		}
		return true;
	});
	return result;
}

/** True where a strip with polygons across it holds any area, judged at its middle. */
export function holdsArea(strip: Strip): boolean {
	if (strip.across === undefined) return true;
	const area = sectionAt(strip, 0.5).area;
	const u = strip.u[strip.u.length - 1] as Span;
	const v = strip.v[strip.v.length - 1] as Span;
	const scale =
		Math.max(u.hi0, u.hi1) -
		Math.min(u.lo0, u.lo1) +
		Math.max(v.hi0, v.hi1) -
		Math.min(v.lo0, v.lo1);
	return area > 1e-12 * scale * scale;
}

/** Area of a cross-section and its first moments about the axes (area times distance). */
export interface Section {
	readonly area: number;
	readonly u: number;
	readonly v: number;
}

/** The cross-section of a strip at t, from 0 at its start to 1 at its end. */
export function sectionAt(strip: Strip, t: number): Section {
	let area = 0;
	let momentU = 0;
	let momentV = 0;
	for (const u of strip.u) {
		const u0 = u.lo0 + (u.lo1 - u.lo0) * t;
		const u1 = u.hi0 + (u.hi1 - u.hi0) * t;
		for (const v of strip.v) {
			const v0 = v.lo0 + (v.lo1 - v.lo0) * t;
			const v1 = v.hi0 + (v.hi1 - v.hi0) * t;
			if (strip.across === undefined) {
				const rectangle = (u1 - u0) * (v1 - v0);
				area += rectangle;
				momentU += (rectangle * (u0 + u1)) / 2;
				momentV += (rectangle * (v0 + v1)) / 2;
			} else {
				for (const polygon of strip.across) {
					const part = clippedSection(polygon, u0, u1, v0, v1);
					area += part.area;
					momentU += part.u;
					momentV += part.v;
				}
			}
		}
	}
	return { area, u: momentU, v: momentV };
}

/** Area and first moments of the part of a polygon that lies in a rectangle, whatever the sense of the polygon. */
export function clippedSection(
	polygon: readonly Point2[],
	u0: number,
	u1: number,
	v0: number,
	v1: number,
): Section {
	// Clipping one side after the other leaves doubled edges on a hollow polygon; they cancel in these sums.
	let points: readonly Point2[] = polygon;
	points = clipSide(points, 0, u0, 1);
	points = clipSide(points, 0, u1, -1);
	points = clipSide(points, 1, v0, 1);
	points = clipSide(points, 1, v1, -1);
	let area = 0;
	let momentU = 0;
	let momentV = 0;
	let previous = points[points.length - 1];
	if (previous === undefined) return { area: 0, u: 0, v: 0 };
	// Sums are taken about a corner of the rectangle, so that far from the origin no figures are lost.
	for (const point of points) {
		const ax = previous[0] - u0;
		const ay = previous[1] - v0;
		const bx = point[0] - u0;
		const by = point[1] - v0;
		const cross = ax * by - bx * ay;
		area += cross;
		momentU += cross * (ax + bx);
		momentV += cross * (ay + by);
		previous = point;
	}
	const sign = area < 0 ? -1 : 1;
	area = (sign * area) / 2;
	return {
		area,
		u: (sign * momentU) / 6 + area * u0,
		v: (sign * momentV) / 6 + area * v0,
	};
}

/** Keeps the side of a polygon where sense * (coordinate - limit) is not negative. */
function clipSide(
	points: readonly Point2[],
	coordinate: 0 | 1,
	limit: number,
	sense: 1 | -1,
): readonly Point2[] {
	let outside = false;
	for (const point of points) {
		if (sense * (point[coordinate] - limit) < 0) {
			outside = true;
			break;
		}
	}
	if (!outside) return points;
	const result: Point2[] = [];
	let previous = points[points.length - 1] as Point2;
	let before = sense * (previous[coordinate] - limit);
	for (const point of points) {
		const here = sense * (point[coordinate] - limit);
		if (before < 0 !== here < 0) {
			const t = before / (before - here);
			const other = coordinate === 0 ? 1 : 0;
			const w = previous[other] + (point[other] - previous[other]) * t;
			result.push(coordinate === 0 ? [limit, w] : [w, limit]);
		}
		if (here >= 0) result.push(point);
		previous = point;
		before = here;
	}
	return result;
}

function profileOf(
	box: Box,
	outlines: readonly Outline[],
	axis: Axis,
	cross: Axis,
	extra: readonly number[],
): Profile {
	const plane = planeOf(axis, cross);
	const edges: Edge[] = [];
	let count = 0;
	for (const outline of outlines) {
		if (outline.plane !== plane) continue;
		const along = planeAxes[plane][0] === axis ? 0 : 1;
		const points = outline.points;
		let previous = points[points.length - 1];
		for (const point of points) {
			if (previous === undefined) break;
			const s0 = previous[along];
			const s1 = point[along];
			const w0 = previous[1 - along] as number;
			const w1 = point[1 - along] as number;
			if (s0 < s1) edges.push({ s0, s1, w0, w1, outline: count });
			else if (s1 < s0)
				edges.push({ s0: s1, s1: s0, w0: w1, w1: w0, outline: count });
			previous = point;
		}
		count++;
	}
	edges.sort((a, b) => a.s0 - b.s0);
	return {
		edges,
		outlines: count,
		min: box.min[cross],
		max: box.max[cross],
		extra,
	};
}

/** The polygons that stand across the walking axis; undefined where no outline does. */
function acrossOf(
	box: Box,
	outlines: readonly Outline[],
	axis: Axis,
): readonly (readonly Point2[])[] | undefined {
	let found: (readonly Point2[])[] | undefined;
	for (const outline of outlines) {
		if (normalOf(outline.plane) !== axis) continue;
		found ??= [];
		found.push(outline.points);
	}
	if (found === undefined || found.length === 1) return found;
	const [u, v] = crossAxes(axis);
	return trapezoids(found, [box.min[u], box.min[v]], [box.max[u], box.max[v]]);
}

function breaksOf(
	start: number,
	end: number,
	a: Profile,
	b: Profile,
	extra: readonly number[],
): readonly number[] {
	const all = [start, end];
	const add = (s: number): void => {
		if (s > start && s < end) all.push(s);
	};
	for (const edge of a.edges) {
		add(edge.s0);
		add(edge.s1);
	}
	for (const edge of b.edges) {
		add(edge.s0);
		add(edge.s1);
	}
	for (const s of extra) add(s);
	sortNumbers(all);
	return all.filter((s, i) => i === 0 || s > (all[i - 1] as number));
}

/** The edges that run through a strip, found by moving on from strip to strip. */
class Active {
	readonly #edges: readonly Edge[];
	#next = 0;
	#open: Edge[] = [];

	constructor(edges: readonly Edge[]) {
		this.#edges = edges;
	}

	at(from: number, to: number): readonly Line[] {
		if (this.#edges.length === 0) return [];
		let edge = this.#edges[this.#next];
		while (edge !== undefined && edge.s0 <= from) {
			this.#open.push(edge);
			this.#next++;
			edge = this.#edges[this.#next];
		}
		this.#open = this.#open.filter((one) => one.s1 >= to);
		return this.#open.map((one) => ({
			a: valueAt(one, from),
			b: valueAt(one, to),
			outline: one.outline,
		}));
	}
}

function valueAt(edge: Edge, s: number): number {
	// Ends exactly, so that edges which share a point agree there.
	if (s === edge.s0) return edge.w0;
	if (s === edge.s1) return edge.w1;
	return edge.w0 + ((s - edge.s0) / (edge.s1 - edge.s0)) * (edge.w1 - edge.w0);
}

/** Appends where, between 0 and 1, two lines of a strip cross or one passes a side of the box or an extra line. */
function crossings(
	profile: Profile,
	lines: readonly Line[],
	into: number[],
): void {
	for (let i = 0; i < lines.length; i++) {
		const one = lines[i] as Line;
		cross(one.a - profile.min, one.b - profile.min, into);
		cross(one.a - profile.max, one.b - profile.max, into);
		for (const w of profile.extra) cross(one.a - w, one.b - w, into);
		for (let j = i + 1; j < lines.length; j++) {
			const other = lines[j] as Line;
			cross(one.a - other.a, one.b - other.b, into);
		}
	}
}

function cross(before: number, after: number, into: number[]): void {
	if ((before < 0 && after > 0) || (before > 0 && after < 0)) {
		into.push(before / (before - after));
	}
}

function spansOf(
	profile: Profile,
	lines: readonly Line[],
	p: number,
	q: number,
): readonly Span[] {
	const { min, max } = profile;
	let spans: Span[] = [{ lo0: min, lo1: min, hi0: max, hi1: max }];
	for (let outline = 0; outline < profile.outlines; outline++) {
		const own = lines.filter((line) => line.outline === outline);
		own.sort((a, b) => middle(a, p, q) - middle(b, p, q));
		const next: Span[] = [];
		for (let i = 1; i < own.length; i += 2) {
			const lo = own[i - 1] as Line;
			const hi = own[i] as Line;
			const inner: Span = {
				lo0: at(lo, p),
				lo1: at(lo, q),
				hi0: at(hi, p),
				hi1: at(hi, q),
			};
			for (const span of spans) {
				const shared = commonSpan(span, inner);
				if (shared !== undefined) next.push(shared);
			}
		}
		spans = next;
	}
	return spans;
}

function at(line: Line, t: number): number {
	if (t === 0) return line.a;
	if (t === 1) return line.b;
	return line.a + (line.b - line.a) * t;
}

function middle(line: Line, p: number, q: number): number {
	return at(line, (p + q) / 2);
}

/** The span that two share; their ends do not cross within the strip, so the middle decides. */
function commonSpan(a: Span, b: Span): Span | undefined {
	const lo = a.lo0 + a.lo1 >= b.lo0 + b.lo1 ? a : b;
	const hi = a.hi0 + a.hi1 <= b.hi0 + b.hi1 ? a : b;
	if (!(hi.hi0 + hi.hi1 > lo.lo0 + lo.lo1)) return undefined;
	return { lo0: lo.lo0, lo1: lo.lo1, hi0: hi.hi0, hi1: hi.hi1 };
}

/** Splits a strip further where the corners of its rectangles cross a polygon across it, then visits the pieces. */
function visitAcross(
	strip: Strip,
	across: readonly (readonly Point2[])[],
	visit: (strip: Strip) => boolean | undefined,
): boolean | undefined {
	const parts = [0, 1];
	for (const polygon of across) {
		let previous = polygon[polygon.length - 1] as Point2;
		for (const point of polygon) {
			for (const span of strip.u) {
				cross(span.lo0 - point[0], span.lo1 - point[0], parts);
				cross(span.hi0 - point[0], span.hi1 - point[0], parts);
			}
			for (const span of strip.v) {
				cross(span.lo0 - point[1], span.lo1 - point[1], parts);
				cross(span.hi0 - point[1], span.hi1 - point[1], parts);
			}
			for (const u of strip.u) {
				for (const v of strip.v) {
					cornerCrossings(previous, point, u, v, parts);
				}
			}
			previous = point;
		}
	}
	sortNumbers(parts);
	const height = strip.to - strip.from;
	for (let k = 1; k < parts.length; k++) {
		const p = parts[k - 1] as number;
		const q = parts[k] as number;
		if (!(q > p)) continue;
		const more = visit({
			from: p === 0 ? strip.from : strip.from + height * p,
			to: q === 1 ? strip.to : strip.from + height * q,
			u: strip.u.map((span) => partOf(span, p, q)),
			v: strip.v.map((span) => partOf(span, p, q)),
			across,
		});
		if (more === false) return false;
	}
	return true;
}

function cornerCrossings(
	from: Point2,
	to: Point2,
	u: Span,
	v: Span,
	into: number[],
): void {
	const du = to[0] - from[0];
	const dv = to[1] - from[1];
	const side = (cu: number, cv: number): number =>
		du * (cv - from[1]) - dv * (cu - from[0]);
	cross(side(u.lo0, v.lo0), side(u.lo1, v.lo1), into);
	cross(side(u.lo0, v.hi0), side(u.lo1, v.hi1), into);
	cross(side(u.hi0, v.lo0), side(u.hi1, v.lo1), into);
	cross(side(u.hi0, v.hi0), side(u.hi1, v.hi1), into);
}

function partOf(span: Span, p: number, q: number): Span {
	return {
		lo0: span.lo0 + (span.lo1 - span.lo0) * p,
		lo1: span.lo0 + (span.lo1 - span.lo0) * q,
		hi0: span.hi0 + (span.hi1 - span.hi0) * p,
		hi1: span.hi0 + (span.hi1 - span.hi0) * q,
	};
}

function sortNumbers(values: number[]): void {
	if (values.length > 2 || (values[0] as number) > (values[1] as number)) {
		values.sort((a, b) => a - b);
	}
}
