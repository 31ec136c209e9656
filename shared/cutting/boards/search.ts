// The search for a plan, from the answer that is there at once to the best that the effort allows.

import type { BoardJob, BoardPlan, Effort, Progress } from "../job.ts";
import { Steps, stepsFor } from "../steps.ts";
import { arrange } from "./arrange.ts";
import { quickBound } from "./bounds.ts";
import { type Costs, costsOf, nextPrice } from "./costs.ts";
import { type Dive, dive } from "./dive.ts";
import { byPrice, byWaste, fillBoards, type Rule } from "./fill.ts";
import { finish } from "./finish.ts";
import type { Pattern } from "./pattern.ts";
import { type Problem, readProblem } from "./problem.ts";
import { randomFrom } from "./random.ts";
import { Relaxation } from "./relaxation.ts";
import { restOf } from "./rest.ts";
import { supply, withoutEnd } from "./supply.ts";

/** With more different lengths the linear program is too slow: the first boards are then filled by rule, until so many are left. */
const mostKinds = 300;
/** Steps for pushing remnants together, apart from those of the search. */
const remnantSteps = 10e6;
/** Dead ends of a dive, and ways on at a place. */
const deadEnds = 20;
const breadth = 3;
/** Dives that find nothing before the search gives up, if costs are whole and if not. */
const mostIdle = { whole: 400, mixed: 10 };
/** Where a dive aims between the bound and the best plan, if costs are not whole. */
const aims = [0.02, 0.1, 0.3, 0.7, 1];

/** The best plan so far in the problem's terms, and what is known about how good any can be. */
interface Standing {
	boards: Pattern[];
	leastBoards: number;
	leastPrice: number;
}

/**
 * The best plan that the effort finds for boards of several lengths and prices: price first, then number of boards, then one
 * long remnant; equal boards one after the other. Parts that no stock takes, or for which none is left, are told in `missing`.
 * Never throws; the same job and effort give the same plan.
 */
export function layOutBoards(
	job: BoardJob,
	effort: Effort = "usual",
): BoardPlan {
	const search = searchBoards(job, effort);
	for (;;) {
		const step = search.next();
		if (step.done) return step.value;
	}
}

/** The same, bit by bit: the first plan is there at once, and the search may be left at any time. */
export function* searchBoards(
	job: BoardJob,
	effort: Effort,
): Generator<Progress<BoardPlan>, BoardPlan> {
	const real = readProblem(job);
	const steps = stepsFor(effort);
	const plans = new Plans(job, real);
	if (real.sizes.length === 0 || real.stocks.length === 0) {
		const plan = plans.of({ boards: [], leastBoards: 0, leastPrice: 0 });
		yield { plan, done: 1, proven: true };
		return plan;
	}
	const first = firstBoards(real, steps);
	const problem = first ? real : withoutEnd(real);
	const costs = costsOf(problem);
	const ones = problem.stocks.map(() => 1);
	const prices = problem.stocks.map(({ price }) => price);
	const standing: Standing = {
		boards: first ?? (firstBoards(problem, steps) as Pattern[]),
		leastBoards: Math.ceil(quickBound(problem, ones) - 1e-9),
		leastPrice: nextPrice(quickBound(problem, prices), prices),
	};
	const progress = (): Progress<BoardPlan> => {
		const plan = plans.of(standing);
		return {
			plan,
			done: steps.done,
			proven:
				plan.missing.every(({ why }) => why === "too-large") &&
				plan.price <= plan.leastPrice &&
				plan.boards.length <= plan.leastBoards,
		};
	};
	yield progress();
	for (const _ of improve(problem, costs, standing, steps)) yield progress();
	const last = progress();
	yield { ...last, done: 1 };
	return last.plan;
}

/** Makes plans of standings, and does not do so twice for the same boards. */
class Plans {
	readonly #job: BoardJob;
	readonly #problem: Problem;
	#boards: readonly Pattern[] | undefined;
	#plan: Pick<BoardPlan, "boards" | "price" | "missing"> | undefined;

	constructor(job: BoardJob, problem: Problem) {
		this.#job = job;
		this.#problem = problem;
	}

	of({ boards, leastBoards, leastPrice }: Standing): BoardPlan {
		if (!this.#plan || this.#boards !== boards) {
			this.#boards = boards;
			this.#plan = this.#make(boards);
		}
		// A bound for all parts may be above a plan for those that could be had.
		return {
			...this.#plan,
			leastPrice: Math.min(leastPrice, this.#plan.price),
			leastBoards: Math.min(leastBoards, this.#plan.boards.length),
		};
	}

	#make(
		boards: readonly Pattern[],
	): Pick<BoardPlan, "boards" | "price" | "missing"> {
		const problem = this.#problem;
		const steps = new Steps(remnantSteps);
		const supplied = supply(problem, boards, steps);
		const short =
			problem.stocks.length === 0 ? problem.demands : supplied.missing;
		return {
			...arrange(this.#job, problem, supplied.boards),
			missing: [
				...problem.missing,
				...Array.from(short).flatMap((count, kind) =>
					lastOf(problem.parts[kind] as readonly number[], count),
				),
			],
		};
	}
}

/** The last so many copies of a length, by part: the others are on the boards. */
function lastOf(
	parts: readonly number[],
	count: number,
): BoardPlan["missing"][number][] {
	const counts = new Map<number, number>();
	if (count > 0)
		for (const part of parts.slice(-count))
			counts.set(part, (counts.get(part) ?? 0) + 1);
	return [...counts].map(([part, some]) => ({
		part,
		count: some,
		why: "no-stock-left",
	}));
}

/** The best of what the rules give at once; undefined if parts are left over. */
function firstBoards(problem: Problem, steps: Steps): Pattern[] | undefined {
	const prices = problem.stocks.map(({ price }) => price);
	const left = problem.stocks.map(({ count }) => count);
	const rules: readonly Rule[] = ["longest", "fullest"];
	const choices =
		problem.stocks.length > 1
			? [byPrice(problem), byWaste(problem)]
			: [byPrice(problem)];
	let best: Pattern[] | undefined;
	for (const choice of choices)
		for (const rule of rules) {
			const { boards, unplaced } = fillBoards(
				problem,
				problem.demands,
				left,
				rule,
				choice,
				steps,
			);
			if (unplaced.some((count) => count > 0)) continue;
			if (!best || isCheaper(boards, best, prices)) best = boards;
		}
	return best;
}

function totalOf(boards: readonly Pattern[], each: readonly number[]): number {
	return boards.reduce((sum, { stock }) => sum + (each[stock] as number), 0);
}

function isCheaper(
	one: readonly Pattern[],
	other: readonly Pattern[],
	prices: readonly number[],
): boolean {
	const by = totalOf(one, prices) - totalOf(other, prices);
	const same = Math.abs(by) <= 1e-9 * totalOf(other, prices);
	return same ? one.length < other.length : by < 0;
}

/** Raises the bounds and betters the boards of `standing` until they meet or the steps are used up. */
function* improve(
	problem: Problem,
	costs: Costs,
	standing: Standing,
	steps: Steps,
): Generator<void, void> {
	const prices = problem.stocks.map(({ price }) => price);
	if (isBest(standing, costs.whole, prices)) return;
	const head = headOf(problem, standing.boards);
	const left = problem.stocks.map(({ count }) => count);
	const needs = Int32Array.from(problem.demands);
	for (const { stock, kinds, counts } of head) {
		left[stock] = (left[stock] as number) - 1;
		kinds.forEach((kind, k) => {
			needs[kind] = (needs[kind] as number) - (counts[k] as number);
		});
	}
	const rest = restOf(problem, needs, left);
	const relaxation = new Relaxation(rest.problem, costs.each, steps);
	for (const { stock, kinds, counts } of standing.boards.slice(head.length))
		relaxation.add({
			stock,
			kinds: kinds.map((kind) => rest.indexOf[kind] as number),
			counts,
		});
	const fixed = totalOf(head, costs.each);
	// With a head the bounds of the rest are none of the whole.
	const least = yield* raiseBounds(
		relaxation,
		costs.whole,
		head.length === 0 ? standing : undefined,
		prices,
	);
	if (isBest(standing, costs.whole, prices)) return;
	const accept = (boards: readonly Pattern[]) => {
		const all = [...head, ...boards.map(rest.back)];
		if (isCheaper(all, standing.boards, prices)) standing.boards = all;
	};
	if (costs.whole && head.length === 0)
		yield* decideAtOnce(relaxation, standing, prices, steps);
	const random = randomFrom(1);
	let idle = 0;
	const mostDives = costs.whole ? mostIdle.whole : mostIdle.mixed;
	for (let count = 0; idle < mostDives && !steps.over; count++) {
		const best = totalOf(standing.boards, costs.each) - fixed;
		const goal = costs.whole
			? wholeGoal(
					Math.max(least, head.length === 0 ? standing.leastBoards : 0),
					best,
					count,
				)
			: nextGoal(least, best, costs.step, count);
		if (goal === undefined || isBest(standing, costs.whole, prices)) break;
		const search: Dive = {
			whole: costs.whole,
			deadEnds,
			breadth,
			chance: random,
			tooMany: Number.POSITIVE_INFINITY,
			steps,
		};
		const found = yield* dive(relaxation, goal, search);
		const before = standing.boards;
		if (found) accept(found);
		idle = standing.boards === before ? idle + 1 : 0;
		yield;
	}
	if (!costs.whole && head.length === 0)
		yield* raiseBoards(problem, standing, steps);
}

/** Nothing can be better, by price and then by number. */
function isBest(
	{ boards, leastBoards, leastPrice }: Standing,
	whole: boolean,
	prices: readonly number[],
): boolean {
	if (whole) return boards.length <= leastBoards;
	return (
		boards.length <= leastBoards &&
		totalOf(boards, prices) <= leastPrice * (1 + 1e-9)
	);
}

/** The first boards, if there are too many different lengths for the linear program. */
function headOf(
	{ sizes, demands }: Problem,
	boards: readonly Pattern[],
): readonly Pattern[] {
	let kinds = sizes.length;
	const needs = Int32Array.from(demands);
	let count = 0;
	while (kinds > mostKinds) {
		const board = boards[count++] as Pattern;
		board.kinds.forEach((kind, k) => {
			needs[kind] = (needs[kind] as number) - (board.counts[k] as number);
			if (needs[kind] === 0) kinds--;
		});
	}
	return boards.slice(0, count);
}

/** Column generation until the bound is settled; returns it, in costs, and writes what it proves into `standing`. */
function* raiseBounds(
	relaxation: Relaxation,
	whole: boolean,
	standing: Standing | undefined,
	prices: readonly number[],
): Generator<void, number> {
	const dearest = Math.max(...prices) || 1;
	const shares = prices.map((price) => price / dearest);
	let least = 0;
	let exchanges = true;
	for (;;) {
		const value = yield* relaxation.solve();
		if (value === Number.POSITIVE_INFINITY) return least;
		const { bound, settled } = relaxation.price();
		least = Math.max(least, whole ? Math.ceil(bound - 1e-9) : bound);
		if (standing) {
			const price = relaxation.boundAt(shares) * dearest;
			if (whole) raiseWhole(standing, least, prices);
			else
				standing.leastPrice = Math.max(
					standing.leastPrice,
					nextPrice(price, prices),
				);
			if (isBest(standing, whole, prices)) return least;
		}
		if (whole && least >= Math.ceil(value - 1e-7)) return least;
		if (settled) {
			if (!exchanges) return least;
			exchanges = false;
			relaxation.forbidExchanges();
		}
		yield;
	}
}

/** So many boards are needed, and all cost the same. */
function raiseWhole(
	standing: Standing,
	leastBoards: number,
	prices: readonly number[],
): void {
	standing.leastBoards = Math.max(standing.leastBoards, leastBoards);
	standing.leastPrice = standing.leastBoards * (prices[0] as number);
}

/** The least number of boards at any price. */
function* raiseBoards(
	problem: Problem,
	standing: Standing,
	steps: Steps,
): Generator<void, void> {
	if (standing.boards.length <= standing.leastBoards) return;
	const ones = problem.stocks.map(() => 1);
	const relaxation = new Relaxation(problem, ones, steps);
	for (const board of standing.boards) relaxation.add(board);
	const counted: Standing = { ...standing, leastPrice: 0 };
	yield* raiseBounds(relaxation, true, counted, ones);
	standing.leastBoards = Math.max(standing.leastBoards, counted.leastBoards);
}

/** A plan at the bound, or the proof that there is none and the bound is higher, where that is to be had without a search. */
function* decideAtOnce(
	relaxation: Relaxation,
	standing: Standing,
	prices: readonly number[],
	steps: Steps,
): Generator<void, void> {
	const { demands, stocks } = relaxation.problem;
	while (standing.boards.length > standing.leastBoards && !steps.over) {
		const boards = yield* finish(
			relaxation,
			Int32Array.from(demands),
			Float64Array.from(stocks, ({ count }) => count),
			standing.leastBoards,
			{ whole: true, tooMany: Number.POSITIVE_INFINITY, steps },
		);
		if (!boards) return;
		if (boards === "none")
			raiseWhole(standing, standing.leastBoards + 1, prices);
		else standing.boards = boards;
	}
}

/** Every other time straight for the bound, else for one board fewer. */
function wholeGoal(
	least: number,
	best: number,
	count: number,
): number | undefined {
	if (best <= least) return undefined;
	return count % 2 === 0 ? least : Math.round(best) - 1;
}

/** In turn nearer to the bound and nearer to what there is. */
function nextGoal(
	least: number,
	best: number,
	step: number,
	count: number,
): number | undefined {
	const most = best - step;
	if (most < least) return undefined;
	return Math.min(
		most,
		least + (aims[count % aims.length] as number) * (best - least),
	);
}
