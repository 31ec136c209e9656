// Where two parts meet, from the boxes around them.

import type { Box, Vec3 } from "../geometry/solid.ts";
import type { Contact } from "./joint-drafts.ts";
import { axisIndex } from "./meaning.ts";
import type { PartDraft } from "./part-builder.ts";
import type { Part, Way } from "./types.ts";

const axes: readonly Way[] = ["x", "y", "z"];

/** Faces nearer than this touch, mm; housings leave such gaps. */
const touching = 0.3;

export function boxOf(part: Part): Box {
	return (part as PartDraft).bounds;
}

/** Distance between two boxes along the axis where they are farthest apart, mm; 0 or less if they touch or overlap. */
export function apartness(a: Box, b: Box): number {
	let apart = Number.NEGATIVE_INFINITY;
	for (const axis of [0, 1, 2] as const)
		apart = Math.max(
			apart,
			a.min[axis] - b.max[axis],
			b.min[axis] - a.max[axis],
		);
	return apart;
}

/**
 * The rectangle in which two parts meet, or undefined where they share none. The axis is the one on which they overlap
 * least: two panels that meet face to edge overlap by nothing, or by the depth of a housing.
 */
export function contactOf(host: Part, member: Part): Contact | undefined {
	const a = boxOf(host);
	const b = boxOf(member);
	let best: Way | undefined;
	let least = Number.POSITIVE_INFINITY;
	for (const way of axes) {
		const axis = axisIndex[way];
		const shared =
			Math.min(a.max[axis], b.max[axis]) - Math.max(a.min[axis], b.min[axis]);
		if (shared < -touching) return undefined;
		if (shared < least) {
			least = shared;
			best = way;
		}
	}
	if (!best) return undefined;
	const axis = axisIndex[best];
	const toMember: 1 | -1 =
		b.min[axis] + b.max[axis] >= a.min[axis] + a.max[axis] ? 1 : -1;
	const min: number[] = [];
	const max: number[] = [];
	for (const other of [0, 1, 2] as const) {
		min.push(Math.max(a.min[other], b.min[other]));
		max.push(Math.min(a.max[other], b.max[other]));
	}
	const at = toMember === 1 ? b.min[axis] : b.max[axis];
	min[axis] = at;
	max[axis] = at;
	for (const other of [0, 1, 2] as const)
		if (
			other !== axis &&
			(max[other] as number) - (min[other] as number) <= 0.01
		)
			return undefined;
	return {
		axis: best,
		toMember,
		min: min as unknown as Vec3,
		max: max as unknown as Vec3,
	};
}
