// What to buy for a piece, what it costs and what it weighs, as data.

import { numberOf, type Size } from "../model/size.ts";
import type { Display, Part, Piece, Stock } from "../model/types.ts";
import { Rational, TooLargeError } from "../units/rational.ts";
import { type BoardLine, boardLine } from "./buy-boards.ts";
import { type CoatingLine, coatingLines } from "./buy-coatings.ts";
import {
	type FastenerLine,
	fastenerLines,
	fastenerName,
} from "./buy-fasteners.ts";
import { firstSawn, type SheetLine, sheetLine } from "./buy-sheets.ts";
import { type Weight, weightOf } from "./weight.ts";

export interface Priced<Line> {
	readonly line: Line;
	/** Of the whole line; undefined if a price or a count is not known. */
	readonly price: Rational | undefined;
	readonly currency: string | undefined;
}

/** Strips of solid trim of one section. They are among the boards, too: this is what to rip. */
export interface TrimLine {
	readonly stock: Stock;
	readonly thick: Size;
	readonly width: Size;
	readonly parts: readonly Part[];
	/** mm, as first cut, all strips together. */
	readonly running: number;
}

export interface Cost {
	/** `undefined` where the stock file names no currency. In the order in which they first occur. */
	readonly totals: readonly {
		readonly currency: string | undefined;
		readonly amount: Rational;
	}[];
	/** Sheets are counted at the least, so the totals may be too low. */
	readonly atLeast: boolean;
	/** What is needed and has no price. */
	readonly unpriced: readonly string[];
}

export interface BuyingList {
	readonly piece: string;
	readonly display: Display;
	readonly sheets: readonly Priced<SheetLine>[];
	readonly boards: readonly Priced<BoardLine>[];
	readonly trim: readonly TrimLine[];
	readonly veneer: readonly Priced<SheetLine>[];
	readonly fasteners: readonly Priced<FastenerLine>[];
	readonly coatings: readonly Priced<CoatingLine>[];
	readonly cost: Cost;
	readonly weight: Weight;
}

/**
 * `stocks` are the materials that the design's file knows: fasteners and glue are found there by their size and kind. Aids
 * are cut from offcuts and not bought.
 */
export function buyingList(
	piece: Piece,
	stocks: ReadonlyMap<string, Stock>,
): BuyingList {
	const groups = byStock(piece.parts.filter((part) => part.role !== "aid"));
	const of = (kind: Stock["kind"]) =>
		groups.filter(({ stock }) => stock.kind === kind);
	const kerf = numberOf(piece.shop.kerf);
	const sheets = of("sheet").map(({ stock, parts }) =>
		pricedSheets(sheetLine(stock, parts, kerf)),
	);
	const veneer = of("veneer").map(({ stock, parts }) =>
		pricedSheets(sheetLine(stock, parts, 0)),
	);
	const boards = of("board").map(({ stock, parts }) =>
		pricedBoards(boardLine(stock, parts, piece.display)),
	);
	const fasteners = fastenerLines(piece, stocks).map((line) =>
		priced(line, line.stock, "pack", line.packs),
	);
	const coatings = coatingLines(piece, stocks).map((line) =>
		priced(line, line.stock, "tin", line.tins),
	);
	return {
		piece: piece.name,
		display: piece.display,
		sheets,
		boards,
		trim: trimLines(piece),
		veneer,
		fasteners,
		coatings,
		cost: costOf({ sheets, boards, veneer, fasteners, coatings }),
		weight: weightOf(piece),
	};
}

function byStock(
	parts: readonly Part[],
): readonly { readonly stock: Stock; readonly parts: readonly Part[] }[] {
	const groups = new Map<string, { stock: Stock; parts: Part[] }>();
	for (const part of parts) {
		const known = groups.get(part.stock.id);
		if (known) known.parts.push(part);
		else groups.set(part.stock.id, { stock: part.stock, parts: [part] });
	}
	return [...groups.values()];
}

function priced<Line>(
	line: Line,
	stock: Stock | undefined,
	per: Stock["per"],
	count: number | undefined,
): Priced<Line> {
	const unit = stock?.per === per ? stock?.price : undefined;
	return {
		line,
		price:
			unit !== undefined && count !== undefined
				? product(unit, count)
				: undefined,
		currency: stock?.currency,
	};
}

/** Undefined where a price is beyond all reckoning. */
function product(price: Rational, count: number): Rational | undefined {
	try {
		return price.mul(Rational.near(count, 1_000_000));
	} catch (error) {
		if (error instanceof TooLargeError) return undefined;
		throw error;
	}
}

function pricedSheets(line: SheetLine): Priced<SheetLine> {
	return priced(line, line.stock, "sheet", line.least);
}

function pricedBoards(line: BoardLine): Priced<BoardLine> {
	return priced(line, line.stock, "board-foot", line.total);
}

function trimLines(piece: Piece): readonly TrimLine[] {
	const lines = new Map<string, { parts: Part[]; running: number }>();
	for (const part of piece.parts) {
		if (part.role !== "trim") continue;
		const key = `${part.stock.id} ${part.thick.value} ${part.width.value}`;
		const line = lines.get(key) ?? { parts: [], running: 0 };
		line.parts.push(part);
		line.running += firstSawn(part).length;
		lines.set(key, line);
	}
	return [...lines.values()].map(({ parts, running }) => {
		const [{ stock, thick, width }] = parts as [Part];
		return { stock, thick, width, parts, running };
	});
}

function costOf(
	lines: Pick<
		BuyingList,
		"sheets" | "boards" | "veneer" | "fasteners" | "coatings"
	>,
): Cost {
	const totals = new Map<string | undefined, Rational>();
	const unpriced: string[] = [];
	const add = (one: Priced<unknown>, name: string): void => {
		if (one.price === undefined) unpriced.push(name);
		else {
			const before = totals.get(one.currency) ?? Rational.ZERO;
			totals.set(one.currency, before.add(one.price));
		}
	};
	for (const one of [...lines.sheets, ...lines.boards, ...lines.veneer]) {
		add(one, one.line.stock.id);
	}
	for (const one of lines.fasteners) add(one, fastenerName(one.line.size));
	for (const one of lines.coatings) add(one, one.line.name);
	return {
		totals: [...totals].map(([currency, amount]) => ({ currency, amount })),
		atLeast: [...lines.sheets, ...lines.veneer].some(
			({ price }) => price !== undefined,
		),
		unpriced: [...new Set(unpriced)],
	};
}
