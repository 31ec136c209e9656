// What to buy for some pieces, what it costs and what there is to carry, as data.

import type { MaterialLayout, MissingPart } from "../layouts/index.ts";
import { firstSawn } from "../layouts/rough-size.ts";
import { numberOf, type Size } from "../model/size.ts";
import type { Display, Part, Stock } from "../model/types.ts";
import { Rational, TooLargeError } from "../units/rational.ts";
import { type CoatingLine, coatingLines } from "./buy-coatings.ts";
import {
	type FastenerLine,
	fastenerLines,
	fastenerName,
} from "./buy-fasteners.ts";
import { type MaterialLine, materialLine } from "./buy-material.ts";
import { type HandLine, handLines } from "./hand-lines.ts";
import { type PieceToBuy, stockKey } from "./piece-to-buy.ts";
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

export interface Amount {
	/** `undefined` where the stock file names no currency. */
	readonly currency: string | undefined;
	readonly amount: Rational;
}

export interface Cost {
	/** In the order in which the currencies first occur. */
	readonly totals: readonly Amount[];
	/** Something that is needed could not be laid out, so the totals are too low. */
	readonly atLeast: boolean;
	/** What is needed and has no price. */
	readonly unpriced: readonly string[];
}

/** What one of several pieces has in the cost: of every line by what it uses of it. */
export interface Share {
	readonly piece: string;
	readonly file: string;
	readonly amounts: readonly Amount[];
}

export interface BuyingList {
	readonly pieces: readonly PieceToBuy[];
	/** Of the first piece. */
	readonly display: Display;
	readonly sheets: readonly Priced<MaterialLine>[];
	readonly boards: readonly Priced<MaterialLine>[];
	/** Battens and mouldings. */
	readonly lengths: readonly Priced<MaterialLine>[];
	readonly trim: readonly TrimLine[];
	readonly veneer: readonly Priced<MaterialLine>[];
	readonly fasteners: readonly Priced<FastenerLine>[];
	readonly coatings: readonly Priced<CoatingLine>[];
	/** What could not be laid out. */
	readonly missing: readonly MissingPart[];
	readonly cost: Cost;
	/** Of several pieces; empty for one. */
	readonly shares: readonly Share[];
	/** Wood to carry home: kg of all sheets and boards that are bought, and of the heaviest of them. */
	readonly carry: {
		readonly kg: number;
		readonly heaviest: number;
		/** Materials whose density nobody knows: they are in no figure. */
		readonly unknown: readonly string[];
	};
	/** What lies in the shop afterwards, material by material, as lines of the stock file. */
	readonly onHand: readonly HandLine[];
	/** Of each piece. */
	readonly weights: readonly Weight[];
}

/** `layouts` are those of just these pieces. Of no piece the list is empty. */
export function buyingList(
	pieces: readonly PieceToBuy[],
	layouts: readonly MaterialLayout[],
): BuyingList {
	const of = (kind: MaterialLayout["kind"]) =>
		layouts
			.filter((layout) => layout.kind === kind)
			.map(
				(layout): Priced<MaterialLine> => ({
					line: materialLine(layout),
					price: layout.price,
					currency: layout.stock.currency,
				}),
			);
	const lists = {
		sheets: of("sheets"),
		boards: of("boards"),
		lengths: of("lengths"),
		veneer: of("veneer"),
		fasteners: fastenerLines(pieces).map((line) =>
			priced(line, line.stock, "pack", line.packs),
		),
		coatings: coatingLines(pieces).map((line) =>
			priced(line, line.stock, "tin", line.tins),
		),
	};
	const missing = layouts.flatMap((layout) => layout.missing);
	return {
		pieces,
		display: pieces[0]?.piece.display ?? {
			unit: "in",
			precision: Rational.of(1, 32),
		},
		...lists,
		trim: trimLines(pieces),
		missing,
		cost: costOf(lists, missing.length > 0),
		shares: pieces.length > 1 ? sharesOf(pieces, lists) : [],
		carry: carryOf(lists),
		onHand: handLines(layouts),
		weights: pieces.map(({ piece }) => weightOf(piece)),
	};
}

type Lists = Pick<
	BuyingList,
	"sheets" | "boards" | "lengths" | "veneer" | "fasteners" | "coatings"
>;

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

function trimLines(pieces: readonly PieceToBuy[]): readonly TrimLine[] {
	const lines = new Map<string, { parts: Part[]; running: number }>();
	for (const part of pieces.flatMap(({ piece }) => piece.parts)) {
		if (part.role !== "trim") continue;
		const key = `${stockKey(part.stock)} ${part.thick.value} ${part.width.value}`;
		const line = lines.get(key) ?? { parts: [], running: 0 };
		line.parts.push(part);
		line.running += numberOf(firstSawn(part).length);
		lines.set(key, line);
	}
	return [...lines.values()].map(({ parts, running }) => {
		const [{ stock, thick, width }] = parts as [Part];
		return { stock, thick, width, parts, running };
	});
}

function materials(lists: Lists): readonly Priced<MaterialLine>[] {
	return [...lists.sheets, ...lists.boards, ...lists.lengths, ...lists.veneer];
}

class Sums {
	private readonly amounts = new Map<string | undefined, Rational>();

	/** False if the sum is beyond all reckoning; it then stays as it was. */
	add(currency: string | undefined, amount: Rational): boolean {
		try {
			const before = this.amounts.get(currency) ?? Rational.ZERO;
			this.amounts.set(currency, before.add(amount));
			return true;
		} catch (error) {
			if (error instanceof TooLargeError) return false;
			throw error;
		}
	}

	get all(): readonly Amount[] {
		return [...this.amounts].map(([currency, amount]) => ({
			currency,
			amount,
		}));
	}
}

function costOf(lists: Lists, atLeast: boolean): Cost {
	const totals = new Sums();
	const unpriced: string[] = [];
	const add = ({ price, currency }: Priced<unknown>, name: string): void => {
		if (price === undefined || !totals.add(currency, price))
			unpriced.push(name);
	};
	for (const one of materials(lists)) add(one, one.line.layout.stock.id);
	for (const one of lists.fasteners) add(one, fastenerName(one.line.size));
	for (const one of lists.coatings) add(one, one.line.name);
	return { totals: totals.all, atLeast, unpriced: [...new Set(unpriced)] };
}

/** Shares are rounded to cents; what that loses falls to the last piece, so that they add up. */
function sharesOf(
	pieces: readonly PieceToBuy[],
	lists: Lists,
): readonly Share[] {
	const sums = pieces.map(() => new Sums());
	const divide = (
		{ price, currency }: Priced<unknown>,
		weights: readonly number[],
	): void => {
		const whole = weights.reduce((sum, one) => sum + one, 0);
		if (!price || price.isZero() || !(whole > 0)) return;
		let rest = price;
		const last = weights.findLastIndex((one) => one > 0);
		weights.forEach((weight, at) => {
			if (weight <= 0) return;
			const own =
				at === last
					? rest
					: Rational.near((price.toNumber() * weight) / whole, 100);
			rest = rest.sub(own);
			sums[at]?.add(currency, own);
		});
	};
	for (const one of materials(lists)) {
		divide(
			one,
			pieces.map((_, at) => one.line.areas[at] ?? 0),
		);
	}
	for (const one of lists.fasteners) divide(one, one.line.shares);
	for (const one of lists.coatings) divide(one, one.line.shares);
	return pieces.map(({ piece, file }, at) => ({
		piece: piece.name,
		file: file ?? "",
		amounts: sums[at]?.all ?? [],
	}));
}

function carryOf(lists: Lists): BuyingList["carry"] {
	const bought = materials(lists).filter(({ line }) => line.bought.length > 0);
	return {
		kg: bought.reduce((sum, { line }) => sum + (line.kg ?? 0), 0),
		heaviest: Math.max(0, ...bought.map(({ line }) => line.heaviest ?? 0)),
		unknown: bought.flatMap(({ line }) =>
			line.kg === undefined ? [line.layout.stock.id] : [],
		),
	};
}
