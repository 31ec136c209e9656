// Goes through what lies on a sheet.

import type { Rectangle } from "../cutting/index.ts";
import type { LaidPart, LaidRegion } from "./types.ts";

/** A part in its place; of a pair both strips have the place of the blank. */
export interface PlacedPart {
	readonly of: LaidPart;
	readonly place: Rectangle;
}

/** All parts of a region, in the order of the cuts. */
export function partsIn(region: LaidRegion): readonly PlacedPart[] {
	switch (region.kind) {
		case "part":
			return [{ of: region.of, place: region }];
		case "pair":
			return region.of.map((of) => ({ of, place: region }));
		case "cut":
			return region.pieces.flatMap(partsIn);
		case "remnant":
			return [];
	}
}

/** mm2 of the rectangles that parts are cut from. */
export function areaIn(region: LaidRegion): number {
	switch (region.kind) {
		case "part":
		case "pair":
			return (region.length / 1_000) * (region.width / 1_000);
		case "cut":
			return region.pieces.reduce((sum, piece) => sum + areaIn(piece), 0);
		case "remnant":
			return 0;
	}
}
