// A job for boards in the optimiser's own terms: kinds of lengths that already contain the blade, and what to cut them from.

import type { BoardJob, BoardPlan } from "../job.ts";

/** More parts than this in one job are not laid out: nobody cuts them from one list, and the plan itself would not fit. */
const mostParts = 100_000;

/** A stock that some part fits. */
export interface Stock {
	/** Index into the job's stocks. */
	readonly index: number;
	/** Usable length and one blade: with `size` of each part a board is full when the sizes reach it. */
	readonly capacity: number;
	readonly price: number;
	readonly count: number;
}

/**
 * Parts one kerf apart: n parts need `sum + (n - 1) kerf <= length`, that is `sum of (part + kerf) <= length + kerf`. So
 * each size holds its blade, and the kerf is gone from the problem.
 */
export interface Problem {
	/** Longest first, each once. */
	readonly sizes: readonly number[];
	/** How many of each size. */
	readonly demands: readonly number[];
	/** Longest first. */
	readonly stocks: readonly Stock[];
	/** For each size: the parts that have it, once for each copy. */
	readonly parts: readonly (readonly number[])[];
	/** Parts that no stock takes or of which all that take it have run out, and what is beyond counting. */
	readonly missing: BoardPlan["missing"];
}

/**
 * Reads a job. What cannot be cut (no length, no count) is left out; lengths that are not whole are rounded to the safe
 * side. All lengths are divided by what they have in common.
 */
export function readProblem(job: BoardJob): Problem {
	const kerf = Math.max(0, Math.ceil(known(job.kerf)));
	const stocks = job.stocks.flatMap((stock, index) => {
		const trim = Math.max(0, known(stock.trim ?? 0));
		const length = Math.floor(stock.length - 2 * trim);
		return length > 0 && length < Number.MAX_SAFE_INTEGER / 2
			? [
					{
						index,
						capacity: length + kerf,
						price: Math.max(0, known(stock.price)),
						count: countOf(stock.count),
					},
				]
			: [];
	});
	const longest = Math.max(0, ...stocks.map(({ capacity }) => capacity));
	const there = stocks.filter(({ count }) => count > 0);
	const longestThere = Math.max(0, ...there.map(({ capacity }) => capacity));
	const missing: BoardPlan["missing"][number][] = [];
	const partsOf = new Map<number, number[]>();
	let total = 0;
	job.parts.forEach((part, index) => {
		const count = countOf(part.count);
		if (!(part.length > 0) || count === 0) return;
		const size = Math.ceil(part.length) + kerf;
		if (size > longest) {
			missing.push({ part: index, count, why: "too-large" });
			return;
		}
		const taken = size > longestThere ? 0 : Math.min(count, mostParts - total);
		if (taken < count)
			missing.push({ part: index, count: count - taken, why: "no-stock-left" });
		if (taken === 0) return;
		total += taken;
		const same = partsOf.get(size) ?? [];
		partsOf.set(size, same);
		for (let copy = 0; copy < taken; copy++) same.push(index);
	});
	const sizes = [...partsOf.keys()].sort((a, b) => b - a);
	const least = sizes.at(-1) ?? Number.POSITIVE_INFINITY;
	const useful = there.filter(({ capacity }) => capacity >= least);
	const unit = sizes.reduce(greatestCommonDivisor, 0) || 1;
	return {
		sizes: sizes.map((size) => size / unit),
		demands: sizes.map((size) => (partsOf.get(size) as number[]).length),
		parts: sizes.map((size) => partsOf.get(size) as number[]),
		stocks: useful
			.map((stock) => ({
				...stock,
				capacity: Math.floor(stock.capacity / unit),
			}))
			.sort((a, b) => b.capacity - a.capacity || a.price - b.price),
		missing,
	};
}

function known(value: number): number {
	return Number.isFinite(value) ? value : 0;
}

function countOf(count: number): number {
	return count > 0 ? Math.floor(count) : 0;
}

function greatestCommonDivisor(a: number, b: number): number {
	while (b > 0) [a, b] = [b, a % b];
	return a;
}
