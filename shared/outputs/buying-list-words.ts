// How the buying list is put into words, the same in every format.

import {
	type MaterialLayout,
	partsIn,
	stepsPerMm,
	stepText,
} from "../layouts/index.ts";
import { exactText } from "../model/explain.ts";
import type { Display, Part } from "../model/types.ts";
import { areaUnits, boardFoot, volumeUnits } from "../units/derived.ts";
import { inch } from "../units/dimensions.ts";
import { decimalText, formatMoney, lengthText } from "../units/format.ts";
import { Rational } from "../units/rational.ts";
import type { CoatingLine } from "./buy-coatings.ts";
import { type FastenerLine, fastenerName } from "./buy-fasteners.ts";
import { feetOfSize, type MaterialLine } from "./buy-material.ts";
import type { BuyingList, Priced, TrimLine } from "./buying-list.ts";
import type { Weight } from "./weight.ts";

export interface BuyRow {
	readonly item: string;
	/** What to ask for: `2 sheets`, `1 board (4.20 bd ft)`, `36 (1 pack of 100)`. */
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

/** `record-bench`, `record-bench and wall-rack`. */
export function listTitle({ pieces }: BuyingList): string {
	const names = pieces.map(({ piece }) => piece.name);
	return names.length < 2
		? names.join("")
		: `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;
}

/** Only sections with something in them. */
export function buySections(list: BuyingList): readonly BuySection[] {
	const { display } = list;
	const row = <Line>(
		one: Priced<Line>,
		words: (line: Line, display: Display) => Omit<BuyRow, "price">,
	): BuyRow => ({ ...words(one.line, display), price: priceText(one) });
	const material = (lines: BuyingList["sheets"]): readonly BuyRow[] =>
		lines.flatMap((one) => materialRows(one, display));
	return [
		{ title: "Sheets", rows: material(list.sheets) },
		{ title: "Boards", rows: material(list.boards) },
		{
			title: "Trim, ripped from the boards",
			rows: list.trim.map((one) => ({
				...trimWords(one, display),
				price: "",
			})),
		},
		{ title: "Battens and mouldings", rows: material(list.lengths) },
		{ title: "Veneer", rows: material(list.veneer) },
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

/** A line for each part that no sheet or board could be found for. */
export function missingLines({ missing }: BuyingList): readonly string[] {
	return [...new Set(missing.map(({ message }) => message))];
}

/** What each of several designs has in the cost. */
export function shareLines({ shares }: BuyingList): readonly string[] {
	return shares.map(
		({ piece, file, amounts }) =>
			`${piece}${file === "" ? "" : ` (${file})`}: ${amounts.map(({ currency, amount }) => moneyText(amount, currency)).join(" and ") || "nothing"}`,
	);
}

/** Lines for the stock file, each material before its own. */
export function handTexts({ onHand }: BuyingList): readonly string[] {
	return onHand.flatMap(({ stock, lines }) => [
		lines.length > 0 ? stock.id : `${stock.id}: nothing, all of it is used up`,
		...lines.map((line) => `  ${line}`),
	]);
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

/** What the wood weighs that is carried home; empty where nothing is bought. */
export function carryLines({ carry, display }: BuyingList): readonly string[] {
	const { kg, heaviest, unknown } = carry;
	return [
		...(kg > 0
			? [
					`${massText(kg, display.unit)} of sheets and boards, the heaviest ${massText(heaviest, display.unit)}`,
				]
			: []),
		...(unknown.length > 0
			? [`not weighed, density not known: ${unknown.join(", ")}`]
			: []),
	];
}

export function weightLines(
	weight: Weight,
	display: Display,
): readonly string[] {
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

const things = {
	sheets: "sheet",
	veneer: "sheet",
	boards: "board",
	lengths: "length",
} as const;

/** A row for each size that is bought or taken from the shop; what is to be said of all stands under the first. */
function materialRows(
	{ line, currency }: Priced<MaterialLine>,
	shared: Display,
): readonly BuyRow[] {
	const { layout, bought, taken } = line;
	const { display } = layout;
	const thing = things[layout.kind];
	const row = (
		size: string,
		buy: string,
		price: string,
	): Omit<BuyRow, "notes"> => ({ item: layout.stock.id, size, buy, price });
	const rows = [
		...bought.map((size) =>
			row(
				size.name,
				`${countOf(size.count, thing)}${feetBehind(feetOfSize(line, size), display)}`,
				size.price ? moneyText(times(size.price, size.count), currency) : "",
			),
		),
		...taken.map(({ name, count }) => row(name, `${count} on hand`, "")),
	];
	const all = rows.length > 0 ? rows : [row("", "none", "")];
	return all.map((one, at) => ({
		...one,
		notes:
			at === 0
				? [
						...materialNotes(line, display),
						// Elsewhere in the list they are in the other unit.
						...(display.unit === shared.unit
							? []
							: [`these sizes are in ${display.unit}`]),
					]
				: [],
	}));
}

function times(price: Rational, count: number): Rational {
	return price.mul(Rational.of(count));
}

function feet(amount: number): string {
	return `${decimal(amount, 2)} bd ft`;
}

/** Board feet of the boards of one size, in brackets. */
function feetBehind(
	amount: number | undefined,
	{ unit }: Pick<Display, "unit">,
): string {
	if (amount === undefined) return "";
	const cubic = `${decimal((amount * boardFoot.toNumber()) / 1e9, 4)} m3`;
	return unit === "in" ? ` (${feet(amount)})` : ` (${cubic}, ${feet(amount)})`;
}

function materialNotes(
	line: MaterialLine,
	display: Display,
): readonly string[] {
	const { layout, parts, area, feet: boards } = line;
	const kerf =
		layout.kerf > 0 ? `, kerf ${stepText(layout.kerf, display)}` : "";
	const what = `${countOf(parts.length, layout.kind === "veneer" ? "sheet" : "part")}${layout.kind === "veneer" ? " to cut" : ""}`;
	const amount = boards
		? `${feet(boards.net)} in rough sizes of ${feet(boards.used)}${boards.kept > 0 ? `, ${feet(boards.kept)} worth keeping` : ""}, ${decimal(boards.lost * 100, 0)} % lost`
		: layout.kind === "lengths"
			? `${runningText(line, display)} in all`
			: `${areaText(area, display.unit)} ${layout.kind === "veneer" ? "with what hangs over" : "as sawn"}`;
	return [
		`${what}, ${amount}${kerf}`,
		...(boards
			? [
					`${exactText(boards.rough, display.unit)} thick, rough${boards.roughGuessed ? ", which the stock file does not say: planed and 1/4 in, up to the quarter" : ""}`,
				]
			: []),
		...boundNotes(layout),
		...layout.assumptions,
	];
}

function runningText({ layout }: MaterialLine, { unit }: Display): string {
	const steps = layout.sheets
		.flatMap(({ root }) => partsIn(root))
		.reduce((sum, { place }) => sum + place.length, 0);
	const mm = steps / stepsPerMm;
	return unit === "in"
		? `${decimal(mm / (12 * inch.toNumber()), 1)} ft`
		: `${decimal(mm / 1_000, 2)} m`;
}

/** How far from the best the layout may be; nothing where it is known to be the best. */
function boundNotes(layout: MaterialLayout): readonly string[] {
	const { proven, price, leastPrice, leastSheets, sheets } = layout;
	if (proven || sheets.length === 0) return [];
	const few = `${countOf(leastSheets, things[layout.kind])} at the least`;
	if (
		!price ||
		!leastPrice ||
		leastPrice.isZero() ||
		price.cmp(leastPrice) <= 0
	) {
		return [`a better layout may exist: ${few}`];
	}
	const gap = (1 - leastPrice.toNumber() / price.toNumber()) * 100;
	return [
		`a better layout may exist: it costs ${moneyText(leastPrice, layout.stock.currency)} at the least, ${decimal(gap, 1)} % less`,
	];
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
	const { count, spare, packs, stock } = line;
	const pack = stock?.fastener?.pack;
	const number = spare > 0 ? `${count} and ${spare} spare` : String(count);
	return {
		item: fastenerName(line.size),
		buy:
			packs === undefined
				? number
				: `${number} (${countOf(packs, "pack")} of ${pack})`,
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
	const { litres, spare, tins, stock } = line;
	const what = line.kind === "glue" ? "spread on one side" : "all coats";
	const from = {
		stock: coverText(line.covers ?? 0, unit),
		practice: `${coverText(line.covers ?? 0, unit)} (common practice)`,
		unknown: "how far it goes is not in the stock file",
	}[line.coversFrom];
	const volume =
		litres === undefined
			? ""
			: `${volumeText(litres, unit)}${spare ? ` and ${volumeText(spare, unit)} spare` : ""}`;
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
