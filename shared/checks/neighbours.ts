// Which parts of a piece lie next to which: found once, when a check first asks.

import { nearPairs } from "../geometry/overlap.ts";
import type { Box, Vec3 } from "../geometry/solid.ts";
import { numberOf, type Size } from "../model/size.ts";
import type { Part, Piece } from "../model/types.ts";

/** The box around a part before it is shaped, mm: enough to see that two are far apart. */
export function blankOf(part: Part): Box {
	return { min: corner(part.min), max: corner(part.max) };
}

function corner(sizes: readonly [Size, Size, Size]): Vec3 {
	return [numberOf(sizes[0]), numberOf(sizes[1]), numberOf(sizes[2])];
}

/** Parts that are no farther apart than this, box to box, count as neighbours, mm. */
export const reach = 1;

interface Near {
	readonly blanks: readonly Box[];
	/** Indices into the parts of the piece, the lower one first. */
	readonly pairs: readonly (readonly [number, number])[];
	neighbours: ReadonlyMap<Part, readonly Part[]> | undefined;
}

const nearOf = new WeakMap<Piece, Near>();

function nearIn(piece: Piece): Near {
	let near = nearOf.get(piece);
	if (!near) {
		const blanks = piece.parts.map(blankOf);
		near = { blanks, pairs: nearPairs(blanks, reach), neighbours: undefined };
		nearOf.set(piece, near);
	}
	return near;
}

/** The pairs of parts whose boxes go into each other by more than `depth` mm on every axis, in the order of the piece. */
export function* overlappingBlanks(
	piece: Piece,
	depth: number,
): IterableIterator<readonly [Part, Part]> {
	const { blanks, pairs } = nearIn(piece);
	for (const [i, j] of pairs) {
		const a = blanks[i] as Box;
		const b = blanks[j] as Box;
		let into = Infinity;
		for (const axis of [0, 1, 2] as const)
			into = Math.min(
				into,
				Math.min(a.max[axis], b.max[axis]) - Math.max(a.min[axis], b.min[axis]),
			);
		if (into > depth) yield [piece.parts[i] as Part, piece.parts[j] as Part];
	}
}

/** The parts whose boxes come within `reach` of a part's own, in the order of the piece. */
export function neighboursOf(piece: Piece, part: Part): readonly Part[] {
	const near = nearIn(piece);
	near.neighbours ??= allNeighbours(piece, near.pairs);
	return near.neighbours.get(part) ?? [];
}

function allNeighbours(
	piece: Piece,
	pairs: Near["pairs"],
): ReadonlyMap<Part, readonly Part[]> {
	const found = new Map<Part, Part[]>();
	const add = (part: Part, other: Part): void => {
		const known = found.get(part);
		if (known) known.push(other);
		else found.set(part, [other]);
	};
	for (const [i, j] of pairs) {
		const a = piece.parts[i] as Part;
		const b = piece.parts[j] as Part;
		add(a, b);
		add(b, a);
	}
	return found;
}
