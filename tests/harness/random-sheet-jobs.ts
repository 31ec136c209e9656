// Jobs for the saw at random: usual shops and odd ones, some that cannot be done; and jobs whose least number of sheets is
// known, because their parts come from sheets that were cut up.

import fc from "fast-check";
import type {
	SheetJob,
	SheetPart,
	SheetStock,
} from "../../shared/cutting/index.ts";

const usualStock: fc.Arbitrary<SheetStock> = fc.record(
	{
		id: fc.constantFrom("large", "small", "offcut"),
		length: fc.integer({ min: 60, max: 300 }),
		width: fc.integer({ min: 60, max: 300 }),
		price: fc.integer({ min: 0, max: 100 }),
		count: fc.oneof(
			{ weight: 3, arbitrary: fc.constant(Number.POSITIVE_INFINITY) },
			{ weight: 1, arbitrary: fc.integer({ min: 0, max: 3 }) },
		),
		onHand: fc.boolean(),
		trim: fc.integer({ min: 0, max: 6 }),
		defects: fc.array(
			fc.record({
				x: fc.integer({ min: 0, max: 250 }),
				y: fc.integer({ min: 0, max: 250 }),
				length: fc.integer({ min: 1, max: 20 }),
				width: fc.integer({ min: 1, max: 20 }),
			}),
			{ maxLength: 2 },
		),
	},
	{ requiredKeys: ["id", "length", "width", "price", "count"] },
);

const part: fc.Arbitrary<SheetPart> = fc.record({
	id: fc.constantFrom("a", "b", "c"),
	length: fc.integer({ min: 1, max: 280 }),
	width: fc.integer({ min: 1, max: 160 }),
	count: fc.integer({ min: 1, max: 4 }),
	turns: fc.boolean(),
});

/** On hand costs nothing, and there is only so much of it. */
function asTheShopHasIt(stock: SheetStock): SheetStock {
	return stock.onHand
		? { ...stock, price: 0, count: Math.min(stock.count, 2) }
		: stock;
}

/** Stock without knots and a shop without limits. */
export const plainJob: fc.Arbitrary<SheetJob> = fc
	.record({
		stocks: fc.array(usualStock, { minLength: 1, maxLength: 3 }),
		parts: fc.array(part, { minLength: 1, maxLength: 12 }),
		kerf: fc.integer({ min: 0, max: 5 }),
	})
	.map(({ stocks, ...job }) => ({
		...job,
		stocks: stocks.map((stock) => {
			const { defects: _, ...sound } = asTheShopHasIt(stock);
			return sound;
		}),
	}));

/** Everything that a job may ask for. */
export const anyJob: fc.Arbitrary<SheetJob> = fc
	.record(
		{
			stocks: fc.array(usualStock, { maxLength: 3 }),
			parts: fc.array(part, { maxLength: 12 }),
			kerf: fc.oneof(
				{ weight: 4, arbitrary: fc.integer({ min: 0, max: 5 }) },
				{ weight: 1, arbitrary: fc.integer({ min: 100, max: 400 }) },
			),
			leastStrip: fc.integer({ min: 0, max: 30 }),
			longestFirstCut: fc.integer({ min: 50, max: 300 }),
			stages: fc.integer({ min: 1, max: 4 }),
			worthKeeping: fc.record({
				length: fc.integer({ min: 0, max: 100 }),
				width: fc.integer({ min: 0, max: 100 }),
			}),
		},
		{ requiredKeys: ["stocks", "parts", "kerf"] },
	)
	.map(({ stocks, ...job }) => ({
		...job,
		stocks: stocks.map(asTheShopHasIt),
	}));

/** So many sheets cut up without a rest: fewer cannot hold the parts. */
export interface CutUp {
	readonly job: SheetJob;
	readonly sheets: number;
}

/** Sheets of 240 x 120, each cut through at random places (in sixths, as makers do) until `parts` have come off. */
export const cutUpSheets: fc.Arbitrary<CutUp> = fc
	.record({
		sheets: fc.integer({ min: 1, max: 3 }),
		cuts: fc.array(
			fc.record({
				which: fc.nat(),
				along: fc.constantFrom("x" as const, "y" as const),
				at: fc.integer({ min: 1, max: 5 }),
			}),
			{ minLength: 2, maxLength: 10 },
		),
		kerf: fc.integer({ min: 0, max: 4 }),
		turns: fc.boolean(),
	})
	.map(({ sheets, cuts, kerf, turns }) => {
		const pieces: { length: number; width: number }[] = Array.from(
			{ length: sheets },
			() => ({ length: 240, width: 120 }),
		);
		for (const { which, along, at } of cuts) {
			const index = which % pieces.length;
			const piece = pieces[index] as { length: number; width: number };
			const way = along === "x" ? "length" : "width";
			const first = Math.floor((piece[way] * at) / 6);
			const second = piece[way] - first - kerf;
			if (first < 8 || second < 8) continue;
			pieces[index] = { ...piece, [way]: first };
			pieces.push({ ...piece, [way]: second });
		}
		return {
			sheets,
			job: {
				stocks: [
					{
						id: "sheet",
						length: 240,
						width: 120,
						price: 1,
						count: Number.POSITIVE_INFINITY,
					},
				],
				parts: pieces.map((piece, index) => ({
					id: `${index}`,
					...piece,
					count: 1,
					turns,
				})),
				kerf,
			},
		};
	});
