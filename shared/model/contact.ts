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

/** Thickness of the veneer that lies between two parts, mm: joined through it, they touch. */
export function veneerBetween(
	parts: readonly Part[],
	a: Part,
	b: Part,
): number {
	const one = boxOf(a);
	const other = boxOf(b);
	let thick = 0;
	for (const axis of [0, 1, 2] as const) {
		const [lower, upper] =
			one.max[axis] <= other.min[axis] ? [one, other] : [other, one];
		const from = lower.max[axis];
		const to = upper.min[axis];
		if (to - from <= touching) continue;
		for (const part of parts) {
			if (part.role !== "veneer") continue;
			const sheet = boxOf(part);
			const inside =
				sheet.min[axis] >= from - dust && sheet.max[axis] <= to + dust;
			if (inside && meets(sheet, one, axis) && meets(sheet, other, axis))
				thick += sheet.max[axis] - sheet.min[axis];
		}
	}
	return thick;
}

/** Floating dust, mm. */
const dust = 1e-6;

/** Whether two boxes lie opposite each other, seen along an axis. */
function meets(a: Box, b: Box, along: 0 | 1 | 2): boolean {
	return ([0, 1, 2] as const).every(
		(axis) =>
			axis === along ||
			Math.min(a.max[axis], b.max[axis]) >
				Math.max(a.min[axis], b.min[axis]) + dust,
	);
}

/**
 * The rectangle in which two parts meet, or undefined where they share none. The axis is the one on which they overlap
 * least: two panels that meet face to edge overlap by nothing, or by the depth of a housing. `known` says the axis where
 * that would be wrong: a tenon may be longer than its part is thick. `between` is veneer that lies between them, mm.
 */
export function contactOf(
	host: Part,
	member: Part,
	known?: Way,
	between = 0,
): Contact | undefined {
	const a = boxOf(host);
	const b = boxOf(member);
	let best: Way | undefined;
	let least = Number.POSITIVE_INFINITY;
	for (const way of axes) {
		const axis = axisIndex[way];
		const shared =
			Math.min(a.max[axis], b.max[axis]) - Math.max(a.min[axis], b.min[axis]);
		if (shared < -touching - between) return undefined;
		if (shared < least) {
			least = shared;
			best = way;
		}
	}
	best = known ?? best;
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
