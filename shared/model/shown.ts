// Sizes in messages and notes, in the unit and precision of the piece.

import { formatLength } from "../units/format.ts";
import { Rational } from "../units/rational.ts";
import type { PieceContext } from "./piece-context.ts";
import type { Size } from "./size.ts";

/** A length with its unit: `2 3/8 in`. */
export function shown(context: PieceContext, size: Size): string {
	return shownLength(context, size.value);
}

export function shownLength(context: PieceContext, mm: Rational): string {
	const { unit, precision } = context.display;
	return formatLength(mm, { unit, precision, suffix: true }).text;
}

/** A length that is known as a floating number, mm. */
export function shownNumber(context: PieceContext, mm: number): string {
	return shownLength(context, micrometres(mm));
}

/** An angle in degrees, to a tenth: `12°`, `33.7°`. */
export function shownDegrees(degrees: number): string {
	const tenth = Math.round(degrees * 10) / 10;
	return `${Number.isInteger(tenth) ? tenth : tenth.toFixed(1)}°`;
}

/** The nearest micrometre: what trigonometry and curves give is no exact size. */
export function micrometres(mm: number): Rational {
	return Rational.of(Math.round(mm * 1000), 1000);
}
