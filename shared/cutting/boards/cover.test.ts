import fc from "fast-check";
import { expect, test } from "vitest";
import { plainJob } from "../../../tests/harness/board-jobs.ts";
import { Steps } from "../steps.ts";
import { completeBoards } from "./completion.ts";
import { coverExactly } from "./cover.ts";
import { readProblem } from "./problem.ts";
import { tightPatterns } from "./tight.ts";

const endless = () => new Steps(Number.POSITIVE_INFINITY);

test("Only patterns that waste little enough are listed", () => {
	// Of a board of 10, in tenths: 6 + 4 wastes 0, 6 + 3 wastes 1, 4 + 3 + 3 wastes 0, 4 + 3 wastes 3 …
	const problem = readProblem(plainJob(10, [6, 4, 3, 3]));
	const prices = Float64Array.of(0.6, 0.4, 0.3);
	const counts = (loss: number) =>
		tightPatterns(problem, problem.demands, prices, loss, 99, endless())
			?.map(({ kinds, counts: some }) =>
				kinds.map((kind, k) => `${some[k]}×${problem.sizes[kind]}`).join(" "),
			)
			.sort();
	expect(counts(1e-9)).toEqual(["1×4 2×3", "1×6 1×4"]);
	expect(counts(0.1 + 1e-9)).toEqual(["1×4 2×3", "1×6 1×3", "1×6 1×4"]);
	expect(
		tightPatterns(problem, problem.demands, prices, 1, 3, endless()),
	).toBeUndefined();
});

test("A cover is found exactly where all ways of filling find a plan", () => {
	fc.assert(
		fc.property(
			fc.array(fc.integer({ min: 4, max: 20 }), { minLength: 1, maxLength: 9 }),
			fc.integer({ min: 1, max: 5 }),
			(parts, boards) => {
				const problem = readProblem(plainJob(20, parts));
				const { sizes, demands, stocks } = problem;
				const board = stocks[0]?.capacity as number;
				const prices = Float64Array.from(sizes, (size) => size / board);
				const loss =
					boards -
					sizes.reduce(
						(sum, size, kind) =>
							sum + (size * (demands[kind] as number)) / board,
						0,
					) +
					1e-9;
				fc.pre(loss >= 0);
				const tight = tightPatterns(
					problem,
					demands,
					prices,
					loss,
					1e5,
					endless(),
				);
				const cover = coverExactly(
					tight ?? [],
					demands,
					loss,
					() => 0,
					Number.POSITIVE_INFINITY,
					endless(),
				);
				const filled = completeBoards(
					problem,
					demands,
					boards,
					prices,
					Number.POSITIVE_INFINITY,
					endless(),
				);
				if (filled === "impossible") expect(cover).toBe("impossible");
				else if (cover === "impossible" || cover === undefined)
					throw new Error("no cover");
				else {
					expect(cover.length).toBeLessThanOrEqual(boards);
					const had = sizes.map(() => 0);
					for (const { kinds, counts } of cover)
						kinds.forEach((kind, k) => {
							had[kind] = (had[kind] as number) + (counts[k] as number);
						});
					expect(had).toEqual([...demands]);
				}
			},
		),
		{ numRuns: 300 },
	);
});
