// Sheets of the shipped designs beside a general library that packs rectangles (npm maxrects-packer): it knows no saw, so
// it may put parts where no edge-to-edge cut comes between; the layouts still need no more sheets and cost no more.

import { describe, expect, test } from "vitest";
import {
	type LaidRegion,
	layoutsOf,
	type MaterialLayout,
} from "../../shared/layouts/index.ts";
import { stepsPerMm } from "../../shared/layouts/types.ts";
import { numberOf } from "../../shared/model/size.ts";
import { pieceToCut } from "../../shared/outputs/piece-layouts.ts";
import { designOf, shippedDesigns } from "../harness/designs.ts";

// Its manifest says that its CommonJS file is a module: the one that is has to be named.
const module: string = "maxrects-packer/dist/maxrects-packer.mjs";
const { MaxRectsPacker } = (await import(
	module
)) as typeof import("maxrects-packer");

interface Rectangle {
	readonly length: number;
	readonly width: number;
}

function rectanglesIn(region: LaidRegion): Rectangle[] {
	switch (region.kind) {
		case "cut":
			// Parts whose grain runs on are one piece of the sheet.
			return region.matched ? [region] : region.pieces.flatMap(rectanglesIn);
		case "remnant":
			return [];
		default:
			return [region];
	}
}

/** Sheets of one size that the library needs; undefined where a part goes into none. */
function sheetsByLibrary(
	parts: readonly Rectangle[],
	sheet: Rectangle,
	kerf: number,
	trim: number,
	turns: boolean,
): number | undefined {
	const [length, width] = [sheet.length - 2 * trim, sheet.width - 2 * trim];
	const goesIn = (one: Rectangle): boolean =>
		(one.length <= length && one.width <= width) ||
		(turns && one.width <= length && one.length <= width);
	if (!parts.every(goesIn)) return undefined;
	let fewest: number | undefined;
	// It packs in the order given: the usual orders are tried, largest first.
	const orders: ((one: Rectangle) => number)[] = [
		(one) => one.length * one.width,
		(one) => one.length,
		(one) => one.width,
		(one) => Math.max(one.length, one.width),
	];
	for (const size of orders) {
		const packer = new MaxRectsPacker(length, width, kerf, {
			smart: false,
			pot: false,
			square: false,
			allowRotation: turns,
		});
		for (const one of [...parts].sort((a, b) => size(b) - size(a)))
			packer.add(one.length, one.width, undefined);
		fewest = Math.min(fewest ?? packer.bins.length, packer.bins.length);
	}
	return fewest;
}

const layouts: readonly (readonly [string, MaterialLayout])[] =
	shippedDesigns.flatMap((path) =>
		designOf(path)
			.pieces.filter(({ kind }) => kind === "piece")
			.flatMap((piece) =>
				layoutsOf([pieceToCut(piece)], { effort: "quick" })
					.filter(({ kind }) => kind === "sheets" || kind === "veneer")
					.map((layout) => [`${path}: ${layout.stock.id}`, layout] as const),
			),
	);

describe("sheets of shipped designs beside a packing library", () => {
	test.each(layouts)("%s", (_, layout) => {
		const { stock, sheets, kerf } = layout;
		const parts = sheets.flatMap(({ root }) => rectanglesIn(root));
		expect(parts.length).toBeGreaterThan(0);
		// What is on hand is not bought; the library gets all parts, we only those that are not cut from it.
		const bought = sheets.filter(({ onHand }) => !onHand);
		const trim = sheets[0]?.trim ?? 0;
		const byLibrary = stock.sizes.flatMap(({ length, width, ...rest }) => {
			const sheet = {
				length: numberOf(length) * stepsPerMm,
				width: numberOf(width) * stepsPerMm,
			};
			const count = sheetsByLibrary(parts, sheet, kerf, trim, !stock.grain);
			return count === undefined ? [] : [{ count, ...rest }];
		});
		const fewest = Math.min(...byLibrary.map(({ count }) => count));
		expect(fewest).toBeLessThan(Number.POSITIVE_INFINITY);
		expect(bought.length).toBeLessThanOrEqual(fewest);
		const price = stock.price;
		if (
			stock.per === "sheet" &&
			price &&
			layout.price &&
			stock.sizes.length === 1
		)
			expect(layout.price.toNumber()).toBeLessThanOrEqual(
				fewest * price.toNumber() + 1e-9,
			);
	});
});
