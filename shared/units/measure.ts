// From a number as it stands in the text to an exact value in the base unit of what it measures.

import type { MeasureNode } from "../../grammar/tree/nodes.ts";
import { type Dimension, toBase, units } from "./dimensions.ts";
import { Rational } from "./rational.ts";

/** An exact value with what it measures: mm, degrees, kg, degrees Celsius, a ratio (1 = 100 %), a gauge or a bare number. */
export interface Quantity {
	readonly dimension: Dimension;
	readonly value: Rational;
}

/** The unit that a design is written and shown in. */
export type DisplayUnit = "in" | "mm";

/**
 * What a literal says. A bare number comes back as `number`: whether it counts or measures is for its place to say.
 * Throws `TooLargeError` for a literal of hundreds of digits.
 */
export function readMeasure(node: MeasureNode): Quantity {
	const value = Rational.fromBigints(node.numerator, node.denominator);
	return {
		dimension: units[node.unit].dimension,
		value: toBase(value, node.unit),
	};
}

/** A bare number that stands where a length is wanted, in mm. */
export function bareLength(value: Rational, unit: DisplayUnit): Rational {
	return toBase(value, unit);
}
