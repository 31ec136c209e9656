// From the parts of some pieces to the sheets and boards that they are sawn from.

import type { Effort } from "../cutting/index.ts";
import type { Display, Piece } from "../model/types.ts";
import { Rational, TooLargeError } from "../units/rational.ts";
import { type Blank, type Demand, demandsOf } from "./blanks.ts";
import { arePriced, priceSteps } from "./job-parts.ts";
import { keepOf, keptIn } from "./kept.ts";
import { layLengths } from "./lay-lengths.ts";
import { type Laid, laySheets } from "./lay-sheets.ts";
import { missingOf, withoutSize } from "./missing.ts";
import { type StockToCut, type Supply, supplyOf } from "./stock-to-cut.ts";
import type {
	LaidSheet,
	LayoutProgress,
	MaterialLayout,
	PieceToCut,
	SheetsOfSize,
} from "./types.ts";
import { listed, stepsText, stepText } from "./words.ts";

export interface LayoutOptions {
	/** `usual` if left out. */
	readonly effort?: Effort;
}

/**
 * The sheets, boards, lengths and veneer of some pieces, by material in the order in which the pieces first use them. Parts
 * of one material are laid out together, whatever piece they belong to. The same pieces and effort give the same layouts.
 */
export function layoutsOf(
	pieces: readonly PieceToCut[],
	options: LayoutOptions = {},
): readonly MaterialLayout[] {
	const search = searchLayouts(pieces, options);
	for (;;) {
		const step = search.next();
		if (step.done === true) return step.value;
	}
}

/**
 * The same, ever better: yields after every bit of work, the first time when there is a quick layout of every material.
 * A caller may stop at any time and keep the last.
 */
export function* searchLayouts(
	pieces: readonly PieceToCut[],
	{ effort = "usual" }: LayoutOptions = {},
): Generator<LayoutProgress, readonly MaterialLayout[]> {
	const searches = demandsOf(pieces)
		.filter(({ blanks }) => blanks.length > 0)
		.map((demand) => layMaterial(demand, demand.display, effort));
	const layouts: MaterialLayout[] = [];
	const shares: number[] = [];
	const open = new Set<number>();
	const step = (at: number): void => {
		const { done, value } = (searches[at] as (typeof searches)[number]).next();
		layouts[at] = value.layout;
		shares[at] = done === true ? 1 : value.done;
		if (done === true) open.delete(at);
		else open.add(at);
	};
	const progress = (): LayoutProgress => ({
		layouts: [...layouts],
		done:
			shares.reduce((sum, share) => sum + share, 0) /
			Math.max(1, shares.length),
	});
	for (const at of searches.keys()) step(at);
	yield progress();
	for (const at of searches.keys()) {
		while (open.has(at)) {
			step(at);
			yield progress();
		}
	}
	return layouts;
}

interface MaterialProgress {
	readonly layout: MaterialLayout;
	readonly done: number;
}

function* layMaterial(
	wanted: Demand,
	display: Display,
	effort: Effort,
): Generator<MaterialProgress, MaterialProgress> {
	const all = supplyOf(wanted.stock, wanted.blanks, display);
	const isForAids = wanted.blanks.every(({ parts }) =>
		parts.every(({ aid }) => aid),
	);
	const supply = isForAids ? onHandOnly(all) : all;
	const demand = matchedWhereItFits(wanted, supply);
	const keep = keepOf(wanted.stock, supply.kind, display);
	const told = (laid: Laid): MaterialProgress => {
		const layout = layoutOf(demand, supply, laid, display);
		return {
			layout: isForAids ? withoutMissing(layout) : layout,
			done: laid.done,
		};
	};
	if (supply.stocks.length === 0) {
		const layout = {
			...layoutOf(demand, supply, nothingLaid, display),
			missing: withoutSize(demand.blanks, demand.stock),
		};
		return { layout: isForAids ? withoutMissing(layout) : layout, done: 1 };
	}
	const search =
		supply.kind === "lengths"
			? layLengths(demand, supply, keep, effort)
			: laySheets(demand, supply, keep, effort);
	for (;;) {
		const step = search.next();
		if (step.done === true) return told(step.value);
		yield told(step.value);
	}
}

/** Nobody buys a sheet for a pattern: where only aids want a material, they are cut from what lies in the shop. */
function onHandOnly(supply: Supply): Supply {
	return {
		...supply,
		stocks: supply.stocks.filter(({ onHand }) => onHand),
		assumptions: [],
	};
}

/** Aids for which nothing is on hand are no fault of the list. */
function withoutMissing(layout: MaterialLayout): MaterialLayout {
	const names = layout.missing.map(
		({ of }) => `\`${of.path}\` (${stepsText(of, layout.display)})`,
	);
	return {
		...layout,
		missing: [],
		assumptions:
			names.length > 0
				? [
						...layout.assumptions,
						`${listed(names)} ${names.length === 1 ? "is" : "are"} cut from an offcut, and none is on hand: nothing is bought for aids alone`,
					]
				: layout.assumptions,
	};
}

const nothingLaid: Laid = {
	sheets: [],
	missing: [],
	leastPrice: 0,
	leastSheets: 0,
	proven: true,
	done: 1,
};

/** Matched parts that are together larger than any sheet are laid one by one, and that is said. */
function matchedWhereItFits(demand: Demand, supply: Supply): Demand {
	const notes: string[] = [...demand.notes];
	const turns = demand.stock.kind === "sheet" && !demand.stock.grain;
	const blanks = demand.blanks.flatMap((blank): readonly Blank[] => {
		if (
			!blank.apart ||
			supply.stocks.some((stock) => goesInto(blank, stock, turns))
		)
			return [blank];
		notes.push(
			`${listed(blank.parts.map(({ path }) => `\`${path}\``))} cannot be matched: in one row they are larger than any piece of \`${demand.stock.id}\`, so they are laid one by one`,
		);
		return blank.apart;
	});
	return { ...demand, blanks, notes };
}

function goesInto(
	{ length, width }: Blank,
	stock: StockToCut,
	turns: boolean,
): boolean {
	const [long, wide] = [
		stock.length - 2 * stock.trim,
		stock.width - 2 * stock.trim,
	];
	return (
		(length <= long && width <= wide) ||
		(turns && width <= long && length <= wide)
	);
}

/** What an optimiser laid, with prices, offcuts and all that is to be said about it. */
export function layoutOf(
	demand: Demand,
	supply: Supply,
	laid: Laid,
	display: Display,
): MaterialLayout {
	const { stock, kerf, pieces } = demand;
	const prices = laid.sheets.map(({ price }) => price);
	const price = sumOf(prices);
	const least = arePriced(supply.stocks)
		? Rational.near(laid.leastPrice / priceSteps, priceSteps)
		: undefined;
	return {
		stock,
		kind: supply.kind,
		display,
		pieces,
		kerf,
		sheets: laid.sheets,
		sizes: sizesOf(laid.sheets),
		missing: missingOf(laid.missing, stock, supply, display),
		price,
		// The optimiser counts in steps, which may lie a hair above the true price.
		leastPrice: least && price && least.cmp(price) > 0 ? price : least,
		leastSheets: laid.leastSheets,
		proven: laid.proven,
		offcuts: laid.sheets
			.flatMap(({ root }) => keptIn(root))
			.sort(
				(a, b) =>
					b.length * b.width - a.length * a.width || b.length - a.length,
			),
		assumptions: [
			...supply.assumptions,
			...demand.notes,
			...kerfNote(demand, display),
		],
	};
}

/** Undefined where one is not known, or all together are beyond reckoning. */
function sumOf(
	prices: readonly (Rational | undefined)[],
): Rational | undefined {
	try {
		let sum = Rational.ZERO;
		for (const price of prices) {
			if (!price) return undefined;
			sum = sum.add(price);
		}
		return sum;
	} catch (error) {
		if (error instanceof TooLargeError) return undefined;
		throw error;
	}
}

function sizesOf(sheets: readonly LaidSheet[]): readonly SheetsOfSize[] {
	const sizes = new Map<string, SheetsOfSize>();
	for (const { name, length, width, onHand, price } of sheets) {
		const key = `${name} ${onHand} ${price?.toString() ?? ""}`;
		const known = sizes.get(key);
		sizes.set(key, {
			name,
			length,
			width,
			onHand,
			price,
			count: (known?.count ?? 0) + 1,
		});
	}
	return [...sizes.values()];
}

/** Several shops may cut the same sheets. */
function kerfNote(
	{ shops, kerf, stock }: Demand,
	display: Display,
): readonly string[] {
	const kerfs = new Set(
		shops.map((shop: Piece["shop"]) => shop.kerf.value.toString()),
	);
	return kerfs.size > 1 && stock.kind !== "veneer"
		? [
				`the pieces say different kerfs: the widest, ${stepText(kerf, display)}, is counted`,
			]
		: [];
}
