// Which faces of the parts can be seen and finished: not what is glued or laid against another part.

import { nearPairs } from "../geometry/overlap.ts";
import type { Axis, Box } from "../geometry/solid.ts";
import { numberOf } from "../model/size.ts";
import type { BoxInfo, Part, Piece } from "../model/types.ts";

export interface ExposedFace {
	readonly part: Part;
	readonly axis: Axis;
	readonly outward: 1 | -1;
	/** mm2, less what other parts cover. */
	readonly area: number;
	/** It looks into a box. */
	readonly inside: boolean;
}

interface Rectangle {
	readonly u0: number;
	readonly u1: number;
	readonly v0: number;
	readonly v1: number;
}

/** How far off a face another part may stand and still cover it, mm: the gap of a housing. */
const reach = 0.3;

/**
 * The faces of the boxes around the parts, so that curves and housings count as what they were cut from. Veneer and what
 * hangs on the wall count as parts; aids do not.
 */
export function exposedFaces(piece: Piece): readonly ExposedFace[] {
	const parts = piece.parts.filter((part) => part.role !== "aid");
	const boxes = parts.map(boxOf);
	const near = new Map<number, number[]>();
	const note = (a: number, b: number): void => {
		const known = near.get(a);
		if (known) known.push(b);
		else near.set(a, [b]);
	};
	for (const [a, b] of nearPairs(boxes, reach)) {
		note(a, b);
		note(b, a);
	}
	const rooms = piece.boxes.map(outerBox);
	return parts.flatMap((part, index) => {
		const box = boxes[index] as Box;
		const others = (near.get(index) ?? []).map((other) => boxes[other] as Box);
		return ([0, 1, 2] as const).flatMap((axis) =>
			([-1, 1] as const).map((outward): ExposedFace => {
				const face = rectangle(box, axis);
				const at = outward === 1 ? box.max[axis] : box.min[axis];
				const covers = others
					.filter(
						(other) =>
							other.min[axis] <= at + (outward === 1 ? reach : -1e-6) &&
							other.max[axis] >= at - (outward === 1 ? -1e-6 : reach),
					)
					.map((other) => common(face, rectangle(other, axis)))
					.filter((one) => one !== undefined);
				const whole = (face.u1 - face.u0) * (face.v1 - face.v0);
				return {
					part,
					axis,
					outward,
					area: Math.max(0, whole - unionArea(covers)),
					inside: rooms.some((room) => looksInto(room, box, axis, outward)),
				};
			}),
		);
	});
}

function boxOf(part: Part): Box {
	return {
		min: [numberOf(part.min[0]), numberOf(part.min[1]), numberOf(part.min[2])],
		max: [numberOf(part.max[0]), numberOf(part.max[1]), numberOf(part.max[2])],
	};
}

function outerBox(info: BoxInfo): Box {
	return {
		min: [numberOf(info.min[0]), numberOf(info.min[1]), numberOf(info.min[2])],
		max: [numberOf(info.max[0]), numberOf(info.max[1]), numberOf(info.max[2])],
	};
}

/** Whether the space right before the middle of a face lies within the outside of a box. */
function looksInto(room: Box, box: Box, axis: Axis, outward: 1 | -1): boolean {
	return ([0, 1, 2] as const).every((one) => {
		const at =
			one === axis
				? (outward === 1 ? box.max[one] : box.min[one]) + outward
				: (box.min[one] + box.max[one]) / 2;
		return at > room.min[one] && at < room.max[one];
	});
}

function rectangle(box: Box, axis: Axis): Rectangle {
	const [u, v] = axis === 0 ? [1, 2] : axis === 1 ? [0, 2] : [0, 1];
	return {
		u0: box.min[u as Axis],
		u1: box.max[u as Axis],
		v0: box.min[v as Axis],
		v1: box.max[v as Axis],
	};
}

function common(a: Rectangle, b: Rectangle): Rectangle | undefined {
	const one = {
		u0: Math.max(a.u0, b.u0),
		u1: Math.min(a.u1, b.u1),
		v0: Math.max(a.v0, b.v0),
		v1: Math.min(a.v1, b.v1),
	};
	return one.u1 > one.u0 && one.v1 > one.v0 ? one : undefined;
}

/** Area that rectangles cover together, overlaps once: strip by strip along u. */
function unionArea(rectangles: readonly Rectangle[]): number {
	if (rectangles.length === 0) return 0;
	const cuts = [...new Set(rectangles.flatMap(({ u0, u1 }) => [u0, u1]))].sort(
		(a, b) => a - b,
	);
	let area = 0;
	for (let i = 0; i + 1 < cuts.length; i += 1) {
		const from = cuts[i] as number;
		const to = cuts[i + 1] as number;
		const spans = rectangles
			.filter(({ u0, u1 }) => u0 <= from && u1 >= to)
			.sort((a, b) => a.v0 - b.v0);
		let length = 0;
		let done = Number.NEGATIVE_INFINITY;
		for (const { v0, v1 } of spans) {
			length += Math.max(0, v1 - Math.max(v0, done));
			done = Math.max(done, v1);
		}
		area += length * (to - from);
	}
	return area;
}
