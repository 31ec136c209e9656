// What the search minimises: the price, and among equal prices the number of boards, as one number for each stock.

import type { Problem } from "./problem.ts";

/** Prices are whole multiples of this much at the finest; finer ones are not rounded to. */
const finest = 1000;

export interface Costs {
	/** Of one board of each stock; the dearest costs about 1. */
	readonly each: readonly number[];
	/** All boards cost 1: the number of boards is all that counts. */
	readonly whole: boolean;
	/** An improvement is at least this large. */
	readonly step: number;
}

/** For a problem with at least one stock. */
export function costsOf({ stocks }: Problem): Costs {
	const prices = stocks.map(({ price }) => price);
	const dearest = Math.max(...prices);
	if (prices.every((price) => price === dearest))
		return { each: prices.map(() => 1), whole: true, step: 1 };
	// A board counts so little that a cheaper plan is never given up for fewer boards, unless there are thousands of them.
	const board = Math.min(
		1e-4,
		Math.max(1e-6, priceUnit(prices) / dearest / 1000),
	);
	return {
		each: prices.map((price) => price / dearest + board),
		whole: false,
		step: board / 2,
	};
}

/** The largest amount of which all prices are multiples; 0 if there is none that can be trusted. */
export function priceUnit(prices: readonly number[]): number {
	let unit = 0;
	for (const price of prices) {
		const fine = Math.round(price * finest);
		if (Math.abs(price * finest - fine) > 1e-6 * Math.max(1, fine)) return 0;
		let other = fine;
		while (other > 0) [unit, other] = [other, unit % other];
	}
	return unit / finest;
}

/** A bound on a price, raised to the next price that any plan can have. */
export function nextPrice(bound: number, prices: readonly number[]): number {
	const unit = priceUnit(prices);
	return unit > 0 ? Math.ceil(bound / unit - 1e-6) * unit : bound;
}
