// What lies in the shop when everything is cut, as lines that can be pasted into the stock file.

import { leftText, type MaterialLayout } from "../layouts/index.ts";
import { exactText } from "../model/explain.ts";
import { numberOf, type Size } from "../model/size.ts";
import type { Display, OnHand, Stock } from "../model/types.ts";

export interface HandLine {
	readonly stock: Stock;
	/** `on-hand 30 in x 20 in count 2`: take the place of all `on-hand` lines of that variant. */
	readonly lines: readonly string[];
	/** Whether the layout used any of what was there. */
	readonly changed: boolean;
}

/** Only materials of which something is left or was used up. */
export function handLines(
	layouts: readonly MaterialLayout[],
): readonly HandLine[] {
	return layouts.flatMap((layout) => {
		const used = new Map<string, number>();
		for (const { onHand, name, count } of layout.sizes) {
			if (onHand) used.set(name, (used.get(name) ?? 0) + count);
		}
		const { unit } = layout.display;
		const untouched = layout.stock.onHand.flatMap((one) => {
			const name = `${exactText(one.length, unit)} x ${exactText(one.width, unit)}`;
			const taken = Math.min(one.count, used.get(name) ?? 0);
			used.set(name, (used.get(name) ?? 0) - taken);
			return one.count > taken
				? [lineOf(one, one.count - taken, layout.display)]
				: [];
		});
		const changed = layout.sizes.some(({ onHand }) => onHand);
		const offcuts = counted(
			layout.offcuts.map((offcut) => leftText(offcut, layout.display)),
		).map(
			({ text, count }) => `on-hand ${withUnit(text, unit)}${times(count)}`,
		);
		return changed || offcuts.length > 0
			? [{ stock: layout.stock, lines: [...untouched, ...offcuts], changed }]
			: [];
	});
}

/** The unit is always written: the stock file may have another than the design. */
function withUnit(text: string, unit: Display["unit"]): string {
	return text
		.split(" x ")
		.map((one) => `${one} ${unit}`)
		.join(" x ");
}

function times(count: number): string {
	return count > 1 ? ` count ${count}` : "";
}

function counted(
	texts: readonly string[],
): readonly { readonly text: string; readonly count: number }[] {
	const counts = new Map<string, number>();
	for (const text of texts) counts.set(text, (counts.get(text) ?? 0) + 1);
	return [...counts].map(([text, count]) => ({ text, count }));
}

function lineOf(one: OnHand, count: number, display: Display): string {
	const size = (of: Size): string => written(of, display);
	const defects = one.defects.map(
		({ from, to, across }) =>
			`defect ${size(from)} to ${size(to)}${across ? ` across ${size(across.from)} to ${size(across.to)}` : ""}`,
	);
	return `on-hand ${size(one.length)} x ${size(one.width)}${times(count)}${defects.length > 0 ? ` { ${defects.join("; ")} }` : ""}`;
}

/** As the language reads it again: exact in the unit of the design, or in the other one. */
function written(size: Size, { unit }: Display): string {
	const text = exactText(size, unit);
	return /[a-z]$/.test(text)
		? text.replace(/^~/, "")
		: numberOf(size) === 0
			? `0 ${unit}`
			: `${text.replace(/^~/, "")} ${unit}`;
}
