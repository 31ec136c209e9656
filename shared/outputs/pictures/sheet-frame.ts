// Where the things on a sheet lie in its picture: from thousandths of a millimetre to px, lying or upright.

import type { Rectangle } from "../../cutting/index.ts";
import type { LaidRegion, LaidSheet } from "../../layouts/types.ts";
import { partsIn } from "../sawing/sawing-words.ts";

/** px; y down. */
export interface Area {
	readonly x: number;
	readonly y: number;
	readonly width: number;
	readonly height: number;
}

export interface Frame {
	readonly at: (rectangle: Rectangle) => Area;
	/** Of the whole sheet. */
	readonly area: Area;
	/** The grain runs from top to bottom. */
	readonly upright: boolean;
	/** So many times wider than it is long at the same scale; 1 = to scale. */
	readonly wider: number;
}

/** Least height of the thinnest strip of a board, and most height of a board, px. */
const strip = 15;
const tallest = 220;

/**
 * A sheet from `left`, `top` on, `width` px wide at the most. Narrow ones (`stretch`) are drawn wider than they are, so
 * that there is room for words on their strips.
 */
export function frameOf(
	sheet: LaidSheet,
	{
		left,
		top,
		width,
		height = Number.POSITIVE_INFINITY,
		upright = false,
		stretch = false,
	}: {
		readonly left: number;
		readonly top: number;
		readonly width: number;
		readonly height?: number;
		readonly upright?: boolean;
		readonly stretch?: boolean;
	},
): Frame {
	const [across, down] = upright
		? [sheet.width, sheet.length]
		: [sheet.length, sheet.width];
	const scale = Math.min(width / across, height / down);
	const wanted = stretch && !upright ? strip / thinnest(sheet) : 0;
	const scaleDown = Math.max(scale, Math.min(wanted, tallest / sheet.width));
	const at = (one: Rectangle): Area =>
		upright
			? {
					// Turned by a quarter, not mirrored.
					x: left + one.y * scale,
					y: top + (sheet.length - one.x - one.length) * scale,
					width: one.width * scale,
					height: one.length * scale,
				}
			: {
					x: left + one.x * scale,
					y: top + one.y * scaleDown,
					width: one.length * scale,
					height: one.width * scaleDown,
				};
	return {
		at,
		area: at({ x: 0, y: 0, length: sheet.length, width: sheet.width }),
		upright,
		wider: upright ? 1 : scaleDown / scale,
	};
}

/** Of all regions that hold a part, across the grain. */
function thinnest({ root, width }: LaidSheet): number {
	let least = width;
	const walk = (region: LaidRegion): void => {
		if (partsIn(region).length > 0) least = Math.min(least, region.width);
		if (region.kind === "pair") least = Math.min(least, region.width / 2);
		if (region.kind === "cut") region.pieces.forEach(walk);
	};
	walk(root);
	return least;
}
