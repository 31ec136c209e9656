// Faces that are wider than a sheet of veneer: leaves side by side, with something on each edge to joint the seam.

import { inches } from "../model/expressions.ts";
import {
	numberOf,
	over,
	plus,
	type Size,
	stated,
	times,
} from "../model/size.ts";
import type { Display, Part, Stock } from "../model/types.ts";
import { Rational } from "../units/rational.ts";
import { firstSawn, type PlanSize } from "./rough-size.ts";

/** Left on each edge of a leaf that meets another, to be jointed away. Common practice, no source. */
const seamAllowance: Readonly<Record<Display["unit"], Size>> = {
	in: stated(inches(1, 8), "1/8 in"),
	mm: stated(Rational.of(3), "3 mm"),
};

/** A face that would take more leaves than this is told as too large. */
const mostLeaves = 20;

/** The face as one leaf; where no sheet is wide enough, as few equal leaves as its widest sheets allow. */
export function leavesOf(
	part: Part,
	stock: Stock,
	{ unit }: Display,
	notes: string[],
): readonly { readonly size: PlanSize; readonly share?: string }[] {
	const face = firstSawn(part);
	const all = stock.sizes.length > 0 ? stock.sizes : stock.onHand;
	const sheets = all.filter(
		({ length }) => numberOf(length) >= numberOf(face.length) - 1e-9,
	);
	const widest = Math.max(0, ...sheets.map(({ width }) => numberOf(width)));
	if (widest === 0 || numberOf(face.width) <= widest) return [{ size: face }];
	const allowance = seamAllowance[unit];
	const room = widest - 2 * numberOf(allowance);
	const leaves = room > 0 ? Math.ceil(numberOf(face.width) / room) : mostLeaves;
	if (leaves >= mostLeaves) return [{ size: face }];
	notes.push(
		`\`${part.path}\` is wider than a sheet: ${leaves} leaves side by side, ${unit === "in" ? "1/8" : "3"} on each edge to joint the seam${leaves > 2 ? "s" : ""} (common practice)`,
	);
	const size = {
		length: face.length,
		width: plus(over(face.width, leaves), times(2, allowance)),
	};
	return Array.from({ length: leaves }, (_, at) => ({
		size,
		share: `leaf ${at + 1} of ${leaves}`,
	}));
}
