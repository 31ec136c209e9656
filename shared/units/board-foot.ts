// Board feet as lumber is sold: on nominal thickness, and by the tally of a lumber yard.

import { Rational } from "./rational.ts";

const inchesPerFoot = Rational.of(12);
const cubicInches = Rational.of(144);

/** The thickness that is paid for: what is under an inch counts as an inch. */
function paidThickness(nominalIn: Rational): Rational {
	return nominalIn.max(Rational.ONE);
}

/**
 * Board feet of a board or a part, exactly: thickness x width x length / 144, all in inches, on the nominal (rough)
 * thickness; under 1 in counts as 1 in.
 *
 * Source: US Navy, Engineering Aid Basic, chapter 6.
 */
export function boardFeet(
	thickNominalIn: Rational,
	widthIn: Rational,
	lengthIn: Rational,
): Rational {
	return paidThickness(thickNominalIn)
		.mul(widthIn)
		.mul(lengthIn)
		.div(cubicInches);
}

/**
 * Board feet of one board as a yard tallies it after the NHLA rules: the length is cut down to whole feet, length x
 * width / 12 is rounded to whole feet of surface, and that is multiplied by the nominal thickness. The rule as read is
 * silent on halves; they go up here.
 *
 * Source: dealer's glossary of the NHLA rules.
 */
export function tallyBoardFeet(
	thickNominalIn: Rational,
	widthIn: Rational,
	lengthIn: Rational,
): Rational {
	const feet = lengthIn.div(inchesPerFoot).floor();
	const surface = feet
		.mul(widthIn)
		.div(inchesPerFoot)
		.roundTo(Rational.ONE, "nearest");
	return surface.mul(paidThickness(thickNominalIn));
}
