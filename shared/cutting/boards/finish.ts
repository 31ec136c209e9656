// The ends of a search: what is left, once it is little enough, is decided one way or the other.

import type { Steps } from "../steps.ts";
import { completeBoards } from "./completion.ts";
import { coverExactly } from "./cover.ts";
import { byPrice, fillBoards } from "./fill.ts";
import { keyOf, type Pattern } from "./pattern.ts";
import type { Relaxation } from "./relaxation.ts";
import { tightPatterns } from "./tight.ts";

/** Up to so many patterns exact covers are looked for, for so long. */
const mostPatterns = 1000;
const coverWork = 3e6;
/** After an attempt in vain the next one needs no more than this share of its patterns. */
const fewerPatterns = 0.85;
/** With so few boards left, what is left is filled in all ways, for so long. */
const fewBoards = 14;
const completionWork = 300_000;

export interface Endgame {
	/** Costs come in whole numbers only. */
	readonly whole: boolean;
	/** How many patterns were too many to decide; `Infinity` at first. */
	tooMany: number;
	readonly steps: Steps;
}

/**
 * Boards for `needs` from those that are `left` that cost no more than `limit`; `none` if there are surely none; undefined if that
 * was not found out.
 */
export function* finish(
	relaxation: Relaxation,
	needs: Int32Array,
	left: Float64Array,
	limit: number,
	endgame: Endgame,
): Generator<void, Pattern[] | "none" | undefined> {
	const { problem, costs } = relaxation;
	const { whole, steps } = endgame;
	const { boards, unplaced } = fillBoards(
		problem,
		needs,
		left,
		"fullest",
		byPrice(problem),
		steps,
	);
	const cost = boards.reduce(
		(sum, { stock }) => sum + (costs[stock] as number),
		0,
	);
	if (cost <= limit + 1e-9 && unplaced.every((count) => count === 0))
		return boards;
	if (!whole || problem.stocks.length > 1) return undefined;
	return yield* decide(relaxation, needs, left, Math.round(limit), endgame);
}

/** One stock: exact covers by the patterns that waste little enough, then all ways to fill a few boards. */
function* decide(
	relaxation: Relaxation,
	needs: Int32Array,
	left: Float64Array,
	boards: number,
	endgame: Endgame,
): Generator<void, Pattern[] | "none" | undefined> {
	const { problem } = relaxation;
	const { steps } = endgame;
	yield* relaxation.demand(needs, left);
	for (;;) {
		yield* relaxation.solve();
		const { bound, settled } = relaxation.price();
		if (bound > boards + 1e-9) return "none";
		if (settled) break;
		if (steps.over) return undefined;
		yield;
	}
	const prices = relaxation.fairPrices();
	let loss = boards + 1e-7;
	needs.forEach((need, kind) => {
		loss -= need * (prices[kind] as number);
	});
	const most = Math.min(mostPatterns, fewerPatterns * endgame.tooMany);
	const tight = tightPatterns(problem, needs, prices, loss, most, steps);
	if (tight) {
		const shares = new Map(
			relaxation
				.basic()
				.map((pattern) => [
					keyOf(relaxation.patterns[pattern] as Pattern),
					relaxation.value(pattern),
				]),
		);
		const found = coverExactly(
			tight,
			needs,
			loss,
			(pattern) => shares.get(keyOf(pattern)) ?? 0,
			coverWork,
			steps,
		);
		if (found === "impossible") return "none";
		if (found) return found;
		endgame.tooMany = tight.length;
	}
	if (boards > fewBoards) return undefined;
	const rest = completeBoards(
		problem,
		needs,
		boards,
		prices,
		completionWork,
		steps,
	);
	return rest === "impossible" ? "none" : rest;
}
