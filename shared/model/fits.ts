// The gaps that joints may have, and the fits made from them.

import type { Span } from "../../grammar/index.ts";
import { Rational } from "../units/rational.ts";
import { minus, type Size } from "./size.ts";
import type { Fit, Origin } from "./types.ts";

export interface GapRange {
	/** mm */
	readonly low: Rational;
	readonly high: Rational;
	readonly from: string;
}

const range = (low: number, high: number, from: string): GapRange => ({
	low: Rational.of(Math.round(low * 1000), 1000),
	high: Rational.of(Math.round(high * 1000), 1000),
	from: `${from}: common practice, no source`,
});

export const gapRanges = {
	/** Glued panel in a dado or groove: panel + 0.05 to 0.15 mm is good, over 0.25 loose, below 0 it does not enter. */
	housing: range(0, 0.25, "glued dado or groove"),
	/** A panel that floats in its groove. */
	floating: range(0.3, 0.8, "panel left loose in its groove"),
	/** Length of a member between its housings: a little short is hidden in the housing, up to 1/32 in long the clamps close. */
	between: range(-0.8, 1.6, "length between two housings"),
	/** A back let into rabbets or grooves all round: up to 3/32 in on each side, which a housing of 3/16 in still holds by half. */
	back: range(0, 4.8, "back let in with room to square it"),
	/** A back of boards needs room to swell: so much that half of the housing still holds it. */
	backOfBoards: (depth: Rational): GapRange => ({
		low: Rational.ZERO,
		high: depth.max(Rational.of(48, 10)),
		from: "back of boards with room to swell: common practice, no source",
	}),
	/** A back that stands between the panels. */
	inset: range(0, 3.2, "back between the panels"),
	/** A shelf on pins, both ends together. */
	pins: range(0.5, 6, "shelf on pins, both ends together"),
	/** Tenon in its mortise. */
	tenon: range(0, 0.25, "tenon in its mortise"),
} as const satisfies Record<string, GapRange | ((depth: Rational) => GapRange)>;

/** What a router leaves over the member by default: 0.1 mm, the middle of the good range. */
export const housingAllowance: Rational = Rational.of(1, 10);

export function fitOf(spec: {
	readonly what: string;
	readonly opening: Size;
	readonly member: Size;
	readonly range: GapRange;
	readonly measure: string;
	readonly origin: Origin;
	readonly written?: { readonly span: Span; readonly size: Size };
}): Fit {
	return {
		what: spec.what,
		opening: spec.opening,
		member: spec.member,
		gap: minus(spec.opening, spec.member),
		low: spec.range.low,
		high: spec.range.high,
		rangeFrom: spec.range.from,
		measure: spec.measure,
		origin: spec.origin,
		written: spec.written && { ...spec.written, weight: 1 },
	};
}
