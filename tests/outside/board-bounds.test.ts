// The bound on boards beside a solver from outside, on jobs small enough to write down every pattern.

import fc from "fast-check";
import { expect, test } from "vitest";
import { readProblem } from "../../shared/cutting/boards/problem.ts";
import { Relaxation } from "../../shared/cutting/boards/relaxation.ts";
import { type BoardJob, layOutBoards } from "../../shared/cutting/index.ts";
import { Steps } from "../../shared/cutting/steps.ts";
import { highsSolver, type Program } from "../harness/highs.ts";

const ask = await highsSolver();

const smallJobs: fc.Arbitrary<BoardJob> = fc.record({
	stocks: fc.uniqueArray(
		fc.record({
			id: fc.constant("stock"),
			length: fc.integer({ min: 20, max: 40 }),
			price: fc.integer({ min: 1, max: 9 }),
			count: fc.constantFrom(1, 2, Number.POSITIVE_INFINITY),
		}),
		{ minLength: 1, maxLength: 3, selector: ({ length }) => length },
	),
	parts: fc.uniqueArray(
		fc.record({
			id: fc.constant("part"),
			length: fc.integer({ min: 5, max: 20 }),
			count: fc.integer({ min: 1, max: 4 }),
		}),
		{ minLength: 1, maxLength: 6, selector: ({ length }) => length },
	),
	kerf: fc.constantFrom(0, 1, 2),
});

/** Every way to cut one board, no part more often than it is needed; written for this test alone. */
function patternsOf(job: BoardJob, room: number): number[][] {
	const all: number[][] = [];
	const go = (counts: number[], left: number): void => {
		const part = job.parts[counts.length];
		if (!part) {
			all.push(counts);
			return;
		}
		for (let count = 0; count <= part.count; count++) {
			const used = count * (part.length + job.kerf);
			if (used <= left) go([...counts, count], left - used);
		}
	};
	go([], room + job.kerf);
	return all;
}

/** Gilmore and Gomory's program with all its columns. */
function programOf(job: BoardJob, costs: readonly number[]): Program {
	const limited = job.stocks.filter(({ count }) => Number.isFinite(count));
	return {
		needs: [
			...job.parts.map(({ count }) => count),
			...limited.map(({ count }) => -count),
		],
		columns: job.stocks.flatMap((stock, index) =>
			patternsOf(job, stock.length).map((counts) => ({
				cost: costs[index] as number,
				entries: [...counts, ...limited.map((one) => (one === stock ? -1 : 0))],
			})),
		),
	};
}

test("Column generation ends at the value that HiGHS finds with all patterns", () => {
	fc.assert(
		fc.property(smallJobs, (job) => {
			const problem = readProblem(job);
			fc.pre(problem.missing.length === 0);
			const relaxation = new Relaxation(
				problem,
				problem.stocks.map(({ price }) => price / 10),
				new Steps(Number.POSITIVE_INFINITY),
			);
			relaxation.forbidExchanges();
			let value = 0;
			let best = 0;
			for (;;) {
				value = relaxation.solve().next().value as number;
				const { bound, settled } = relaxation.price();
				best = Math.max(best, bound);
				if (settled) break;
			}
			const verdict = ask(
				programOf(
					job,
					job.stocks.map(({ price }) => price / 10),
				),
			);
			if (verdict === "infeasible")
				expect(value).toBe(Number.POSITIVE_INFINITY);
			else {
				expect(value).toBeCloseTo(verdict as number, 6);
				expect(best).toBeLessThan((verdict as number) + 1e-9);
				expect(best).toBeGreaterThan((verdict as number) - 1e-6);
			}
		}),
		{ numRuns: 120 },
	);
});

test("Price and number of boards, and the bounds on them, are those of HiGHS in whole numbers", () => {
	fc.assert(
		fc.property(smallJobs, (job) => {
			const plan = layOutBoards(job, "quick");
			const price = ask(
				programOf(
					job,
					job.stocks.map((stock) => stock.price),
				),
				true,
			);
			if (price === "infeasible") {
				expect(plan.missing).not.toEqual([]);
				return;
			}
			expect(plan.missing).toEqual([]);
			expect(plan.price).toBeCloseTo(price as number, 6);
			expect(plan.leastPrice).toBeLessThan((price as number) + 1e-6);
			const boards = ask(
				programOf(
					job,
					job.stocks.map(() => 1),
				),
				true,
			);
			expect(plan.leastBoards).toBeLessThanOrEqual(
				Math.round(boards as number),
			);
		}),
		{ numRuns: 40 },
	);
});
