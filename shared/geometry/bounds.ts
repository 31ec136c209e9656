// The smallest box around what a solid really is, after its outlines and cuts.

import { remainder } from "./cells.ts";
import { holdsArea, walk } from "./sections.ts";
import type { Axis, Box, Outline, Solid } from "./solid.ts";

/** The smallest box around a solid, mm; undefined where nothing is left of it. */
export function boundsOf(solid: Solid): Box | undefined {
	let around: Box | undefined;
	for (const cell of remainder(solid.box, solid.cuts)) {
		// A cell that lies within what is already known cannot change it.
		if (around !== undefined && contains(around, cell)) continue;
		const bounds = shapedBounds(cell, solid.outlines);
		if (bounds !== undefined) {
			around = around === undefined ? bounds : aroundBoth(around, bounds);
		}
	}
	return around;
}

/** The smallest box around the part of a box that lies within every outline; undefined where there is none. */
export function shapedBounds(
	box: Box,
	outlines: readonly Outline[],
): Box | undefined {
	if (outlines.length === 0) return box;
	const min: [number, number, number] = [...box.min];
	const max: [number, number, number] = [...box.max];
	for (const axis of [0, 1, 2] as const) {
		const extent = extentAlong(box, outlines, axis);
		if (extent === undefined) return undefined;
		min[axis] = extent[0];
		max[axis] = extent[1];
	}
	return { min, max };
}

/** The smallest box around two boxes. */
export function aroundBoth(a: Box, b: Box): Box {
	return {
		min: [
			Math.min(a.min[0], b.min[0]),
			Math.min(a.min[1], b.min[1]),
			Math.min(a.min[2], b.min[2]),
		],
		max: [
			Math.max(a.max[0], b.max[0]),
			Math.max(a.max[1], b.max[1]),
			Math.max(a.max[2], b.max[2]),
		],
	};
}

/** True where the second box lies within the first. */
export function contains(outer: Box, inner: Box): boolean {
	return (
		outer.min[0] <= inner.min[0] &&
		outer.min[1] <= inner.min[1] &&
		outer.min[2] <= inner.min[2] &&
		outer.max[0] >= inner.max[0] &&
		outer.max[1] >= inner.max[1] &&
		outer.max[2] >= inner.max[2]
	);
}

function extentAlong(
	box: Box,
	outlines: readonly Outline[],
	axis: Axis,
): readonly [number, number] | undefined {
	let from: number | undefined;
	let to = 0;
	walk(box, outlines, axis, (strip) => {
		if (holdsArea(strip)) {
			from ??= strip.from;
			to = strip.to;
		}
		return true;
	});
	return from === undefined ? undefined : [from, to];
}
