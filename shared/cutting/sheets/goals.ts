// Which sheets to try next when a plan is to become cheaper: sets of blanks below its price, the roomiest first.
import type { Problem } from "./problem.ts";

/** How many of each blank. */
export type Goal = readonly number[];

/**
 * Sets of blanks that cost less than `price`, or as much with fewer sheets than `sheets`, and have the area for all parts;
 * what is free is always there. At most so many, those with the most room first.
 */
export function goalsBelow(
	problem: Problem,
	area: number,
	price: number,
	sheets: number,
	leastPrice: number,
	most: number,
): Goal[] {
	const { blanks } = problem;
	const counts = blanks.map(({ price, count, x, y }) =>
		price === 0 && Number.isFinite(count)
			? Math.min(count, Math.ceil((2 * area) / (x * y)))
			: 0,
	);
	const paid = blanks.flatMap(({ price, count }, blank) =>
		price === 0 && Number.isFinite(count) ? [] : [blank],
	);
	const given = counts.reduce((sum, count) => sum + count, 0);
	let room = 0;
	counts.forEach((count, blank) => {
		room += count * areaOf(problem, blank);
	});
	const found: { goal: Goal; room: number; price: number; sheets: number }[] =
		[];
	let looks = 0;
	const choose = (at: number, cost: number, used: number, space: number) => {
		if (looks++ > mostLooks || cost > price) return;
		const blank = paid[at];
		if (blank === undefined) {
			if (space < area || cost < leastPrice) return;
			if (cost === price && used >= sheets) return;
			found.push({ goal: [...counts], room: space, price: cost, sheets: used });
			return;
		}
		const one = areaOf(problem, blank);
		const each = blanks[blank]?.price ?? 0;
		const available = Math.min(
			blanks[blank]?.count ?? 0,
			Math.ceil((2 * area) / one) + 1,
			each > 0 ? Math.floor((price - cost) / each) : sheets,
		);
		// The last blank: as many as the price allows, or one less where that is no better than what there is.
		const fewest = at === paid.length - 1 ? Math.max(0, available - 1) : 0;
		for (let count = available; count >= fewest; count--) {
			counts[blank] = count;
			choose(at + 1, cost + count * each, used + count, space + count * one);
		}
		counts[blank] = 0;
	};
	choose(0, 0, given, room);
	return found
		.sort((a, b) => b.room - a.room || a.price - b.price || a.sheets - b.sheets)
		.slice(0, most)
		.map(({ goal }) => goal);
}

const mostLooks = 20_000;

function areaOf(problem: Problem, blank: number): number {
	const shape = problem.blanks[blank];
	return shape === undefined ? 0 : shape.x * shape.y;
}
