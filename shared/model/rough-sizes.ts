// What a rough board is longer and wider than the part it is for, in round figures of the maker's own unit.

import { Rational } from "../units/rational.ts";
import { inches } from "./expressions.ts";
import { type Size, stated } from "./size.ts";

/** To trim the ends, and to joint the edges. */
export interface RoughAllowance {
	readonly longer: Size;
	readonly wider: Size;
}

/** By the unit of the piece: whoever measures in millimetres adds no 25.4. Common practice, no source. */
export const roughAllowances: Readonly<Record<"in" | "mm", RoughAllowance>> = {
	in: {
		longer: stated(inches(1), "1 in to trim"),
		wider: stated(inches(1, 4), "1/4 in to joint"),
	},
	mm: {
		longer: stated(Rational.of(25), "25 mm to trim"),
		wider: stated(Rational.of(6), "6 mm to joint"),
	},
};
