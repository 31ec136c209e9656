// How large a piece is, told twice: over the case, and over everything that stands out of it.

import type { Display, Piece } from "../model/types.ts";
import { lengthText } from "../units/format.ts";

/** "54 x 14 5/8 x 15 3/4 over the case, 55 1/2 x 21 x 16 1/8 over everything (width x height x depth)"; empty without parts. */
export function overallText(piece: Piece): string {
	const { overCase, overAll, display } = piece;
	if (!overAll) return "";
	const all = sizesText(overAll, display);
	const box = overCase && sizesText(overCase, display);
	return box && box !== all
		? `${box} over the case, ${all} over everything (width x height x depth)`
		: `${all} over everything (width x height x depth)`;
}

function sizesText(
	sizes: NonNullable<Piece["overAll"]>,
	{ unit, precision }: Display,
): string {
	return sizes
		.map((size) => lengthText(size.value, { unit, precision }))
		.join(" x ");
}
