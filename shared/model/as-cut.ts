// Sizes as the shop makes them: rounded to what the maker reads off, and as true as the saw or router is.

import { inches } from "./expressions.ts";
import type { PieceContext } from "./piece-context.ts";
import { crosscutSource, routerSource } from "./shop.ts";
import { fedBy, type Size, settled } from "./size.ts";

/** A size cut to a stop: it no longer moves with what it was worked out from, but with the saw and the rounding. */
export function asCut(context: PieceContext, size: Size): Size {
	const cut = settled(
		size,
		crosscutSource(context.shop, size, context.display),
	);
	const { unit, precision } = context.display;
	const step = unit === "in" ? precision.mul(inches(1)) : precision;
	const off = size.value.roundTo(step, "nearest").sub(size.value).abs();
	if (off.isZero()) return cut;
	return fedBy(cut, {
		id: `rounding:${size.value.toString()}`,
		label: "rounding to what the rule shows",
		tolerance: off.toNumber(),
	});
}

/** A depth or width that a router cuts. */
export function asRouted(
	context: PieceContext,
	size: Size,
	what: string,
): Size {
	return fedBy(size, routerSource(context.shop, what));
}
