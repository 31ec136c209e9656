// The buying list for a spreadsheet.

import { csv } from "../text/csv.ts";
import { decimalText, formatMoney } from "../units/format.ts";
import { Rational } from "../units/rational.ts";
import { fastenerName } from "./buy-fasteners.ts";
import { feetOfSize } from "./buy-material.ts";
import type { BuyingList, Priced } from "./buying-list.ts";
import { listTitle } from "./buying-list-words.ts";

/**
 * RFC 4180. `quantity` is what to buy, in `unit`: sheets, boards or lengths of that `size`, metres of trim, single
 * fasteners, litres; spare ones are in it. A row with `on_hand` is taken from the shop and costs nothing. `board_feet` is
 * that of all boards of the row, `area_m2` the net area of what is cut (told once for a material) or coated.
 */
export function buyingListCsv(lists: readonly BuyingList[]): string {
	return csv([header, ...lists.flatMap(rowsOf)]);
}

const header = [
	"pieces",
	"section",
	"item",
	"size",
	"quantity",
	"unit",
	"on_hand",
	"at_least",
	"packs",
	"board_feet",
	"area_m2",
	"price",
	"currency",
];

interface More {
	readonly size?: string;
	readonly onHand?: boolean;
	readonly atLeast?: boolean;
	readonly packs?: number | undefined;
	readonly feet?: number | undefined;
	readonly area?: number | undefined;
	readonly price?: Pick<Priced<unknown>, "price" | "currency"> | undefined;
}

function rowsOf(list: BuyingList): readonly (readonly string[])[] {
	const title = listTitle(list);
	const row = (
		section: string,
		item: string,
		quantity: string,
		unit: string,
		more: More = {},
	): readonly string[] => [
		title,
		section,
		item,
		more.size ?? "",
		quantity,
		unit,
		more.onHand === true ? "yes" : "no",
		more.atLeast === true ? "yes" : "no",
		more.packs === undefined ? "" : String(more.packs),
		more.feet === undefined ? "" : number(more.feet, 2),
		more.area === undefined ? "" : number(more.area / 1e6, 4),
		more.price?.price === undefined ? "" : formatMoney(more.price.price),
		more.price?.price === undefined ? "" : (more.price.currency ?? ""),
	];
	const material = (
		section: string,
		unit: string,
		lines: BuyingList["sheets"],
	): readonly (readonly string[])[] =>
		lines.flatMap(({ line, currency }) =>
			[...line.bought, ...line.taken].map((size, at) =>
				row(section, line.layout.stock.id, String(size.count), unit, {
					size: size.name,
					onHand: size.onHand,
					area: at === 0 ? line.area : undefined,
					feet: feetOfSize(line, size),
					price: size.onHand
						? undefined
						: {
								price: size.price?.mul(Rational.of(size.count)),
								currency,
							},
				}),
			),
		);
	return [
		...material("sheets", "sheet", list.sheets),
		...material("boards", "board", list.boards),
		...list.trim.map((line) =>
			row("trim", line.stock.id, number(line.running / 1_000, 3), "m"),
		),
		...material("battens", "length", list.lengths),
		...material("veneer", "sheet", list.veneer),
		...list.fasteners.map((one) =>
			row(
				"fasteners",
				fastenerName(one.line.size),
				String(one.line.count + one.line.spare),
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
				one.line.litres === undefined
					? ""
					: number(one.line.litres + (one.line.spare ?? 0), 3),
				"litre",
				{ packs: one.line.tins, area: one.line.area, price: one },
			),
		),
	];
}

function number(value: number, digits: number): string {
	return decimalText(Rational.near(value, 1_000_000), digits);
}
