// Boards that are held at both edges by parts that cannot give way: in grooves, rabbets and dadoes, or butted between two.

import type { Axis, Box } from "../geometry/solid.ts";
import type { Joint, Part, Piece } from "../model/types.ts";
import { acrossOf, boardWood } from "./moving.ts";

/** One part at an edge of a board. */
interface Holder {
	readonly part: Part;
	readonly joint: Joint;
	/** How far the edge may move before it meets this part, mm. */
	readonly room: number;
}

export interface HeldBoard {
	readonly part: Part;
	/** Across its grain. */
	readonly axis: Axis;
	/** The parts at its lower and its upper edge. */
	readonly low: Holder;
	readonly high: Holder;
	/** What keeps these two apart: its grain, or its plies, run from the one to the other. */
	readonly tie: Part;
}

/** More than this between an edge and a part, and the part does not hold it, mm: it stands there by chance. */
const farthest = 25;

/** What floating figures leave, mm. */
const dust = 0.01;

const without: ReadonlySet<Part["role"]> = new Set([
	"trim",
	"veneer",
	"wall-strip",
	"aid",
]);

const heldIn = new WeakMap<Piece, readonly HeldBoard[]>();

/** The boards of a piece that are held at both edges, in its order. */
export function heldBoards(piece: Piece): readonly HeldBoard[] {
	let held = heldIn.get(piece);
	if (!held) {
		held = piece.parts.some(canBeHeld) ? findHeld(piece) : [];
		heldIn.set(piece, held);
	}
	return held;
}

function canBeHeld(part: Part): boolean {
	return !without.has(part.role) && boardWood(part) !== undefined;
}

function findHeld(piece: Piece): HeldBoard[] {
	const jointsOf = new Map<Part, Joint[]>();
	for (const joint of piece.joints) {
		if (joint.kind === "veneer" || joint.kind === "trim") continue;
		for (const part of [joint.host, joint.member]) {
			const known = jointsOf.get(part);
			if (known) known.push(joint);
			else jointsOf.set(part, [joint]);
		}
	}
	return piece.parts.flatMap((part): HeldBoard[] => {
		if (!canBeHeld(part)) return [];
		const axis = acrossOf(part);
		const ends = (jointsOf.get(part) ?? []).map((joint) => ({
			joint,
			other: joint.host === part ? joint.member : joint.host,
		}));
		const at = (side: -1 | 1): Holder[] =>
			ends.flatMap(({ joint, other }) => {
				const room = roomAt(part, other, axis, side);
				return room === undefined ? [] : [{ part: other, joint, room }];
			});
		const lows = at(-1);
		const highs = lows.length > 0 ? at(1) : [];
		for (const low of lows)
			for (const high of highs) {
				const tie = tieOf(part, low.part, high.part, axis, jointsOf);
				if (tie) return [{ part, axis, low, high, tie }];
			}
		return [];
	});
}

/** How far one edge of a board may move before it meets another part; undefined where that part is not in its way. */
function roomAt(
	part: Part,
	other: Part,
	axis: Axis,
	side: -1 | 1,
): number | undefined {
	const own = part.solid.box;
	const its = other.solid.box;
	const edge = side === -1 ? own.min[axis] : own.max[axis];
	// The far face of the part must lie beyond the edge, and its near one on this side of the board's middle.
	const far = side === -1 ? its.min[axis] : its.max[axis];
	const near = side === -1 ? its.max[axis] : its.min[axis];
	const middle = (own.min[axis] + own.max[axis]) / 2;
	if ((far - edge) * side <= dust || (near - middle) * side <= 0)
		return undefined;
	if (!meetsBeside(own, its, axis)) return undefined;
	const housing = other.housings.find(({ takes }) => takes === part.path);
	const stop = housing
		? side === -1
			? housing.box.min[axis]
			: housing.box.max[axis]
		: near;
	const room = (stop - edge) * side;
	return room > farthest ? undefined : Math.max(room, 0);
}

/** Whether two boxes lie opposite each other, seen along an axis. */
function meetsBeside(a: Box, b: Box, along: Axis): boolean {
	return ([0, 1, 2] as const).every(
		(axis) =>
			axis === along ||
			Math.min(a.max[axis], b.max[axis]) - Math.max(a.min[axis], b.min[axis]) >
				dust,
	);
}

/** A part that is joined to both and does not move along the axis itself. */
function tieOf(
	part: Part,
	low: Part,
	high: Part,
	axis: Axis,
	jointsOf: ReadonlyMap<Part, readonly Joint[]>,
): Part | undefined {
	if (low === high) return undefined;
	const partners = (of: Part): Part[] =>
		(jointsOf.get(of) ?? []).map(({ host, member }) =>
			host === of ? member : host,
		);
	const atLow = new Set(partners(low));
	return partners(high).find(
		(one) =>
			one !== part &&
			atLow.has(one) &&
			(one.stock.kind === "sheet" || acrossOf(one) !== axis),
	);
}
