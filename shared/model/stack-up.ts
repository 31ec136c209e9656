// Adds up the tolerances that feed a size: what spread to expect, the worst case, and the share that comes out right.

import type { Feed, Source } from "./size.ts";

/** What the sources of one size make of it. Lengths in mm. */
export interface Spread {
	/** Half range by root-sum-square: independent, centred sources of an equal grade. */
	readonly expected: number;
	/** Half range if every source is off by all of its tolerance, each the bad way. */
	readonly worst: number;
	/** The biggest first. */
	readonly sources: readonly {
		readonly source: Source;
		/** Half range that this source alone gives the size. */
		readonly tolerance: number;
		/** Its part of the expected spread, by squares: 0 to 1; all together 1. */
		readonly share: number;
	}[];
}

/**
 * Worst case: the sum of |weight| x tolerance. Expected: the root of the sum of their squares. Feeds of one source are one
 * feed already, so what moves together has been added straight, or has cancelled, before the squares are taken.
 */
export function halfRanges(
	feeds: readonly Feed[],
): Pick<Spread, "expected" | "worst"> {
	let worst = 0;
	let squares = 0;
	for (const { source, weight } of feeds) {
		const tolerance = Math.abs(weight) * source.tolerance;
		worst += tolerance;
		squares += tolerance * tolerance;
	}
	return { expected: Math.sqrt(squares), worst };
}

/** `halfRanges`, and what each source has to do with them. */
export function spreadOf(feeds: readonly Feed[]): Spread {
	const { expected, worst } = halfRanges(feeds);
	const squares = expected * expected;
	const sources = feeds
		.map(({ source, weight }) => {
			const tolerance = Math.abs(weight) * source.tolerance;
			return {
				source,
				tolerance,
				share: squares > 0 ? (tolerance * tolerance) / squares : 0,
			};
		})
		.filter(({ tolerance }) => tolerance > 0)
		.sort((a, b) => b.tolerance - a.tolerance);
	return { expected, worst, sources };
}

/**
 * The share (0 to 1) of sizes that come out from `low` to `high`, all in mm, if every source is spread normally about its
 * middle with its tolerance at so many standard deviations.
 */
export function shareWithin(
	middle: number,
	expected: number,
	low: number,
	high: number,
	deviations = 3,
): number {
	if (!(expected > 0 && deviations > 0))
		return middle >= low && middle <= high ? 1 : 0;
	const deviation = expected / deviations;
	return (
		normalBelow((high - middle) / deviation) -
		normalBelow((low - middle) / deviation)
	);
}

/**
 * Share of a standard normal distribution below z. Within 1e-7: Abramowitz and Stegun, Handbook of Mathematical Functions,
 * formula 26.2.17.
 */
export function normalBelow(z: number): number {
	const x = Math.abs(z);
	const t = 1 / (1 + 0.2316419 * x);
	const tail =
		(Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI)) *
		t *
		(0.31938153 +
			t *
				(-0.356563782 +
					t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
	return z > 0 ? 1 - tail : tail;
}
