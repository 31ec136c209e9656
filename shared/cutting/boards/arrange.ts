// From patterns to a plan that somebody can cut by: parts by name, equal boards one after the other.

import type { BoardJob, BoardPlan } from "../job.ts";
import { keyOf, lengthOf, type Pattern } from "./pattern.ts";
import type { Problem } from "./problem.ts";

/** Boards in the order in which they are cut, and which parts come off each. */
export function arrange(
	job: BoardJob,
	problem: Problem,
	boards: readonly Pattern[],
): Pick<BoardPlan, "boards" | "price"> {
	const { sizes, stocks, parts } = problem;
	const next = new Int32Array(sizes.length);
	const ordered = inOrder(problem, boards).map(({ stock, kinds, counts }) => {
		const { index } = stocks[stock] as { index: number };
		const indices = kinds.flatMap((kind, k) => {
			const from = next[kind] as number;
			next[kind] = from + (counts[k] as number);
			return (parts[kind] as readonly number[]).slice(from, next[kind]);
		});
		return {
			stock: index,
			parts: indices,
			left: leftOver(job, index, indices),
		};
	});
	return {
		boards: ordered,
		price: ordered.reduce(
			(sum, { stock }) => sum + priceOf(job.stocks[stock]?.price),
			0,
		),
	};
}

/**
 * Equal boards together, those with the longest parts first, so that a stop is set once for all of them; the board with most left
 * comes last.
 */
function inOrder(
	{ sizes, stocks }: Problem,
	boards: readonly Pattern[],
): Pattern[] {
	const groups = new Map<string, Pattern[]>();
	for (const board of boards) {
		const key = keyOf(board);
		const same = groups.get(key);
		if (same) same.push(board);
		else groups.set(key, [board]);
	}
	const left = (board: Pattern) =>
		(stocks[board.stock] as { capacity: number }).capacity -
		lengthOf(board, sizes);
	const most = Math.max(
		0,
		...[...groups.values()].map(([one]) => left(one as Pattern)),
	);
	return [...groups.values()]
		.sort(([a], [b]) => {
			const [one, other] = [a as Pattern, b as Pattern];
			return (
				Number(left(one) === most) - Number(left(other) === most) ||
				one.stock - other.stock ||
				compareKinds(one, other)
			);
		})
		.flat();
}

/** Kinds count from the longest part on. */
function compareKinds(one: Pattern, other: Pattern): number {
	for (let k = 0; k < Math.max(one.kinds.length, other.kinds.length); k++) {
		const by =
			(one.kinds[k] ?? Number.MAX_SAFE_INTEGER) -
				(other.kinds[k] ?? Number.MAX_SAFE_INTEGER) ||
			(other.counts[k] ?? 0) - (one.counts[k] ?? 0);
		if (by !== 0) return by;
	}
	return 0;
}

/** The usable length less the parts and a cut behind each; the last cut may run off the end. */
function leftOver(
	{ stocks, parts, kerf }: BoardJob,
	stock: number,
	indices: readonly number[],
): number {
	const { length, trim = 0 } = stocks[stock] as BoardJob["stocks"][number];
	const blade = Number.isFinite(kerf) ? Math.max(0, kerf) : 0;
	let left = length - 2 * (Number.isFinite(trim) ? Math.max(0, trim) : 0);
	for (const index of indices)
		left -= (parts[index] as BoardJob["parts"][number]).length + blade;
	return Math.max(0, left);
}

/** What is not a price is taken for free. */
export function priceOf(price: number | undefined): number {
	return price !== undefined && Number.isFinite(price) ? Math.max(0, price) : 0;
}
