// How far a cut part may be off before it counts as another size.

import type { Size } from "../model/size.ts";
import type { CutInfo, Piece } from "../model/types.ts";

/** mm: the saw's own error, and half of what a size is rounded to when it is cut. */
export function cutTolerance(piece: Piece): {
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
