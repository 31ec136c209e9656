// Laws of the layouts of sheets, held by the independent checker over random jobs: every part once and inside, a kerf
// apart, cut from edge to edge, along its grain; nothing is called proven that is not.

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
	layOutSheets,
	type SheetJob,
	type SheetPlan,
	searchSheets,
} from "../../shared/cutting/index.ts";
import { faultsOfSheetPlan } from "../harness/check-sheet-plan.ts";
import { anyJob, cutUpSheets, plainJob } from "../harness/random-sheet-jobs.ts";

/** The plans that a search hands out, from the first to the last. */
function plansOf(job: SheetJob): readonly SheetPlan[] {
	const search = searchSheets(job, "quick");
	const plans: SheetPlan[] = [];
	for (;;) {
		const step = search.next();
		if (step.done) return [...plans, step.value];
		if (plans.at(-1) !== step.value.plan) plans.push(step.value.plan);
	}
}

describe("layouts of sheets", () => {
	it("are sound for usual jobs, from the first plan to the last", () => {
		fc.assert(
			fc.property(plainJob, (job) => {
				for (const plan of plansOf(job)) {
					expect(faultsOfSheetPlan(job, plan)).toEqual([]);
				}
			}),
			{ numRuns: 1_000 },
		);
	});

	it("are sound for odd shops, knotty stock and wide blades", () => {
		fc.assert(
			fc.property(anyJob, (job) => {
				for (const plan of plansOf(job)) {
					expect(faultsOfSheetPlan(job, plan)).toEqual([]);
				}
			}),
			{ numRuns: 1_000 },
		);
	});

	it("never get worse while the search goes on: less is missing, or it costs no more", () => {
		fc.assert(
			fc.property(plainJob, (job) => {
				const plans = plansOf(job);
				const missing = plans.map((plan) =>
					plan.missing.reduce((sum, { part, count }) => {
						const { length = 0, width = 0 } = job.parts[part] ?? {};
						return sum + count * (length + job.kerf) * (width + job.kerf);
					}, 0),
				);
				for (let at = 1; at < plans.length; at += 1) {
					const [was, is] = [missing[at - 1] ?? 0, missing[at] ?? 0];
					expect(is).toBeLessThanOrEqual(was);
					if (is === was) {
						expect(plans[at]?.price).toBeLessThanOrEqual(
							plans[at - 1]?.price ?? 0,
						);
					}
				}
			}),
			{ numRuns: 300 },
		);
	});

	it("need no more sheets than were cut up to make the parts", () => {
		fc.assert(
			fc.property(cutUpSheets, ({ job, sheets }) => {
				const plan = layOutSheets(job, "usual");
				expect(faultsOfSheetPlan(job, plan)).toEqual([]);
				expect(plan.sheets).toHaveLength(sheets);
				expect(plan.leastSheets).toBeLessThanOrEqual(sheets);
			}),
			{ numRuns: 200 },
		);
	});

	it("are the same whenever they are asked for", () => {
		fc.assert(
			fc.property(anyJob, (job) => {
				expect(layOutSheets(job, "quick")).toEqual(layOutSheets(job, "quick"));
			}),
			{ numRuns: 50 },
		);
	});
});
