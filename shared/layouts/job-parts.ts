// Blanks of one size as one part of a job, and back: which blank stands at which place of a plan.

import type { Blank } from "./blanks.ts";
import type { StockToCut } from "./stock-to-cut.ts";

/** Blanks that the optimiser need not tell apart. */
export interface Counted {
	readonly length: number;
	readonly width: number;
	readonly blanks: readonly Blank[];
}

export function countedBlanks(
	blanks: readonly Blank[],
	keyOf: (blank: Blank) => string,
): readonly Counted[] {
	const groups = new Map<string, Blank[]>();
	for (const blank of blanks) {
		const known = groups.get(keyOf(blank));
		if (known) known.push(blank);
		else groups.set(keyOf(blank), [blank]);
	}
	return [...groups.values()].map((alike) => {
		const [{ length, width }] = alike as [Blank];
		return { length, width, blanks: alike };
	});
}

/** Deals the blanks of each part out, in their order. */
export class Taker {
	private readonly parts: readonly Counted[];
	private readonly taken: number[];

	constructor(parts: readonly Counted[]) {
		this.parts = parts;
		this.taken = parts.map(() => 0);
	}

	take(part: number): Blank {
		const at = this.taken[part] ?? 0;
		this.taken[part] = at + 1;
		const blank = this.parts[part]?.blanks[at];
		if (!blank) throw new Error(`The plan has more of part ${part} than asked`);
		return blank;
	}
}

/** Of a price: the optimisers compare whole numbers. */
export const priceSteps = 10_000;

/**
 * What each stock costs in the job. Where a price is not known, all are compared by their area: then the job is cheapest
 * that cuts up the least.
 */
export function jobPrices(stocks: readonly StockToCut[]): readonly number[] {
	const known = arePriced(stocks);
	return stocks.map(({ onHand, price, length, width }) =>
		onHand
			? 0
			: known && price
				? Math.round(price.toNumber() * priceSteps)
				: Math.round((length / 1_000) * (width / 1_000)),
	);
}

export function arePriced(stocks: readonly StockToCut[]): boolean {
	return stocks.every(({ onHand, price }) => onHand || price !== undefined);
}
