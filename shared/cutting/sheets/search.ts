// The search as a whole: a quick answer first, then better ones until the steps are spent or nothing better exists.
import type { Effort, Progress, SheetJob, SheetPlan } from "../job.ts";
import { descend } from "./descend.ts";
import { dualFeasibleBound } from "./dual-feasible.ts";
import { layOutGreedily, type Manner, usualOrders } from "./greedy.ts";
import { generate, roundUp } from "./round-up.ts";
import { Standing } from "./standing.ts";

/**
 * The best plan found with the given effort (`usual` if left out); see `searchSheets`.
 */
export function layOutSheets(
	job: SheetJob,
	effort: Effort = "usual",
): SheetPlan {
	const search = searchSheets(job, effort);
	for (;;) {
		const { done, value } = search.next();
		if (done === true) return value;
	}
}

/**
 * Plans for a job, ever better ones. Yields after every bit of work, the first time with a good quick answer; returns
 * the best plan when the effort's steps are spent or nothing better exists. The same job and effort give the same plans.
 *
 * Better is, in this order: fewer parts missing (by area, each with its kerf), a lower price, fewer sheets, a larger
 * remnant worth keeping on one sheet, fewer cuts. What is absurd in the job is left out, see `prepare`; nothing is thrown.
 */
export function* searchSheets(
	job: SheetJob,
	effort: Effort,
): Generator<Progress<SheetPlan>, SheetPlan> {
	const standing = new Standing(job, effort);
	for (const _ of work(standing)) yield standing.progress();
	return standing.plan;
}

function* work(standing: Standing): Generator<void> {
	const { steps } = standing;
	yield* startGreedily(standing);
	proveByAreas(standing);
	yield;
	if (standing.proven) return;
	if (hasManyAlike(standing)) {
		const columns = yield* generate(standing, 0.75 * steps.most);
		yield* roundUp(standing, columns, steps.most);
	} else {
		yield* descend(standing, steps.most);
	}
}

function* startGreedily(standing: Standing): Generator<void> {
	const { problem, wanted, steps } = standing;
	let paused = 0;
	for (const order of usualOrders(problem.kinds)) {
		for (const manner of manners(order)) {
			standing.offer(layOutGreedily(problem, wanted, manner));
			steps.spend(20_000);
			if (steps.spent - paused < slice) continue;
			paused = steps.spent;
			yield;
		}
	}
}

const slice = 8e6;

function manners(order: readonly number[]): Manner[] {
	return (["large", "short", "long"] as const).flatMap((split) =>
		(["tight", "small"] as const).map((fit) => ({
			order,
			fit,
			split,
			around: split === "long" ? "y" : "x",
		})),
	);
}

function proveByAreas(standing: Standing): void {
	const { problem, wanted, steps } = standing;
	const { blanks } = problem;
	if (blanks.length === 0) return;
	// One sheet that covers all blanks needs no more sheets than they do.
	const { sheets, work } = dualFeasibleBound(
		Math.max(...blanks.map(({ x }) => x)),
		Math.max(...blanks.map(({ y }) => y)),
		problem.kinds,
		wanted,
		3e6,
	);
	steps.spend(3 * work);
	const cheapest = Math.min(...blanks.map(({ price }) => price));
	standing.prove(cheapest * sheets, sheets);
}

/** Whether patterns will be used more than once: about as many sheets as kinds. */
function hasManyAlike(standing: Standing): boolean {
	const kinds = standing.wanted.filter((count) => count > 0).length;
	return standing.worth.sheets >= 0.8 * kinds;
}
