import fc from "fast-check";
import { expect, test } from "vitest";
import { Steps } from "../steps.ts";
import { Knapsack } from "./knapsack.ts";
import type { Problem } from "./problem.ts";

function problemOf(
	sizes: readonly number[],
	demands: readonly number[],
	capacities: readonly number[],
): Problem {
	return {
		sizes,
		demands,
		parts: sizes.map(() => []),
		missing: [],
		stocks: capacities.map((capacity, index) => ({
			index,
			capacity,
			price: 1,
			count: Number.POSITIVE_INFINITY,
		})),
	};
}

const jobs = fc
	.uniqueArray(fc.integer({ min: 2, max: 30 }), { minLength: 1, maxLength: 6 })
	.chain((sizes) =>
		fc.record({
			sizes: fc.constant(sizes.sort((a, b) => b - a)),
			demands: fc.array(fc.integer({ min: 1, max: 4 }), {
				minLength: sizes.length,
				maxLength: sizes.length,
			}),
			prices: fc.array(fc.integer({ min: 0, max: 50 }), {
				minLength: sizes.length,
				maxLength: sizes.length,
			}),
			capacities: fc.array(fc.integer({ min: 5, max: 60 }), {
				minLength: 1,
				maxLength: 2,
			}),
		}),
	);

/** The most that fits, by trying everything. */
function most(
	{ sizes, demands }: Problem,
	prices: readonly number[],
	room: number,
	kind = 0,
): number {
	if (kind === sizes.length) return 0;
	let best = 0;
	for (let count = 0; count <= (demands[kind] as number); count++) {
		const left = room - count * (sizes[kind] as number);
		if (left < 0) break;
		best = Math.max(
			best,
			count * (prices[kind] as number) +
				most({ sizes, demands } as Problem, prices, left, kind + 1),
		);
	}
	return best;
}

// Lengths in billions are too many for a table: then the tree is searched.
test.each([
	["by table", 1],
	["by search", 1e9],
])("The most valuable filling is found %s", (_, scale) => {
	fc.assert(
		fc.property(jobs, ({ sizes, demands, prices, capacities }) => {
			const problem = problemOf(
				sizes.map((size) => size * scale),
				demands,
				capacities.map((capacity) => capacity * scale),
			);
			const fillings = new Knapsack(
				problem,
				new Steps(Number.POSITIVE_INFINITY),
			).solve(Float64Array.from(prices), demands);
			capacities.forEach((capacity, stock) => {
				const best = most(problemOf(sizes, demands, []), prices, capacity);
				const filling = fillings[stock];
				expect(filling?.value).toBe(best);
				expect(filling?.most).toBe(best);
				const counts = [...(filling?.counts ?? [])];
				expect(
					counts.reduce(
						(sum, count, k) => sum + count * (sizes[k] as number),
						0,
					),
				).toBeLessThanOrEqual(capacity);
				expect(
					counts.reduce(
						(sum, count, k) => sum + count * (prices[k] as number),
						0,
					),
				).toBe(best);
				expect(
					counts.every((count, k) => count <= (demands[k] as number)),
				).toBe(true);
			});
		}),
		{ numRuns: 150 },
	);
});
