// Boxes that overlap become boxes that do not, so that volumes can be added up.

import { type Box, isEmpty, type Vec3 } from "./solid.ts";

/** The union of boxes as boxes that share no volume. Empty ones are dropped; the order follows the input. */
export function disjointBoxes(boxes: readonly Box[]): readonly Box[] {
	const full = boxes.filter((box) => !isEmpty(box));
	if (full.length < 2 || !anyOverlap(full)) return full;
	const result: Box[] = [];
	for (const box of full) {
		// Only what no earlier box has already covered is new.
		result.push(...remainder(box, result.slice()));
	}
	return result;
}

/** What is left of a box when cuts are taken out of it, as boxes that share no volume. */
export function remainder(box: Box, cuts: readonly Box[]): readonly Box[] {
	if (isEmpty(box)) return [];
	let left: Box[] = [box];
	for (const cut of cuts) {
		if (!shareVolume(box, cut)) continue;
		const next: Box[] = [];
		for (const piece of left) subtract(piece, cut, next);
		left = next;
	}
	return left;
}

/** Appends what is left of `box` outside `cut` to `into`: the box itself, or up to six boxes around the cut. */
function subtract(box: Box, cut: Box, into: Box[]): void {
	if (!shareVolume(box, cut)) {
		into.push(box);
		return;
	}
	const min: [number, number, number] = [...box.min];
	const max: [number, number, number] = [...box.max];
	for (let axis = 0; axis < 3; axis++) {
		const from = cut.min[axis] as number;
		const to = cut.max[axis] as number;
		if ((min[axis] as number) < from) {
			into.push({ min: [...min], max: withAxis(max, axis, from) });
			min[axis] = from;
		}
		if ((max[axis] as number) > to) {
			into.push({ min: withAxis(min, axis, to), max: [...max] });
			max[axis] = to;
		}
	}
}

/** True where two boxes that are not empty share volume. */
function shareVolume(a: Box, b: Box): boolean {
	return (
		Math.max(a.min[0], b.min[0]) < Math.min(a.max[0], b.max[0]) &&
		Math.max(a.min[1], b.min[1]) < Math.min(a.max[1], b.max[1]) &&
		Math.max(a.min[2], b.min[2]) < Math.min(a.max[2], b.max[2])
	);
}

function withAxis(point: Vec3, axis: number, value: number): Vec3 {
	return [
		axis === 0 ? value : point[0],
		axis === 1 ? value : point[1],
		axis === 2 ? value : point[2],
	];
}

function anyOverlap(boxes: readonly Box[]): boolean {
	// Sorted along x, a box can only meet those that begin before it ends.
	const sorted = [...boxes].sort((a, b) => a.min[0] - b.min[0]);
	for (let i = 0; i < sorted.length; i++) {
		const a = sorted[i] as Box;
		for (let j = i + 1; j < sorted.length; j++) {
			const b = sorted[j] as Box;
			if (b.min[0] >= a.max[0]) break;
			if (shareVolume(a, b)) return true;
		}
	}
	return false;
}
