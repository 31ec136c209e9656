// Which way a part lies in the world: along its grain, across it, through its thickness.

import { axisOf } from "../geometry/place.ts";
import type { Axis } from "../geometry/solid.ts";
import type { FastenerRun, Part } from "../model/types.ts";
import { axisDriven } from "./envelopes.ts";

export function lengthAxis(part: Part): Axis {
	return axisOf(part.place.axes[0]);
}

export function widthAxis(part: Part): Axis {
	return axisOf(part.place.axes[1]);
}

export function thicknessAxis(part: Part): Axis {
	return axisOf(part.place.axes[2]);
}

/** Whether a fastener enters a part through its edge or end, not its broad face. */
export function drivenInEdge(run: FastenerRun, part: Part): boolean {
	return axisDriven(run) !== thicknessAxis(part);
}

/** How far a point stands from the nearer of two opposite sides of a part's blank, mm; negative outside. */
export function fromSides(part: Part, point: number, axis: Axis): number {
	const { min, max } = part.solid.box;
	return Math.min(point - min[axis], max[axis] - point);
}
