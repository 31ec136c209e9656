// Finishes, loads, steps and aids: what they name, and what they may not.

import { describe, expect, test } from "vitest";
import { built, inInches } from "../../../tests/harness/built.ts";

const bench = (lines: string): string => `piece bench {
  box case {
    outside 40 x 16 x 14
    panels top, bottom, left, right of ply.three-quarter
  }
  ${lines}
}`;

describe("finish", () => {
	test("tells faces, coats and sanding; the whole piece where no thing is named", () => {
		const { piece, ids } = built(
			bench(
				"finish clear { faces outside; coats 4 of hard-oil; sand 320 between }",
			),
		);
		expect(ids).toEqual([]);
		const finish = piece.finishes[0];
		expect(finish?.name).toBe("clear");
		expect(finish?.faces).toBe("outside");
		expect(finish?.on).toEqual([]);
		expect(finish?.coats[0]?.coats).toBe(4);
		expect(finish?.coats[0]?.stock?.id).toBe("hard-oil");
		expect(finish?.sanding).toEqual([{ grit: 320, when: "between" }]);
	});

	test("on things and parts by their paths", () => {
		const { piece } = built(
			bench("finish clear { on case, case.left; coats 1 of shellac }"),
		);
		expect(piece.finishes[0]?.on).toEqual(["case", "case.left"]);
	});

	test("a coating that no stock file knows stays a name", () => {
		const { piece, ids } = built(bench("finish clear { coats 2 of beeswax }"));
		expect(ids).toEqual([]);
		expect(piece.finishes[0]?.coats[0]?.coating).toBe("beeswax");
		expect(piece.finishes[0]?.coats[0]?.stock).toBeUndefined();
	});

	test.each([
		["a board as coating", "coats 2 of oak", ["not-a-material"]],
		["on a size", "on case.width; coats 2 of hard-oil", ["not-a-thing"]],
		["on nothing there", "on lid; coats 2 of hard-oil", ["unknown-name"]],
		["half a coat", "coats 1/2 of hard-oil", ["not-a-count"]],
	])("%s", (_, lines, ids) => {
		expect(built(bench(`finish clear { ${lines} }`)).ids).toEqual(ids);
	});
});

describe("load", () => {
	test("stands on a part, or on the part of a face", () => {
		const { piece, ids } = built(
			bench("load 200 lb on case.top.front\nload 18 kg on case.bottom"),
		);
		expect(ids).toEqual([]);
		expect(piece.loads.map(({ where, part }) => [where, part?.path])).toEqual([
			["case.top.front", "case.top"],
			["case.bottom", "case.bottom"],
		]);
		// 1 lb = 0.45359237 kg exactly.
		expect(piece.loads[0]?.mass.value.toNumber()).toBeCloseTo(
			200 * 0.45359237,
			9,
		);
		expect(piece.loads[0]?.perLength).toBe(false);
	});

	test("per foot is told per metre", () => {
		const { piece } = built(
			bench("load 35 lb per ft on case.bottom\nload 50 kg per m on case.top"),
		);
		// 1 ft = 0.3048 m exactly.
		expect(piece.loads[0]?.mass.value.toNumber()).toBeCloseTo(
			(35 * 0.45359237) / 0.3048,
			9,
		);
		expect(piece.loads[0]?.perLength).toBe(true);
		expect(piece.loads[1]?.mass.value.toNumber()).toBe(50);
	});

	test.each([
		["nothing at all", "load 0 kg on case.top", ["no-size"]],
		["a length", "load 3 in on case.top", ["wrong-dimension"]],
		["on a size", "load 3 kg on case.width", ["not-a-part"]],
		["on nothing there", "load 3 kg on shelf", ["unknown-name"]],
	])("%s", (_, line, ids) => {
		expect(built(bench(line)).ids).toEqual(ids);
	});
});

describe("step", () => {
	test("names parts, things and other steps", () => {
		const { piece, ids } = built(
			bench(`step dry-fit { do "clamp up without glue"; with case.left, case.top; before glue-up }
      step glue-up { do "glue"; with case; after dry-fit, case.left; wait 1 1/2 hours }`),
		);
		expect(ids).toEqual([]);
		expect(piece.steps[0]).toMatchObject({
			name: "dry-fit",
			what: "clamp up without glue",
			with: ["case.left", "case.top"],
			before: ["glue-up"],
			waitMinutes: 0,
		});
		expect(piece.steps[1]).toMatchObject({
			with: ["case.top", "case.bottom", "case.left", "case.right"],
			after: ["dry-fit", "case.left"],
			waitMinutes: 1.5 * 60,
		});
	});

	test.each([
		["nothing to do", "with case", ["missing-line"]],
		["with a size", 'do "x"; with case.width', ["not-a-part"]],
		["after what is not there", 'do "x"; after sanding', ["unknown-name"]],
		["a wait backward", 'do "x"; wait -1 hours', ["bad-wait"]],
		["a wait beyond a life", 'do "x"; wait 99999999 days', ["bad-wait"]],
	])("%s", (_, lines, ids) => {
		expect(built(bench(`step one { ${lines} }`)).ids).toEqual(ids);
	});
});

describe("aid", () => {
	test("has a size, a stock and what it serves", () => {
		const { piece, ids } = built(
			bench(
				"aid gauge { kind spacer; size 6 x 3; of ply.quarter; for case.left, case }",
			),
		);
		expect(ids).toEqual([]);
		const aid = piece.aids[0];
		expect(aid?.kind).toBe("spacer");
		expect(aid && inInches(aid.length)).toBe(6);
		expect(aid?.thick && inInches(aid.thick)).toBe(13 / 64);
		expect(aid?.serves).toEqual(["case.left", "case"]);
	});

	test("its own thickness counts before that of its stock", () => {
		const { piece } = built(
			bench("aid shim { kind shim; size 6 x 3 x 1/16; of ply.quarter }"),
		);
		const thick = piece.aids[0]?.thick;
		expect(thick && inInches(thick)).toBe(1 / 16);
	});

	test.each([
		["nothing", "", ["missing-line", "missing-line"]],
		["no size", "kind shim; size 0 x 3", ["no-size"]],
		["of a coating", "kind shim; size 1 x 3; of shellac", ["not-a-material"]],
	])("%s", (_, lines, ids) => {
		expect(built(bench(`aid one { ${lines} }`)).ids).toEqual(ids);
	});
});
