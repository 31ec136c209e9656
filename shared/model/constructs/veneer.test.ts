// Veneer: the faces that it covers, what is cut over, what is registered.

import { describe, expect, test } from "vitest";
import { built, inInches } from "../../../tests/harness/built.ts";

const t = 45 / 64;
const skin = (lines: string, box = ""): string => `piece cabinet {
  box case {
    outside 30 x 20 x 12
    panels top, bottom, left, right of ply.three-quarter
    ${box}
  }
  trim lip { on case.front.edges; of oak.four-quarter; thick 3/8 }
  veneer skin { of skins.oak; ${lines} }
}`;

describe("faces outside", () => {
	test("a sheet covers its side of the box, the ends of its neighbours with it", () => {
		const { part, corners, ids, piece } = built(skin("on case.left, case.top"));
		expect(ids).toEqual([]);
		// Grain up in the left side, across in the top, as in the panels under them.
		expect(inInches(part("skin.left").length)).toBe(20);
		expect(inInches(part("skin.left").width)).toBe(12);
		expect(inInches(part("skin.top").length)).toBe(30);
		expect(inInches(part("skin.top").width)).toBe(12);
		expect(corners("skin.left")[0]).toEqual([-1 / 42, 0, 0]);
		expect(corners("skin.left")[1][0]).toBe(0);
		expect(corners("skin.top")[0][1]).toBe(20);
		expect(piece.veneers[0]?.sheets.map(({ face }) => face)).toEqual([
			"outside",
			"outside",
		]);
	});

	test("it runs over the trim, and over each edge by the overhang", () => {
		const { part, piece } = built(
			skin("on case.left, case.top; over lip; overhang 1/4"),
		);
		expect(inInches(part("skin.left").width)).toBe(12 + 3 / 8);
		const heavy = part("skin.left").stages[0];
		expect(heavy?.stage).toBe("heavy");
		expect(heavy && inInches(heavy.length)).toBe(20 + 2 * (1 / 4));
		expect(heavy && inInches(heavy.width)).toBe(12 + 3 / 8 + 2 * (1 / 4));
		expect(piece.veneers[0]?.over).toEqual(["lip"]);
	});

	test("an edge against a shim has no overhang", () => {
		const { part, piece, ids } = built(
			skin("on case.left, case.top; overhang 1/4; shim 1/16 at case.top.back"),
		);
		expect(ids).toEqual([]);
		const top = piece.veneers[0]?.sheets[1];
		expect(
			top?.overhang.map(({ edge, size, registered }) => [
				edge,
				inInches(size),
				registered,
			]),
		).toEqual([
			["left", 1 / 4, false],
			["right", 1 / 4, false],
			["back", 0, true],
			["front", 1 / 4, false],
		]);
		const heavy = part("skin.top").stages[0];
		expect(heavy && inInches(heavy.width)).toBe(12 + 1 / 4);
	});

	test("5/16 in is cut over where nothing is said: common practice, no source", () => {
		const { part } = built(skin("on case.left"));
		const heavy = part("skin.left").stages[0];
		expect(heavy && inInches(heavy.length)).toBe(20 + 2 * (5 / 16));
	});

	test("the grain can be turned, not into the thickness", () => {
		const { part } = built(skin("on case.top; grain deep"));
		expect(inInches(part("skin.top").length)).toBe(12);
		expect(built(skin("on case.top; grain up")).ids).toEqual(["grain-through"]);
	});
});

describe("faces inside", () => {
	test("only the clear room is covered", () => {
		const { part, corners } = built(
			skin("on case.left; faces both", "back of ply.quarter inset 1"),
		);
		expect(inInches(part("skin.left-inside").length)).toBe(20 - 2 * t);
		// From the front of the back: 1 and the back's 13/64 in.
		expect(inInches(part("skin.left-inside").width)).toBe(12 - 1 - 13 / 64);
		expect(corners("skin.left-inside")[0][0]).toBe(t);
		expect(inInches(part("skin.left").length)).toBe(20);
	});

	test("a board's own face can be named", () => {
		const { corners, ids } = built(`piece desk {
      part top { of ply.three-quarter; size 40 x 20; bottom at 29 up from floor }
      veneer skin { on top.top, top.bottom; of skins.oak }
    }`);
		expect(ids).toEqual([]);
		expect(corners("skin.top")[0]).toEqual([0, 29 + t, 0]);
		expect(corners("skin.top-inside")[1]).toEqual([40, 29, 20]);
	});
});

test("the order is told by paths, with short names too", () => {
	const { piece, part, ids } = built(
		skin("on case.left, case.right, case.top; order left, case.right, top"),
	);
	expect(ids).toEqual([]);
	expect(piece.veneers[0]?.order).toEqual([
		"case.left",
		"case.right",
		"case.top",
	]);
	expect(part("skin.top").notes).toContain("laid 3 of 3");
});

test("the ground names a coating", () => {
	const { piece } = built(
		skin("on case.top; ground { coats 2 of shellac; sand 180 before }"),
	);
	const coat = piece.veneers[0]?.ground[0];
	expect(coat?.coats).toBe(2);
	expect(coat?.stock?.coating?.kind).toBe("ground");
});

test("each sheet is a joint with its panel", () => {
	const { piece } = built(skin("on case.left, case.top"));
	expect(
		piece.joints
			.filter(({ kind }) => kind === "veneer")
			.map(({ id, glue }) => [id, glue]),
	).toEqual([
		["case.left~skin.left", true],
		["case.top~skin.top", true],
	]);
});

test("a sheet is a datum for what stands against it", () => {
	const { corners, ids } = built(
		skin("on case.left").replace(
			/}$/,
			`leg a {
        against outside skin.left
        set-back 2 from case.front
        layer one of oak.four-quarter 2 wide from floor up to 5 up from floor
      }
    }`,
		),
	);
	expect(ids).toEqual([]);
	expect(corners("a.one")[1][0]).toBeCloseTo(-1 / 42, 12);
});

describe("what cannot be veneered", () => {
	test.each([
		["nothing", "", ["missing-line"]],
		["an edge", "on case.top.front", ["not-a-part"]],
		["a size", "on case.width", ["not-a-part"]],
		["over a box", "on case.top; over case", ["not-a-trim"]],
		[
			"a shim elsewhere",
			"on case.top; shim 1/16 at case.left.back",
			["not-an-edge"],
		],
		["an order of others", "on case.top; order case.left", ["not-veneered"]],
		["less than no overhang", "on case.top; overhang -1/4", ["negative-size"]],
		[
			"a misspelled coating",
			"on case.top; ground { coats 1 of shelac }",
			["unknown-coating"],
		],
	])("%s", (_, lines, ids) => {
		expect(built(skin(lines)).ids).toEqual(ids);
	});
});

test("veneer counts in the size over everything", () => {
	const { piece } = built(`piece chest {
  box case { outside 30 x 20 x 12; panels top, bottom, left, right of ply.three-quarter }
  veneer skin { on case.left, case.top; of skins.oak; ground { coats 1 of shellac } }
}`);
	expect(piece.overCase?.map(inInches)).toEqual([30, 20, 12]);
	const [width, height, depth] = (piece.overAll ?? []).map(inInches);
	expect(width).toBeCloseTo(30 + 1 / 42, 9);
	expect(height).toBeCloseTo(20 + 1 / 42, 9);
	expect(depth).toBe(12);
});
