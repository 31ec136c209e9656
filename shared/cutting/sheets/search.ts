// The search as a whole: a quick answer first, then better ones until the steps are spent or nothing better exists.
import type { Effort, Progress, SheetJob, SheetPlan } from "../job.ts";
import { areaBounds } from "./bounds.ts";
import type { Layout, Manner } from "./greedy.ts";
import { fillSheet, layOutGreedily, usualOrders } from "./greedy.ts";
import { type Problem, prepare } from "./problem.ts";
import { toCutSheets } from "./region.ts";
import { isBetter, type Worth, worthOf } from "./worth.ts";

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
 * Better is, in this order: fewer parts missing (by area), a lower price, fewer sheets, a larger remnant worth keeping on
 * one sheet, fewer cuts. What is absurd in the job is left out, see `prepare`; nothing is thrown.
 */
export function* searchSheets(
	job: SheetJob,
	_effort: Effort,
): Generator<Progress<SheetPlan>, SheetPlan> {
	const problem = prepare(job);
	const wanted = Int32Array.from(problem.kinds, ({ count }) => count);
	const tooLarge = takeOutTooLarge(problem, wanted);
	const bounds = areaBounds(problem, wanted);
	let best: { layout: Layout; worth: Worth } | undefined;
	for (const order of usualOrders(problem.kinds)) {
		for (const manner of manners(order)) {
			const layout = layOutGreedily(problem, wanted, manner);
			const worth = worthOf(layout, problem);
			if (best === undefined || isBetter(worth, best.worth))
				best = { layout, worth };
		}
	}
	const layout = best?.layout ?? { sheets: [], remaining: wanted };
	const plan: SheetPlan = {
		sheets: toCutSheets(layout.sheets, problem),
		missing: missingParts(problem, tooLarge, layout.remaining),
		price: best?.worth.price ?? 0,
		leastPrice: bounds.price,
		leastSheets: bounds.sheets,
	};
	yield { plan, done: 1, proven: false };
	return plan;
}

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

/** Kinds that fit no blank by themselves are no longer wanted; how many of each there were. */
function takeOutTooLarge(problem: Problem, wanted: Int32Array): Int32Array {
	const tooLarge = new Int32Array(wanted.length);
	const one = new Int32Array(wanted.length);
	for (let kind = 0; kind < wanted.length; kind++) {
		one[kind] = 1;
		const fits = problem.blanks.some((_, blank) =>
			(["x", "y"] as const).some(
				(around) =>
					fillSheet(problem, blank, one, {
						order: [kind],
						fit: "tight",
						split: "large",
						around,
					}).area > 0,
			),
		);
		one[kind] = 0;
		if (fits) continue;
		tooLarge[kind] = wanted[kind] ?? 0;
		wanted[kind] = 0;
	}
	return tooLarge;
}

function missingParts(
	problem: Problem,
	tooLarge: Int32Array,
	remaining: Int32Array,
): SheetPlan["missing"] {
	const missing = [...problem.refused];
	const add = (
		counts: Int32Array,
		why: "too-large" | "no-stock-left",
	): void => {
		problem.kinds.forEach(({ members }, kind) => {
			// The first parts of a kind are dealt out first, so the last ones are missing.
			let rest = counts[kind] ?? 0;
			for (const { part, count } of [...members].reverse()) {
				const lacking = Math.min(rest, count);
				if (lacking > 0) missing.push({ part, count: lacking, why });
				rest -= lacking;
			}
		});
	};
	add(tooLarge, "too-large");
	add(remaining, "no-stock-left");
	return missing.sort((a, b) => a.part - b.part);
}
