// How many sheets a piece needs at the least, before they are laid out: by area, and by parts that cannot share a sheet.

import { numberOf, type Size } from "../model/size.ts";
import type { Part, Stock } from "../model/types.ts";

export interface SheetSize {
	readonly length: Size;
	readonly width: Size;
}

export interface SheetLine {
	readonly stock: Stock;
	readonly parts: readonly Part[];
	/** mm2, as first sawn. */
	readonly area: number;
	/** mm that the cut between two parts takes. */
	readonly kerf: number;
	/** The size counted with; undefined where the stock file has none. */
	readonly size: SheetSize | undefined;
	/** Fewer cannot be enough; a layout may need more. Undefined without a size, or when a part is larger than every sheet. */
	readonly least: number | undefined;
	/** Parts that no sheet is large enough for. */
	readonly tooLarge: readonly Part[];
}

interface Rectangle {
	readonly length: number;
	readonly width: number;
}

/** What is sawn first of a part, mm: length along the grain, width across it. */
export function firstSawn(part: Part): Rectangle {
	const first = part.stages[0] ?? part;
	return { length: numberOf(first.length), width: numberOf(first.width) };
}

/** `kerf` in mm: 0 for what is cut with a knife. */
export function sheetLine(
	stock: Stock,
	parts: readonly Part[],
	kerf: number,
): SheetLine {
	const sawn = parts.map(firstSawn);
	const area = sawn.reduce((sum, one) => sum + one.length * one.width, 0);
	const size = sizeFor(stock, sawn);
	if (!size) {
		return {
			stock,
			parts,
			area,
			kerf,
			size,
			least: undefined,
			tooLarge: [],
		};
	}
	const sheet = rectangleOf(size);
	const tooLarge = parts.filter(
		(_, index) => !goesIn(sawn[index] as Rectangle, sheet, stock.grain),
	);
	return {
		stock,
		parts,
		area,
		kerf,
		size,
		least:
			tooLarge.length > 0
				? undefined
				: Math.max(
						byArea(sawn, sheet, kerf),
						byHalves(sawn, sheet, kerf, stock.grain),
					),
		tooLarge,
	};
}

/** The first size in the stock file that every part goes into; else the largest, so that it can be told what does not. */
function sizeFor(
	stock: Stock,
	sawn: readonly Rectangle[],
): SheetSize | undefined {
	const fitting = stock.sizes.find((size) =>
		sawn.every((one) => goesIn(one, rectangleOf(size), stock.grain)),
	);
	if (fitting) return fitting;
	let best: SheetSize | undefined;
	let most = -1;
	for (const size of stock.sizes) {
		const { length, width } = rectangleOf(size);
		if (length * width <= most) continue;
		most = length * width;
		best = size;
	}
	return best;
}

function rectangleOf(size: SheetSize): Rectangle {
	return { length: numberOf(size.length), width: numberOf(size.width) };
}

/** Where the grain counts a part cannot be turned. A hair is allowed for what floating numbers lose. */
function goesIn(part: Rectangle, sheet: Rectangle, grain: boolean): boolean {
	const hair = 1e-6;
	const along =
		part.length <= sheet.length + hair && part.width <= sheet.width + hair;
	const turned =
		part.width <= sheet.length + hair && part.length <= sheet.width + hair;
	return along || (!grain && turned);
}

/**
 * n sheets of L x W hold parts of l x w only if the sum of (l + k)(w + k) is no more than n (L + k)(W + k): parts that
 * stand a kerf k apart do not meet when each is drawn half a kerf larger all round, nor do they leave a sheet that is.
 */
function byArea(
	sawn: readonly Rectangle[],
	sheet: Rectangle,
	kerf: number,
): number {
	const needed = sawn.reduce(
		(sum, one) => sum + (one.length + kerf) * (one.width + kerf),
		0,
	);
	const given = (sheet.length + kerf) * (sheet.width + kerf);
	return Math.ceil(needed / given - 1e-9);
}

/** No two parts that are longer and wider than half a sheet come out of one. */
function byHalves(
	sawn: readonly Rectangle[],
	sheet: Rectangle,
	kerf: number,
	grain: boolean,
): number {
	const beyond = (part: number, whole: number): boolean =>
		2 * part + kerf > whole + 1e-6;
	return sawn.filter(({ length, width }) =>
		grain
			? beyond(length, sheet.length) && beyond(width, sheet.width)
			: beyond(Math.min(length, width), Math.max(sheet.length, sheet.width)),
	).length;
}
