// The patterns that any plan within a given cost can have: all others waste too much, in terms of prices.

import type { Steps } from "../steps.ts";
import type { Pattern } from "./pattern.ts";
import type { Problem } from "./problem.ts";

/** Above so many cells the table is not worth its memory. */
const mostCells = 4e6;

/** Branches that may be looked at for each pattern that is allowed. */
const branchesEach = 40;

export interface TightPattern extends Pattern {
	/** How much less its parts are worth than a board. */
	readonly loss: number;
}

/**
 * For one stock. With prices under which no board holds more than 1, a plan of B boards loses `B - prices · needs` in all, so that
 * no board of it loses more than this `loss` (reduced cost fixing, and enumeration of all columns that survive it: Baldacci, Christofides and
 * Mingozzi, "An exact algorithm for the vehicle routing problem based on the set partitioning formulation with additional
 * cuts", Mathematical Programming 115, 2008). Undefined if there are more than `most`, or if there is no table.
 */
export function tightPatterns(
	{ sizes, stocks }: Problem,
	needs: ArrayLike<number>,
	prices: Float64Array,
	loss: number,
	most: number,
	steps: Steps,
): TightPattern[] | undefined {
	const { capacity } = stocks[0] as { capacity: number };
	const kinds: number[] = [];
	for (let kind = 0; kind < sizes.length; kind++)
		if ((needs[kind] as number) > 0) kinds.push(kind);
	const width = capacity + 1;
	if ((kinds.length + 1) * width > mostCells) return undefined;
	// worth[i * width + c]: the most that kinds from place i on are worth in c.
	const worth = new Float64Array((kinds.length + 1) * width);
	let work = worth.length;
	for (let i = kinds.length - 1; i >= 0; i--) {
		const row = worth.subarray(i * width, (i + 1) * width);
		row.set(worth.subarray((i + 1) * width, (i + 2) * width));
		const kind = kinds[i] as number;
		const size = sizes[kind] as number;
		const price = prices[kind] as number;
		const copies = Math.min(needs[kind] as number, Math.floor(capacity / size));
		for (let copy = 0; copy < copies; copy++)
			for (let c = capacity; c >= size; c--) {
				const value = (row[c - size] as number) + price;
				if (value > (row[c] as number)) row[c] = value;
			}
		work += copies * (width - size);
	}
	const found: TightPattern[] = [];
	const some: number[] = [];
	const counts: number[] = [];
	let calls = 0;
	/** False if there are too many. */
	const go = (i: number, room: number, need: number): boolean => {
		if ((worth[i * width + room] as number) < need) return true;
		if (++calls > branchesEach * most) return false;
		if (i === kinds.length) {
			found.push({
				stock: 0,
				kinds: some.slice(),
				counts: counts.slice(),
				loss: Math.max(0, need + loss),
			});
			return found.length <= most;
		}
		const kind = kinds[i] as number;
		const size = sizes[kind] as number;
		const price = prices[kind] as number;
		const copies = Math.min(needs[kind] as number, Math.floor(room / size));
		if (copies > 0) {
			some.push(kind);
			for (let copy = copies; copy > 0; copy--) {
				counts.push(copy);
				if (!go(i + 1, room - copy * size, need - copy * price)) return false;
				counts.pop();
			}
			some.pop();
		}
		return go(i + 1, room, need);
	};
	const complete = go(0, capacity, 1 - loss);
	steps.spend(work + 20 * calls);
	return complete ? found : undefined;
}
