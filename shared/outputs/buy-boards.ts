// Board feet to buy: the rough size of every part, and what is lost besides.

import { roughAllowances } from "../model/rough-sizes.ts";
import { numberOf } from "../model/size.ts";
import type { Display, Part, Stock } from "../model/types.ts";
import { boardFeet } from "../units/board-foot.ts";
import { inch } from "../units/dimensions.ts";
import { Rational } from "../units/rational.ts";
import { boardWaste, roughThicker } from "./practice.ts";

export interface BoardLine {
	readonly stock: Stock;
	readonly parts: readonly Part[];
	/** Thickness that is paid for, mm. */
	readonly rough: number;
	/** The stock file does not say it: planed thickness and an allowance, up to the next quarter of an inch. */
	readonly roughGuessed: boolean;
	/** Board feet of the rough sizes of all parts. */
	readonly net: number;
	/** Share on top for what is lost: 0.3. */
	readonly waste: number;
	/** Board feet to buy. */
	readonly total: number;
	/** Parts that are wider than the widest board, or longer than the longest. */
	readonly tooLarge: readonly Part[];
}

const mmPerInch = inch.toNumber();

export function boardLine(
	stock: Stock,
	parts: readonly Part[],
	display: Pick<Display, "unit">,
): BoardLine {
	const rough = stock.soldAs
		? numberOf(stock.soldAs)
		: guessedRough(stock, parts);
	const net = parts.reduce((sum, part) => {
		const { length, width } = roughSize(part, display);
		return (
			sum +
			boardFeet(
				nearInches(rough),
				nearInches(width),
				nearInches(length),
			).toNumber()
		);
	}, 0);
	return {
		stock,
		parts,
		rough,
		roughGuessed: stock.soldAs === undefined,
		net,
		waste: boardWaste,
		total: net * (1 + boardWaste),
		tooLarge: parts.filter((part) => isTooLarge(part, stock, display)),
	};
}

/**
 * Length and width of the rough board for a part, mm: its rough stage, or what it is first sawn to and the allowances of
 * the piece's unit. Every further strip of a glued-up part is jointed, too.
 */
export function roughSize(
	part: Part,
	display: Pick<Display, "unit">,
): {
	readonly length: number;
	readonly width: number;
} {
	const { longer, wider } = roughAllowances[display.unit];
	const rough = part.stages.find(({ stage }) => stage === "rough");
	const first = rough ?? part.stages[0] ?? part;
	const strips = Math.max(1, part.strips ?? 1);
	const jointed = (rough ? strips - 1 : strips) * numberOf(wider);
	return {
		length: numberOf(first.length) + (rough ? 0 : numberOf(longer)),
		width: numberOf(first.width) + jointed,
	};
}

function guessedRough(stock: Stock, parts: readonly Part[]): number {
	const planed = Math.max(
		0,
		...(stock.surfaced
			? [numberOf(stock.surfaced)]
			: [
					...(stock.thick ? [numberOf(stock.thick)] : []),
					...parts.map((part) => numberOf(part.thick)),
				]),
	);
	const quarter = mmPerInch / 4;
	return Math.ceil((planed + roughThicker) / quarter - 1e-9) * quarter;
}

function isTooLarge(
	part: Part,
	stock: Stock,
	display: Pick<Display, "unit">,
): boolean {
	const { length, width } = roughSize(part, display);
	const strips = Math.max(1, part.strips ?? 1);
	return (
		(stock.widths !== undefined &&
			width / strips > numberOf(stock.widths.high) + 1e-6) ||
		(stock.lengths !== undefined &&
			length > numberOf(stock.lengths.high) + 1e-6)
	);
}

/** Inches to a millionth: sums of sizes with unlike denominators would grow without bound. */
function nearInches(mm: number): Rational {
	return Rational.near(mm / mmPerInch, 1_000_000);
}
