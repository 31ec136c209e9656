// What a layout comes to in words: how many sheets, what they cost, and whether fewer could be enough.

import { areaIn, leftText } from "../../layouts/index.ts";
import type { LaidRegion, MaterialLayout } from "../../layouts/types.ts";
import { formatMoney } from "../../units/format.ts";
import type { Rational } from "../../units/rational.ts";
import type { SawingPlan } from "./sawing-plan.ts";
import {
	counted,
	labelsIn,
	partLabel,
	sheetName,
	sheetWord,
} from "./sawing-words.ts";

/** `2 sheets of 96 x 48 and 1 of 40 x 24 on hand, 184.00 USD; 81 % of them becomes parts`. */
export function usedText(layout: MaterialLayout): string {
	const { sizes, sheets, price, stock } = layout;
	if (sheets.length === 0) return "Nothing is laid out";
	const word = sheetWord(layout.kind);
	const each = sizes.map(
		({ name, count, onHand }) =>
			`${counted(count, word)} of ${name}${onHand ? " on hand" : ""}`,
	);
	const cost =
		price === undefined
			? ", price not known"
			: price.isZero()
				? ""
				: `, ${moneyText(price, stock.currency)}`;
	const what = sheets.length === 1 ? "it" : "them";
	return `${listed(each)}${cost}; ${Math.round(filled(layout) * 100)} % of ${what} becomes parts`;
}

/** How far from the best the layout may be, as far as that is proven. */
export function boundText(layout: MaterialLayout): string | undefined {
	const { sheets, leastSheets, price, leastPrice, proven, kind, stock } =
		layout;
	const count = sheets.length;
	if (count === 0) return undefined;
	const word = sheetWord(kind);
	const fewest =
		count === 1
			? "Fewer cannot be enough"
			: `No plan needs fewer than ${counted(leastSheets, word)}`;
	const saving =
		price && leastPrice && leastPrice.cmp(price) < 0
			? moneyText(price.sub(leastPrice), stock.currency)
			: undefined;
	if (saving === undefined || proven) {
		if (leastSheets >= count) return `${fewest}: this is the least`;
		if (proven) return "No plan is cheaper: this is the least";
	}
	const perhaps = [
		...(leastSheets < count
			? [counted(count - leastSheets, word, numberWords)]
			: []),
		...(saving === undefined ? [] : [`up to ${saving}`]),
	];
	const could = perhaps.join(", or ");
	return `Perhaps ${could} could be saved: what is proven is that no plan needs fewer than ${counted(leastSheets, word)}${
		leastPrice && saving !== undefined
			? ` or costs less than ${moneyText(leastPrice, stock.currency)}`
			: ""
	}`;
}

const numberWords = ["no", "one", "two", "three", "four", "five", "six"];

/** Share of the sheets that becomes parts, 0 to 1. */
export function filled({ sheets }: Pick<MaterialLayout, "sheets">): number {
	let whole = 0;
	let parts = 0;
	for (const { length, width, root } of sheets) {
		whole += (length / 1_000) * (width / 1_000);
		parts += areaIn(root);
	}
	return whole > 0 ? parts / whole : 0;
}

export function moneyText(
	amount: Rational,
	currency: string | undefined,
): string {
	return `${currency === undefined ? "" : `${currency} `}${formatMoney(amount)}`;
}

/** A row for each sheet: its name, its size, what comes of it, what is worth keeping. */
export function sheetRows(plan: SawingPlan): readonly (readonly string[])[] {
	return plan.sheets.map((sheet, index) => [
		sheetName(plan, index),
		`${sheet.name}${sheet.onHand ? ", on hand" : ""}`,
		labelsIn(sheet.root),
		keptText(sheet.root, plan),
	]);
}

function keptText(root: LaidRegion, { layout }: SawingPlan): string {
	const kept: string[] = [];
	const walk = (region: LaidRegion): void => {
		if (region.kind === "remnant" && region.keep)
			kept.push(leftText(region, layout.display));
		if (region.kind === "cut") region.pieces.forEach(walk);
	};
	walk(root);
	return kept.length === 0 ? "" : `keep ${kept.join(", ")}`;
}

/** Parts that no sheet is there for, a line each. */
export function missingLines({ missing }: MaterialLayout): readonly string[] {
	return missing.map(
		({ of, count, message }) =>
			`${partLabel(of)}${count > 1 ? `, ${count} of them` : ""}: ${message}`,
	);
}

function listed(texts: readonly string[]): string {
	return texts.length < 2
		? texts.join("")
		: `${texts.slice(0, -1).join(", ")} and ${texts.at(-1)}`;
}
