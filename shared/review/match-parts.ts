// Finds each part again on the other side of a change: by its name, and when that is new, by how it is cut.
//
// The same whichever side is called before: every score looks the same from both sides, and what is alike in score is
// decided by how far apart the parts stand in their lists.

import { numberOf, sameValue } from "../model/size.ts";
import type { Part, Piece } from "../model/types.ts";
import { likenessOf } from "../outputs/likeness.ts";
import type { Both } from "./types.ts";

export interface MatchedParts {
	/** In the order of the side after. */
	readonly both: readonly Both<Part>[];
	readonly gone: readonly Part[];
	readonly added: readonly Part[];
}

/** More parts than this are matched by name alone: every pair of strangers is looked at. */
const mostStrangers = 400;

/** Less alike than this, two parts are strangers. */
const leastLikeness = 2;

export function matchParts(before: Piece, after: Piece): MatchedParts {
	const found = new Map<Part, Part>();
	for (const part of after.parts) {
		const known = before.partByPath.get(part.path);
		if (known) found.set(part, known);
	}
	const taken = new Set(found.values());
	const gone = before.parts.filter((part) => !taken.has(part));
	const added = after.parts.filter((part) => !found.has(part));
	for (const { before: old, after: now } of likePairs(gone, added)) {
		found.set(now, old);
		taken.add(old);
	}
	return {
		both: after.parts.flatMap((part) => {
			const old = found.get(part);
			return old ? [{ before: old, after: part }] : [];
		}),
		gone: gone.filter((part) => !taken.has(part)),
		added: added.filter((part) => !found.has(part)),
	};
}

function likePairs(
	gone: readonly Part[],
	added: readonly Part[],
): readonly Both<Part>[] {
	if (gone.length * added.length > mostStrangers ** 2) return [];
	const pairs = gone.flatMap((before, i) =>
		added.flatMap((after, j) => {
			const score = likeness(before, after);
			return score < leastLikeness
				? []
				: [{ before, after, score, apart: Math.abs(i - j), sum: i + j }];
		}),
	);
	pairs.sort((a, b) => b.score - a.score || a.apart - b.apart || a.sum - b.sum);
	const taken = new Set<Part>();
	return pairs.filter(({ before, after }) => {
		if (taken.has(before) || taken.has(after)) return false;
		taken.add(before);
		taken.add(after);
		return true;
	});
}

/** Higher is more alike. 0 for parts that are not of one material and kind. */
function likeness(one: Part, other: Part): number {
	if (one.role !== other.role) return 0;
	let score = one.stock.id === other.stock.id ? 1 : 0;
	if (one.name === other.name) score += 1;
	for (const which of ["length", "width"] as const) {
		if (sameValue(one[which], other[which])) score += 1;
		else score -= farFrom(numberOf(one[which]), numberOf(other[which]));
	}
	if (sameValue(one.thick, other.thick)) score += 0.5;
	if (score < leastLikeness) return score;
	// Costs more than the rest, so it is looked at last.
	if (likenessOf(one).shape === likenessOf(other).shape) score += 1;
	if (
		one.min.every(
			(at, axis) => at.value.cmp((other.min[axis] as typeof at).value) === 0,
		)
	) {
		score += 0.5;
	}
	return score;
}

/** 0 for equal lengths, to 1 for lengths that have nothing in common. */
function farFrom(one: number, other: number): number {
	const most = Math.max(one, other);
	return most > 0 ? Math.abs(one - other) / most : 0;
}
