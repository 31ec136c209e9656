// The quick answer, and the only search that knows every wish of a saw: part by part into the free cell that fits best.
import type { Axis, Cell, Sheet } from "./cell.ts";
import { cutOut, freshSheet, waysToCut } from "./cell.ts";
import type { Kind, Problem } from "./problem.ts";

/** Sheets cut up, and of each kind what is not cut yet. */
export interface Layout {
	readonly sheets: readonly Sheet[];
	readonly remaining: Int32Array;
}

/** How a greedy run decides. */
export interface Manner {
	/** Kinds in the order in which they are tried. */
	readonly order: readonly number[];
	/** Which free cell is the best: the one with the least rest along its better side, or the smallest. */
	readonly fit: "tight" | "small";
	/** Which cut comes first: the one that leaves the larger rest whole, or the one along the shorter or the longer rest. */
	readonly split: "large" | "short" | "long";
	/** How a sheet with blemishes is cut up first. */
	readonly around: Axis;
}

/** The orders that are known to do well: by area, by longest side, by shortest side, by x, by y. */
export function usualOrders(kinds: readonly Kind[]): number[][] {
	const keys: ((kind: Kind) => number)[] = [
		({ area }) => area,
		({ x, y }) => Math.max(x, y),
		({ x }) => x,
		({ y }) => y,
		({ x, y }) => Math.min(x, y),
		({ x, y }) => x + y,
	];
	return keys.map((key) =>
		kinds
			.map((_, index) => index)
			.sort((a, b) => {
				const [one, other] = [kinds[a], kinds[b]] as [Kind, Kind];
				return key(other) - key(one) || other.area - one.area || a - b;
			}),
	);
}

/** Sheet after sheet is filled until nothing is left, or no stock. `used`: sheets of each blank that are gone already. */
export function layOutGreedily(
	problem: Problem,
	remaining: Int32Array,
	manner: Manner,
	used: readonly number[] = [],
): Layout {
	const left = Int32Array.from(remaining);
	const gone = problem.blanks.map((_, index) => used[index] ?? 0);
	const sheets: Sheet[] = [];
	for (;;) {
		const best = bestFilling(problem, left, manner, gone);
		if (best === undefined) break;
		// The same filling again, as often as parts and stock allow, so that 5,000 equal parts are one thought.
		const blank = problem.blanks[best.sheet.blank];
		const most = (blank?.count ?? 0) - (gone[best.sheet.blank] ?? 0);
		let times = most;
		for (const [kind, count] of best.taken)
			times = Math.min(times, Math.floor((left[kind] ?? 0) / count));
		for (const [kind, count] of best.taken)
			left[kind] = (left[kind] ?? 0) - count * times;
		gone[best.sheet.blank] = (gone[best.sheet.blank] ?? 0) + times;
		for (let copy = 0; copy < times; copy++) sheets.push(best.sheet);
	}
	return { sheets, remaining: left };
}

export interface Filling {
	readonly sheet: Sheet;
	/** Parts taken, by kind. */
	readonly taken: ReadonlyMap<number, number>;
	/** Area of the parts taken, grown. */
	readonly area: number;
}

function bestFilling(
	problem: Problem,
	remaining: Int32Array,
	manner: Manner,
	gone: readonly number[],
): Filling | undefined {
	let wanted = 0;
	problem.kinds.forEach(({ area }, kind) => {
		wanted += area * (remaining[kind] ?? 0);
	});
	if (wanted === 0) return undefined;
	let best: { filling: Filling; score: Score } | undefined;
	problem.blanks.forEach((blank, index) => {
		if ((gone[index] ?? 0) >= blank.count) return;
		const filling = fillSheet(problem, index, remaining, manner);
		if (filling.area === 0) return;
		const score: Score = {
			free: blank.price === 0 && Number.isFinite(blank.count),
			// The last sheet is the cheapest that takes all; before, what a price gives counts.
			last: filling.area >= wanted - wanted * 1e-9,
			price: blank.price,
			perArea: blank.price / filling.area,
			fill: filling.area / (blank.x * blank.y),
			area: filling.area,
		};
		if (best === undefined || isBetter(score, best.score))
			best = { filling, score };
	});
	return best?.filling;
}

interface Score {
	readonly free: boolean;
	readonly last: boolean;
	readonly price: number;
	readonly perArea: number;
	readonly fill: number;
	readonly area: number;
}

function isBetter(a: Score, b: Score): boolean {
	if (a.free !== b.free) return a.free;
	if (a.free) return a.last !== b.last ? a.last : a.fill > b.fill;
	if (a.last && b.last)
		return a.price !== b.price ? a.price < b.price : a.fill > b.fill;
	if (a.perArea !== b.perArea) return a.perArea < b.perArea;
	return a.area > b.area;
}

/** One sheet, filled with what is left: each part in turn goes into the free cell that fits it best. */
export function fillSheet(
	problem: Problem,
	blankIndex: number,
	remaining: Int32Array,
	manner: Manner,
): Filling {
	const blank = problem.blanks[blankIndex];
	if (blank === undefined) throw new Error("No such blank");
	const { sheet, free } = freshSheet(blank, blankIndex, manner.around, problem);
	const taken = new Map<number, number>();
	let area = 0;
	for (const kind of manner.order) {
		const shape = problem.kinds[kind];
		if (shape === undefined) continue;
		for (let count = remaining[kind] ?? 0; count > 0; count--) {
			const spot = bestSpot(problem, free, shape, manner);
			if (spot === undefined) break;
			const cell = free[spot.at];
			if (cell === undefined) break;
			const last = free.pop();
			if (last !== undefined && last !== cell) free[spot.at] = last;
			const [length, width] = spot.turned
				? [shape.y, shape.x]
				: [shape.x, shape.y];
			cutOut(cell, kind, spot.turned, length, width, spot.first, problem, free);
			taken.set(kind, (taken.get(kind) ?? 0) + 1);
			area += shape.area;
		}
		if (free.length === 0) break;
	}
	return { sheet, taken, area };
}

interface Spot {
	readonly at: number;
	readonly turned: boolean;
	readonly first: Axis;
}

function bestSpot(
	problem: Problem,
	free: readonly Cell[],
	kind: Kind,
	manner: Manner,
): Spot | undefined {
	let best: Spot | undefined;
	let least = Number.POSITIVE_INFINITY;
	for (let at = 0; at < free.length; at++) {
		const cell = free[at];
		if (cell === undefined) continue;
		for (const turned of kind.turns ? turns : straight) {
			const length = turned ? kind.y : kind.x;
			const width = turned ? kind.x : kind.y;
			if (length > cell.length || width > cell.width) continue;
			const restX = cell.length - length;
			const restY = cell.width - width;
			const score =
				manner.fit === "tight"
					? Math.min(restX, restY)
					: cell.length * cell.width;
			if (score >= least) continue;
			const ways = waysToCut(cell, length, width, problem);
			if (!ways.x && !ways.y) continue;
			least = score;
			const x = ways.x && (!ways.y || cutsAlongX(cell, restX, restY, manner));
			best = { at, turned, first: x ? "x" : "y" };
		}
	}
	return best;
}

const turns = [false, true];
const straight = [false];

function cutsAlongX(
	cell: Cell,
	restX: number,
	restY: number,
	manner: Manner,
): boolean {
	if (manner.split === "short") return restX < restY;
	if (manner.split === "long") return restX >= restY;
	return restX * cell.width >= restY * cell.length;
}
