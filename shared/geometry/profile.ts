// Shapes the faces of a blank: curves through measured stations, angled ends, and the outline that they leave.

import type { Outline, Point2 } from "./solid.ts";

/** How deep a face is cut in at one place along the blank, both in mm. */
export interface Station {
	/** Distance from the start of the blank, along its length. */
	readonly height: number;
	/** Depth below the face of the blank, not negative. */
	readonly cutIn: number;
}

/** Stations joined by straight cuts or by one fair curve. */
export interface FaceShape {
	readonly stations: readonly Station[];
	readonly kind: "curve" | "straight";
}

/** An end that is not square to the blank. */
export interface AngledEnd {
	/** Angle away from a square cut, radians, from 0 to below a right angle. */
	readonly angle: number;
	/** The face at which the blank keeps its full length. */
	readonly longPoint: Side;
}

/** The face of a blank at 0 across it, or the one at its full width. */
export type Side = "low" | "high";

/** A blank seen flat: u runs along its length from 0, v across it from 0 (the low face) to its width, mm. */
export interface Blank {
	/** The plane in which it is shaped: u is x in both; v is the width ("xy") or the thickness ("xz") of the part. */
	readonly plane: "xy" | "xz";
	readonly length: number;
	readonly width: number;
	readonly low?: FaceShape;
	readonly high?: FaceShape;
	readonly start?: AngledEnd;
	readonly end?: AngledEnd;
}

/** Why a blank cannot be shaped like that; `height` and `left` in mm. */
export type BlankProblem =
	| { readonly kind: "no-blank" }
	| { readonly kind: "not-a-number"; readonly side: Side }
	| { readonly kind: "no-stations"; readonly side: Side }
	| {
			readonly kind: "two-stations-at-one-height";
			readonly side: Side;
			readonly height: number;
	  }
	| {
			readonly kind: "outside-the-blank";
			readonly side: Side;
			readonly height: number;
			readonly cutIn: number;
	  }
	/** The two faces leave no wood: `left` is what stands between them (0 or less). */
	| {
			readonly kind: "cut-through";
			readonly height: number;
			readonly left: number;
	  }
	| { readonly kind: "bad-angle"; readonly angle: number }
	| { readonly kind: "ends-meet" };

/** The outline of a shaped blank, or why there is none. */
export type Shaped =
	| { readonly outline: Outline }
	| { readonly problem: BlankProblem };

/** A drawn curve stays this close to the true one, mm. */
export const curveTolerance = 0.02;

/** A cubic piece between two stations, with the slope (cut-in over height) at both. */
interface Piece {
	readonly from: Station;
	readonly to: Station;
	readonly slopeFrom: number;
	readonly slopeTo: number;
}

/** What the face does past an end station: it runs on straight along the blank, or the wood ends there. */
export interface CurveEnds {
	readonly start: "runs-on" | "free";
	readonly end: "runs-on" | "free";
}

/**
 * The outline of a blank with up to two opposite faces shaped and its ends angled. Past its first and last station a face
 * keeps their cut-in. A curve leaves a station at which the face runs on without a corner. The points stay within
 * `curveTolerance` of the true curves.
 */
export function shapeBlank(blank: Blank): Shaped {
	const { plane, length, width } = blank;
	if (!(length > 0 && width > 0 && length < Infinity && width < Infinity)) {
		return { problem: { kind: "no-blank" } };
	}
	const low = faceLine(blank, "low");
	if ("problem" in low) return low;
	const high = faceLine(blank, "high");
	if ("problem" in high) return high;
	const narrowest = leastBetween(low.line, high.line, width);
	if (!(narrowest.left > 0)) {
		return { problem: { kind: "cut-through", ...narrowest } };
	}
	let points: readonly Point2[] = [
		...low.line.map((at): Point2 => [at.height, at.cutIn]),
		...high.line.map((at): Point2 => [at.height, width - at.cutIn]).reverse(),
	];
	for (const end of ["start", "end"] as const) {
		const angled = blank[end];
		if (angled === undefined) continue;
		const { angle, longPoint } = angled;
		if (!(angle >= 0 && angle < Math.PI / 2)) {
			return { problem: { kind: "bad-angle", angle } };
		}
		// Kept is where the distance from the long point's line, along the length, is not negative.
		const slope = Math.tan(angle);
		points = keep(points, ([u, v]) => {
			const across = longPoint === "low" ? v : width - v;
			return (end === "start" ? u : length - u) - across * slope;
		});
	}
	if (points.length < 3) return { problem: { kind: "ends-meet" } };
	return { outline: { plane, points } };
}

/**
 * Points along the face through stations, in order of height, within `tolerance` mm of the true face (measured along the
 * cut-in, so nearer still at right angles). Stations must be in order of height and at different heights.
 *
 * The curve is the monotone piecewise cubic of F. N. Fritsch and R. E. Carlson, "Monotone Piecewise Cubic
 * Interpolation", SIAM Journal on Numerical Analysis 17 (1980), 238-246: between two stations it never goes past either.
 * At a free end the last piece begins as a parabola.
 */
export function faceThrough(
	stations: readonly Station[],
	kind: FaceShape["kind"],
	ends: CurveEnds,
	tolerance: number = curveTolerance,
): readonly Station[] {
	if (kind === "straight" || stations.length < 2) return stations;
	const points: Station[] = [stations[0] as Station];
	for (const piece of piecesThrough(stations, ends)) {
		appendPiece(piece, 0, 1, tolerance, points);
	}
	return points;
}

/** The cut-in of the true face at a height, mm: the curve itself, not its points. */
export function cutInAt(
	stations: readonly Station[],
	kind: FaceShape["kind"],
	ends: CurveEnds,
	height: number,
): number {
	const first = stations[0];
	const last = stations[stations.length - 1];
	if (first === undefined || last === undefined) return 0;
	if (height <= first.height) return first.cutIn;
	if (height >= last.height) return last.cutIn;
	if (kind === "straight") return onLine(stations, height);
	for (const piece of piecesThrough(stations, ends)) {
		if (height > piece.to.height) continue;
		return onPiece(
			piece,
			(height - piece.from.height) / (piece.to.height - piece.from.height),
		);
	}
	return last.cutIn;
}

/** How the curve of a face treats its ends: it runs on where its end station lies within the blank. */
export function curveEnds(
	stations: readonly Station[],
	length: number,
): CurveEnds {
	const first = stations[0]?.height ?? 0;
	const last = stations[stations.length - 1]?.height ?? 0;
	return {
		start: first > 0 ? "runs-on" : "free",
		end: last < length ? "runs-on" : "free",
	};
}

/** The slopes of a monotone cubic through the stations, and its pieces. */
function piecesThrough(
	stations: readonly Station[],
	ends: CurveEnds,
): readonly Piece[] {
	const count = stations.length;
	const secants: number[] = [];
	for (let k = 1; k < count; k++) {
		const a = stations[k - 1] as Station;
		const b = stations[k] as Station;
		secants.push((b.cutIn - a.cutIn) / (b.height - a.height));
	}
	const secant = (k: number): number => secants[k] as number;
	const slopes: number[] = new Array<number>(count).fill(0);
	for (let k = 1; k < count - 1; k++) {
		// At a summit or a hollow the curve lies level.
		slopes[k] =
			secant(k - 1) * secant(k) > 0 ? (secant(k - 1) + secant(k)) / 2 : 0;
	}
	const bothFree = ends.start === "free" && ends.end === "free";
	if (count === 2 && bothFree) {
		slopes.fill(secant(0));
	} else {
		if (ends.start === "free") {
			slopes[0] = freeSlope(secant(0), slopes[1] as number);
		}
		if (ends.end === "free") {
			slopes[count - 1] = freeSlope(
				secant(count - 2),
				slopes[count - 2] as number,
			);
		}
	}
	// Slopes are cut back to the circle of radius 3 in which a cubic piece is monotone. Each slope takes the stronger
	// of its two neighbours' limits, so that the curve is the same read from either end.
	const limits: number[] = new Array<number>(count).fill(1);
	for (let k = 0; k < count - 1; k++) {
		if (secant(k) === 0) {
			limits[k] = 0;
			limits[k + 1] = 0;
			continue;
		}
		const a = (slopes[k] as number) / secant(k);
		const b = (slopes[k + 1] as number) / secant(k);
		const size = Math.hypot(a, b);
		if (size > 3) {
			limits[k] = Math.min(limits[k] as number, 3 / size);
			limits[k + 1] = Math.min(limits[k + 1] as number, 3 / size);
		}
	}
	const pieces: Piece[] = [];
	for (let k = 0; k < count - 1; k++) {
		pieces.push({
			from: stations[k] as Station,
			to: stations[k + 1] as Station,
			slopeFrom: (slopes[k] as number) * (limits[k] as number),
			slopeTo: (slopes[k + 1] as number) * (limits[k + 1] as number),
		});
	}
	return pieces;
}

/** The slope with which a parabola that has slope `inner` at its other end reaches the end; level rather than turning back. */
function freeSlope(secant: number, inner: number): number {
	const slope = 2 * secant - inner;
	return slope * secant > 0 ? slope : 0;
}

function onPiece(piece: Piece, t: number): number {
	const width = piece.to.height - piece.from.height;
	const rest = 1 - t;
	return (
		piece.from.cutIn * (1 + 2 * t) * rest * rest +
		piece.slopeFrom * width * t * rest * rest +
		piece.to.cutIn * t * t * (3 - 2 * t) -
		piece.slopeTo * width * t * t * rest
	);
}

/** Second derivative of a piece over t. */
function bendOf(piece: Piece, t: number): number {
	const width = piece.to.height - piece.from.height;
	const rise = piece.to.cutIn - piece.from.cutIn;
	return (
		rise * (6 - 12 * t) +
		piece.slopeFrom * width * (6 * t - 4) +
		piece.slopeTo * width * (6 * t - 2)
	);
}

/** Appends the points of a piece after t = a up to t = b. */
function appendPiece(
	piece: Piece,
	a: number,
	b: number,
	tolerance: number,
	into: Station[],
): void {
	// A chord leaves a curve by at most step squared over 8 times its greatest second derivative, which on a cubic is at an end.
	const bend = Math.max(Math.abs(bendOf(piece, a)), Math.abs(bendOf(piece, b)));
	const step = b - a;
	if (bend * step * step > 8 * tolerance && step > 1 / 4096) {
		const middle = (a + b) / 2;
		appendPiece(piece, a, middle, tolerance, into);
		appendPiece(piece, middle, b, tolerance, into);
		return;
	}
	into.push(
		b === 1
			? piece.to
			: {
					height: piece.from.height + (piece.to.height - piece.from.height) * b,
					cutIn: onPiece(piece, b),
				},
	);
}

/** The line of one face from the start of the blank to its end. */
function faceLine(
	blank: Blank,
	side: Side,
): { readonly line: readonly Station[] } | { readonly problem: BlankProblem } {
	const shape = blank[side];
	const { length, width } = blank;
	if (shape === undefined) {
		return {
			line: [
				{ height: 0, cutIn: 0 },
				{ height: length, cutIn: 0 },
			],
		};
	}
	const stations = [...shape.stations].sort((a, b) => a.height - b.height);
	if (stations.length === 0) return { problem: { kind: "no-stations", side } };
	let previous: Station | undefined;
	for (const station of stations) {
		const { height, cutIn } = station;
		if (!Number.isFinite(height) || !Number.isFinite(cutIn)) {
			return { problem: { kind: "not-a-number", side } };
		}
		if (height < 0 || height > length || cutIn < 0 || cutIn > width) {
			return { problem: { kind: "outside-the-blank", side, height, cutIn } };
		}
		if (previous?.height === height) {
			return { problem: { kind: "two-stations-at-one-height", side, height } };
		}
		previous = station;
	}
	const ends = curveEnds(stations, length);
	const line = [...faceThrough(stations, shape.kind, ends)];
	const first = line[0] as Station;
	const last = line[line.length - 1] as Station;
	if (first.height > 0) line.unshift({ height: 0, cutIn: first.cutIn });
	if (last.height < length) line.push({ height: length, cutIn: last.cutIn });
	return { line };
}

function onLine(line: readonly Station[], height: number): number {
	let before = line[0] as Station;
	for (const at of line) {
		if (at.height >= height) {
			if (at.height === before.height) return at.cutIn;
			const t = (height - before.height) / (at.height - before.height);
			return before.cutIn + (at.cutIn - before.cutIn) * t;
		}
		before = at;
	}
	return before.cutIn;
}

/** Where two faces come nearest, and what wood they leave there. */
function leastBetween(
	low: readonly Station[],
	high: readonly Station[],
	width: number,
): { readonly height: number; readonly left: number } {
	let least = { height: 0, left: Infinity };
	for (const { height } of [...low, ...high]) {
		const left = width - onLine(low, height) - onLine(high, height);
		if (left < least.left) least = { height, left };
	}
	return least;
}

/** The part of a polygon where a measure that is linear in the plane is not negative. */
function keep(
	points: readonly Point2[],
	measure: (point: Point2) => number,
): readonly Point2[] {
	const result: Point2[] = [];
	const add = (point: Point2): void => {
		const last = result[result.length - 1];
		if (last === undefined || last[0] !== point[0] || last[1] !== point[1]) {
			result.push(point);
		}
	};
	let previous = points[points.length - 1] as Point2;
	let before = points.length > 0 ? measure(previous) : 0;
	for (const point of points) {
		const here = measure(point);
		if (before < 0 !== here < 0) {
			const t = before / (before - here);
			add([
				previous[0] + (point[0] - previous[0]) * t,
				previous[1] + (point[1] - previous[1]) * t,
			]);
		}
		if (here >= 0) add(point);
		previous = point;
		before = here;
	}
	const first = result[0];
	const last = result[result.length - 1];
	if (
		result.length > 1 &&
		first !== undefined &&
		last !== undefined &&
		first[0] === last[0] &&
		first[1] === last[1]
	) {
		result.pop();
	}
	return result;
}
