// How checks speak of sizes and parts: the design's own unit, fine enough that the figure means something.

import type { Size } from "../model/size.ts";
import type { Display, Part } from "../model/types.ts";
import { decimalText, formatLength, mixedText } from "../units/format.ts";
import { Rational } from "../units/rational.ts";

/** A length in mm, exact or from geometry. */
export type Length = Size | Rational | number;

/** Closer than this to a mark on the tape is on the mark, mm. */
const onTheMark = 0.005;

/** Of one part in two million: what floating geometry is rounded to before it is shown. */
const geometryGrid = 2_000_000;

export function exactly(length: Length): Rational {
	if (typeof length === "number")
		return Rational.near(Number.isFinite(length) ? length : 0, geometryGrid);
	return length instanceof Rational ? length : length.value;
}

/** `1/4 in`, `0.703 in`, `12.5 mm`: by the marks of the tape where it lies on one, else in decimals. */
export function show(display: Display, length: Length): string {
	return `${bare(display, length)} ${display.unit}`;
}

/** The same without the unit, as it is written in a design. */
export function bare(display: Display, length: Length): string {
	const mm = numberIn(length);
	const value = mm / unitMm[display.unit];
	for (const precision of marksOf(display)) {
		const text = onMark(display, value, precision);
		if (text !== undefined) return text;
	}
	return Math.abs(value) < 1e9
		? decimals(display, mm)
		: formatLength(exactly(length), display).text;
}

/** `0.004 in`, `0.1 mm`: always in decimals, for gaps and tolerances. */
export function showFine(display: Display, length: Length): string {
	return `${decimals(display, numberIn(length))} ${display.unit}`;
}

/** A limit of practice: to the nearest 1/16 in in inches (6 mm is 1/4 in), as it is in millimetres. */
export function showLimit(display: Display, mm: number): string {
	return show(
		display,
		display.unit === "in" ? (Math.round((mm / 25.4) * 16) * 25.4) / 16 : mm,
	);
}

/** `0.002 to 0.01 in` */
export function showRange(display: Display, low: Length, high: Length): string {
	return `${decimals(display, numberIn(low))} to ${showFine(display, high)}`;
}

/** `54 x 14 5/8 in` */
export function showSizes(
	display: Display,
	...lengths: readonly Length[]
): string {
	return `${lengths.map((length) => bare(display, length)).join(" x ")} ${display.unit}`;
}

const unitMm = { in: 25.4, mm: 1 } as const;

function numberIn(length: Length): number {
	return typeof length === "number" ? length : exactly(length).toNumber();
}

/** To 0.001 in or 0.01 mm, without zeros at the end. */
function decimals(display: Display, mm: number): string {
	const digits = display.unit === "in" ? 3 : 2;
	const text = (mm / unitMm[display.unit])
		.toFixed(digits)
		.replace(/\.?0+$/, "");
	return text === "-0" ? "0" : text;
}

/** What the tape shows, from coarse to fine. */
function marksOf(display: Display): readonly Rational[] {
	return [display.precision, display.unit === "in" ? fineInch : fineMm];
}

const fineInch = Rational.of(1, 64);
const fineMm = Rational.of(1, 10);

/** The text of a value that lies on a mark of the tape. */
function onMark(
	display: Display,
	value: number,
	precision: Rational,
): string | undefined {
	const step = precision.toNumber();
	const shown = Math.round(value / step) * step;
	const error = Math.abs(shown - value);
	if (error * unitMm[display.unit] > onTheMark) return undefined;
	// A small amount shown as nothing, or as another by more than a hundredth of itself, misleads.
	if (error > 1e-9 && error > 0.01 * Math.abs(value)) return undefined;
	const top = Math.round(value / step) * Number(precision.numerator);
	const bottom = Number(precision.denominator);
	if (!Number.isSafeInteger(top) || !Number.isSafeInteger(bottom))
		return undefined;
	const rounded = Rational.of(top, bottom);
	return display.unit === "in" && (bottom & (bottom - 1)) === 0
		? mixedText(rounded)
		: decimalText(rounded, 4);
}

/** A share of 0 to 1 in whole percent, never 0 or 100 where some is left. */
export function percent(share: number): string {
	if (share <= 0) return "0 %";
	if (share >= 1) return "100 %";
	if (share < 0.01) return "less than 1 %";
	if (share > 0.99) return "more than 99 %";
	return `${Math.round(share * 100)} %`;
}

export function nameOf(part: Part): string {
	return `\`${part.path}\``;
}

/** `a`, `b` and 3 more */
export function listed(names: readonly string[], most = 3): string {
	const shown = names.slice(0, most);
	const rest = names.length - shown.length;
	if (rest > 0) return `${shown.join(", ")} and ${rest} more`;
	const last = shown.at(-1) ?? "";
	return shown.length > 1
		? `${shown.slice(0, -1).join(", ")} and ${last}`
		: last;
}

export function capital(text: string): string {
	return text.charAt(0).toUpperCase() + text.slice(1);
}

/**
 * The plainest size (as written, in the design's unit) from `low` to `high`, all mm: on the coarsest marks that have one,
 * there the nearest to `wanted`. Undefined if the range is narrower than 0.001 in or 0.01 mm.
 */
export function plainSize(
	display: Display,
	low: Rational,
	high: Rational,
	wanted: Rational,
): { readonly text: string; readonly value: Rational } | undefined {
	const steps =
		display.unit === "in"
			? [
					display.precision,
					Rational.of(1, 64),
					Rational.of(1, 100),
					Rational.of(1, 1000),
				]
			: [
					display.precision,
					Rational.of(1, 10),
					Rational.of(1, 20),
					Rational.of(1, 100),
				];
	const factor = display.unit === "in" ? Rational.of(254, 10) : Rational.ONE;
	for (const step of steps) {
		const nearest = wanted.div(factor).roundTo(step, "nearest");
		for (const candidate of [nearest, nearest.add(step), nearest.sub(step)]) {
			const value = candidate.mul(factor);
			if (value.cmp(low) < 0 || value.cmp(high) > 0) continue;
			return {
				text: formatLength(value, { unit: display.unit, precision: step }).text,
				value,
			};
		}
	}
	return undefined;
}

/**
 * A length as it should be written in place of another: bare where that one stands bare in the design's own unit, with its
 * unit where the unit of bare numbers there is another or is not known.
 */
export function writtenLike(
	display: Display,
	before: Size,
	length: Length,
): string {
	return unitOfBare(before) === display.unit
		? bare(display, length)
		: show(display, length);
}

/** The unit that a bare number was read in; undefined where the text carries its unit or is no single number. */
function unitOfBare(size: Size): Display["unit"] | undefined {
	if (size.why.kind !== "written") return undefined;
	const match = /^(?:(\d+)[ -])?(\d+)\/(\d+)$|^(\d+(?:\.\d+)?)$/.exec(
		size.why.text.trim(),
	);
	if (!match) return undefined;
	const [, whole = "0", top = "0", bottom = "1", decimal] = match;
	const number =
		decimal === undefined
			? fractionOf(whole, top, bottom)
			: Rational.fromDecimalText(decimal);
	if (!number) return undefined;
	if (number.eq(size.value)) return "mm";
	return number.mul(Rational.of(254, 10)).eq(size.value) ? "in" : undefined;
}

function fractionOf(
	whole: string,
	top: string,
	bottom: string,
): Rational | undefined {
	const denominator = BigInt(bottom);
	if (denominator === 0n) return undefined;
	return Rational.fromBigints(
		BigInt(whole) * denominator + BigInt(top),
		denominator,
	);
}
