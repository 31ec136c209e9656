// What stands against a veneered or trimmed face stands over what lies on it.

import { describe, expect, test } from "vitest";
import { built, inInches } from "../../../tests/harness/built.ts";

const skin = 1 / 42;

const bench = (more: string, against = "case.left", top = "case.bottom") =>
	built(`piece bench {
  box case {
    outside 40 x 10 x 14
    top at 20 from floor
    panels top, bottom, left, right of ply.three-quarter
  }
  leg one, two handed {
    against outside ${against}
    set-back 2 from case.front
    layer inner of oak.eight-quarter 3 wide from floor up to ${top}
    layer outer of oak.four-quarter 3 wide from floor up to 4 above case.bottom
    join outer to case.left { screw #8 x 1 1/4 { from inside; at 2 up from case.bottom } }
  }
  ${more}
}`);

describe("a leg beside a veneered side", () => {
	const on = (lines: string) =>
		`veneer skin { ${lines}; of skins.oak; ground { coats 1 of shellac } }`;
	test.each([
		["on case.left, case.right", skin, skin],
		["on case", skin, skin],
		["on case.left", skin, 0],
		["on case.right.outside", 0, skin],
		["on case.left; faces both", skin, 0],
		["on case.left; faces inside", 0, 0],
		["on case.left.inside", 0, 0],
		["on case.top", 0, 0],
	])("%s", (lines, left, right) => {
		const { ids, corners } = bench(on(lines));
		expect(ids).toEqual([]);
		expect(corners("one.outer")[1][0]).toBeCloseTo(-left, 9);
		expect(corners("one.inner")[0][0]).toBeCloseTo(-left, 9);
		expect(corners("two.outer")[0][0]).toBeCloseTo(40 + right, 9);
	});

	test("the design tells it, at the layer that laps the side", () => {
		const { part } = bench(on("on case.left"));
		expect(part("one.outer").notes).toEqual(["placed over the veneer `skin`"]);
		expect(part("one.inner").notes).toEqual([]);
		expect(part("two.outer").notes).toEqual([]);
	});

	test("told from the veneer itself, nothing is added", () => {
		const { corners } = bench(on("on case.left, case.right"), "skin.left");
		expect(corners("one.outer")[1][0]).toBeCloseTo(-skin, 9);
	});

	test("a veneer over a trim that follows the legs makes no circle", () => {
		const { ids } = bench(
			`trim lip { on case.front.edges; of oak.four-quarter; thick 3/8; fasten { glue } }
       veneer skin { on case.left, case.right; over lip; of skins.oak; ground { coats 1 of shellac } }
       part rail { of oak.four-quarter; size 10 x 3; lies across facing front; left at one.right }
       veneer face { on rail; of skins.oak; ground { coats 1 of shellac } }`,
		);
		expect(ids).toEqual([]);
	});
});

describe("a leg under a veneered panel", () => {
	test("ends at the veneer", () => {
		const { ids, part } = bench(
			"veneer skin { on case.bottom; of skins.oak; ground { coats 1 of shellac } }",
		);
		expect(ids).toEqual([]);
		expect(inInches(part("one.inner").length)).toBeCloseTo(10 - skin, 9);
		expect(part("one.inner").notes).toHaveLength(1);
	});

	test("veneered inside it ends at the panel", () => {
		const { part } = bench(
			"veneer skin { on case.bottom; faces inside; of skins.oak; ground { coats 1 of shellac } }",
		);
		expect(inInches(part("one.inner").length)).toBe(10);
	});

	test("so does one under the lower face of a lone board, or its trimmed edge", () => {
		const stool = (lies: string, cover: string) =>
			built(`piece stool {
  part seat { of ply.three-quarter; size 20 x 12; lies ${lies}; top at 18 from floor }
  leg one {
    against under seat
    set-in 2 from seat.left
    set-back 2 from seat.front
    layer only of oak.eight-quarter 2 wide from floor up to seat
  }
  ${cover}
}`);
		const flat = stool(
			"across facing up",
			"veneer skin { on seat; faces both; of skins.oak; ground { coats 1 of shellac } }",
		);
		expect(flat.ids).toEqual([]);
		expect(inInches(flat.part("one.only").length)).toBeCloseTo(
			18 - 45 / 64 - skin,
			9,
		);
		const above = stool(
			"across facing up",
			"veneer skin { on seat; of skins.oak; ground { coats 1 of shellac } }",
		);
		expect(inInches(above.part("one.only").length)).toBeCloseTo(
			18 - 45 / 64,
			9,
		);
		const edge = stool(
			"across facing front",
			"trim edge { on seat.bottom; of oak.four-quarter; thick 1/2; fasten { glue } }",
		);
		expect(inInches(edge.part("one.only").length)).toBeCloseTo(
			18 - 12 - 1 / 2,
			9,
		);
	});
});

test("a layer may end where its neighbour does, whichever is written first", () => {
	const { ids, part } = built(`piece stool {
  part seat { of ply.three-quarter; size 20 x 12; top at 18 from floor }
  leg one {
    against under seat
    set-in 2 from seat.left
    set-back 2 from seat.front
    layer outer of oak.four-quarter 2 wide from floor up to inner.top
    layer inner of oak.four-quarter 2 wide from floor up to 3 down from seat.bottom
  }
}`);
	expect(ids).toEqual([]);
	expect(inInches(part("one.outer").length)).toBeCloseTo(18 - 45 / 64 - 3, 9);
});

test("layers that end at one another are told in a circle, once", () => {
	const { ids } = built(`piece stool {
  part seat { of ply.three-quarter; size 20 x 12; top at 18 from floor }
  leg one {
    against under seat
    set-in 2 from seat.left
    set-back 2 from seat.front
    layer outer of oak.four-quarter 2 wide from floor up to inner.top
    layer inner of oak.four-quarter 2 wide from floor up to outer.top
  }
}`);
	expect(ids).toEqual(["circle"]);
});

test("a box stands on legs that it tells the place of", () => {
	const { ids, corners } = built(`piece stool {
  box case {
    outside 20 x 6 x 12
    panels top, bottom, left, right of ply.three-quarter
    bottom at one
  }
  leg one {
    against under case
    set-in 2 from case.left
    set-back 2 from case.front
    layer only of oak.eight-quarter 2 wide from floor up to 9 up from floor
  }
}`);
	expect(ids).toEqual([]);
	expect(corners("case.bottom")[0][1]).toBe(9);
	expect(corners("one.only")[0][0]).toBe(2);
});
