// The lengths that fasteners are sold in, so that a check can name one that fits. Common practice, no source.

import type { Display, FastenerKind } from "../model/types.ts";
import { Rational } from "../units/rational.ts";

type Sold = Exclude<FastenerKind, "biscuit">;

const eighths = (values: readonly number[]): readonly Rational[] =>
	values.map((value) => Rational.of(value * 254, 80));
const millimetres = (values: readonly number[]): readonly Rational[] =>
	values.map((value) => Rational.of(value));

/** Eighths of an inch: 5 is 5/8 in. */
const inches: Readonly<Record<Sold, readonly Rational[]>> = {
	screw: eighths([4, 5, 6, 8, 10, 12, 14, 16, 18, 20, 24, 28, 32]),
	brad: eighths([5, 6, 7, 8, 9, 10, 12, 14, 16]),
	pin: eighths([4, 5, 6, 7, 8, 9, 10, 11, 12, 16]),
	nail: eighths([8, 10, 12, 14, 16, 18, 20, 24, 28]),
	dowel: eighths([8, 10, 11, 12, 14, 16, 20, 24]),
};

const metric: Readonly<Record<Sold, readonly Rational[]>> = {
	screw: millimetres([12, 16, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100]),
	brad: millimetres([15, 20, 25, 30, 35, 40, 45, 50]),
	pin: millimetres([12, 15, 18, 20, 25, 30, 35, 50]),
	nail: millimetres([25, 30, 35, 40, 45, 50, 55, 65, 75, 90]),
	dowel: millimetres([20, 25, 30, 35, 40, 50, 60]),
};

/** Usual lengths in mm, the shortest first; none for a biscuit, whose number is its size. */
export function usualLengths(
	kind: FastenerKind,
	display: Display,
): readonly Rational[] {
	if (kind === "biscuit") return [];
	return (display.unit === "in" ? inches : metric)[kind];
}
