// Where a cut can hurt: what is usual to heed there, in a few words. The manual of the saw comes before all of it.

import type { Guide } from "./blanks.ts";

export type Caution = "large" | "narrow" | "thin" | "short" | "small" | "bevel";

/** Thousandths of a millimetre, each common practice without a source. */
const mm = 1_000;
/** Narrower than this beside the fence, a hand comes too near: 3 in. */
const narrow = 76 * mm;
/** Narrower than this, a strip is caught between fence and blade: 3/4 in. */
const thin = 19 * mm;
/** Shorter than this along the fence, a piece turns against it: 12 in. */
const short = 305 * mm;
/** Smaller than this at a stop, a hand comes too near: 6 in. */
const small = 152 * mm;

/** Larger than this both ways, a sheet is better left lying and the saw brought to it: 60 x 24 in, common practice, no source. */
const large = { long: 1_525 * mm, short: 611 * mm };

export function isLarge(one: number, other: number): boolean {
	return (
		Math.max(one, other) > large.long && Math.min(one, other) > large.short
	);
}

export interface Sawn {
	readonly guide: Guide;
	/** From the guide to the blade. */
	readonly at: number;
	/** Of the cut. */
	readonly length: number;
	readonly bevel: number | undefined;
}

export function cautionsAt({
	guide,
	at,
	length,
	bevel,
}: Sawn): readonly Caution[] {
	const found: Caution[] = [];
	if (guide === "track") found.push("large");
	if (guide === "fence") {
		if (at < thin) found.push("thin");
		else if (at < narrow) found.push("narrow");
		if (length < short) found.push("short");
	}
	if (guide === "stop" && at < small) found.push("small");
	if (bevel !== undefined) found.push("bevel");
	return found;
}

export const cautionWords: Readonly<Record<Caution, string>> = {
	large: "large: hold it up on both sides of the cut, and have help to lift it",
	narrow:
		"narrow: push it through with a push block, the hands away from the blade",
	thin: "thin: with a push block, and the strip falls off on the outer side, not between fence and blade; a stop beside the blade gives the width",
	short:
		"short along the fence: on a sled or with a hold-down, or cut a longer piece first",
	small:
		"small: clamp it, or use a sled with a hold-down, the hands away from the blade",
	bevel:
		"bevelled: the fence on the side that the blade leans away from, so that nothing is caught under it",
};

/** Said once, wherever there is something to saw. */
export const firstOfAll =
	"What the manual of the saw says comes before all of this: guard, riving knife and eye protection in place, the blade at rest before a hand comes near it.";
