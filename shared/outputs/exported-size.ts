// How a size leaves the program for another one: exact, with what a maker reads beside it.

import type { Size } from "../model/size.ts";
import type { Display } from "../model/types.ts";
import { fromBase } from "../units/dimensions.ts";
import { decimalText, type ShownLength } from "../units/format.ts";
import type { Rational } from "../units/rational.ts";

export interface ExportedSize {
	/** Nearest double. */
	readonly mm: number;
	/** Exact millimetres as a fraction in lowest terms: `213741/160`, or `18`. */
	readonly fraction: string;
	/** False where trigonometry or a curve came in: the value is the nearest micrometre. */
	readonly exact: boolean;
}

export interface ExportedCut extends ExportedSize {
	/** As cut, in the unit of the design. */
	readonly text: string;
	/** What that text says. */
	readonly cutMm: number;
}

export function exportedSize(size: Size): ExportedSize {
	return {
		mm: size.value.toNumber(),
		fraction: size.value.toString(),
		exact: size.exact,
	};
}

export function exportedCut(size: Size, shown: ShownLength): ExportedCut {
	return {
		...exportedSize(size),
		text: shown.text,
		cutMm: shown.shown.toNumber(),
	};
}

/** Millimetres with up to six decimals, for a column of a spreadsheet; inches of any binary fraction to 1/64 are exact in it. */
export function millimetreColumn(size: Size): string {
	return decimalText(size.value, 6);
}

/** A size in the design's unit as a decimal number: spreadsheets take `52 19/32` for a text or a date. */
export function decimalColumn(mm: Rational, { unit }: Display): string {
	return decimalText(fromBase(mm, unit), 6);
}
