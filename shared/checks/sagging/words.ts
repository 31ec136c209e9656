// How sag is told: deflections fine enough to compare, loads as makers weigh them.

import { numberOf } from "../../model/size.ts";
import type { Display, Part, Piece } from "../../model/types.ts";
import { decimalText, formatMass } from "../../units/format.ts";
import { Rational } from "../../units/rational.ts";
import { showFine } from "../words.ts";
import { loadsOn, type SaggingSpan } from "./sag.ts";

/** 25 lb per ft, 12.5 kg per m. */
export function perLengthText(display: Display, kgPerMetre: number): string {
	const inches = display.unit === "in";
	// 1 lb = 0.45359237 kg, 1 ft = 0.3048 m.
	const value = inches ? (kgPerMetre * 0.3048) / 0.45359237 : kgPerMetre;
	const text = decimalText(Rational.near(value, 1000), 1);
	return `${text} ${inches ? "lb per ft" : "kg per m"}`;
}

/** What stands on a part, in words: one load as it is given, several as their sum. */
export function standingText(piece: Piece, part: Part, mass: number): string {
	const [load, ...others] = loadsOn(piece, part);
	if (load && others.length === 0 && load.perLength)
		return perLengthText(piece.display, numberOf(load.mass));
	return formatMass(Rational.near(mass, 1000), piece.display.unit).replace(
		/\.0 /,
		" ",
	);
}

/** 0.071 in (span/506) */
export function sagText(display: Display, sag: number, span: number): string {
	const share = sag > 0 ? Math.floor(span / sag) : 0;
	return `${showFine(display, sag)}${share > 0 && share < 10_000 ? ` (span/${share})` : ""}`;
}

/** The length that the limits of a span are taken from, mm: an overhang counts twice. */
export function spanOf({ from, to, overhang }: SaggingSpan): number {
	return (to - from) * (overhang ? 2 : 1);
}
