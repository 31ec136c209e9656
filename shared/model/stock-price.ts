// Prices as the lines of a stock file give them.

import type { Rational } from "../units/rational.ts";
import { evaluateAs } from "./expressions.ts";
import type { Frame } from "./frame.ts";
import type { Row } from "./rows.ts";

/** The `price` slot of a line; less than nothing is told. */
export function priceIn(
	frame: Frame,
	row: Row | undefined,
): Rational | undefined {
	const price = evaluateAs(frame, row?.expression("price"), "number")?.value;
	if (!row || !price || price.sign() >= 0) return price;
	frame.evaluation.report(
		"negative-size",
		row.origin,
		"A price cannot be less than 0",
	);
	return undefined;
}
