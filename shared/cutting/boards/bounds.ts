// Bounds that are there at once: lengths changed so that no board holds more of them, but the parts need more boards.

import type { Problem } from "./problem.ts";

/** More thresholds than this are not tried: bounds must be there at once. */
const mostThresholds = 100;
const mostSteps = 40;

/** A length in, another one out: whatever fits on a board fits on the changed board. */
type DualFeasible = (length: number) => number;

/**
 * No plan costs less, if a board of each stock costs this much. For each of some dual feasible functions f (Johnson 1973;
 * surveyed by Clautiaux, Alves and Valério de Carvalho, "A survey of dual-feasible and superadditive functions", Annals of
 * Operations Research 179, 2010) the parts are filled into boards as if they could be divided: `sum of f(part) / f(board)`,
 * cheapest boards first. With one stock and costs of 1 that includes the area bound and L2 (Martello and Toth, "Lower
 * bounds and reduction procedures for the bin packing problem", Discrete Applied Mathematics 28, 1990).
 */
export function quickBound(
	{ sizes, demands, stocks }: Problem,
	costs: readonly number[],
): number {
	const longest = stocks[0]?.capacity ?? 0;
	let best = 0;
	for (const change of functionsFor(longest, sizes)) {
		let need = 0;
		sizes.forEach((size, kind) => {
			need += change(size) * (demands[kind] as number);
		});
		best = Math.max(best, fractionalCost(need, change));
	}
	return best;

	function fractionalCost(need: number, change: DualFeasible): number {
		const boards = stocks
			.map(({ capacity, count }, stock) => ({
				takes: change(capacity),
				count,
				cost: costs[stock] as number,
			}))
			.filter(({ takes }) => takes > 0)
			.sort((a, b) => a.cost * b.takes - b.cost * a.takes);
		let left = need;
		let cost = 0;
		for (const board of boards) {
			if (left <= 0) break;
			const used = Math.min(board.count, left / board.takes);
			cost += used * board.cost;
			left -= used * board.takes;
		}
		// What no board takes any more tells that there is no such plan; the bound of the part that can be had holds all the same.
		return cost;
	}
}

/** Whole numbers in, whole numbers out, so that sums are exact. */
function* functionsFor(
	board: number,
	sizes: readonly number[],
): Generator<DualFeasible> {
	yield (length) => length;
	const short = sizes.filter((size) => 2 * size <= board);
	const step = Math.max(1, Math.ceil(short.length / mostThresholds));
	for (let at = 0; at < short.length; at += step) {
		const least = short[at] as number;
		// Martello and Toth: what is shorter than the threshold is left out, what leaves less than that beside it fills the board.
		yield (length) =>
			length < least ? 0 : length > board - least ? board : length;
		// Carlier, Clautiaux and Moukrim, "New reduction procedures and lower bounds for the two-dimensional bin packing
		// problem with fixed orientation", Computers & Operations Research 34, 2007.
		const pieces = Math.floor(board / least);
		yield (length) =>
			2 * length > board
				? 2 * (pieces - Math.floor((board - length) / least))
				: 2 * length === board
					? pieces
					: 2 * Math.floor(length / least);
	}
	// Fekete and Schepers, "New classes of fast lower bounds for bin packing problems", Mathematical Programming 91, 2001.
	for (let k = 1; k <= mostSteps; k++)
		yield (length) =>
			((k + 1) * length) % board === 0
				? length * k
				: Math.floor(((k + 1) * length) / board) * board;
}
