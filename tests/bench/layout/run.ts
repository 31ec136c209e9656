// One instance through the public interface: what the plan costs, how long it took, and what the checkers say of it.

import {
	type Effort,
	layOutBoards,
	layOutSheets,
} from "../../../shared/cutting/index.ts";
import { faultsOfBoardPlan } from "../../harness/check-board-plan.ts";
import { faultsOfSheetPlan } from "../../harness/check-sheet-plan.ts";
import type { Instance } from "./instances.ts";

export interface Run {
	/** Boards, sheets or cost. */
	readonly value: number;
	/** The bound that the plan gives of itself. */
	readonly least: number;
	readonly seconds: number;
	/** All that is wrong with the plan, or with its bound. */
	readonly faults: readonly string[];
}

/** Lays the instance out. */
export function run(instance: Instance, effort: Effort): Run {
	const { group, job } = instance;
	const start = performance.now();
	if (job.kind === "boards") {
		const plan = layOutBoards(job.job, effort);
		return judged(instance, {
			value: plan.boards.length,
			least: plan.leastBoards,
			seconds: (performance.now() - start) / 1000,
			faults: [
				...faultsOfBoardPlan(job.job, plan),
				...faultsOfMissing(plan.missing),
			],
		});
	}
	const plan = layOutSheets(job.job, effort);
	return judged(instance, {
		value: group === "sizes" ? plan.price : plan.sheets.length,
		least: group === "sizes" ? plan.leastPrice : plan.leastSheets,
		seconds: (performance.now() - start) / 1000,
		faults: [
			...faultsOfSheetPlan(job.job, plan),
			...faultsOfMissing(plan.missing),
		],
	});
}

function faultsOfMissing(missing: readonly unknown[]): string[] {
	return missing.length > 0 ? ["parts are missing"] : [];
}

/** A plan below the proven bound, or a bound above the best plan known, tells of a fault here or there. */
function judged({ best, least }: Instance, result: Run): Run {
	const faults = [...result.faults];
	if (result.value < least - 1e-6)
		faults.push(`${result.value} is below the published bound ${least}`);
	if (result.least > best + 1e-6)
		faults.push(`a bound of ${result.least} above the best known ${best}`);
	return { ...result, faults };
}
