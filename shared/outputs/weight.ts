// What a piece weighs and where its weight lies, from the solids of its parts.

import type { Vec3 } from "../geometry/solid.ts";
import { numberOf } from "../model/size.ts";
import type { Part, Piece } from "../model/types.ts";

export interface Weight {
	/** kg of all parts whose density is known; what stays on the wall is not in it. */
	readonly total: number;
	/** kg of the strips on the wall. */
	readonly onWall: number;
	/** mm from the left and the back of everything, and up from the floor; undefined if nothing could be weighed. */
	readonly centre:
		| {
				readonly fromLeft: number;
				readonly fromFloor: number;
				readonly fromBack: number;
		  }
		| undefined;
	/** In the order of the design. */
	readonly parts: readonly { readonly part: Part; readonly kg: number }[];
	/** Parts of unknown density: they are in no figure. */
	readonly unknown: readonly Part[];
}

/** Wood alone: no fasteners, glue or finish. */
export function weightOf(piece: Piece): Weight {
	const parts: { part: Part; kg: number }[] = [];
	const unknown: Part[] = [];
	let total = 0;
	let onWall = 0;
	const moment: [number, number, number] = [0, 0, 0];
	const least: [number, number, number] = [
		Number.POSITIVE_INFINITY,
		Number.POSITIVE_INFINITY,
		Number.POSITIVE_INFINITY,
	];
	for (const part of piece.parts) {
		if (part.role === "aid") continue;
		const kg = massOf(part);
		if (kg === undefined) unknown.push(part);
		else parts.push({ part, kg });
		if (part.role === "wall-strip") {
			onWall += kg ?? 0;
			continue;
		}
		for (const axis of [0, 1, 2] as const) {
			least[axis] = Math.min(least[axis], numberOf(part.min[axis]));
			moment[axis] += (kg ?? 0) * part.centre[axis];
		}
		total += kg ?? 0;
	}
	const centre: Vec3 = [
		moment[0] / total,
		moment[1] / total,
		moment[2] / total,
	];
	return {
		total,
		onWall,
		centre:
			total > 0
				? {
						fromLeft: centre[0] - least[0],
						fromFloor: centre[1],
						fromBack: centre[2] - least[2],
					}
				: undefined,
		parts,
		unknown,
	};
}

/** kg; undefined if nobody knows the density. */
export function massOf(part: Part): number | undefined {
	const { density } = part.stock;
	return density === undefined ? undefined : (part.volume / 1e9) * density;
}
