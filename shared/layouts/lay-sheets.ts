// One material cut from rectangles: the job for the optimiser, and its plan with names in it.

import {
	type Effort,
	type Progress,
	type Region,
	type SheetJob,
	type SheetPlan,
	searchSheets,
} from "../cutting/index.ts";
import type { Blank, Demand } from "./blanks.ts";
import { type Counted, countedBlanks, jobPrices, Taker } from "./job-parts.ts";
import { least } from "./kept.ts";
import { stepsOf } from "./steps.ts";
import type { Supply } from "./stock-to-cut.ts";
import type { LaidRegion, LaidSheet } from "./types.ts";

export interface Laid {
	readonly sheets: readonly LaidSheet[];
	readonly missing: readonly {
		readonly blank: Blank;
		readonly count: number;
		readonly why: "too-large" | "no-stock-left";
	}[];
	/** In the job's own prices. */
	readonly leastPrice: number;
	readonly leastSheets: number;
	readonly proven: boolean;
	readonly done: number;
}

/** Ever better layouts of one material; the first comes quickly. */
export function* laySheets(
	demand: Demand,
	supply: Supply,
	keep: { readonly length: number; readonly width: number },
	effort: Effort,
): Generator<Laid, Laid> {
	const { turns, parts } = partsOf(demand);
	const job: SheetJob = {
		stocks: jobPrices(supply.stocks).map((price, index) => {
			const stock = supply.stocks[index] as Supply["stocks"][number];
			return {
				id: stock.name,
				length: stock.length,
				width: stock.width,
				price,
				count: stock.count,
				onHand: stock.onHand,
				trim: stock.trim,
				defects: stock.defects,
			};
		}),
		parts: parts.map(({ length, width, blanks }, index) => ({
			id: String(index),
			length,
			width,
			count: blanks.length,
			turns,
		})),
		kerf: demand.kerf,
		worthKeeping: keep,
		...limitsOf(demand, supply),
	};
	const search = searchSheets(job, effort);
	for (;;) {
		const step = search.next();
		if (step.done === true) {
			return laidOf(step.value, supply, parts, keep, false, 1);
		}
		const { plan, proven, done }: Progress<SheetPlan> = step.value;
		yield laidOf(plan, supply, parts, keep, proven, done);
	}
}

function partsOf({ stock, blanks }: Demand): {
	readonly turns: boolean;
	readonly parts: readonly Counted[];
} {
	const turns = stock.kind === "sheet" && !stock.grain;
	return {
		turns,
		parts: countedBlanks(blanks, ({ length, width }) => `${length} ${width}`),
	};
}

/** The strictest of the shops that cut the sheets; boards and veneer are cut without them. */
function limitsOf({ shops }: Demand, { kind }: Supply): Partial<SheetJob> {
	if (kind !== "sheets") return {};
	const strips = shops.flatMap(({ leastStrip }) => leastStrip ?? []);
	const firsts = shops.flatMap(({ firstCut }) => firstCut ?? []);
	const stages = shops.flatMap(({ stages }) => stages ?? []);
	return {
		...(strips.length > 0
			? { leastStrip: Math.max(...strips.map(stepsOf)) }
			: {}),
		...(firsts.length > 0
			? { longestFirstCut: Math.min(...firsts.map(stepsOf)) }
			: {}),
		...(stages.length > 0 ? { stages: Math.min(...stages) } : {}),
	};
}

function laidOf(
	plan: SheetPlan,
	supply: Supply,
	parts: readonly Counted[],
	keep: { readonly length: number; readonly width: number },
	proven: boolean,
	done: number,
): Laid {
	const taker = new Taker(parts);
	const named = (region: Region): LaidRegion => {
		const { x, y, length, width } = region;
		const place = { x, y, length, width };
		switch (region.kind) {
			case "part":
				return taker.take(region.part).lay(place, region.turned);
			case "remnant":
				return { ...place, kind: "remnant", keep: least(place, keep) };
			case "cut":
				return {
					...place,
					kind: "cut",
					along: region.along,
					pieces: region.pieces.map(named),
				};
		}
	};
	// What is on hand is cut first, so it takes the first of the names.
	const ordered = [...plan.sheets].sort(
		(a, b) => order(supply, a.stock) - order(supply, b.stock),
	);
	return {
		sheets: ordered.map(({ stock, root }): LaidSheet => {
			const { name, length, width, onHand, price, trim, defects } = supply
				.stocks[stock] as Supply["stocks"][number];
			return {
				name,
				length,
				width,
				onHand,
				price,
				trim,
				defects,
				root: named(root),
			};
		}),
		missing: plan.missing.map(({ part, count, why }) => ({
			blank: (parts[part] as Counted).blanks.at(-1) as Blank,
			count,
			why,
		})),
		leastPrice: plan.leastPrice,
		leastSheets: plan.leastSheets,
		proven:
			proven ||
			(plan.price <= plan.leastPrice && plan.sheets.length <= plan.leastSheets),
		done,
	};
}

function order({ stocks }: Supply, stock: number): number {
	return stocks[stock]?.onHand === true ? 0 : 1;
}
