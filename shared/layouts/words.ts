// Sizes as the messages and names of layouts write them.

import { exactText, roundedLength } from "../model/explain.ts";
import type { Size } from "../model/size.ts";
import type { Display } from "../model/types.ts";
import { formatLength, mixedText } from "../units/format.ts";
import { Rational } from "../units/rational.ts";
import { mmOf } from "./steps.ts";

/** `96 x 48`, in the unit of the design. */
export function sizeText(
	{ length, width }: { readonly length: Size; readonly width: Size },
	{ unit }: Pick<Display, "unit">,
): string {
	return `${exactText(length, unit)} x ${exactText(width, unit)}`;
}

/** The same of a size that is counted in steps. */
export function stepsText(
	{ length, width }: { readonly length: number; readonly width: number },
	display: Pick<Display, "unit">,
): string {
	return `${stepText(length, display)} x ${stepText(width, display)}`;
}

/** Fractions of an inch that the steps have rounded are told as what they were. */
export function stepText(
	steps: number,
	{ unit }: Pick<Display, "unit">,
): string {
	const fractions = Math.round((steps / stepsPerInch) * 128);
	return unit === "in" &&
		Math.abs((fractions / 128) * stepsPerInch - steps) <= 1
		? mixedText(Rational.of(fractions, 128))
		: roundedLength(mmOf(steps), unit);
}

const stepsPerInch = 25_400;

/** More than any row of parts loses, less than anybody can measure. */
const slack = 20;

/**
 * What is left over is told by the piece's precision, never larger than it is; but what the steps cut off of the parts
 * beside it does not cost it a whole unit of that.
 */
export function leftText(
	{ length, width }: { readonly length: number; readonly width: number },
	display: Display,
): string {
	const text = (steps: number): string =>
		formatLength(mmOf(steps + slack), { ...display, rounding: "down" }).text;
	return `${text(length)} x ${text(width)}`;
}

/** `a`, `a and b`, `a, b and c`. */
export function listed(names: readonly string[]): string {
	return names.length < 2
		? names.join("")
		: `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;
}
