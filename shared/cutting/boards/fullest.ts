// One board, as full as it gets: which of the parts that are left come nearest to its length.

import type { Steps } from "../steps.ts";

/**
 * Adds to `start` (by kind, longest first) what fills `room` best from `rest`, kinds from `first` on; `rest` includes what `start`
 * has. Depth first, longest first, until nothing is left over or `mostWork` (kinds looked at) is done.
 */
export function fullest(
	sizes: readonly number[],
	rest: ArrayLike<number>,
	first: number,
	start: Int32Array,
	room: number,
	mostWork: number,
	steps: Steps,
): Int32Array {
	const kinds: number[] = [];
	const lengths: number[] = [];
	const free: number[] = [];
	for (let kind = first; kind < sizes.length; kind++) {
		const more = (rest[kind] as number) - (start[kind] as number);
		if (more <= 0) continue;
		kinds.push(kind);
		lengths.push(sizes[kind] as number);
		free.push(more);
	}
	// What all that is still to come could fill: where that is too little, there is no use in going on.
	const toCome = new Float64Array(kinds.length + 1);
	for (let i = kinds.length - 1; i >= 0; i--)
		toCome[i] =
			(toCome[i + 1] as number) + (free[i] as number) * (lengths[i] as number);
	/** Places in `kinds` on the way down, each once for each copy. */
	const way: number[] = [];
	let best: number[] = [];
	let bestRoom = room;
	let work = 0;
	const go = (from: number, left: number): boolean => {
		if (left < bestRoom) {
			bestRoom = left;
			best = way.slice();
			if (left === 0) return true;
		}
		for (let at = firstFitting(lengths, from, left); at < kinds.length; at++) {
			if (++work > mostWork) return true;
			if (left - (toCome[at] as number) >= bestRoom) return false;
			const length = lengths[at] as number;
			const most = Math.min(free[at] as number, Math.floor(left / length));
			for (let one = 0; one < most; one++) way.push(at);
			for (let take = most; take > 0; take--) {
				if (go(at + 1, left - take * length)) return true;
				way.pop();
			}
		}
		return false;
	};
	go(0, room);
	steps.spend(12 * work + 4 * sizes.length);
	const counts = start.slice();
	for (const at of best) {
		const kind = kinds[at] as number;
		counts[kind] = (counts[kind] as number) + 1;
	}
	return counts;
}

/** The first place from `from` on whose length fits; lengths fall. */
function firstFitting(
	lengths: readonly number[],
	from: number,
	room: number,
): number {
	let low = from;
	let high = lengths.length;
	while (low < high) {
		const middle = (low + high) >> 1;
		if ((lengths[middle] as number) > room) low = middle + 1;
		else high = middle;
	}
	return low;
}
