// Whether what is left goes into a given number of equal boards: board by board, where hardly anything may be wasted.

import type { Steps } from "../steps.ts";
import { type Pattern, patternFrom } from "./pattern.ts";
import type { Problem } from "./problem.ts";

/** Fillings of one board that are tried, fullest first. */
const mostFillings = 40;
/** Fillings that are looked at to find these. */
const mostLookedAt = 4000;

interface FillingOfBoard {
	readonly kinds: readonly number[];
	readonly waste: number;
	/** The same in worth. */
	readonly loss: number;
}

/**
 * Bin completion (Korf, "A new algorithm for optimal bin packing", AAAI 2002): the longest part that is left opens a board;
 * all fillings of it are tried that waste no more than what the boards have to spare altogether and into which nothing
 * else fits; residues that have failed once are not tried again. `prices` under which no board holds more than 1 are a second
 * measure of length, in which there is often much less to spare. Undefined if none was found in so much work.
 */
export function completeBoards(
	problem: Problem,
	needs: ArrayLike<number>,
	boards: number,
	prices: Float64Array,
	mostWork: number,
	steps: Steps,
): Pattern[] | "impossible" | undefined {
	const { sizes, stocks } = problem;
	const { capacity } = stocks[0] as { capacity: number };
	const rest = Int32Array.from(needs);
	let total = 0;
	let parts = 0;
	let worth = 0;
	rest.forEach((need, kind) => {
		total += need * (sizes[kind] as number);
		parts += need;
		worth += need * (prices[kind] as number);
	});
	const spare = boards * capacity - total;
	const spareWorth = boards - worth + 1e-9;
	if (spare < 0 || spareWorth < 0) return "impossible";
	const failed = new Set<string>();
	/** Some ways were left out. */
	let partial = false;
	const done: FillingOfBoard[] = [];
	let work = 0;

	const fillings = (
		first: number,
		slack: number,
		slackWorth: number,
	): FillingOfBoard[] => {
		const found: FillingOfBoard[] = [];
		const kinds = [first];
		let looked = 0;
		/** Nothing from kind `at` on may be left out that would still fit: `skipped` is the shortest that was left out. */
		const go = (
			at: number,
			room: number,
			loss: number,
			skipped: number,
		): void => {
			let next = at;
			for (; next < sizes.length; next++)
				if ((rest[next] as number) > 0 && (sizes[next] as number) <= room)
					break;
			work += next - at + 4;
			if (++looked > mostLookedAt) {
				partial = true;
				return;
			}
			if (next === sizes.length) {
				if (room <= slack && room < skipped && loss <= slackWorth)
					found.push({ kinds: kinds.slice(), waste: room, loss });
				return;
			}
			const size = sizes[next] as number;
			rest[next] = (rest[next] as number) - 1;
			kinds.push(next);
			go(next, room - size, loss - (prices[next] as number), skipped);
			kinds.pop();
			rest[next] = (rest[next] as number) + 1;
			// Without it: then what is left must be so little that it does not fit any more.
			go(next + 1, room, loss, Math.min(skipped, size));
		};
		rest[first] = (rest[first] as number) - 1;
		go(
			first,
			capacity - (sizes[first] as number),
			1 - (prices[first] as number),
			Number.POSITIVE_INFINITY,
		);
		rest[first] = (rest[first] as number) + 1;
		if (found.length > mostFillings) partial = true;
		return found
			.sort((a, b) => a.loss - b.loss || a.waste - b.waste)
			.slice(0, mostFillings);
	};

	const go = (
		first: number,
		left: number,
		slack: number,
		slackWorth: number,
	): boolean => {
		while (first < sizes.length && rest[first] === 0) first++;
		if (first === sizes.length) return true;
		if (left === 0) return false;
		const key = String.fromCharCode(...rest);
		if (failed.has(key)) return false;
		for (const filling of fillings(first, slack, slackWorth)) {
			if (work > mostWork) return false;
			for (const kind of filling.kinds) rest[kind] = (rest[kind] as number) - 1;
			done.push(filling);
			if (go(first, left - 1, slack - filling.waste, slackWorth - filling.loss))
				return true;
			done.pop();
			for (const kind of filling.kinds) rest[kind] = (rest[kind] as number) + 1;
			if (work > mostWork) return false;
		}
		failed.add(key);
		return false;
	};

	const found = parts > 0 ? go(0, boards, spare, spareWorth) : true;
	steps.spend(4 * work + 4 * sizes.length);
	if (!found) return partial || work > mostWork ? undefined : "impossible";
	return done.map(({ kinds }) => {
		const counts = new Int32Array(sizes.length);
		for (const kind of kinds) counts[kind] = (counts[kind] as number) + 1;
		return patternFrom(0, counts);
	});
}
