// A material in words: what it measures, what of it the design uses, and what that costs.

import { show, showFine } from "../../checks/words.ts";
import { exactText } from "../../model/explain.ts";
import type { Design, Display, Piece, Stock } from "../../model/types.ts";
import type { MaterialLine } from "../../outputs/buy-material.ts";
import { type BuyingList, buyingList } from "../../outputs/buying-list.ts";
import { firstLayouts } from "../../outputs/piece-layouts.ts";
import { codeSpan, escapeMarkdown } from "../../text/markdown.ts";
import { areaUnits } from "../../units/derived.ts";
import {
	defaultPrecision,
	formatBoardFeet,
	formatMoney,
} from "../../units/format.ts";
import { Rational } from "../../units/rational.ts";

export function stockText(
	topic: { readonly id: string; readonly stocks: readonly Stock[] },
	design: Design,
): string {
	const { id, stocks } = topic;
	const display = design.pieces[0]?.display ?? {
		unit: "in",
		precision: defaultPrecision.in,
	};
	const [first] = stocks;
	const species = first?.species ? `, ${escapeMarkdown(first.species)}` : "";
	return [
		`**${codeSpan(id)}**, ${first?.kind ?? "material"}${species}`,
		...stocks.map((stock) => aboutStock(stock, display, stocks.length > 1)),
		...design.pieces.flatMap((piece) => usesOf(piece, design, stocks)),
	]
		.filter((block) => block !== "")
		.join("\n\n");
}

function aboutStock(stock: Stock, display: Display, named: boolean): string {
	const facts = [
		...(stock.thick
			? [
					`measures ${exactText(stock.thick, display.unit)} ${unitBehind(exactText(stock.thick, display.unit), display)}${stock.tolerance > 0 ? ` (${showFine(display, stock.tolerance)} either way)` : ""}`,
				]
			: []),
		...(stock.soldAs ? [`sold as ${show(display, stock.soldAs)}`] : []),
		...(stock.density === undefined
			? []
			: [
					`${Math.round(stock.density)} kg/m³ (${escapeMarkdown(stock.densitySource)})`,
				]),
		...(stock.price && stock.per
			? [
					`${money(stock.price, stock.currency)} per ${stock.per.replace("-", " ")}`,
				]
			: []),
	];
	if (facts.length === 0) return "";
	return `${named ? `${codeSpan(stock.id)}: ` : ""}${facts.join("; ")}`.replace(
		/ {2,}/g,
		" ",
	);
}

function unitBehind(text: string, { unit }: Display): string {
	return /[a-z]$/.test(text) ? "" : unit;
}

function usesOf(
	piece: Piece,
	design: Design,
	stocks: readonly Stock[],
): string[] {
	const ids = new Set(stocks.map((stock) => stock.id));
	const list = buyingList(
		[{ piece, stocks: design.stocks }],
		firstLayouts(piece),
	);
	const lines = [
		...[...list.sheets, ...list.boards, ...list.lengths, ...list.veneer]
			.filter(({ line }) => ids.has(line.layout.stock.id))
			.map(
				({ line, price, currency }) =>
					`${codeSpan(line.layout.stock.id)}: ${materialUse(line, piece.display)}${cost(price, currency)}`,
			),
		...otherUses(list, ids),
	];
	const label = codeSpan(piece.name);
	return [
		lines.length === 0
			? `Not used in ${label}.`
			: `Used in ${label}:\n\n${lines.map((line) => `- ${line}`).join("\n")}`,
	];
}

const things = {
	sheets: "sheet",
	veneer: "sheet",
	boards: "board",
	lengths: "length",
} as const;

/** `10 parts, 27.2 sq ft, 2 sheets of 96 x 48 and 1 on hand`. */
function materialUse(line: MaterialLine, display: Display): string {
	const { layout, bought, taken, feet } = line;
	const thing = things[layout.kind];
	const from = [
		...bought.map(
			({ name, count }) =>
				`${count} ${thing}${count === 1 ? "" : "s"} of ${name}`,
		),
		...taken.map(({ name, count }) => `${count} on hand of ${name}`),
	];
	return [
		parts(line.parts.length),
		feet
			? `${formatBoardFeet(Rational.near(feet.net, 1000))} board feet`
			: area(line.area, display),
		from.join(" and "),
		...(layout.missing.length > 0
			? [`${parts(layout.missing.length)} not laid out`]
			: []),
	]
		.filter((text) => text !== "")
		.join(", ");
}

function otherUses(list: BuyingList, ids: ReadonlySet<string>): string[] {
	return [
		...list.fasteners
			.filter(({ line }) => line.stock && ids.has(line.stock.id))
			.map(
				({ line, price, currency }) =>
					`${escapeMarkdown(line.size.label)}: ${line.count}${line.packs === undefined ? "" : `, ${line.packs} pack${line.packs === 1 ? "" : "s"}`}${cost(price, currency)}`,
			),
		...list.coatings
			.filter(({ line }) => line.stock && ids.has(line.stock.id))
			.map(
				({ line, price, currency }) =>
					`${codeSpan(line.name)}${line.tins === undefined ? "" : `: ${line.tins} tin${line.tins === 1 ? "" : "s"}`}${cost(price, currency)}`,
			),
	];
}

function parts(count: number): string {
	return `${count} part${count === 1 ? "" : "s"}`;
}

/** mm2 as square feet or square metres. */
function area(mm2: number, { unit }: Display): string {
	return unit === "in"
		? `${(mm2 / areaUnits.ft2.toNumber()).toFixed(1)} sq ft`
		: `${(mm2 / 1e6).toFixed(2)} m²`;
}

function cost(
	price: Rational | undefined,
	currency: string | undefined,
): string {
	return price === undefined ? "" : `: ${money(price, currency)}`;
}

function money(amount: Rational, currency: string | undefined): string {
	return `${formatMoney(amount)}${currency === undefined ? "" : ` ${escapeMarkdown(currency)}`}`;
}
