// How much a piece of wood grows and shrinks with its moisture: along the grain, along the rays, along the rings.

import type { RadialTangential, Wood } from "../tables/woods.ts";

/** How a board was sawn: its rings lie flat in its width, stand upright in it, or run at some 45 degrees. */
export type Sawn = "flat" | "quarter" | "rift";

/** Ways in a board: across its width, through its thickness, along its grain. */
export type Way = "across" | "through" | "along";

/** Between these, per cent of moisture, change is taken as linear (Wood Handbook FPL-GTR-190, equation 13-1). */
const linearFrom = 6;
const linearTo = 14;

/** Green to oven-dry along the grain, %: the middle of 0.1 to 0.2 (Wood Handbook, chapter 4); sound straight-grained wood. */
const longitudinalShrinkage = 0.15;

/** Change along the grain per 1 % of moisture, as a share: 0.15 % over 30 %. */
export const longitudinalChange: number = longitudinalShrinkage / 100 / 30;

/**
 * Change of a size by a coefficient, as a share of it: coefficient x (to - from), moisture in %.
 * Wood Handbook FPL-GTR-190, equation 13-1, for 6 to 14 %.
 */
export function changeByCoefficient(
	coefficient: number,
	from: number,
	to: number,
): number {
	return coefficient * (to - from);
}

/**
 * Change of a size by the shrinkage from green, as a share of the size at `from`, moisture in %:
 * (to - from) / (start x 100 / shrinkage - start + from), start being where shrinking begins.
 * Wood Handbook FPL-GTR-190, equation 13-2.
 */
export function changeByShrinkage(
	shrinkage: number,
	from: number,
	to: number,
	start = 30,
): number {
	const low = Math.min(from, start);
	const high = Math.min(to, start);
	return (high - low) / ((start * 100) / shrinkage - start + low);
}

/** What the movement of a board is worked out from. */
export type Moving = Pick<Wood, "change" | "shrinkage" | "shrinksFrom">;

/** Green wood begins to shrink at some 30 % of moisture (Wood Handbook, chapter 4), where nothing else is known. */
const usualStart = 30;

/** The middle of the linear range, %: the coefficient is the slope of equation 13-2 there, as the Handbook's own were made. */
const middleOfRange = (linearFrom + linearTo) / 2;

/** The movement of a wood of which only the shrinkage from green to oven-dry is known, in %. */
export function movingBy(shrinkage: RadialTangential): Moving {
	const change = (percent: number): number =>
		1 / ((usualStart * 100) / percent - usualStart + middleOfRange);
	return {
		shrinkage,
		shrinksFrom: usualStart,
		change: {
			radial: change(shrinkage.radial),
			tangential: change(shrinkage.tangential),
		},
	};
}

/** A figure for a way in a board: along the rings, along the rays, or between them by cos² and sin² of 45°. */
function byCut(figures: RadialTangential, way: Way, sawn: Sawn): number {
	if (sawn === "rift") return (figures.radial + figures.tangential) / 2;
	return (sawn === "flat") === (way === "across")
		? figures.tangential
		: figures.radial;
}

/**
 * Change of a board's size in one way while its moisture goes from `from` to `to` %, as a share of its size at `from`:
 * by the coefficient of change from 6 to 14 %, by the shrinkage below and above.
 * The cut between flat and quarter is a common approximation, not in the Handbook.
 */
export function changeOfBoard(
	wood: Moving,
	way: Way,
	sawn: Sawn,
	from: number,
	to: number,
): number {
	if (way === "along")
		return changeByCoefficient(
			longitudinalChange,
			Math.min(from, wood.shrinksFrom),
			Math.min(to, wood.shrinksFrom),
		);
	const coefficient = byCut(wood.change, way, sawn);
	const shrinkage = byCut(wood.shrinkage, way, sawn);
	let share = 1;
	let at = from;
	// In the stretches below 6, from 6 to 14 and above 14, in the order that they are passed.
	const marks = [linearFrom, linearTo];
	if (to < from) marks.reverse();
	for (const mark of [
		...marks.filter((one) => (one - from) * (one - to) < 0),
		to,
	]) {
		const middle = (at + mark) / 2;
		const step =
			middle >= linearFrom && middle <= linearTo
				? changeByCoefficient(coefficient, at, mark)
				: changeByShrinkage(shrinkage, at, mark, wood.shrinksFrom);
		share *= 1 + step;
		at = mark;
	}
	return share - 1;
}
