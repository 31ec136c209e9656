// The diagonals by which a case is brought to square when it is clamped up: worked out, so that nobody has to guess them.

import { numberOf } from "../model/size.ts";
import type { Piece } from "../model/types.ts";
import { lengthText } from "../units/format.ts";
import { Rational } from "../units/rational.ts";

export interface Square {
	/** Path of the box. */
	readonly path: string;
	/** Both diagonals, corner to corner over the outside, mm. */
	readonly diagonal: number;
	/** How far they may differ, mm. */
	readonly apart: number;
}

/** How far an upright may lean for its height. Common practice, no source: 2 mm in a metre. */
const mostLean = 0.002;

/** Every box that has its four panels, in the order of the design. */
export function squaresOf(piece: Piece): readonly Square[] {
	return piece.boxes.flatMap(({ path, outside, panels }) => {
		const { top, bottom, left, right } = panels;
		if (!top || !bottom || !left || !right) return [];
		const width = numberOf(outside.width);
		const height = numberOf(outside.height);
		const diagonal = Math.hypot(width, height);
		// A lean of s makes them sqrt((w + s)^2 + h^2) and sqrt((w - s)^2 + h^2): 2 w s / diagonal apart.
		const apart = (2 * width * height * mostLean) / diagonal;
		return [{ path, diagonal, apart }];
	});
}

/** `case: both diagonals ~31 1/4 from corner to corner outside, no more than ~1/16 apart`. */
export function squareText(
	{ path, diagonal, apart }: Square,
	{ display }: Pick<Piece, "display">,
): string {
	const tape = (mm: number): string =>
		lengthText(Rational.near(mm, 1000), { ...display, approximately: true });
	return `${path}: both diagonals ${tape(diagonal)} from corner to corner outside, no more than ${tape(apart)} apart`;
}
