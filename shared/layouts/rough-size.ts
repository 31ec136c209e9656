// What is sawn first of a part: before it is planed, glued up, trimmed or shaped.

import { roughAllowances } from "../model/rough-sizes.ts";
import {
	numberOf,
	over,
	plus,
	type Size,
	stated,
	times,
} from "../model/size.ts";
import { isSoldInSection } from "../model/stock-sizes.ts";
import type { Display, Part, Stock } from "../model/types.ts";
import { inch } from "../units/dimensions.ts";
import { Rational } from "../units/rational.ts";

/** Along the grain and across it. */
export interface PlanSize {
	readonly length: Size;
	readonly width: Size;
}

/** Rough stock is that much thicker than what it is planed to, mm (1/4 in), where the stock file does not say. Common practice, no source. */
export const roughThicker = 6.35;

/** Of a panel or a leaf of veneer: its first stage, or what it is cut to. */
export function firstSawn(part: Part): PlanSize {
	return part.stages[0] ?? part;
}

/**
 * The rough board for a part: its rough stage, or what it is first sawn to and the allowances of the piece's unit. Every
 * further strip of a glued-up part is jointed, too.
 */
export function roughSize(
	part: Part,
	{ unit }: Pick<Display, "unit">,
): PlanSize {
	const rough = part.stages.find(({ stage }) => stage === "rough");
	const first = rough ?? firstSawn(part);
	const strips = Math.max(1, part.strips ?? 1);
	return withAllowance(first, unit, rough ? strips - 1 : strips, !rough);
}

/** One of the strips that a part of solid wood is glued up from; the part itself where there is but one. */
export function roughStrip(
	part: Part,
	display: Pick<Display, "unit">,
): PlanSize {
	const { length, width } = roughSize(part, display);
	return { length, width: over(width, Math.max(1, part.strips ?? 1)) };
}

/** `edges` times what jointing takes, and what trimming the ends takes. */
export function withAllowance(
	{ length, width }: PlanSize,
	unit: Display["unit"],
	edges: number,
	ends: boolean,
): PlanSize {
	const { longer, wider } = roughAllowances[unit];
	return {
		length: ends ? plus(length, longer) : length,
		width: edges > 0 ? plus(width, times(edges, wider)) : width,
	};
}

/**
 * A strip of trim as it lies in the board that it is ripped from: where its width goes through the board, only its
 * thickness is taken off the edge, and no jointing: the board's edge is jointed between the rips, the saw leaves the other.
 */
export function trimStrip(
	part: Part,
	{ unit }: Pick<Display, "unit">,
): PlanSize {
	const { longer } = roughAllowances[unit];
	const { stock } = part;
	const isThrough =
		stock.thick !== undefined &&
		numberOf(part.width) <= numberOf(stock.thick) + 0.01;
	const first = firstSawn(part);
	return {
		length:
			stock.kind === "board" && !isSoldInSection(stock)
				? plus(first.length, longer)
				: first.length,
		width: isThrough ? part.thick : first.width,
	};
}

/** The thickness that is paid for, mm; guessed from what it is planed to, up to the next quarter of an inch, if the stock file does not say it. */
export function paidThickness(stock: Stock, parts: readonly Part[]): Size {
	if (stock.soldAs) return stock.soldAs;
	const planed = Math.max(
		0,
		...(stock.surfaced
			? [numberOf(stock.surfaced)]
			: [
					...(stock.thick ? [numberOf(stock.thick)] : []),
					...parts.map((part) => numberOf(part.thick)),
				]),
	);
	const quarter = inch.toNumber() / 4;
	const quarters = Math.ceil((planed + roughThicker) / quarter - 1e-9);
	return stated(inch.mul(Rational.of(quarters, 4)), "guessed");
}
