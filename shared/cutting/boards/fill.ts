// Boards filled one after the other by rule: the answer that is there at once, and the end of every deeper search.

import type { Steps } from "../steps.ts";
import { fullest } from "./fullest.ts";
import { type Pattern, patternFrom } from "./pattern.ts";
import type { Problem } from "./problem.ts";

/** Work of all searches for full boards together, and of one. */
const mostWork = 4e6;
const leastWorkOnBoard = 500;
const mostWorkOnBoard = 6000;

/** How one board is filled, from what is still needed. */
export type Rule =
	/** Whatever fits, longest first (first fit decreasing, board by board). */
	| "longest"
	/**
	 * As full as it gets, the longest part among it (minimum bin slack: Gupta and Ho, "A new heuristic algorithm for the
	 * one-dimensional bin-packing problem", Production Planning & Control 10, 1999; as changed by Fleszar and Hindi, "New
	 * heuristics for one-dimensional bin-packing", Computers & Operations Research 29, 2002).
	 */
	| "fullest";

/** What filling leads to. */
export interface Filled {
	readonly boards: Pattern[];
	/** What no board that was left could take, by kind. */
	readonly unplaced: Int32Array;
}

/** How much a board is wanted for a filling: the least comes first. */
export type Choice = (stock: number, filled: number) => number;

/** Price for each length that it takes. */
export function byPrice({ stocks }: Problem): Choice {
	return (stock, filled) => (stocks[stock] as { price: number }).price / filled;
}

/** What is left over. */
export function byWaste({ stocks }: Problem): Choice {
	return (stock, filled) =>
		(stocks[stock] as { capacity: number }).capacity - filled;
}

/** Fills boards until all is placed; `needs` and `left` (boards of each stock) stay as they are. */
export function fillBoards(
	problem: Problem,
	needs: ArrayLike<number>,
	left: ArrayLike<number>,
	rule: Rule,
	choice: Choice,
	steps: Steps,
): Filled {
	const { sizes, stocks } = problem;
	const rest = Int32Array.from(needs);
	const boardsLeft = Array.from(left);
	const unplaced = new Int32Array(sizes.length);
	const boards: Pattern[] = [];
	const work = rule === "longest" ? 0 : workOnBoard(problem, rest);
	let first = 0;
	for (;;) {
		while (first < sizes.length && rest[first] === 0) first++;
		if (first === sizes.length) return { boards, unplaced };
		let best: Int32Array | undefined;
		let bestStock = -1;
		let least = Number.POSITIVE_INFINITY;
		let bestFilled = 0;
		for (let stock = 0; stock < stocks.length; stock++) {
			const { capacity } = stocks[stock] as { capacity: number };
			if ((boardsLeft[stock] as number) < 1) continue;
			if (capacity < (sizes[first] as number)) continue;
			const counts = fillOne(sizes, rest, first, capacity, work, steps);
			const filled = totalOf(counts, sizes);
			const wish = choice(stock, filled);
			if (wish < least || (wish === least && filled > bestFilled)) {
				best = counts;
				bestStock = stock;
				least = wish;
				bestFilled = filled;
			}
		}
		if (!best) {
			unplaced[first] = rest[first] as number;
			rest[first] = 0;
			continue;
		}
		const pattern = patternFrom(bestStock, best);
		// The same again, as long as it can be had.
		let times = boardsLeft[bestStock] as number;
		pattern.kinds.forEach((kind, k) => {
			times = Math.min(
				times,
				Math.floor((rest[kind] as number) / (pattern.counts[k] as number)),
			);
		});
		for (let time = 0; time < times; time++) boards.push(pattern);
		boardsLeft[bestStock] = (boardsLeft[bestStock] as number) - times;
		pattern.kinds.forEach((kind, k) => {
			rest[kind] =
				(rest[kind] as number) - times * (pattern.counts[k] as number);
		});
	}
}

/** The more boards there are to fill, the less time there is for each. */
function workOnBoard({ sizes, stocks }: Problem, rest: Int32Array): number {
	const longest = Math.max(...stocks.map(({ capacity }) => capacity));
	const boards = stocks.length * (1 + totalOf(rest, sizes) / longest);
	return Math.max(
		leastWorkOnBoard,
		Math.min(mostWorkOnBoard, Math.floor(mostWork / boards)),
	);
}

function totalOf(counts: Int32Array, sizes: readonly number[]): number {
	let sum = 0;
	for (let kind = 0; kind < counts.length; kind++)
		sum += (counts[kind] as number) * (sizes[kind] as number);
	return sum;
}

function fillOne(
	sizes: readonly number[],
	rest: Int32Array,
	first: number,
	capacity: number,
	work: number,
	steps: Steps,
): Int32Array {
	const counts = new Int32Array(sizes.length);
	counts[first] = 1;
	const room = capacity - (sizes[first] as number);
	if (work === 0) {
		topUp(sizes, rest, first, counts, room);
		steps.spend(4 * sizes.length);
		return counts;
	}
	return fullest(sizes, rest, first, counts, room, work, steps);
}

/** Adds to `counts` what fits into `room`, longest first, from `rest` less what `counts` has already; returns the room left. */
export function topUp(
	sizes: readonly number[],
	rest: ArrayLike<number>,
	from: number,
	counts: Int32Array,
	room: number,
): number {
	for (let kind = from; kind < sizes.length && room > 0; kind++) {
		const size = sizes[kind] as number;
		if (size > room) continue;
		const more = Math.min(
			(rest[kind] as number) - (counts[kind] as number),
			Math.floor(room / size),
		);
		if (more <= 0) continue;
		counts[kind] = (counts[kind] as number) + more;
		room -= more * size;
	}
	return room;
}
