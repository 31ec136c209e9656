// Parts whose grain runs on, and what is bought to spare: what these lines take and what they refuse.

import { describe, expect, test } from "vitest";
import { built } from "../../../tests/harness/built.ts";

const bench = (lines: string): string => `piece bench {
  box case {
    outside 40 x 16 x 14
    panels top, bottom, left, right of ply.three-quarter
    back of ply.quarter applied
  }
  part seat { of oak.four-quarter; size 40 x 14; strips 3; bottom at case.top }
  ${lines}
}`;

describe("match", () => {
	test("parts in their order, along the grain unless it says across", () => {
		const { piece, ids } = built(
			bench("match case.left, case.right across\nmatch case.top, case.bottom"),
		);
		expect(ids).toEqual([]);
		expect(
			piece.matches.map(({ parts, way }) => [
				way,
				...parts.map(({ path }) => path),
			]),
		).toEqual([
			["across", "case.left", "case.right"],
			["along", "case.top", "case.bottom"],
		]);
	});

	test.each([
		["one alone", "match case.left"],
		["two materials", "match case.left, case.back"],
		["a part twice", "match case.left, case.top, case.left"],
		[
			"a part in two lines",
			"match case.left, case.top\nmatch case.bottom, case.right, case.top",
		],
		["a panel of strips", "match seat, case.top, case.left"],
	])("%s is told", (_, lines) => {
		expect(built(bench(lines)).ids).toEqual(["cannot-match"]);
	});
});

describe("spare", () => {
	test("a share of what is counted", () => {
		expect(built(bench("spare 10 %")).piece.spare).toBeCloseTo(0.1, 12);
		expect(built(bench("")).piece.spare).toBe(0);
	});

	test.each([
		["more than as much again", "spare 150 %", ["out-of-range"]],
		["no share", "spare 1/2 in", ["wrong-dimension"]],
	])("%s is told", (_, line, ids) => {
		expect(built(bench(line)).ids).toEqual(ids);
	});
});

describe("what the shop can do", () => {
	test("strips, first cut and stages", () => {
		const { piece, ids } = built(
			bench("shop { saw kerf 0; least-strip 3/4; first-cut 50; stages 3 }"),
		);
		expect(ids).toEqual([]);
		const { kerf, leastStrip, firstCut, stages } = piece.shop;
		expect(
			[kerf, leastStrip, firstCut].map((one) => one?.value.toNumber()),
		).toEqual([0, 19.05, 1270]);
		expect(stages).toBe(3);
	});

	test("a sheet that is never cut is told", () => {
		const { piece, ids } = built(bench("shop { stages 0 }"));
		expect(ids).toEqual(["not-a-count"]);
		expect(piece.shop.stages).toBeUndefined();
	});
});
