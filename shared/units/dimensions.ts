// One table says what every unit measures, how it converts to the base unit, and how it is written.

import type { Unit } from "../../grammar/tree/nodes.ts";
import { Rational } from "./rational.ts";

/** What a value measures. `number` is a bare number, which takes its meaning from its place. */
export type Dimension =
	| "length"
	| "angle"
	| "mass"
	| "temperature"
	| "ratio"
	| "number"
	| "gauge";

/** A value in the base unit = a value in the unit x `factor` + `offset`, exactly. */
export interface UnitFacts {
	readonly dimension: Dimension;
	readonly factor: Rational;
	readonly offset: Rational;
	/** As it is written behind a number, by us and by the formatter; empty for a bare number. */
	readonly label: string;
	/** In words, for one and for several. */
	readonly word: string;
	readonly words: string;
}

/** The unit of a value after conversion, and how its dimension is told to a user ("a length"). */
export const dimensions: Readonly<
	Record<Dimension, { readonly base: Unit; readonly label: string }>
> = {
	length: { base: "mm", label: "a length" },
	angle: { base: "deg", label: "an angle" },
	mass: { base: "kg", label: "a weight" },
	temperature: { base: "C", label: "a temperature" },
	ratio: { base: "none", label: "a percentage" },
	number: { base: "none", label: "a number" },
	gauge: { base: "gauge", label: "a gauge" },
};

const zero = Rational.ZERO;
const one = Rational.ONE;

/** Millimetres in an inch, exact: international yard and pound agreement of 1959 (NIST SP 811, appendix B.8). */
export const inch: Rational = Rational.of(254, 10);

/** Millimetres in a foot of twelve inches. */
export const foot: Rational = inch.mul(Rational.of(12));

/** Kilograms in a pound, exact: international yard and pound agreement of 1959 (NIST SP 811, appendix B.8). */
export const pound: Rational = Rational.of(45_359_237, 100_000_000);

function plain(
	dimension: Dimension,
	factor: Rational,
	label: string,
	word: string,
	words = `${word}s`,
): UnitFacts {
	return { dimension, factor, offset: zero, label, word, words };
}

export const units: Readonly<Record<Unit, UnitFacts>> = {
	none: plain("number", one, "", "", ""),
	in: plain("length", inch, "in", "inch", "inches"),
	ft: plain("length", foot, "ft", "foot", "feet"),
	// The number of `5 ft 2 in` is read as its 62 inches.
	"ft-in": plain("length", inch, "in", "inch", "inches"),
	mm: plain("length", one, "mm", "millimetre"),
	cm: plain("length", Rational.of(10), "cm", "centimetre"),
	m: plain("length", Rational.of(1_000), "m", "metre"),
	deg: plain("angle", one, "deg", "degree"),
	lb: plain("mass", pound, "lb", "pound"),
	// Avoirdupois: sixteen to the pound.
	oz: plain("mass", pound.div(Rational.of(16)), "oz", "ounce"),
	kg: plain("mass", one, "kg", "kilogram"),
	g: plain("mass", Rational.of(1, 1_000), "g", "gram"),
	// C = (F - 32) x 5/9, exact (NIST SP 811, appendix B.8).
	F: {
		dimension: "temperature",
		factor: Rational.of(5, 9),
		offset: Rational.of(-160, 9),
		label: "F",
		word: "degree Fahrenheit",
		words: "degrees Fahrenheit",
	},
	C: plain("temperature", one, "C", "degree Celsius", "degrees Celsius"),
	percent: plain("ratio", Rational.of(1, 100), "%", "percent", "percent"),
	// A wire gauge is a name, not a size: it stays the number that it is.
	gauge: plain("gauge", one, "ga", "gauge"),
};

/** A value in `unit`, in the base unit of its dimension. */
export function toBase(value: Rational, unit: Unit): Rational {
	const { factor, offset } = units[unit];
	return value.mul(factor).add(offset);
}

/** A value in the base unit, in `unit`. */
export function fromBase(value: Rational, unit: Unit): Rational {
	const { factor, offset } = units[unit];
	return value.sub(offset).div(factor);
}
