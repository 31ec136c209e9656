// The most valuable pattern for given prices of the parts: what column generation asks for, over and over.

import type { Steps } from "../steps.ts";
import type { Problem } from "./problem.ts";

/** Up to so many cells a table is filled; above, the tree is searched. */
const mostCells = 32e6;
/** Branches of one search; then the best so far, and a bound, have to do. */
const mostBranches = 200_000;

/** For one stock. */
export interface Filling {
	/** Worth of `counts`. */
	readonly value: number;
	/** No pattern is worth more; equal to `value` where the search came to its end. */
	readonly most: number;
	readonly counts: Int32Array;
}

/**
 * The bounded knapsack problem, for all stocks at once: greatest `prices · counts` with `sizes · counts <= capacity`, `counts
 * <= limits`. Prices must be whole numbers (as doubles), so that values are exact.
 *
 * By dynamic programming over the length where the table is small enough (Gilmore and Gomory, "The theory and computation of
 * knapsack functions", Operations Research 14, 1966); by depth-first branch and bound where it is not (Horowitz and Sahni,
 * "Computing partitions with applications to the knapsack problem", Journal of the ACM 21, 1974).
 */
export class Knapsack {
	readonly #sizes: readonly number[];
	readonly #capacities: readonly number[];
	readonly #steps: Steps;
	readonly #tabled: boolean;
	readonly #best: Float64Array;
	readonly #taken: Uint8Array | Uint16Array;
	#prices: Float64Array = new Float64Array(0);
	#limits: ArrayLike<number> = [];

	constructor({ sizes, demands, stocks }: Problem, steps: Steps) {
		this.#sizes = sizes;
		this.#capacities = stocks.map(({ capacity }) => capacity);
		this.#steps = steps;
		const cells = (Math.max(0, ...this.#capacities) + 1) * sizes.length;
		this.#tabled = cells <= mostCells;
		this.#best = new Float64Array(
			this.#tabled ? Math.max(0, ...this.#capacities) + 1 : 0,
		);
		const longest = Math.max(0, ...this.#capacities);
		const few = sizes.every(
			(size, kind) => Math.min(longest / size, demands[kind] as number) < 256,
		);
		this.#taken = new (few ? Uint8Array : Uint16Array)(
			this.#tabled ? cells : 0,
		);
	}

	/** One filling for each stock. */
	solve(prices: Float64Array, limits: ArrayLike<number>): Filling[] {
		this.#prices = prices;
		this.#limits = limits;
		if (!this.#tabled)
			return this.#capacities.map((capacity) => this.#search(capacity));
		this.#fillTable();
		return this.#capacities.map((capacity) => {
			const value = this.#best[capacity] as number;
			return { value, most: value, counts: this.#read(capacity) };
		});
	}

	/**
	 * After `solve`: the most valuable filling that has at least one part of a kind, as far as the table tells it without
	 * more work; undefined if it does not.
	 */
	with(kind: number, stock: number): Filling | undefined {
		const rest = (this.#capacities[stock] as number) - this.#sizeOf(kind);
		if (!this.#tabled || rest < 0) return undefined;
		const counts = this.#read(rest);
		if ((counts[kind] as number) >= (this.#limits[kind] as number))
			return undefined;
		counts[kind] = (counts[kind] as number) + 1;
		const value = (this.#best[rest] as number) + (this.#prices[kind] as number);
		return { value, most: value, counts };
	}

	#sizeOf(kind: number): number {
		return this.#sizes[kind] as number;
	}

	/** `#best[c]`: the most that fits in c; `#taken`: how many of each kind the best filling takes, once all before it are known. */
	#fillTable(): void {
		const best = this.#best.fill(0);
		const taken = this.#taken;
		const width = best.length;
		const most = width - 1;
		let work = width;
		for (let kind = 0; kind < this.#sizes.length; kind++) {
			const size = this.#sizeOf(kind);
			const price = this.#prices[kind] as number;
			const row = kind * width;
			taken.fill(0, row, row + width);
			if (price <= 0 || size > most) continue;
			const copies = Math.min(
				this.#limits[kind] as number,
				Math.floor(most / size),
			);
			for (let copy = 1; copy <= copies; copy++) {
				for (let c = most; c >= size; c--) {
					const value = (best[c - size] as number) + price;
					if (value > (best[c] as number)) {
						best[c] = value;
						taken[row + c] = (taken[row + c - size] as number) + 1;
					}
				}
				work += width - size;
			}
		}
		this.#steps.spend(work);
	}

	#read(capacity: number): Int32Array {
		const counts = new Int32Array(this.#sizes.length);
		const width = this.#best.length;
		let left = capacity;
		for (let kind = this.#sizes.length - 1; kind >= 0; kind--) {
			const count = this.#taken[kind * width + left] as number;
			counts[kind] = count;
			left -= count * this.#sizeOf(kind);
		}
		return counts;
	}

	/** By price per length, dearest first; as many as fit, then one fewer … while the rest could still make up for it. */
	#search(capacity: number): Filling {
		const prices = this.#prices;
		const order = [...this.#sizes.keys()]
			.filter(
				(kind) =>
					(prices[kind] as number) > 0 &&
					this.#sizeOf(kind) <= capacity &&
					(this.#limits[kind] as number) > 0,
			)
			.sort(
				(a, b) =>
					(prices[b] as number) * this.#sizeOf(a) -
						(prices[a] as number) * this.#sizeOf(b) || a - b,
			);
		const size = Float64Array.from(order, (kind) => this.#sizeOf(kind));
		const price = Float64Array.from(order, (kind) => prices[kind] as number);
		const limit = Float64Array.from(
			order,
			(kind) => this.#limits[kind] as number,
		);
		// The shortest of what is still to come: where it does not fit, nothing does.
		const shortest = new Float64Array(order.length + 1).fill(
			Number.POSITIVE_INFINITY,
		);
		for (let i = order.length - 1; i >= 0; i--)
			shortest[i] = Math.min(size[i] as number, shortest[i + 1] as number);
		const counts = new Int32Array(order.length);
		const bestCounts = new Int32Array(order.length);
		let best = 0;
		let value = 0;
		let left = capacity;
		let branches = 0;
		let i = 0;
		search: for (;;) {
			// Forward: as many as fit, as long as the rest can still beat the best.
			while (i < order.length) {
				if (left < (shortest[i] as number)) break;
				const take = Math.min(
					limit[i] as number,
					Math.floor(left / (size[i] as number)),
				);
				if (take === 0) {
					counts[i++] = 0;
					continue;
				}
				branches++;
				if (value + this.#relaxed(size, price, limit, i, left) <= best) break;
				counts[i] = take;
				value += take * (price[i] as number);
				left -= take * (size[i] as number);
				i++;
			}
			if (value > best) {
				best = value;
				bestCounts.fill(0);
				bestCounts.set(counts.subarray(0, i));
			}
			// Back: one fewer of the last that was taken.
			do {
				if (i-- === 0) break search;
			} while (counts[i] === 0);
			if (branches > mostBranches) break;
			counts[i] = (counts[i] as number) - 1;
			value -= price[i] as number;
			left += size[i] as number;
			i++;
		}
		this.#steps.spend(20 * branches + 40 * order.length);
		const all = new Int32Array(this.#sizes.length);
		order.forEach((kind, at) => {
			all[kind] = bestCounts[at] as number;
		});
		const complete = branches <= mostBranches;
		return {
			value: best,
			most: complete
				? best
				: Math.max(
						best,
						Math.ceil(this.#relaxed(size, price, limit, 0, capacity)),
					),
			counts: all,
		};
	}

	/** What the rest is worth if parts could be divided (Dantzig, "Discrete-variable extremum problems", Operations Research 5, 1957). */
	#relaxed(
		size: Float64Array,
		price: Float64Array,
		limit: Float64Array,
		from: number,
		capacity: number,
	): number {
		let left = capacity;
		let value = 0;
		for (let i = from; i < size.length && left > 0; i++) {
			const one = size[i] as number;
			const need = one * (limit[i] as number);
			if (need <= left) {
				value += (price[i] as number) * (limit[i] as number);
				left -= need;
			} else {
				const whole = Math.floor(left / one);
				value += whole * (price[i] as number);
				left -= whole * one;
				// A thousandth of a whole price is far above the rounding of the quotient.
				return value + Math.floor((left * (price[i] as number)) / one + 1e-3);
			}
		}
		return value;
	}
}
