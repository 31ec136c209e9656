import fc from "fast-check";
import { expect, test } from "vitest";
import { plainJob } from "../../../tests/harness/board-jobs.ts";
import { Steps } from "../steps.ts";
import { quickBound } from "./bounds.ts";
import { completeBoards } from "./completion.ts";
import { readProblem } from "./problem.ts";

test("What is longer than half a board stands alone", () => {
	// The area asks for 4 × 60 / 100 = 2.4 boards, but no two parts of 60 share one.
	const problem = readProblem(plainJob(100, [60, 60, 60, 60]));
	expect(quickBound(problem, [1])).toBe(4);
});

test("Thirds that are a little too long stand in pairs", () => {
	// 6 × 34 / 100 = 2.04, but only two of 34 fit on a board.
	const problem = readProblem(plainJob(100, [34, 34, 34, 34, 34, 34]));
	expect(quickBound(problem, [1])).toBe(3);
});

test("No bound is above what all ways of filling need", () => {
	fc.assert(
		fc.property(
			fc.array(fc.integer({ min: 3, max: 40 }), { minLength: 1, maxLength: 9 }),
			(parts) => {
				const problem = readProblem(plainJob(40, parts));
				const prices = Float64Array.from(
					problem.sizes,
					(size) => size / (problem.stocks[0]?.capacity as number),
				);
				let boards = 1;
				while (
					completeBoards(
						problem,
						problem.demands,
						boards,
						prices,
						Number.POSITIVE_INFINITY,
						new Steps(Number.POSITIVE_INFINITY),
					) === "impossible"
				)
					boards++;
				expect(Math.ceil(quickBound(problem, [1]) - 1e-9)).toBeLessThanOrEqual(
					boards,
				);
			},
		),
		{ numRuns: 300 },
	);
});
