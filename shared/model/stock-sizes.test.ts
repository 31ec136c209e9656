// What a stock file says of sizes, prices and what lies in the shop, and what it may not say.

import { describe, expect, test } from "vitest";
import { built, inInches } from "../../tests/harness/built.ts";
import type { Stock } from "./types.ts";

function stocksOf(text: string): {
	readonly stock: (id: string) => Stock;
	readonly ids: readonly string[];
} {
	const { design, ids } = built(`${text}
piece shelf { part board { of ply.three-quarter; size 30 x 8 } }`);
	return {
		stock: (id) => design.stocks.get(id) as Stock,
		ids,
	};
}

describe("sizes and prices", () => {
	test("each size has its own price and count; the variant's price is for the others", () => {
		const { stock, ids } = stocksOf(`sheet birch {
  size 96 x 48
  trim 1/4
  keep 12 x 6
  variant plain { thick 1/2; price 60 }
  variant sized { thick 3/4; trim 1/8; price 90; size 96 x 48; size 60 x 60 price 70 in-stock 2 }
}`);
		expect(ids).toEqual([]);
		const plain = stock("birch.plain");
		expect(plain.sizes.map(({ price, inStock }) => [price, inStock])).toEqual([
			[undefined, undefined],
		]);
		expect(inInches(plain.trim as NonNullable<Stock["trim"]>)).toBe(1 / 4);
		expect(inInches((plain.keep as NonNullable<Stock["keep"]>).width)).toBe(6);
		const sized = stock("birch.sized");
		expect(inInches(sized.trim as NonNullable<Stock["trim"]>)).toBe(1 / 8);
		expect(
			sized.sizes.map(({ price, inStock }) => [price?.toNumber(), inStock]),
		).toEqual([
			[undefined, undefined],
			[70, 2],
		]);
	});

	test("battens are sold by length, and their parts have no rough size", () => {
		const { piece, design, ids } = built(`board pine {
  variant batten { planed 3/4; lengths 96, 72; price 1.40 per foot }
  variant slat { planed 3/4; lengths 2 m to 3 m; price 4.60 per metre }
}
piece rack {
  part rail { of pine.batten; size 30 x 3/4 }
}`);
		expect(ids).toEqual([]);
		const batten = design.stocks.get("pine.batten");
		expect(batten?.per).toBe("foot");
		expect(batten?.soldLengths.map(inInches)).toEqual([96, 72]);
		expect(batten?.lengths && inInches(batten.lengths.high)).toBe(96);
		expect(batten?.lengths && inInches(batten.lengths.low)).toBe(72);
		expect(design.stocks.get("pine.slat")?.per).toBe("metre");
		expect(piece.parts[0]?.stages).toEqual([]);
	});
});

describe("on hand", () => {
	test("with its count and its defects", () => {
		const { stock, ids } = stocksOf(`board elm {
  variant inch {
    rough 1; planed 3/4
    on-hand 84 x 6 3/4 count 3
    on-hand 60 x 5 { defect 30 to 34; defect 50 to 52 across 0 to 2 }
  }
}`);
		expect(ids).toEqual([]);
		const [three, one] = stock("elm.inch").onHand;
		expect(three?.count).toBe(3);
		expect(one?.count).toBe(1);
		expect(
			one?.defects.map(({ from, to, across }) => [
				inInches(from),
				inInches(to),
				across && inInches(across.to),
			]),
		).toEqual([
			[30, 34, undefined],
			[50, 52, 2],
		]);
	});

	test.each([
		["a defect beyond the end", "on-hand 60 x 5 { defect 58 to 62 }"],
		["a defect the wrong way round", "on-hand 60 x 5 { defect 34 to 30 }"],
		["wider than the board", "on-hand 60 x 5 { defect 3 to 4 across 2 to 6 }"],
		["no size", "on-hand 0 x 5"],
	])("%s is told", (_, line) => {
		const { ids } = stocksOf(
			`board elm { variant inch { rough 1; planed 3/4; ${line} } }`,
		);
		expect(ids).toEqual(["no-size"]);
	});

	test("half a board cannot be counted", () => {
		const { ids } = stocksOf(
			"board elm { variant inch { rough 1; planed 3/4; on-hand 60 x 5 count 1/2 } }",
		);
		expect(ids).toEqual(["not-a-count"]);
	});
});
