// The buying list for a spreadsheet.

import type { Stock } from "../model/types.ts";
import { csv } from "../text/csv.ts";
import { decimalText, formatMoney } from "../units/format.ts";
import { Rational } from "../units/rational.ts";
import { fastenerName } from "./buy-fasteners.ts";
import type { BuyingList, Priced } from "./buying-list.ts";

/**
 * RFC 4180. `quantity` is what to buy, in `unit`: sheets (a lower bound), board feet, metres of trim, single fasteners,
 * litres. `area_m2` is the net area of what is cut or coated. A line that could not be counted has no quantity.
 */
export function buyingListCsv(lists: readonly BuyingList[]): string {
	return csv([header, ...lists.flatMap(rowsOf)]);
}

const header = [
	"piece",
	"section",
	"item",
	"quantity",
	"unit",
	"at_least",
	"packs",
	"area_m2",
	"price",
	"currency",
];

function rowsOf(list: BuyingList): readonly (readonly string[])[] {
	const row = (
		section: string,
		item: string,
		quantity: string,
		unit: string,
		more: {
			readonly atLeast?: boolean;
			readonly packs?: number | undefined;
			readonly area?: number;
			readonly price?: Pick<Priced<unknown>, "price" | "currency">;
		} = {},
	): readonly string[] => [
		list.piece,
		section,
		item,
		quantity,
		unit,
		more.atLeast === true ? "yes" : "no",
		more.packs === undefined ? "" : String(more.packs),
		more.area === undefined ? "" : number(more.area / 1e6, 4),
		more.price?.price === undefined ? "" : formatMoney(more.price.price),
		more.price?.price === undefined ? "" : (more.price.currency ?? ""),
	];
	const sheets = (
		section: string,
		lines: BuyingList["sheets"],
	): readonly (readonly string[])[] =>
		lines.map((one) =>
			row(
				section,
				stockName(one.line.stock),
				one.line.least === undefined ? "" : String(one.line.least),
				"sheet",
				{ atLeast: true, area: one.line.area, price: one },
			),
		);
	return [
		...sheets("sheets", list.sheets),
		...list.boards.map((one) =>
			row(
				"boards",
				stockName(one.line.stock),
				number(one.line.total, 2),
				"board foot",
				{ price: one },
			),
		),
		...list.trim.map((line) =>
			row("trim", stockName(line.stock), number(line.running / 1_000, 3), "m"),
		),
		...sheets("veneer", list.veneer),
		...list.fasteners.map((one) =>
			row(
				"fasteners",
				fastenerName(one.line.size),
				String(one.line.count),
				"piece",
				{
					atLeast: one.line.wall,
					packs: one.line.packs,
					price: one,
				},
			),
		),
		...list.coatings.map((one) =>
			row(
				one.line.kind,
				one.line.name,
				one.line.litres === undefined ? "" : number(one.line.litres, 3),
				"litre",
				{ packs: one.line.tins, area: one.line.area, price: one },
			),
		),
	];
}

function stockName(stock: Stock): string {
	return stock.id;
}

function number(value: number, digits: number): string {
	return decimalText(Rational.near(value, 1_000_000), digits);
}
