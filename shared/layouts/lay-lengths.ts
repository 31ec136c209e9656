// One material that is only cut to length: the job for the optimiser, and its plan as strips with names on them.

import {
	type BoardJob,
	type BoardPlan,
	type Effort,
	searchBoards,
} from "../cutting/index.ts";
import type { Blank, Demand } from "./blanks.ts";
import { type Counted, countedBlanks, jobPrices, Taker } from "./job-parts.ts";
import { least } from "./kept.ts";
import type { Laid } from "./lay-sheets.ts";
import type { StockToCut, Supply } from "./stock-to-cut.ts";
import type { LaidRegion, LaidSheet } from "./types.ts";

/** Ever better layouts of one material; the first comes quickly. */
export function* layLengths(
	demand: Demand,
	supply: Supply,
	keep: { readonly length: number; readonly width: number },
	effort: Effort,
): Generator<Laid, Laid> {
	const parts = countedBlanks(demand.blanks, ({ length }) => String(length));
	const prices = jobPrices(supply.stocks);
	const job: BoardJob = {
		stocks: supply.stocks.map(({ name, length, count, onHand }, index) => ({
			id: name,
			length,
			price: prices[index] ?? 0,
			count,
			onHand,
		})),
		parts: parts.map(({ length, blanks }, index) => ({
			id: String(index),
			length,
			count: blanks.length,
		})),
		kerf: demand.kerf,
	};
	const laid = (plan: BoardPlan, proven: boolean, done: number): Laid => {
		const taker = new Taker(parts);
		const ordered = [...plan.boards].sort(
			(a, b) => order(supply, a.stock) - order(supply, b.stock),
		);
		return {
			sheets: ordered.map(({ stock, parts: cut }) =>
				stripOf(
					supply.stocks[stock] as StockToCut,
					cut.map((part) => taker.take(part)),
					demand.kerf,
					keep,
				),
			),
			missing: plan.missing.map(({ part, count, why }) => ({
				blank: (parts[part] as Counted).blanks.at(-1) as Blank,
				count,
				why,
			})),
			leastPrice: plan.leastPrice,
			leastSheets: plan.leastBoards,
			proven:
				proven ||
				(plan.price <= plan.leastPrice &&
					plan.boards.length <= plan.leastBoards),
			done,
		};
	};
	const search = searchBoards(job, effort);
	for (;;) {
		const step = search.next();
		if (step.done === true) return laid(step.value, false, 1);
		const { plan, proven, done } = step.value;
		yield laid(plan, proven, done);
	}
}

function order({ stocks }: Supply, stock: number): number {
	return stocks[stock]?.onHand === true ? 0 : 1;
}

/** The blanks one behind the other, a kerf between them; what is left beyond the last cut is a remnant. */
function stripOf(
	{ name, length, width, onHand, price, trim, defects }: StockToCut,
	blanks: readonly Blank[],
	kerf: number,
	keep: { readonly length: number; readonly width: number },
): LaidSheet {
	let at = 0;
	const pieces: LaidRegion[] = blanks.map((blank) => {
		const place = { x: at, y: 0, length: blank.length, width };
		at += blank.length + kerf;
		return blank.lay(place, false);
	});
	if (at < length) {
		const rest = { x: at, y: 0, length: length - at, width };
		pieces.push({ ...rest, kind: "remnant", keep: least(rest, keep) });
	}
	return {
		name,
		length,
		width,
		onHand,
		price,
		trim,
		defects,
		root: {
			x: 0,
			y: 0,
			length,
			width,
			kind: "cut",
			along: "x",
			pieces,
		},
	};
}
