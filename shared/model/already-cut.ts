// Parts that are cut already, held against what the design asks for now.

import type { Rational } from "../units/rational.ts";
import { minus, numberOf, type Size } from "./size.ts";
import type { CutInfo, Piece } from "./types.ts";

/** How far a cut part may be off before it counts as another size, mm: the saw's own error, and half of what a size is rounded to when it is cut. */
function cutTolerance(piece: Piece): {
	readonly length: number;
	readonly width: number;
} {
	const { unit, precision } = piece.display;
	const rounding = (precision.toNumber() * (unit === "in" ? 25.4 : 1)) / 2;
	return {
		length: piece.shop.crosscut + rounding,
		width: piece.shop.rip + rounding,
	};
}

/** The size that the part should have at the stage it is at. */
export function sizeAtStage({ part, stage }: CutInfo): {
	readonly length: Size;
	readonly width: Size;
} {
	return part.stages.find((one) => one.stage === stage) ?? part;
}

/** A difference in mm, exact; undefined where it is right. */
export interface CutDifference {
	readonly length: Rational | undefined;
	readonly width: Rational | undefined;
}

/** How much is missing of the final size: such a part is cut anew. */
export function lacking(piece: Piece, cut: CutInfo): CutDifference {
	return beyondTolerance(piece, cut.part, cut);
}

/** How much is too much at the stage that the part is at: it is trimmed off. */
export function excess(piece: Piece, cut: CutInfo): CutDifference {
	return beyondTolerance(piece, cut, sizeAtStage(cut));
}

interface Sizes {
	readonly length: Size;
	readonly width: Size;
}

function beyondTolerance(
	piece: Piece,
	larger: Sizes,
	smaller: Sizes,
): CutDifference {
	const tolerance = cutTolerance(piece);
	const difference = (which: "length" | "width"): Rational | undefined => {
		const size = minus(larger[which], smaller[which]);
		return numberOf(size) > tolerance[which] ? size.value : undefined;
	};
	return { length: difference("length"), width: difference("width") };
}
