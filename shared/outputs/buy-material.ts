// What is bought of one material: the sheets, boards or lengths of its layout.

import {
	areaIn,
	boardFeetOf,
	type LaidPart,
	type MaterialLayout,
	mmOf,
	paidThickness,
	partsIn,
	type SheetsOfSize,
} from "../layouts/index.ts";
import { numberOf, type Size } from "../model/size.ts";
import type { Part } from "../model/types.ts";

export interface MaterialLine {
	readonly layout: MaterialLayout;
	/** The parts that it gives, each once; and aids. */
	readonly parts: readonly LaidPart[];
	/** mm2, as first sawn. */
	readonly area: number;
	/** The same of each piece, by its place among the pieces. */
	readonly areas: readonly number[];
	readonly bought: readonly SheetsOfSize[];
	/** What is used up of the stock in the shop. */
	readonly taken: readonly SheetsOfSize[];
	/** Of what is bought; undefined if nobody knows the density. */
	readonly kg: number | undefined;
	/** kg of the heaviest single sheet or board that is bought. */
	readonly heaviest: number | undefined;
	/** Of boards only. */
	readonly feet: BoardFeet | undefined;
}

/** Board feet on the thickness that is paid for. */
export interface BoardFeet {
	readonly rough: Size;
	/** The stock file does not say it: planed thickness and an allowance, up to the next quarter of an inch. */
	readonly roughGuessed: boolean;
	readonly bought: number;
	/** Bought, and taken from the shop. */
	readonly used: number;
	/** In the rough sizes of all parts. */
	readonly net: number;
	/** In offcuts that are worth keeping. */
	readonly kept: number;
	/** Share of what is used that is neither part nor kept: kerfs, defects, ends and strips. */
	readonly lost: number;
}

export function materialLine(layout: MaterialLayout): MaterialLine {
	const parts = new Map<string, LaidPart>();
	const areas: number[] = [];
	for (const { of } of layout.sheets.flatMap(({ root }) => partsIn(root))) {
		const area = (of.length / 1_000) * (of.width / 1_000);
		areas[of.pieceAt] = (areas[of.pieceAt] ?? 0) + area;
		const key = `${of.pieceAt} ${of.id}`;
		if (!parts.has(key)) parts.set(key, of);
	}
	const bought = layout.sizes.filter(({ onHand }) => !onHand);
	const weights = bought.map((size) => weightOf(layout, size));
	return {
		layout,
		parts: [...parts.values()],
		area: layout.sheets.reduce((sum, { root }) => sum + areaIn(root), 0),
		areas,
		bought,
		taken: layout.sizes.filter(({ onHand }) => onHand),
		kg: weights.reduce<number | undefined>(
			(sum, one, at) =>
				sum === undefined || one === undefined
					? undefined
					: sum + one * (bought[at]?.count ?? 0),
			0,
		),
		heaviest: weights.reduce<number | undefined>(
			(most, one) => (one === undefined ? most : Math.max(most ?? 0, one)),
			undefined,
		),
		feet: layout.kind === "boards" ? feetOf(layout) : undefined,
	};
}

function partsOf(layout: MaterialLayout): readonly Part[] {
	return layout.sheets.flatMap(({ root }) =>
		partsIn(root).flatMap(({ of }) => of.part ?? []),
	);
}

function roughOf(layout: MaterialLayout) {
	return paidThickness(layout.stock, partsOf(layout));
}

/** kg of one, as it is carried from the dealer: boards are still rough. */
function weightOf(
	layout: MaterialLayout,
	{ length, width }: SheetsOfSize,
): number | undefined {
	const { stock, kind } = layout;
	const thick =
		kind === "boards"
			? numberOf(roughOf(layout))
			: stock.thick && numberOf(stock.thick);
	if (stock.density === undefined || thick === undefined) return undefined;
	return ((length / 1_000) * (width / 1_000) * thick * stock.density) / 1e9;
}

function feetOf(layout: MaterialLayout): BoardFeet {
	const rough = roughOf(layout);
	const feet = (size: {
		readonly length: number;
		readonly width: number;
	}): number =>
		boardFeetOf(
			rough,
			{ value: mmOf(size.length) },
			{ value: mmOf(size.width) },
		).toNumber();
	const sum = (sizes: readonly SheetsOfSize[]): number =>
		sizes.reduce((all, size) => all + size.count * feet(size), 0);
	const used = sum(layout.sizes);
	const perArea = feet({ length: 1_000_000, width: 1_000_000 }) / 1e6;
	const net =
		layout.sheets.reduce((all, { root }) => all + areaIn(root), 0) * perArea;
	const kept = layout.offcuts.reduce((all, one) => all + feet(one), 0);
	return {
		rough,
		roughGuessed: layout.stock.soldAs === undefined,
		bought: sum(layout.sizes.filter(({ onHand }) => !onHand)),
		used,
		net,
		kept,
		lost: used > 0 ? Math.max(0, (used - net - kept) / used) : 0,
	};
}

/** Board feet of all boards of one size; they go by area, since all boards of a material have one thickness. */
export function feetOfSize(
	{ feet, layout }: MaterialLine,
	size: SheetsOfSize,
): number | undefined {
	const area = ({ length, width, count }: SheetsOfSize): number =>
		length * width * count;
	const all = layout.sizes.reduce((sum, one) => sum + area(one), 0);
	return feet && all > 0 ? (feet.used * area(size)) / all : undefined;
}
