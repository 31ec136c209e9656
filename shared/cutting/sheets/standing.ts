// Where a search stands: the job made ready, the best layout so far, what is proven, the steps spent.

import type { Effort, Progress, SheetJob, SheetPlan } from "../job.ts";
import { type Steps, stepsFor } from "../steps.ts";
import { areaBounds } from "./bounds.ts";
import { Chance } from "./chance.ts";
import { fillSheet, type Layout } from "./greedy.ts";
import { type Problem, prepare } from "./problem.ts";
import { toCutSheets } from "./region.ts";
import { isSound } from "./sound.ts";
import { isBetter, type Worth, worthOf } from "./worth.ts";

export class Standing {
	readonly problem: Problem;
	/** By kind: what can be had at all, were there stock enough. */
	readonly wanted: Int32Array;
	/** Of all that is wanted, grown. */
	readonly area: number;
	readonly steps: Steps;
	readonly chance = new Chance(20_011);
	layout: Layout;
	worth: Worth;
	leastPrice: number;
	leastSheets: number;
	readonly #tooLarge: Int32Array;
	#plan: SheetPlan | undefined;

	constructor(job: SheetJob, effort: Effort) {
		this.steps = stepsFor(effort);
		this.problem = prepare(job);
		const { kinds } = this.problem;
		this.wanted = Int32Array.from(kinds, ({ count }) => count);
		this.#tooLarge = takeOutTooLarge(this.problem, this.wanted);
		this.area = kinds.reduce(
			(sum, { area }, kind) => sum + area * (this.wanted[kind] ?? 0),
			0,
		);
		this.layout = { sheets: [], remaining: this.wanted };
		this.worth = worthOf(this.layout, this.problem);
		const bounds = areaBounds(this.problem, this.wanted);
		this.leastPrice = bounds.price;
		this.leastSheets = bounds.sheets;
	}

	/** Takes a layout if it is better than the best and can be cut as it is; says whether it is. */
	offer(layout: Layout): boolean {
		const worth = worthOf(layout, this.problem);
		if (!isBetter(worth, this.worth) || !isSound(layout, this.problem))
			return false;
		this.layout = layout;
		this.worth = worth;
		this.#plan = undefined;
		return true;
	}

	/** Takes lower bounds that hold for plans without missing parts. */
	prove(price: number, sheets: number): void {
		if (price > this.leastPrice || sheets > this.leastSheets)
			this.#plan = undefined;
		this.leastPrice = Math.max(this.leastPrice, price);
		this.leastSheets = Math.max(this.leastSheets, sheets);
	}

	/** Neither price nor number of sheets can be less. */
	get proven(): boolean {
		return (
			this.worth.missing === 0 &&
			this.worth.price <= this.leastPrice &&
			this.worth.sheets <= this.leastSheets
		);
	}

	progress(): Progress<SheetPlan> {
		const { plan, proven, steps } = this;
		return { plan, done: steps.done, proven };
	}

	get plan(): SheetPlan {
		this.#plan ??= this.#toPlan();
		return this.#plan;
	}

	#toPlan(): SheetPlan {
		const { layout, problem, worth } = this;
		// Where the stock runs out, less may be had for less: nothing is proven then.
		const whole = worth.missing === 0;
		return {
			sheets: toCutSheets(layout.sheets, problem),
			missing: missingParts(problem, this.#tooLarge, layout.remaining),
			price: worth.price,
			leastPrice: whole ? Math.min(this.leastPrice, worth.price) : 0,
			leastSheets: whole ? this.leastSheets : 0,
		};
	}
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
