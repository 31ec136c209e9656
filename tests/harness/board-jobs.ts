// Jobs for boards whose best plan is known by construction, and jobs of all kinds.

import fc from "fast-check";
import type { BoardJob } from "../../shared/cutting/index.ts";

/** Whole numbers from `least` to `most`. */
export type Draw = (least: number, most: number) => number;

/** Draws from a seed: the same every time (linear congruence modulo a prime, from memory). */
export function drawFrom(seed: number): Draw {
	let state = (seed % 2147483646) + 1;
	return (least, most) => {
		state = (state * 16807) % 2147483647;
		return least + (state % (most - least + 1));
	};
}

/** One stock without end, each length once for each time that it occurs. */
export function plainJob(
	length: number,
	parts: readonly number[],
	kerf = 0,
): BoardJob {
	const counts = new Map<number, number>();
	for (const part of parts) counts.set(part, (counts.get(part) ?? 0) + 1);
	return {
		stocks: [
			{ id: "board", length, price: 10, count: Number.POSITIVE_INFINITY },
		],
		parts: [...counts].map(([one, count]) => ({
			id: `part ${one}`,
			length: one,
			count,
		})),
		kerf,
	};
}

/**
 * Triplets: the first part is drawn from 380 to 490, the second from 250 to half of what is left, the third is the rest, so that
 * three fill a board of 1000 exactly (Falkenauer, "A hybrid grouping genetic algorithm for bin packing", Journal of
 * Heuristics 2, 1996, as far as memory goes). Every part is longer than a quarter of the board, so none holds more than
 * three: the number of triplets is the least number of boards.
 */
export function triplets(count: number, draw: Draw): number[] {
	const parts: number[] = [];
	for (let one = 0; one < count; one++) {
		const first = draw(380, 490);
		const second = draw(251, Math.floor((1000 - first) / 2));
		parts.push(first, second, 1000 - first - second);
	}
	return parts;
}

/** So many boards, each cut up at random without a rest: the total length tells that no plan needs fewer. */
export function cutUp(
	boards: number,
	length: number,
	kerf: number,
	draw: Draw,
): number[] {
	const parts: number[] = [];
	for (let board = 0; board < boards; board++) {
		let left = length;
		for (;;) {
			const part = draw(Math.floor(length / 9), Math.floor(length / 2));
			if (part + kerf + length / 9 > left) break;
			parts.push(part);
			left -= part + kerf;
		}
		parts.push(left);
	}
	return parts;
}

/** Several stocks, short or long, dear or free, few or many; parts that may not fit at all. */
export const anyBoardJob: fc.Arbitrary<BoardJob> = fc.record({
	stocks: fc.array(
		fc.record({
			id: fc.constant("stock"),
			length: fc.integer({ min: 1, max: 120 }),
			price: fc.constantFrom(0, 1, 2.5, 7, 12.35),
			count: fc.constantFrom(0, 1, 2, 5, Number.POSITIVE_INFINITY),
			trim: fc.constantFrom(0, 0, 1, 4),
		}),
		{ maxLength: 4 },
	),
	parts: fc.array(
		fc.record({
			id: fc.constant("part"),
			length: fc.integer({ min: 1, max: 70 }),
			count: fc.integer({ min: 1, max: 5 }),
		}),
		{ maxLength: 9 },
	),
	kerf: fc.constantFrom(0, 0, 1, 3, 30),
});
