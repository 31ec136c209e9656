// Where a fastener lies in the wood: how much of it in which part, and how far it may go.

import { lengthInside, stretchesAlong } from "../geometry/along.ts";
import type { Vec3 } from "../geometry/solid.ts";
import { numberOf } from "../model/size.ts";
import type { FastenerRun, Part, Piece } from "../model/types.ts";
import { neighboursOf, reach } from "./neighbours.ts";

/** One fastener on its way into the wood. */
export interface Driven {
	readonly run: FastenerRun;
	readonly way: WayIn;
	readonly wood: WoodAlong;
}

const linesOf = new WeakMap<Piece, readonly (readonly FastenerRun[])[]>();
const drivenOf = new WeakMap<FastenerRun, readonly Driven[]>();

/**
 * The fasteners of a piece, those of one line of its text together: a left and a right, or the four corners of a box, are
 * told once. In the order of joints and mounts.
 */
export function fastenerLines(
	piece: Piece,
): readonly (readonly FastenerRun[])[] {
	const known = linesOf.get(piece);
	if (known) return known;
	const lines = new Map<string, FastenerRun[]>();
	for (const held of [...piece.joints, ...piece.mounts]) {
		for (const run of held.fasteners) {
			const { uri, span } = run.origin;
			const key = `${uri} ${span.start} ${run.size.label}`;
			const line = lines.get(key);
			if (line) line.push(run);
			else lines.set(key, [run]);
		}
	}
	const found = [...lines.values()];
	linesOf.set(piece, found);
	return found;
}

/** Every fastener of a run on its way in; worked out once, for all checks that ask. */
export function drivenIn(run: FastenerRun): readonly Driven[] {
	let driven = drivenOf.get(run);
	if (!driven) {
		driven = run.points.flatMap((point) =>
			waysIn(run, point).map((way) => ({ run, way, wood: woodAlong(way) })),
		);
		drivenOf.set(run, driven);
	}
	return driven;
}

/** One way of a fastener into the wood: a driven one has one, a dowel or biscuit two, from the middle. */
export interface WayIn {
	readonly start: Vec3;
	/** Unit vector. */
	readonly direction: Vec3;
	/** The part that the tip is in: where it should stay. */
	readonly holds: Part;
	/** The part that it passes first; undefined for half a dowel. */
	readonly passes: Part | undefined;
	/** How far from the start the tip is, mm. */
	readonly tip: number;
	/** How far from the start the wood begins that it passes, mm: the countersink. */
	readonly sunk: number;
}

/** Parts that meet closer than this count as one thickness, mm: the clearance of a back in its rabbet. */
const seam = reach;

/** The ways of the fastener at one of its points. */
export function waysIn(run: FastenerRun, point: Vec3): readonly WayIn[] {
	const length = numberOf(run.size.length);
	if (run.size.kind === "dowel" || run.size.kind === "biscuit") {
		const half = length / 2;
		const ahead = lengthInside(run.into.solid, point, run.direction);
		const behind = lengthInside(run.into.solid, point, back(run.direction));
		const intoAhead = ahead >= behind;
		const way = (holds: Part, direction: Vec3): WayIn => ({
			start: point,
			direction,
			holds,
			passes: undefined,
			tip: half,
			sunk: 0,
		});
		return [
			way(run.into, intoAhead ? run.direction : back(run.direction)),
			way(run.through, intoAhead ? back(run.direction) : run.direction),
		];
	}
	const sunk = run.countersink ?? 0;
	// At an angle it goes less deep; which way it leans is not told, so it is followed straight.
	const depth = length * Math.cos((run.angle * Math.PI) / 180);
	return [
		{
			start: point,
			direction: run.direction,
			holds: run.into,
			passes: run.through,
			tip: sunk + depth,
			sunk,
		},
	];
}

/** Wood along a way in, as distances from its start, mm. */
export interface WoodAlong {
	/** Where the part that it passes ends; 0 if it passes none. */
	readonly passed: number;
	/** Where the part that holds it begins and ends; both `passed` if it is never reached. */
	readonly from: number;
	readonly to: number;
}

/** The wood that a way in runs through before it first comes to air. */
export function woodAlong(way: WayIn): WoodAlong {
	let passed = 0;
	if (way.passes) {
		for (const stretch of stretchesAlong(
			way.passes.solid,
			way.start,
			way.direction,
		)) {
			if (stretch.from > passed + seam) break;
			passed = stretch.to;
		}
	}
	let from: number | undefined;
	let to = passed;
	for (const stretch of stretchesAlong(
		way.holds.solid,
		way.start,
		way.direction,
	)) {
		if (stretch.to <= passed - seam) continue;
		if (stretch.from > to + seam) break;
		from ??= Math.max(stretch.from, 0);
		to = Math.max(to, stretch.to);
	}
	return from === undefined
		? { passed, from: passed, to: passed }
		: { passed, from, to };
}

/**
 * How far the way goes on, without a gap, in wood of other parts behind `from`, mm from its start. Veneer is not wood that
 * holds, and the strip on the wall is not of the piece.
 */
export function woodBeyond(
	piece: Piece,
	way: WayIn,
	from: number,
): { readonly to: number; readonly part: Part | undefined } {
	let to = from;
	let last: Part | undefined;
	const seen = new Set<Part>([way.holds]);
	const open: Part[] = [way.holds];
	if (way.passes) {
		seen.add(way.passes);
		open.push(way.passes);
	}
	while (open.length > 0) {
		const here = open.pop() as Part;
		for (const part of neighboursOf(piece, here)) {
			if (seen.has(part) || without.has(part.role)) continue;
			const goesOn = stretchesAlong(part.solid, way.start, way.direction).find(
				(stretch) => stretch.from <= to + seam && stretch.to > to,
			);
			if (!goesOn) continue;
			seen.add(part);
			open.push(part);
			to = goesOn.to;
			last = part;
		}
	}
	return { to, part: last };
}

const without: ReadonlySet<Part["role"]> = new Set([
	"veneer",
	"wall-strip",
	"aid",
]);

function back(direction: Vec3): Vec3 {
	return [0 - direction[0], 0 - direction[1], 0 - direction[2]];
}
