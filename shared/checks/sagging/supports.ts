// What holds up a part that lies level: parts under it, the sides and dividers that it ends in or that stand on it.

import type { Axis } from "../../geometry/solid.ts";
import { numberOf } from "../../model/size.ts";
import type { BoxInfo, Part, Piece } from "../../model/types.ts";
import { neighboursOf } from "../neighbours.ts";
import { alongShare, extent } from "./stiffness.ts";

/** A stretch of the part that something holds, mm in the world. */
export interface Bearing {
	readonly from: number;
	readonly to: number;
}

export interface Held {
	readonly bearings: readonly Bearing[];
	/** Rails under the part along most of it that hang between its supports themselves: they bend with it. */
	readonly beside: readonly Part[];
}

/** How near faces are to count as met, mm. */
const near = 1;

const never: ReadonlySet<Part["role"]> = new Set([
	"trim",
	"veneer",
	"back",
	"aid",
	"cleat",
	"wall-strip",
]);

/** Undefined: the part lies on the floor. */
export function heldUp(
	piece: Piece,
	part: Part,
	axis: 0 | 2,
): Held | undefined {
	if (low(part, 1) <= near && extent(part, 1) < extent(part, axis) / 4)
		return undefined;
	const bearings: Bearing[] = [];
	const beside: Part[] = [];
	const box = boxOf(piece, part);
	for (const other of around(piece, part)) {
		if (never.has(other.role)) continue;
		if (box?.dividers.includes(other) && !isStiff(box)) continue;
		const under = bearsUnder(part, other);
		const shared = common(part, other, axis);
		if (under && shared) {
			const long = shared.to - shared.from > alongShare * extent(part, axis);
			if (long && low(other, 1) > near) beside.push(other);
			else bearings.push(shared);
			continue;
		}
		const end = endsIn(piece, part, other, axis);
		if (end) bearings.push(end);
		else if (shared && axis === 0 && box && hangsFrom(piece, box, part, other))
			bearings.push(shared);
	}
	// What a rail beside it hangs between holds the part as well.
	for (const rail of beside) {
		for (const other of around(piece, rail)) {
			if (other === part || never.has(other.role)) continue;
			const end = endsIn(piece, rail, other, axis);
			const shared = bearsUnder(rail, other)
				? common(rail, other, axis)
				: undefined;
			const bearing = end ?? shared;
			if (
				bearing &&
				bearing.to - bearing.from < alongShare * extent(rail, axis)
			)
				bearings.push(bearing);
		}
	}
	return { bearings: joined(bearings), beside };
}

/** Bearings in the order of their places, those that touch made one. */
function joined(bearings: readonly Bearing[]): readonly Bearing[] {
	const sorted = [...bearings].sort((a, b) => a.from - b.from || a.to - b.to);
	const result: Bearing[] = [];
	for (const bearing of sorted) {
		const last = result.at(-1);
		if (last && bearing.from - last.to < touching)
			result[result.length - 1] = {
				from: last.from,
				to: Math.max(last.to, bearing.to),
			};
		else result.push(bearing);
	}
	return result;
}

/** Bearings closer than this (mm) are one: two pins a finger apart would clamp the part as no joint does. */
const touching = 25;

/** The part lies on the other one, or is let into it from above by less than its own height. */
function bearsUnder(part: Part, other: Part): boolean {
	const top = high(other, 1);
	const bottom = low(part, 1);
	return (
		top > bottom - near &&
		top < bottom + 0.75 * extent(part, 1) + near &&
		low(other, 1) < bottom - near &&
		overlaps(part, other, 0) &&
		overlaps(part, other, 2)
	);
}

/** The part ends in or at the other one and is joined to it: between a side and a divider, rail to leg. */
function endsIn(
	piece: Piece,
	part: Part,
	other: Part,
	axis: 0 | 2,
): Bearing | undefined {
	const middle = (low(part, 1) + high(part, 1)) / 2;
	if (low(other, 1) > middle || high(other, 1) < middle) return undefined;
	if (!overlaps(part, other, axis === 0 ? 2 : 0)) return undefined;
	const [start, end] = [low(part, axis), high(part, axis)];
	const atStart =
		low(other, axis) < start - near / 2 &&
		high(other, axis) > start - reachOfPins;
	const atEnd =
		high(other, axis) > end + near / 2 && low(other, axis) < end + reachOfPins;
	if (atStart === atEnd || !joins(piece, part, other)) return undefined;
	return atStart
		? { from: start, to: Math.max(start, high(other, axis)) }
		: { from: Math.min(end, low(other, axis)), to: end };
}

/** A shelf on pins is so much short of the side at the most, mm. */
const reachOfPins = 6;

/** The box whose top or bottom the part is. */
function boxOf(piece: Piece, part: Part): BoxInfo | undefined {
	return piece.boxes.find(
		({ panels }) => panels.bottom === part || panels.top === part,
	);
}

/** A case's bottom hangs from the sides that stand on it, and from the dividers. */
function hangsFrom(
	piece: Piece,
	box: BoxInfo,
	part: Part,
	other: Part,
): boolean {
	return (
		box.dividers.includes(other) ||
		((other === box.panels.left || other === box.panels.right) &&
			joins(piece, part, other))
	);
}

/** With a back the case is a deep beam, and what its dividers tie together does not sag by itself. */
function isStiff(box: BoxInfo): boolean {
	return box.backing !== "none";
}

/** Parts that touch a part or are joined to it: a shelf on pins stands clear of the sides. */
function around(piece: Piece, part: Part): ReadonlySet<Part> {
	return new Set([
		...neighboursOf(piece, part),
		...(joinedTo(piece, part) ?? []),
	]);
}

const jointsOf = new WeakMap<Piece, ReadonlyMap<Part, ReadonlySet<Part>>>();

function joinedTo(piece: Piece, part: Part): ReadonlySet<Part> | undefined {
	let known = jointsOf.get(piece);
	if (!known) {
		const map = new Map<Part, Set<Part>>();
		const add = (one: Part, other: Part): void => {
			const others = map.get(one);
			if (others) others.add(other);
			else map.set(one, new Set([other]));
		};
		for (const { host, member } of piece.joints) {
			add(host, member);
			add(member, host);
		}
		known = map;
		jointsOf.set(piece, known);
	}
	return known.get(part);
}

function joins(piece: Piece, a: Part, b: Part): boolean {
	return joinedTo(piece, a)?.has(b) ?? false;
}

/** Where both parts lie along an axis. */
function common(part: Part, other: Part, axis: Axis): Bearing | undefined {
	const from = Math.max(low(part, axis), low(other, axis));
	const to = Math.min(high(part, axis), high(other, axis));
	return to - from > near ? { from, to } : undefined;
}

function overlaps(part: Part, other: Part, axis: Axis): boolean {
	return common(part, other, axis) !== undefined;
}

export function low(part: Part, axis: Axis): number {
	return numberOf(part.min[axis]);
}

export function high(part: Part, axis: Axis): number {
	return numberOf(part.max[axis]);
}
