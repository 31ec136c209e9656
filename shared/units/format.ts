// How exact values are shown: the only place where a size is rounded. Locale-free, so that the same design gives the same text.

import type { Unit } from "../../grammar/tree/nodes.ts";
import { fromBase, toBase, units } from "./dimensions.ts";
import type { DisplayUnit } from "./measure.ts";
import { Rational, type Rounding, TooLargeError } from "./rational.ts";

export interface LengthFormat {
	readonly unit: DisplayUnit;
	/** In that unit, positive: 1/32, 0.5. */
	readonly precision: Rational;
	/** `feet` splits inches from a foot up: `4 ft 4 19/32 in`. It always carries its units; no effect in mm. */
	readonly style?: "plain" | "feet";
	/** Write the unit behind the number; no by default. */
	readonly suffix?: boolean;
	/** Default `nearest`. `down` and `up` are toward minus and plus infinity: members down, openings up. */
	readonly rounding?: Rounding;
	/** Put `~` before a size that rounding changed; no by default. */
	readonly approximately?: boolean;
}

export interface ShownLength {
	readonly text: string;
	/** What the text says, mm. */
	readonly shown: Rational;
	/** Rounding changed nothing. */
	readonly exact: boolean;
	/** Shown minus true, mm. */
	readonly error: Rational;
}

/** What sizes are rounded to unless the file says otherwise, in the unit itself. */
export const defaultPrecision: Readonly<Record<DisplayUnit, Rational>> = {
	in: Rational.of(1, 32),
	mm: Rational.of(1, 2),
};

/** What the system in brackets is rounded to: fine enough to check by, coarse enough to read. */
const bracketPrecision: Readonly<Record<DisplayUnit, Rational>> = {
	in: Rational.of(1, 64),
	mm: Rational.of(1, 10),
};

const twelve = Rational.of(12);

/** A length in mm as `52 19/32`, `2 1/4 in`, `450.5 mm`. RangeError if the precision is not positive. */
export function formatLength(mm: Rational, format: LengthFormat): ShownLength {
	try {
		const { unit, precision, rounding = "nearest" } = format;
		const value = fromBase(mm, unit);
		const rounded = value.roundTo(precision, rounding);
		const exact = rounded.eq(value);
		const shown = exact ? mm : toBase(rounded, unit);
		const mark = format.approximately === true && !exact ? "~" : "";
		const text = mark + lengthWords(rounded, format);
		return { text, shown, exact, error: shown.sub(mm) };
	} catch (error) {
		if (error instanceof TooLargeError) return beyond(mm, format);
		throw error;
	}
}

/** The text of `formatLength` alone. */
export function lengthText(mm: Rational, format: LengthFormat): string {
	return formatLength(mm, format).text;
}

/**
 * Both systems, for a hover: `52 19/32 in (~1335.9 mm)`; where the first size itself is rounded, by how much:
 * `39 3/8 in (~1000 mm; rounded up by 0.0049 in)`.
 */
export function formatBoth(mm: Rational, format: LengthFormat): ShownLength {
	const first = formatLength(mm, { ...format, suffix: true });
	const otherUnit = format.unit === "in" ? "mm" : "in";
	const other = lengthText(mm, {
		unit: otherUnit,
		precision: bracketPrecision[otherUnit],
		suffix: true,
		approximately: true,
	});
	const told = first.exact ? "" : `; ${errorWords(first.error, format.unit)}`;
	return { ...first, text: `${first.text} (${other}${told})` };
}

/** A whole number and a proper fraction in lowest terms: `2 1/4`, `-3/4`, `7`. */
export function mixedText(value: Rational): string {
	const { numerator, denominator } = value;
	const sign = numerator < 0n ? "-" : "";
	const size = numerator < 0n ? -numerator : numerator;
	const whole = size / denominator;
	const rest = size % denominator;
	if (rest === 0n) return `${sign}${whole}`;
	const fraction = `${rest}/${denominator}`;
	return whole === 0n ? sign + fraction : `${sign}${whole} ${fraction}`;
}

/** At most so many digits behind the point, rounded to nearest; `fixed` keeps the zeros at the end. */
export function decimalText(
	value: Rational,
	digits: number,
	fixed = false,
): string {
	const scale = 10n ** BigInt(digits);
	const scaled = nearest(value.numerator * scale, value.denominator);
	const size = scaled < 0n ? -scaled : scaled;
	const whole = `${scaled < 0n ? "-" : ""}${size / scale}`;
	const all = `${size % scale}`.padStart(digits, "0");
	const part = fixed ? all : all.replace(/0+$/, "");
	return digits === 0 || part === "" ? whole : `${whole}.${part}`;
}

/** Degrees to a tenth: `45 deg`, `12.5 deg`. */
export function formatAngle(degrees: Rational): string {
	return inUnit(degrees, "deg");
}

/** Kilograms as pounds or kilograms, with one decimal: `30.0 lb`, `13.6 kg`. */
export function formatMass(kg: Rational, unit: DisplayUnit): string {
	return inUnit(kg, unit === "in" ? "lb" : "kg", true);
}

/** Degrees Celsius as Fahrenheit or Celsius, to a tenth: `68 F`, `20 C`. */
export function formatTemperature(
	celsius: Rational,
	unit: DisplayUnit,
): string {
	return inUnit(celsius, unit === "in" ? "F" : "C");
}

/** A ratio as a percentage, to a tenth: `40 %`. */
export function formatPercent(ratio: Rational): string {
	return inUnit(ratio, "percent");
}

/** Board feet with two decimals: `9.33`. */
export function formatBoardFeet(boardFeet: Rational): string {
	return decimalText(boardFeet, 2, true);
}

/** A price as a plain number with two decimals: `1234.50`. The currency is the maker's own affair. */
export function formatMoney(amount: Rational): string {
	return decimalText(amount, 2, true);
}

/** A value of any dimension in one of its units, to a tenth. */
function inUnit(value: Rational, unit: Unit, fixed = false): string {
	const { label } = units[unit];
	try {
		return `${decimalText(fromBase(value, unit), 1, fixed)} ${label}`;
	} catch (error) {
		if (error instanceof TooLargeError) return magnitude(value, unit);
		throw error;
	}
}

function lengthWords(value: Rational, format: LengthFormat): string {
	const { unit, precision } = format;
	if (format.style === "feet" && unit === "in") {
		return feetWords(value, precision);
	}
	const number = numberWords(value, precision, unit);
	return format.suffix === true ? `${number} ${units[unit].label}` : number;
}

function feetWords(inches: Rational, precision: Rational): string {
	const size = inches.abs();
	const feet = size.div(twelve).floor();
	const rest = size.sub(feet.mul(twelve));
	const parts = [
		...(feet.isZero() ? [] : [`${mixedText(feet)} ft`]),
		...(rest.isZero() && !feet.isZero()
			? []
			: [`${numberWords(rest, precision, "in")} in`]),
	];
	return (inches.sign() < 0 ? "-" : "") + parts.join(" ");
}

/** Inches are read in halves, quarters and so on unless the precision is a decimal one; millimetres in decimals. */
function numberWords(
	value: Rational,
	precision: Rational,
	unit: DisplayUnit,
): string {
	const halves =
		unit === "in" && factorCount(precision.denominator).fives === 0;
	const digits = halves ? undefined : decimalDigits(precision.denominator);
	return digits === undefined ? mixedText(value) : decimalText(value, digits);
}

/** How many decimals write every multiple of 1/denominator in full; undefined if none do. */
function decimalDigits(denominator: bigint): number | undefined {
	const { twos, fives, rest } = factorCount(denominator);
	return rest === 1n ? Math.max(twos, fives) : undefined;
}

function factorCount(denominator: bigint): {
	readonly twos: number;
	readonly fives: number;
	readonly rest: bigint;
} {
	let rest = denominator;
	let twos = 0;
	let fives = 0;
	for (; rest % 2n === 0n; rest /= 2n) twos += 1;
	for (; rest % 5n === 0n; rest /= 5n) fives += 1;
	return { twos, fives, rest };
}

function errorWords(error: Rational, unit: DisplayUnit): string {
	const digits = unit === "in" ? 4 : 3;
	const size = decimalText(fromBase(error.abs(), unit), digits);
	const least = Rational.of(1, 10 ** digits);
	const amount =
		size === "0" ? `less than ${decimalText(least, digits)}` : size;
	const direction = error.sign() > 0 ? "up" : "down";
	return `rounded ${direction} by ${amount} ${unit}`;
}

/** A size on the edge of what can be computed: its order of magnitude is all there is to tell, the error unknown. */
function beyond(mm: Rational, format: LengthFormat): ShownLength {
	const text = magnitude(mm, format.unit);
	return { text, shown: mm, exact: false, error: Rational.ZERO };
}

function magnitude(value: Rational, unit: Unit): string {
	const { factor, label } = units[unit];
	return `~${(value.toNumber() / factor.toNumber()).toExponential(3)} ${label}`;
}

/** n / d to the nearest whole number, ties away from zero; d positive. */
function nearest(n: bigint, d: bigint): bigint {
	const size = n < 0n ? -n : n;
	const whole = (2n * size + d) / (2n * d);
	return n < 0n ? -whole : whole;
}
