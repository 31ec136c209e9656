// The cutting problem with fractions of boards allowed: its value is a bound, its prices and patterns lead to plans.

import { LinearProgram, type Outcome } from "../linear/index.ts";
import type { Steps } from "../steps.ts";
import { Knapsack } from "./knapsack.ts";
import { keyOf, type Pattern, patternFrom } from "./pattern.ts";
import type { Problem } from "./problem.ts";

/** Prices are whole multiples of 1 / grain, so that bounds are exact. */
const grain = 2 ** 30;
/** A pattern must be cheaper than this share of its cost to be worth adding. */
const worthwhile = 1e-7;
/** Steps of the linear program between two pauses. */
const bit = 8e6;
/** New patterns from one table. */
const mostAdded = 80;

/** What a round of pricing told. */
export interface Pricing {
	/** No plan for these needs costs less: exact, up to the rounding of one division. */
	readonly bound: number;
	/** No pattern helps that is not there already: the value of the last `solve` is the bound. */
	readonly settled: boolean;
}

/**
 * Column generation (Gilmore and Gomory, "A linear programming approach to the cutting-stock problem", Operations Research
 * 9, 1961): the linear program knows some patterns; the knapsack problem for its prices finds the ones that are missing. The
 * bound at any moment is that of Farley ("A note on bounding a class of linear programming problems, including cutting stock
 * problems", Operations Research 38, 1990), here with counts of stock, and in whole numbers.
 */
export class Relaxation {
	readonly problem: Problem;
	/** Of one board of each stock; the largest is about 1. */
	readonly costs: readonly number[];
	readonly patterns: Pattern[] = [];
	readonly #program: LinearProgram;
	readonly #knapsack: Knapsack;
	readonly #known = new Map<string, number>();
	readonly #steps: Steps;
	/** Rows behind those of the sizes: stocks of which there is a limited number. */
	readonly #limited: readonly number[];
	readonly #needs: Float64Array;
	readonly #left: Float64Array;
	/**
	 * Columns before those of the patterns: a place for a part may be used for the next shorter one. They hold the prices in the
	 * order of the lengths, which spares most of the rounds (Ben Amor, Desrosiers and Valério de Carvalho, "Dual-optimal
	 * inequalities for stabilized column generation", Operations Research 54, 2006).
	 */
	readonly #exchanges: number;
	#prices = new Float64Array();
	/** By stock: what its best filling is worth at these prices, or more. */
	#most: readonly number[] = [];
	#outcome: Outcome = "stopped";
	/** Patterns have come since the last `solve`. */
	#grown = false;
	#pivots = 0;
	#work = 0;

	constructor(problem: Problem, costs: readonly number[], steps: Steps) {
		this.problem = problem;
		this.costs = costs;
		this.#steps = steps;
		this.#knapsack = new Knapsack(problem, steps);
		this.#limited = [...problem.stocks.keys()].filter((stock) =>
			Number.isFinite((problem.stocks[stock] as { count: number }).count),
		);
		this.#needs = Float64Array.from(problem.demands);
		this.#left = Float64Array.from(problem.stocks, ({ count }) => count);
		this.#program = new LinearProgram([
			...this.#needs,
			...this.#limited.map((stock) => -(this.#left[stock] as number)),
		]);
		for (let kind = 0; kind + 1 < problem.sizes.length; kind++)
			this.#program.addColumn(0, [kind, kind + 1], [-1, 1]);
		this.#exchanges = this.#program.columns;
	}

	/** Adds a pattern; the index of the one that is equal, if there is one. */
	add(pattern: Pattern): number {
		const key = keyOf(pattern);
		const known = this.#known.get(key);
		if (known !== undefined) return known;
		const index = this.patterns.push(pattern) - 1;
		this.#known.set(key, index);
		const limit = this.#limited.indexOf(pattern.stock);
		this.#program.addColumn(
			this.costs[pattern.stock] as number,
			limit < 0
				? pattern.kinds
				: [...pattern.kinds, this.problem.sizes.length + limit],
			limit < 0 ? pattern.counts : [...pattern.counts, -1],
		);
		return index;
	}

	/** How many of a pattern the relaxed plan takes. */
	value(pattern: number): number {
		return this.#program.value(this.#exchanges + pattern);
	}

	/** The patterns that the relaxed plan may take. */
	basic(): number[] {
		return this.#program
			.basic()
			.filter((column) => column >= this.#exchanges)
			.map((column) => column - this.#exchanges);
	}

	/**
	 * From now on a place is used for its own part only. With limited demands the exchanges loosen the bound a little, because
	 * they allow more copies of a part on one board than are needed at all.
	 */
	forbidExchanges(): void {
		for (let column = 0; column < this.#exchanges; column++)
			this.#program.setCost(column, 10);
	}

	/** Sets what is still to be cut and which boards are left. */
	*demand(
		needs: ArrayLike<number>,
		left: ArrayLike<number>,
	): Generator<void, void> {
		// From an optimal basis the way to the new one is short.
		if (this.#grown) yield* this.solve();
		for (let kind = 0; kind < this.#needs.length; kind++) {
			this.#needs[kind] = needs[kind] as number;
			this.#program.setNeed(kind, needs[kind] as number);
		}
		for (let stock = 0; stock < this.#left.length; stock++)
			this.#left[stock] = left[stock] as number;
		this.#limited.forEach((stock, row) => {
			this.#program.setNeed(this.#needs.length + row, -(left[stock] as number));
		});
	}

	/**
	 * The least cost with the patterns so far; `Infinity` if they do not meet the needs with the boards that are left, or if the
	 * steps ran out. Yields between bits of work.
	 */
	*solve(): Generator<void, number> {
		const { rows } = this.#program;
		const most = Math.max(4, Math.floor(bit / (rows * rows + 1)));
		for (;;) {
			const outcome = this.#program.solve(most);
			this.#charge();
			this.#outcome = outcome;
			if (outcome !== "stopped") break;
			if (this.#steps.over) return Number.POSITIVE_INFINITY;
			yield;
		}
		this.#grown = false;
		return this.#outcome === "optimal"
			? this.#program.objective
			: Number.POSITIVE_INFINITY;
	}

	/** Looks for patterns that help at the prices of the last `solve`, and adds them. */
	price(): Pricing {
		if (this.#outcome === "stopped") return { bound: 0, settled: false };
		const feasible = this.#outcome === "optimal";
		const kinds = this.#needs.length;
		const { duals } = this.#program;
		const prices = Float64Array.from({ length: kinds }, (_, kind) =>
			(this.#needs[kind] as number) > 0
				? Math.floor((duals[kind] as number) * grain)
				: 0,
		);
		const fillings = this.#knapsack.solve(prices, this.#needs);
		let settled = true;
		fillings.forEach((filling, stock) => {
			if ((this.#left[stock] as number) < 1) return;
			const row = this.#limited.indexOf(stock);
			const limit = row < 0 ? 0 : (duals[kinds + row] as number);
			const cost = feasible ? (this.costs[stock] as number) : 0;
			const enough = (cost + limit + worthwhile) * grain;
			if (filling.value <= enough) return;
			if (this.#addFillings(stock, filling.counts, prices, enough))
				settled = false;
		});
		if (!settled) this.#grown = true;
		this.#prices = prices;
		this.#most = fillings.map(({ most }) => most);
		const bound = feasible
			? this.boundAt(this.costs)
			: settled
				? Number.POSITIVE_INFINITY
				: 0;
		return { bound, settled };
	}

	/** The best filling, and one for each size that it leaves out, as long as they help. */
	#addFillings(
		stock: number,
		counts: Int32Array,
		prices: Float64Array,
		enough: number,
	): boolean {
		const before = this.patterns.length;
		const covered = Uint8Array.from(counts, (count) => Math.min(1, count));
		this.add(patternFrom(stock, counts));
		for (let kind = 0; kind < prices.length; kind++) {
			if (covered[kind] === 1 || (prices[kind] as number) <= 0) continue;
			const other = this.#knapsack.with(kind, stock);
			if (!other || other.value <= enough) continue;
			this.add(patternFrom(stock, other.counts));
			other.counts.forEach((count, one) => {
				if (count > 0) covered[one] = 1;
			});
			if (this.patterns.length - before >= mostAdded) break;
		}
		return this.patterns.length > before;
	}

	/**
	 * The bound that the prices of the last `price` give if a board of each stock costs this much. Farley's with counts: the
	 * needs are worth `prices · needs - Σ count · (worth of its best filling - cost)` over the limited stocks, once prices
	 * are so low that no filling of an unlimited stock is worth more than it costs.
	 */
	boundAt(costs: readonly number[]): number {
		let worth = 0;
		for (let kind = 0; kind < this.#prices.length; kind++)
			worth += (this.#prices[kind] as number) * (this.#needs[kind] as number);
		let over = 1;
		this.#most.forEach((value, stock) => {
			if (value > 0 && this.#left[stock] === Number.POSITIVE_INFINITY)
				over = Math.max(over, value / ((costs[stock] as number) * grain));
		});
		// A board that costs nothing and never runs out.
		if (over === Number.POSITIVE_INFINITY) return 0;
		let credit = 0;
		this.#most.forEach((value, stock) => {
			const left = this.#left[stock] as number;
			const gain = value / over - (costs[stock] as number) * grain;
			if (left !== Number.POSITIVE_INFINITY && left > 0 && gain > 0)
				credit += left * gain;
		});
		return Math.max(0, (worth / over - credit) / grain);
	}

	/** The prices of the last `price`, so low that no filling of the first stock is worth more than a board. */
	fairPrices(): Float64Array {
		const most = Math.max(this.#most[0] as number, 1);
		return this.#prices.map((price) => price / most);
	}

	#charge(): void {
		const { work, pivots, columns } = this.#program;
		this.#steps.spend(
			work - this.#work + (pivots - this.#pivots + 1) * 8 * columns,
		);
		this.#work = work;
		this.#pivots = pivots;
	}
}
