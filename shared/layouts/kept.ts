// What is left over: which offcuts are worth keeping, and what they are called in a stock file.

import { inches } from "../model/expressions.ts";
import type { Display, Stock } from "../model/types.ts";
import { stepsOf } from "./steps.ts";
import { type LaidRegion, type LayoutKind, stepsPerMm } from "./types.ts";

interface Rectangle {
	readonly length: number;
	readonly width: number;
}

/** Smallest offcut that is kept, in the piece's own round figures: inches, mm. Common practice, no source. */
const usual: Readonly<
	Record<
		LayoutKind,
		{
			readonly in: readonly [number, number];
			readonly mm: readonly [number, number];
		}
	>
> = {
	sheets: { in: [12, 6], mm: [300, 150] },
	veneer: { in: [12, 6], mm: [300, 150] },
	boards: { in: [12, 2], mm: [300, 50] },
	lengths: { in: [12, 0], mm: [300, 0] },
};

/** As the stock file says, else by common practice. */
export function keepOf(
	stock: Stock,
	kind: LayoutKind,
	{ unit }: Pick<Display, "unit">,
): Rectangle {
	if (stock.keep) {
		return {
			length: stepsOf(stock.keep.length),
			width: kind === "lengths" ? 0 : stepsOf(stock.keep.width),
		};
	}
	const [length, width] = usual[kind][unit];
	const steps = (of: number): number =>
		unit === "in" ? stepsOf({ value: inches(of) }) : of * stepsPerMm;
	return { length: steps(length), width: steps(width) };
}

/** Whether a remnant is at least so large, both ways. */
export function least(remnant: Rectangle, keep: Rectangle): boolean {
	return remnant.length >= keep.length && remnant.width >= keep.width;
}

/** Every remnant in a layout that is marked to be kept. */
export function keptIn(region: LaidRegion): readonly Rectangle[] {
	switch (region.kind) {
		case "remnant":
			return region.keep
				? [{ length: region.length, width: region.width }]
				: [];
		case "cut":
			return region.pieces.flatMap(keptIn);
		default:
			return [];
	}
}
