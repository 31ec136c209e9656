// What could not be laid out, and what would mend it.

import type { Display, Stock } from "../model/types.ts";
import type { Blank } from "./blanks.ts";
import type { Laid } from "./lay-sheets.ts";
import type { Supply } from "./stock-to-cut.ts";
import type { LaidPart, MissingPart } from "./types.ts";
import { listed, stepsText, stepText } from "./words.ts";

/** One line for each part that is missing, or for each row of matched ones. */
export function missingOf(
	missing: Laid["missing"],
	stock: Stock,
	supply: Supply,
	display: Display,
): readonly MissingPart[] {
	return missing.map(({ blank, count, why }) => ({
		of: blank.parts[0] as LaidPart,
		count,
		why,
		message:
			why === "too-large"
				? tooLarge(blank, stock, supply, display)
				: noneLeft(blank, count, stock, supply, display),
	}));
}

/** The material says no size that it is sold in, and nothing is on hand. */
export function withoutSize(
	blanks: readonly Blank[],
	stock: Stock,
): readonly MissingPart[] {
	return blanks.map((blank) => ({
		of: blank.parts[0] as LaidPart,
		count: 1,
		why: "no-size",
		message: `\`${stock.id}\` has no \`size\`: add one, as in \`size 96 x 48\``,
	}));
}

const things = {
	sheets: ["sheet", "sheets"],
	veneer: ["sheet", "sheets"],
	boards: ["board", "boards"],
	lengths: ["length", "lengths"],
} as const;

function tooLarge(
	blank: Blank,
	stock: Stock,
	supply: Supply,
	display: Display,
): string {
	const names = listed(blank.parts.map(({ path }) => `\`${path}\``));
	const verb = blank.parts.length === 1 ? "is" : "are together";
	const [thing] = things[supply.kind];
	if (supply.kind === "lengths") {
		const longest = Math.max(0, ...supply.stocks.map(({ length }) => length));
		return `${names} ${verb} ${stepText(blank.length, display)} long, the longest \`${stock.id}\` is ${stepText(longest, display)}: make it shorter, or give \`lengths\` that are long enough`;
	}
	let largest = supply.stocks[0];
	for (const one of supply.stocks) {
		if (largest && one.length * one.width > largest.length * largest.width)
			largest = one;
	}
	const size = stepsText(blank, display);
	if (!largest)
		return `${names} ${verb} ${size}: there is no ${thing} of \`${stock.id}\` to cut from`;
	const trimmed =
		largest.trim > 0
			? `, ${stepsText({ length: largest.length - 2 * largest.trim, width: largest.width - 2 * largest.trim }, display)} once its edges are off`
			: "";
	const mend =
		supply.kind === "boards"
			? "glue it up, as in `strips 2`, or give wider `widths` or longer `lengths`"
			: supply.kind === "veneer"
				? "give a longer `size`"
				: `make it smaller, or give \`${stock.id}\` a larger \`size\``;
	return `${names} ${verb} ${size}, the largest ${thing} of \`${stock.id}\` is ${largest.name}${trimmed}: ${mend}`;
}

function noneLeft(
	blank: Blank,
	count: number,
	stock: Stock,
	supply: Supply,
	display: Display,
): string {
	const names = listed(blank.parts.map(({ path }) => `\`${path}\``));
	const more = count > 1 ? ` and ${count - 1} more of that size` : "";
	const [, many] = things[supply.kind];
	const verb = blank.parts.length + count > 2 ? "are" : "is";
	return `${names}${more} (${stepsText(blank, display)}) ${verb} left over when all ${many} of \`${stock.id}\` are used up: raise \`in-stock\`, or give another \`size\``;
}
