// Faces in expressions: from one to another is a length.

import { describe, expect, test } from "vitest";
import { built } from "../../tests/harness/built.ts";

const rack = (lines: string) =>
	built(`piece rack {
  box west {
    outside 30 x 20 x 10
    panels top, bottom, left, right of ply.three-quarter
    bottom at 4 from floor
    divider one of ply.three-quarter centred
  }
  part rail { of oak.four-quarter; size 6 x 3; left at 2 right from west.left }
  ${lines}
}`);

const inch = (built: ReturnType<typeof rack>, name: string) => {
	const size = built.piece.sizes.get(name);
	return size && size.value.toNumber() / 25.4;
};

const t = 45 / 64;

describe("from one face to another", () => {
	test.each([
		["west.right - west.left", 30],
		["west.one.left - west.left.inside", (30 - 3 * t) / 2],
		["west.left.inside - west.one.left", -(30 - 3 * t) / 2],
		["west.top.inside - west.bottom.inside", 20 - 2 * t],
		["west.top - floor", 24],
		["west.front - west.rear", 10],
		["rail.left - west.left", 2],
		["(rail.right) - (west.left) - 1/2", 7.5],
		["2 * (rail.right - rail.left) + 1", 13],
	])("%s", (text, want) => {
		const design = rack(`mark room = ${text}`);
		expect(design.ids).toEqual([]);
		expect(inch(design, "room")).toBeCloseTo(want, 9);
	});

	test("in a condition and a given", () => {
		// (30 - 3 x 45/64) / 2 = 13.945
		const condition = (least: number) =>
			rack(`must west.one.left - west.left.inside >= ${least} "records"`).ids;
		expect(condition(13)).toEqual([]);
		expect(condition(14)).toEqual(["must-fails"]);
		const design = rack("given room = west.right - west.left from 20 to 40");
		expect(design.ids).toEqual([]);
	});

	test("hangs on nothing but its own way", () => {
		const design = rack(
			`mark reach = shelf.right - west.left
  part shelf { of oak.four-quarter; size 8 x 3; bottom at reach up from floor }`,
		);
		expect(design.ids).toEqual([]);
		expect(inch(design, "reach")).toBeCloseTo(8, 9);
	});

	test("moves with what moves the faces: sheets, not the box", () => {
		const { piece } = rack("mark room = west.right.inside - west.left.inside");
		const feeds = piece.sizes.get("room")?.feeds ?? [];
		expect(feeds.map(({ weight }) => weight)).toEqual([-2]);
	});

	test("in a component the floor is its own", () => {
		const design = built(`component base {
  part foot { of oak.four-quarter; size 6 x 3; bottom at 2 up from floor }
  mark room = foot.bottom - floor
}
piece rack { make one from base { bottom at 10 up from floor } }`);
		expect(design.ids).toEqual([]);
		// The foot is all there is of it: it stands at 10, 2 over the floor of its component.
		expect(inch(design, "one.room")).toBeCloseTo(2, 9);
	});
});

describe("what is no length", () => {
	test.each([
		["west.top - west.left", "wrong-direction"],
		["west.front - floor", "wrong-direction"],
		["west.front + west.rear", "not-a-size"],
		["west.front - 2", "not-a-size"],
		["floor + 2", "not-a-size"],
	])("%s", (text, id) => {
		expect(new Set(rack(`mark room = ${text}`).ids)).toEqual(new Set([id]));
	});

	test("a condition on one face", () => {
		expect(rack("must west.front >= 4").ids).toEqual(["not-a-size"]);
	});
});
