// Between the exact sizes of a design and the whole steps that the optimisers count in.

import type { Size } from "../model/size.ts";
import { Rational } from "../units/rational.ts";
import { stepsPerMm } from "./types.ts";

const perMm = Rational.of(stepsPerMm);

/**
 * Never more than the size, and less than a thousandth of a millimetre less: parts, kerfs and sheets alike, so that what
 * fills a sheet exactly on paper (sixty-fourths of an inch are no whole steps) fills it here, too.
 */
export function stepsOf({ value }: Pick<Size, "value">): number {
	return value.mul(perMm).floor().toNumber();
}

/** Steps as exact mm. */
export function mmOf(steps: number): Rational {
	return Rational.of(steps, stepsPerMm);
}
