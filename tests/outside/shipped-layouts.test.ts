// The layouts of all shipped designs, looked over by a checker that knows nothing of how they came about.

import { describe, expect, test } from "vitest";
import { demandsOf } from "../../shared/layouts/blanks.ts";
import { layoutsOf } from "../../shared/layouts/index.ts";
import { pieceToCut } from "../../shared/outputs/piece-layouts.ts";
import { countsOf, faultsOfLayout } from "../harness/check-layout.ts";
import { designOf, shippedDesigns } from "../harness/designs.ts";

const pieces = shippedDesigns.flatMap((path) =>
	designOf(path)
		.pieces.filter(({ kind }) => kind === "piece")
		.map((piece) => ({ name: `${path}: ${piece.name}`, piece })),
);

/** How often each part is wanted: once, or as many strips or leaves as it is made of. */
function wantedOf(all: readonly (typeof pieces)[number]["piece"][]) {
	const wanted = new Map<string, number>();
	for (const { blanks } of demandsOf(all.map(pieceToCut)))
		for (const { id } of blanks.flatMap(({ parts }) => parts))
			wanted.set(id, (wanted.get(id) ?? 0) + 1);
	return wanted;
}

describe("layouts of shipped designs", () => {
	test.each(pieces)("$name", ({ piece }) => {
		const layouts = layoutsOf([pieceToCut(piece)], { effort: "quick" });
		expect(layouts.flatMap(faultsOfLayout)).toEqual([]);
		expect(layouts.flatMap(({ missing }) => missing)).toEqual([]);
		expect([...countsOf(layouts)].sort()).toEqual(
			[...wantedOf([piece])].sort(),
		);
		for (const { price, leastPrice, sheets, leastSheets } of layouts) {
			expect(sheets.length).toBeGreaterThanOrEqual(leastSheets);
			if (price && leastPrice)
				expect(price.cmp(leastPrice)).toBeGreaterThanOrEqual(0);
		}
		// Every part that is not cut already, and every aid whose material is named, is wanted of something.
		const standing = new Set(piece.cuts.map(({ part }) => part.id));
		const ids = new Set(wantedOf([piece]).keys());
		expect(
			piece.parts.filter(({ id }) => !standing.has(id) && !ids.has(id)),
		).toEqual([]);
	});

	test("all of them together, on shared sheets, cost no more than one by one", () => {
		const all = pieces.map(({ piece }) => piece);
		const together = layoutsOf(all.map(pieceToCut), { effort: "quick" });
		expect(together.flatMap(faultsOfLayout)).toEqual([]);
		expect([...countsOf(together)].sort()).toEqual([...wantedOf(all)].sort());
		const costOf = (layouts: typeof together): number =>
			layouts.reduce((sum, { price }) => sum + (price?.toNumber() ?? 0), 0);
		const single = all.flatMap((piece) =>
			layoutsOf([pieceToCut({ ...piece })], { effort: "quick" }),
		);
		// One by one what is on hand is counted for each of them again, so it must be bought for all but one.
		const onHand = single
			.flatMap(({ sizes, stock }) =>
				sizes.filter((one) => one.onHand).map((one) => ({ ...one, stock })),
			)
			.reduce(
				(sum, { stock, count }) =>
					sum +
					count * (stock.per === "sheet" ? (stock.price?.toNumber() ?? 0) : 60),
				0,
			);
		expect(costOf(together)).toBeLessThanOrEqual(costOf(single) + onHand);
	}, 60_000);
});
