// The unit and precision that sizes are shown in: what a file or piece says, else what holds around it.

import { Rational } from "../units/rational.ts";
import { inches, positiveLength } from "./expressions.ts";
import type { Frame } from "./frame.ts";
import type { Rows } from "./rows.ts";
import type { Display } from "./types.ts";

/** The unit and precision in force: own lines, else what is around. */
export function readDisplay(
	frame: Frame,
	rows: Rows,
	around: Display,
): Display {
	const unit =
		(rows.first("unit")?.word("unit") as "in" | "mm" | undefined) ??
		around.unit;
	const row = rows.first("precision");
	const precision = positiveLength(
		{ ...frame, unit },
		row?.expression("precision"),
		"The precision",
	);
	const inUnit =
		precision &&
		(unit === "in" ? precision.value.div(inches(1)) : precision.value);
	return {
		unit,
		precision:
			inUnit ??
			(unit === around.unit ? around.precision : usualPrecision[unit]),
	};
}

/** 1/32 in and half a millimetre: common practice, no source. */
export const usualPrecision: Readonly<Record<"in" | "mm", Rational>> = {
	in: Rational.of(1, 32),
	mm: Rational.of(1, 2),
};
