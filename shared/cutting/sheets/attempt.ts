// One attempt at a goal: a given set of sheets that is to hold all of the given parts.

import type { Steps } from "../steps.ts";
import { type Axis, firstCutIsFine, type Sheet } from "./cell.ts";
import type { Chance } from "./chance.ts";
import { cutUp } from "./cut-up.ts";
import type { Pattern } from "./patterns.ts";
import type { Problem } from "./problem.ts";
import { Refill } from "./refill.ts";

/** A sheet to begin with. */
export interface Begun {
	/** Index into the problem's blanks. */
	readonly blank: number;
	readonly pattern: Pattern;
}

/** A sheet of the goal: a blank, but for what is to be kept of it in one piece. */
export interface Allowed {
	readonly blank: number;
	readonly kept?: { readonly along: Axis; readonly size: number };
}

export class Attempt {
	readonly #problem: Problem;
	readonly #allowed: readonly Allowed[];
	readonly #refill: Refill;

	/** Sheets begun are laid out as they are where the goal has a sheet for them and as far as their parts are wanted. */
	constructor(
		problem: Problem,
		allowed: readonly Allowed[],
		wanted: ArrayLike<number>,
		begun: readonly Begun[],
		chance: Chance,
	) {
		this.#problem = problem;
		this.#allowed = allowed;
		const places = allowed.map(({ blank, kept }) => {
			const shape = problem.blanks[blank];
			if (shape === undefined) throw new Error("No such blank");
			return {
				x: shape.x - (kept?.along === "x" ? kept.size : 0),
				y: shape.y - (kept?.along === "y" ? kept.size : 0),
				first: onlyAxis(shape, problem),
			};
		});
		this.#refill = new Refill(problem.kinds, places, wanted, chance);
		const waiting = allowed.map((_, index) => index);
		for (const { blank, pattern } of begun) {
			const at = waiting.findIndex(
				(index) =>
					allowed[index]?.blank === blank && allowed[index]?.kept === undefined,
			);
			if (at < 0) continue;
			const [index] = waiting.splice(at, 1);
			if (index !== undefined) this.#refill.load(index, pattern);
		}
		this.#refill.begin();
	}

	/** Area of the parts that lie on no sheet. */
	get looseArea(): number {
		return this.#refill.looseArea;
	}

	/** Parts that lie on no sheet, by kind. */
	get loose(): Int32Array {
		return this.#refill.loose.slice();
	}

	/** Searches until all parts are on the sheets, or the steps reach `end`; true if they are. */
	strive(steps: Steps, end: number): boolean {
		const refill = this.#refill;
		while (refill.looseArea > 0 && steps.spent < end) {
			const visits = refill.visits;
			refill.step();
			steps.spend(perTurn + perVisit * (refill.visits - visits));
		}
		return refill.looseArea === 0;
	}

	/** The sheets as they are, without empty ones; `undefined` if one could not be cut. */
	sheets(): Sheet[] | undefined {
		const sheets: Sheet[] = [];
		for (const [index, { blank }] of this.#allowed.entries()) {
			const pattern = this.#refill.sheets[index]?.toPattern();
			if (pattern === undefined) continue;
			const sheet = cutUp(this.#problem, blank, pattern);
			if (sheet === undefined) return undefined;
			sheets.push(sheet);
		}
		return sheets;
	}
}

/** What a turn of the search, and a node that it looks at, cost. */
const perTurn = 2000;
const perVisit = 13;

function onlyAxis(
	shape: { readonly x: number; readonly y: number },
	problem: Problem,
): Axis | undefined {
	const root = { length: shape.x, width: shape.y };
	const x = firstCutIsFine("x", root, problem);
	const y = firstCutIsFine("y", root, problem);
	return x === y ? undefined : x ? "x" : "y";
}
