// The two halves of a bevelled cleat: ripped from one strip, hooked one behind the other.

import { Rational } from "../../units/rational.ts";
import {
	minus,
	numberOf,
	over,
	plus,
	type Size,
	stated,
	times,
} from "../size.ts";

/**
 * Seen from the left side of the piece, wall to the left:
 *
 *     wall │ ┌──────┐ │ back
 *          │ │ piece│ │          height: the tall face of each,
 *          │ │ strip│ │          at the wall above, at the back below
 *          │ │     ╱│ │
 *          │ │   ╱  │ │          drop: how far the cut falls over the thickness,
 *          │ │ ╱    │ │          thick / tan(bevel from the face)
 *          │ │ wall │ │
 *          │ │ strip│ │
 *          │ └──────┘ │
 *
 * The point of the upper strip stands `drop` below the point of the lower one: lifted by that much it comes off.
 */
export interface CleatPair {
	/** How far the bevel falls over the thickness: the hook, and the lift that it takes. */
	readonly drop: Size;
	/** The short face of each strip. */
	readonly short: Size;
	/** Both strips hooked, from the top of one to the bottom of the other. */
	readonly hooked: Size;
	/** Width of the blank that both are ripped from: the saw takes more of it where it cuts aslant. */
	readonly blank: Size;
}

/** `bevel` is from the face, in degrees between 0 and 90. Exact at 45 degrees, else by the tangent to a millionth. */
export function cleatPair(
	thick: Size,
	height: Size,
	bevel: number,
	kerf: Size,
): CleatPair {
	const radians = (bevel * Math.PI) / 180;
	const drop =
		bevel === 45
			? thick
			: times(ratio(1 / Math.tan(radians), `1 / tan ${bevel}°`), thick);
	const hooked = minus(times(2, height), drop);
	return {
		drop,
		short: minus(height, drop),
		hooked,
		blank: plus(hooked, over(kerf, ratio(Math.sin(radians), `sin ${bevel}°`))),
	};
}

/** A number that trigonometry gives. */
function ratio(value: number, text: string): Size {
	return {
		...stated(Rational.near(value, 1_000_000), text, "number"),
		exact: false,
	};
}

/** Whether the two strips can be cut at all: each keeps some of its short face. */
export function isHookable(pair: CleatPair): boolean {
	return numberOf(pair.short) > 0;
}
