// How the buying list is put into words, the same in every format.

import { exactText, roundedLength } from "../model/explain.ts";
import type { Display, Part } from "../model/types.ts";
import { areaUnits, boardFoot, volumeUnits } from "../units/derived.ts";
import { inch } from "../units/dimensions.ts";
import { decimalText, formatMoney, lengthText } from "../units/format.ts";
import { Rational } from "../units/rational.ts";
import type { BoardLine } from "./buy-boards.ts";
import type { CoatingLine } from "./buy-coatings.ts";
import { type FastenerLine, fastenerName } from "./buy-fasteners.ts";
import type { SheetLine } from "./buy-sheets.ts";
import type { BuyingList, Priced, TrimLine } from "./buying-list.ts";

export interface BuyRow {
	readonly item: string;
	/** What to ask for: `at least 2 sheets`, `4.20 bd ft`, `36 (1 pack of 100)`. */
	readonly buy: string;
	readonly size: string;
	/** With the currency; empty where it is not known. */
	readonly price: string;
	readonly notes: readonly string[];
}

export interface BuySection {
	readonly title: string;
	readonly rows: readonly BuyRow[];
}

/** Only sections with something in them. */
export function buySections(list: BuyingList): readonly BuySection[] {
	const { display } = list;
	const row = <Line>(
		one: Priced<Line>,
		words: (line: Line, display: Display) => Omit<BuyRow, "price">,
	): BuyRow => ({ ...words(one.line, display), price: priceText(one) });
	return [
		{
			title: "Sheets",
			rows: list.sheets.map((one) => row(one, sheetWords)),
		},
		{ title: "Boards", rows: list.boards.map((one) => row(one, boardWords)) },
		{
			title: "Trim, ripped from the boards",
			rows: list.trim.map((one) => ({
				...trimWords(one, display),
				price: "",
			})),
		},
		{ title: "Veneer", rows: list.veneer.map((one) => row(one, veneerWords)) },
		{
			title: "Fasteners",
			rows: list.fasteners.map((one) => row(one, fastenerWords)),
		},
		{
			title: "Glue and finish",
			rows: list.coatings.map((one) => row(one, coatingWords)),
		},
	].filter(({ rows }) => rows.length > 0);
}

/** `EUR 184.00`, one for each currency, and what has no price. */
export function costLines({ cost }: BuyingList): readonly string[] {
	const start = cost.atLeast ? "at least " : "";
	return [
		...cost.totals.map(
			({ currency, amount }) => `${start}${moneyText(amount, currency)}`,
		),
		...(cost.unpriced.length > 0
			? [`no price known: ${cost.unpriced.join(", ")}`]
			: []),
	];
}

export function weightLines({
	weight,
	display,
}: BuyingList): readonly string[] {
	const { centre, unknown, onWall, total } = weight;
	const { unit } = display;
	const names = (parts: readonly Part[]): string =>
		parts.map((part) => part.path).join(", ");
	const at = (mm: number): string =>
		lengthText(Rational.near(mm, 1_000), {
			...display,
			suffix: true,
			approximately: true,
		});
	return [
		`${massText(total, unit)} of wood${onWall > 0 ? `, and ${massText(onWall, unit)} that stays on the wall` : ""}`,
		...(centre
			? [
					`centre of gravity ${at(centre.fromLeft)} from the left, ${at(centre.fromFloor)} up from the floor, ${at(centre.fromBack)} from the back`,
				]
			: []),
		...(unknown.length > 0
			? [`not weighed, density not known: ${names(unknown)}`]
			: []),
	];
}

/** `12.3 lb`, `5.6 kg`; what is lighter than a tenth is told in ounces or grams. */
export function massText(kg: number, unit: Display["unit"]): string {
	const [large, perLarge, small, perSmall] =
		unit === "in"
			? (["lb", 0.45359237, "oz", 0.028349523125] as const)
			: (["kg", 1, "g", 0.001] as const);
	return kg / perLarge >= 0.995
		? `${decimal(kg / perLarge, 1)} ${large}`
		: `${decimal(kg / perSmall, unit === "in" ? 1 : 0)} ${small}`;
}

export function areaText(mm2: number, unit: Display["unit"]): string {
	return unit === "in"
		? `${decimal(mm2 / areaUnits.ft2.toNumber(), 1)} ft2`
		: `${decimal(mm2 / areaUnits.m2.toNumber(), 2)} m2`;
}

export function moneyText(
	amount: Rational,
	currency: string | undefined,
): string {
	const number = formatMoney(amount);
	return currency === undefined ? number : `${currency} ${number}`;
}

function priceText({ price, currency }: Priced<unknown>): string {
	return price === undefined ? "" : moneyText(price, currency);
}

function sheetWords(line: SheetLine, display: Display): Omit<BuyRow, "price"> {
	const kerf = line.kerf > 0 ? lengthOf(line.kerf, display) : undefined;
	return sheetRow(line, display, [
		`${countOf(line.parts.length, "part")}, ${areaText(line.area, display.unit)} as sawn${kerf === undefined ? "" : `, kerf ${kerf} counted`}`,
	]);
}

function veneerWords(line: SheetLine, display: Display): Omit<BuyRow, "price"> {
	return sheetRow(line, display, [
		`${countOf(line.parts.length, "sheet")} to cut, ${areaText(line.area, display.unit)} with what hangs over`,
	]);
}

function sheetRow(
	line: SheetLine,
	{ unit }: Display,
	notes: readonly string[],
): Omit<BuyRow, "price"> {
	const { stock, size, least, tooLarge } = line;
	const told = size
		? `${exactText(size.length, unit)} x ${exactText(size.width, unit)}`
		: "";
	return {
		item: stock.id,
		buy:
			least === undefined
				? areaText(line.area, unit)
				: `at least ${countOf(least, "sheet")} by area`,
		size: told,
		notes: [
			...notes,
			...(size
				? []
				: ["the stock file has no size of sheet, so none are counted"]),
			...(tooLarge.length > 0
				? [
						`larger than a sheet of ${told}: ${tooLarge.map((part) => part.path).join(", ")}; no sheets are counted`,
					]
				: []),
		],
	};
}

function boardWords(line: BoardLine, display: Display): Omit<BuyRow, "price"> {
	const feet = (amount: number): string => `${decimal(amount, 2)} bd ft`;
	const cubic = (amount: number): string =>
		`${decimal((amount * boardFoot.toNumber()) / 1e9, 4)} m3`;
	const { unit } = display;
	return {
		item: line.stock.id,
		buy:
			unit === "in"
				? feet(line.total)
				: `${cubic(line.total)} (${feet(line.total)})`,
		size: `${lengthOf(line.rough, display)} rough`,
		notes: [
			`${countOf(line.parts.length, "part")}, ${feet(line.net)} in rough sizes and ${decimal(line.waste * 100, 0)} % for waste (common practice)`,
			...(line.roughGuessed
				? [
						"rough thickness not in the stock file: planed and 1/4 in, up to the quarter",
					]
				: []),
			...(line.tooLarge.length > 0
				? [
						`larger than the largest board: ${line.tooLarge.map((part) => part.path).join(", ")}`,
					]
				: []),
		],
	};
}

function trimWords(line: TrimLine, display: Display): Omit<BuyRow, "price"> {
	const { unit } = display;
	const size = (of: TrimLine["thick"]): string =>
		lengthText(of.value, { ...display, approximately: true });
	return {
		item: line.stock.id,
		buy:
			unit === "in"
				? `${decimal(line.running / (12 * inch.toNumber()), 1)} ft`
				: `${decimal(line.running / 1_000, 2)} m`,
		size: `${size(line.thick)} x ${size(line.width)}`,
		notes: [
			`${countOf(line.parts.length, "strip")}: ${line.parts.map((part) => part.path).join(", ")}`,
		],
	};
}

function fastenerWords(line: FastenerLine): Omit<BuyRow, "price"> {
	const { count, packs, stock } = line;
	const pack = stock?.fastener?.pack;
	return {
		item: fastenerName(line.size),
		buy:
			packs === undefined
				? String(count)
				: `${count} (${countOf(packs, "pack")} of ${pack})`,
		size: stock?.id ?? "",
		notes: [
			...(line.wall
				? ["into the wall, for the studs that the strip meets at the least"]
				: []),
			...(line.tacks > 0
				? [
						`${line.tacks === count ? "all" : line.tacks} hold only while the glue sets`,
					]
				: []),
			...(line.filled > 0
				? [`filler for ${countOf(line.filled, "head")}`]
				: []),
		],
	};
}

function coatingWords(
	line: CoatingLine,
	{ unit }: Display,
): Omit<BuyRow, "price"> {
	const { litres, tins, stock } = line;
	const what = line.kind === "glue" ? "spread on one side" : "all coats";
	const from = {
		stock: coverText(line.covers ?? 0, unit),
		practice: `${coverText(line.covers ?? 0, unit)} (common practice)`,
		unknown: "how far it goes is not in the stock file",
	}[line.coversFrom];
	const volume = litres === undefined ? "" : volumeText(litres, unit);
	return {
		item: line.name,
		buy:
			tins === undefined
				? volume || areaText(line.area, unit)
				: `${volume} (${countOf(tins, "tin")} of ${volumeText(stock?.coating?.tin ?? 0, unit)})`,
		size: line.kind,
		notes: [`${areaText(line.area, unit)}, ${what}; ${from}`],
	};
}

/** `250 ft2 to the gallon`, `6.1 m2 to the litre`. */
function coverText(
	squareMetresPerLitre: number,
	unit: Display["unit"],
): string {
	if (unit === "mm")
		return `${decimal(squareMetresPerLitre, 1)} m2 to the litre`;
	const perGallon =
		(squareMetresPerLitre *
			areaUnits.m2.toNumber() *
			volumeUnits.gallon.toNumber()) /
		(volumeUnits.litre.toNumber() * areaUnits.ft2.toNumber());
	return `${decimal(perGallon, 0)} ft2 to the gallon`;
}

export function volumeText(litres: number, unit: Display["unit"]): string {
	if (unit === "mm") {
		return litres >= 1
			? `${plain(litres, 2)} l`
			: `${plain(Math.max(1, litres * 1_000), 0)} ml`;
	}
	const quart = volumeUnits.quart.toNumber() / volumeUnits.litre.toNumber();
	const quarts = litres / quart;
	// 32 fluid ounces to the US quart.
	return quarts >= 1
		? `${plain(quarts, 2)} qt`
		: `${plain(Math.max(0.1, quarts * 32), 1)} fl oz`;
}

function lengthOf(mm: number, { unit }: Display): string {
	return roundedLength(Rational.near(mm, 1_000_000), unit);
}

function countOf(count: number, one: string): string {
	return `${count} ${one}${count === 1 ? "" : "s"}`;
}

/** Without zeros at the end. */
function plain(value: number, digits: number): string {
	return decimalText(Rational.near(value, 1_000_000), digits);
}

function decimal(value: number, digits: number): string {
	return decimalText(Rational.near(value, 1_000_000), digits, true);
}
