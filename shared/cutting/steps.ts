// What a search may spend: work is counted, not timed, so that the same job gives the same plan everywhere.

import type { Effort } from "./job.ts";

/**
 * In steps of about a nanosecond each on a common machine: one cell of a knapsack table, one number of an inverse. The
 * weights are rough; what matters is that they are the same everywhere.
 */
const budgets: Record<Effort, number> = {
	quick: 40e6,
	usual: 400e6,
	thorough: 1000e6,
};

/** The steps that an effort allows. */
export function stepsFor(effort: Effort): Steps {
	return new Steps(budgets[effort] ?? budgets.usual);
}

/** Steps spent, out of so many. */
export class Steps {
	readonly most: number;
	spent = 0;

	constructor(most: number) {
		this.most = most;
	}

	get done(): number {
		return Math.min(1, this.spent / this.most);
	}

	get over(): boolean {
		return this.spent >= this.most;
	}

	spend(steps: number): void {
		this.spent += steps;
	}
}
