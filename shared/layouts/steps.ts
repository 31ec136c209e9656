// Between the exact sizes of a design and the whole steps that the optimisers count in.

import type { Size } from "../model/size.ts";
import { Rational } from "../units/rational.ts";
import { stepsPerMm } from "./types.ts";

const perMm = Rational.of(stepsPerMm);

/** Of parts and kerfs: never less than the size. */
export function stepsUp({ value }: Pick<Size, "value">): number {
	return value.mul(perMm).ceil().toNumber();
}

/** Of sheets and boards: never more than the size. */
export function stepsDown({ value }: Pick<Size, "value">): number {
	return value.mul(perMm).floor().toNumber();
}

/** Steps as exact mm. */
export function mmOf(steps: number): Rational {
	return Rational.of(steps, stepsPerMm);
}
