// The search for jobs with many parts of a kind: whole patterns out of the fractions of column generation.
import { Attempt, type Begun } from "./attempt.ts";
import { roundedUp } from "./bounds.ts";
import type { Sheet } from "./cell.ts";
import { type Column, Columns } from "./columns.ts";
import { cutUp, patternOf } from "./cut-up.ts";
import { allowedBy } from "./descend.ts";
import { type Goal, goalsBelow } from "./goals.ts";
import type { Grid } from "./patterns.ts";
import type { Standing } from "./standing.ts";

/** From coarse to exact: most of the columns come from tables that cost little. */
const grids: readonly Grid[] = [
	{ mostWork: 2e6, atParts: false },
	{ mostWork: 30e6, atParts: true },
	{ mostWork: 120e6, atParts: false },
];

/** Generates columns until `end`, proves what they prove; returns them. Pauses now and then. */
export function* generate(
	standing: Standing,
	end: number,
): Generator<void, Columns> {
	const { problem, steps, wanted } = standing;
	const priced = problem.blanks.some(({ price }) => price > 0);
	const costs = problem.blanks.map(({ price }) => (priced ? price : 1));
	const columns = new Columns(problem, wanted, costs);
	for (const { blank, root } of standing.layout.sheets) {
		const pattern = patternOf(root);
		if (pattern !== undefined) columns.add(blank, pattern);
	}
	let paused = steps.spent;
	for (const grid of grids) {
		columns.useGrid(grid);
		if (steps.spent + columns.work > end) break;
		while (!columns.finished && steps.spent < end) {
			const before = columns.spent;
			columns.round();
			steps.spend(columns.spent - before);
			if (steps.spent - paused < slice) continue;
			paused = steps.spent;
			yield;
		}
		proveBy(columns, standing, priced);
		if (columns.exact || standing.proven) break;
	}
	return columns;
}

const slice = 8e6;

function proveBy(columns: Columns, standing: Standing, priced: boolean): void {
	const { problem } = standing;
	if (columns.bound === 0) return;
	if (!priced) {
		standing.prove(0, Math.ceil(columns.bound - 1e-6));
		return;
	}
	const price = roundedUp(columns.bound, problem);
	const dearest = Math.max(...problem.blanks.map((blank) => blank.price));
	standing.prove(price, Math.ceil(price / dearest - 1e-6));
}

/**
 * Takes each pattern a whole number of times, and searches a good plan for the parts that are left, from the patterns with
 * the largest fractions on. When that comes to nothing, fewer patterns are taken for granted.
 */
export function* roundUp(
	standing: Standing,
	columns: Columns,
	end: number,
): Generator<void> {
	const { steps, chance } = standing;
	const values = columns.values();
	for (let round = 0; steps.spent < end && !standing.proven; round++) {
		steps.spend(perRound);
		const granted = takeWhole(standing, columns.columns, values, (whole) =>
			Math.max(0, whole - (round < 2 ? round : chance.below(round + 1))),
		);
		const stop = steps.spent + (end - steps.spent) / 2;
		yield* finish(standing, granted, stop + slice < end ? stop : end);
	}
}

/** What a round costs even where it finds nothing to search: without it, such rounds would never end. */
const perRound = 100_000;

/** Sheets that are settled, and what is to be made beside them. */
interface Granted {
	readonly sheets: readonly Sheet[];
	readonly price: number;
	readonly left: Int32Array;
	readonly leftArea: number;
	/** The best to begin with come first. */
	readonly begun: readonly Begun[];
}

function takeWhole(
	standing: Standing,
	columns: readonly Column[],
	values: readonly number[],
	fewer: (whole: number) => number,
): Granted {
	const { problem } = standing;
	const left = Int32Array.from(standing.wanted);
	const sheets: Sheet[] = [];
	let price = 0;
	const begun: { begun: Begun; share: number }[] = [];
	columns.forEach(({ blank, pattern, counts }, index) => {
		const value = values[index] ?? 0;
		if (value < 1e-6) return;
		let times = fewer(Math.floor(value + 1e-6));
		for (const [kind, count] of counts)
			times = Math.min(times, Math.floor((left[kind] ?? 0) / count));
		const sheet = cutUp(problem, blank, pattern);
		if (sheet === undefined) return;
		for (const [kind, count] of counts)
			left[kind] = (left[kind] ?? 0) - count * times;
		price += times * (problem.blanks[blank]?.price ?? 0);
		for (let copy = 0; copy < times; copy++) sheets.push(sheet);
		for (let share = value - times; share > 1e-6; share--)
			begun.push({ begun: { blank, pattern }, share });
	});
	begun.sort((a, b) => b.share - a.share);
	let leftArea = 0;
	left.forEach((count, kind) => {
		leftArea += count * (problem.kinds[kind]?.area ?? 0);
	});
	return {
		sheets,
		price,
		left,
		leftArea,
		begun: begun.map(({ begun }) => begun),
	};
}

/** Searches sheets for what is left, first some that would be near the bound, then any that would be better than the best. */
function* finish(
	standing: Standing,
	granted: Granted,
	end: number,
): Generator<void> {
	const { steps } = standing;
	if (granted.leftArea === 0) {
		standing.offer({ sheets: granted.sheets, remaining: granted.left });
		return;
	}
	for (let better = true; better && !standing.proven && steps.spent < end; ) {
		better = false;
		for (const goal of goalsFor(standing, granted)) {
			const stop = steps.spent + (end - steps.spent) / 2;
			better = yield* reach(standing, granted, goal, stop);
			if (better) break;
		}
	}
}

function* reach(
	standing: Standing,
	granted: Granted,
	goal: Goal,
	end: number,
): Generator<void, boolean> {
	const { problem, steps, chance } = standing;
	const { left, begun } = granted;
	const attempt = new Attempt(problem, allowedBy(goal), left, begun, chance);
	while (!attempt.strive(steps, Math.min(end, steps.spent + slice))) {
		if (steps.spent >= end) return false;
		yield;
	}
	const sheets = attempt.sheets();
	if (sheets === undefined) return false;
	return standing.offer({
		sheets: [...granted.sheets, ...sheets],
		remaining: attempt.loose,
	});
}

function goalsFor(standing: Standing, granted: Granted): Goal[] {
	const { problem, worth, leastPrice, leastSheets } = standing;
	const used = problem.blanks.map(() => 0);
	for (const { blank } of granted.sheets) used[blank] = (used[blank] ?? 0) + 1;
	const rest = {
		...problem,
		blanks: problem.blanks.map((blank, index) => ({
			...blank,
			count: blank.count - (used[index] ?? 0),
		})),
	};
	const [only] = problem.blanks;
	const near =
		problem.blanks.length === 1 && only !== undefined
			? { price: (leastSheets + 1) * only.price, sheets: leastSheets + 2 }
			: {
					price: (leastPrice + worth.price) / 2,
					sheets: Number.POSITIVE_INFINITY,
				};
	const limits =
		near.sheets < worth.sheets || problem.blanks.length > 1
			? [near, worth]
			: [worth];
	return limits.flatMap(({ price, sheets }) =>
		goalsBelow(
			rest,
			granted.leftArea,
			price - granted.price,
			sheets - granted.sheets.length,
			leastPrice - granted.price,
			goalsEach,
		),
	);
}

const goalsEach = 2;
