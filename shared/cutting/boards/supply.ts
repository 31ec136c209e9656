// Boards that run out: the search goes on as if they did not, and what is too much becomes missing parts.

import type { Steps } from "../steps.ts";
import { byPrice, fillBoards, topUp } from "./fill.ts";
import { lengthOf, type Pattern, patternFrom } from "./pattern.ts";
import type { Problem } from "./problem.ts";
import { gatherRemnant } from "./remnant.ts";

/** A board that is not there costs as much as so many of the dearest. */
const dear = 50;

/**
 * The same problem with boards that never run out: a single stock without its count, several with a last, dear one that is as long
 * as the longest.
 */
export function withoutEnd(problem: Problem): Problem {
	const { stocks } = problem;
	const [longest] = stocks;
	if (!longest) return problem;
	if (stocks.length === 1)
		return {
			...problem,
			stocks: [{ ...longest, count: Number.POSITIVE_INFINITY }],
		};
	const dearest = Math.max(...stocks.map(({ price }) => price));
	return {
		...problem,
		stocks: [
			...stocks,
			{
				index: -1,
				capacity: longest.capacity,
				price: dear * (dearest || 1),
				count: Number.POSITIVE_INFINITY,
			},
		],
	};
}

/** What comes of boards that never run out when they do. */
export interface Supplied {
	readonly boards: Pattern[];
	/** By kind. */
	readonly missing: Int32Array;
}

/** Keeps the fullest boards of each stock, and puts what was on the others wherever it still fits. */
export function supply(
	problem: Problem,
	boards: readonly Pattern[],
	steps: Steps,
): Supplied {
	const { sizes, stocks } = problem;
	const missing = new Int32Array(sizes.length);
	const left = stocks.map(({ count }) => count);
	const kept: Pattern[] = [];
	const fullestFirst = [...boards].sort(
		(a, b) => lengthOf(b, sizes) - lengthOf(a, sizes),
	);
	for (const board of fullestFirst)
		if ((left[board.stock] ?? 0) >= 1) {
			left[board.stock] = (left[board.stock] as number) - 1;
			kept.push(board);
		} else addTo(missing, board);
	let supplied: Supplied = {
		boards: gatherRemnant(problem, kept, steps),
		missing,
	};
	// Whatever finds a place may make room for more when remnants are pushed together once again.
	while (supplied.missing.some((count) => count > 0)) {
		const { boards: more, missing: less } = putBack(problem, supplied, steps);
		const found = less.some((count, kind) => count !== supplied.missing[kind]);
		supplied = {
			boards: found ? gatherRemnant(problem, more, steps) : more,
			missing: less,
		};
		if (!found) break;
	}
	return supplied;
}

/** Puts missing parts into gaps, and onto boards that are not used yet. */
function putBack(
	problem: Problem,
	{ boards, missing }: Supplied,
	steps: Steps,
): Supplied {
	const { sizes, stocks } = problem;
	const short = missing.slice();
	const left = stocks.map(({ count }) => count);
	const filled = boards.map((board) => {
		left[board.stock] = (left[board.stock] as number) - 1;
		const { capacity } = stocks[board.stock] as { capacity: number };
		const more = new Int32Array(sizes.length);
		topUp(sizes, short, 0, more, capacity - lengthOf(board, sizes));
		more.forEach((count, kind) => {
			short[kind] = (short[kind] as number) - count;
		});
		addTo(more, board);
		return patternFrom(board.stock, more);
	});
	const extra = fillBoards(
		problem,
		short,
		left,
		"fullest",
		byPrice(problem),
		steps,
	);
	return { boards: [...filled, ...extra.boards], missing: extra.unplaced };
}

function addTo(counts: Int32Array, { kinds, counts: more }: Pattern): void {
	kinds.forEach((kind, k) => {
		counts[kind] = (counts[kind] as number) + (more[k] as number);
	});
}
