// One long remnant instead of many short ones: what is left over is pushed together on one board.

import type { Steps } from "../steps.ts";
import { fullest } from "./fullest.ts";
import { lengthOf, type Pattern, patternFrom } from "./pattern.ts";
import type { Problem } from "./problem.ts";

/** Kinds looked at while one board is filled anew. */
const workOnPair = 2000;

/**
 * The board that has most left over gives what it can to the others: each of them is filled anew, as full as it gets, from its own
 * parts and those of that board. Boards that become empty are left out. Price and number never grow.
 */
export function gatherRemnant(
	problem: Problem,
	boards: readonly Pattern[],
	steps: Steps,
): Pattern[] {
	const { sizes, stocks } = problem;
	const now = [...boards];
	const leftOn = (board: Pattern) =>
		(stocks[board.stock] as { capacity: number }).capacity -
		lengthOf(board, sizes);
	for (;;) {
		let giver = -1;
		now.forEach((board, index) => {
			if (giver < 0 || leftOn(board) > leftOn(now[giver] as Pattern))
				giver = index;
		});
		if (giver < 0) return now;
		let moved = false;
		for (let taker = 0; taker < now.length && !steps.over; taker++) {
			if (taker === giver || leftOn(now[taker] as Pattern) === 0) continue;
			const pair = regroup(
				problem,
				now[giver] as Pattern,
				now[taker] as Pattern,
				steps,
			);
			if (!pair) continue;
			moved = true;
			[now[giver], now[taker]] = pair;
			if (pair[0].kinds.length === 0) {
				now.splice(giver, 1);
				break;
			}
		}
		if (!moved || steps.over) return now;
	}
}

/** Both boards anew, the second fuller than before; undefined if it is as full as it gets. */
function regroup(
	{ sizes, stocks }: Problem,
	giver: Pattern,
	taker: Pattern,
	steps: Steps,
): [Pattern, Pattern] | undefined {
	const both = new Int32Array(sizes.length);
	for (const { kinds, counts } of [giver, taker])
		kinds.forEach((kind, k) => {
			both[kind] = (both[kind] as number) + (counts[k] as number);
		});
	const { capacity } = stocks[taker.stock] as { capacity: number };
	const counts = fullest(
		sizes,
		both,
		0,
		new Int32Array(sizes.length),
		capacity,
		workOnPair,
		steps,
	);
	const fuller = patternFrom(taker.stock, counts);
	if (lengthOf(fuller, sizes) <= lengthOf(taker, sizes)) return undefined;
	return [
		patternFrom(
			giver.stock,
			both.map((count, kind) => count - (counts[kind] as number)),
		),
		fuller,
	];
}
