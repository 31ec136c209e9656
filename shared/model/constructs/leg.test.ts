// Legs: where their layers stand, how they are shaped, what a left and a right one share.

import { describe, expect, test } from "vitest";
import { built, inInches } from "../../../tests/harness/built.ts";

const box = `
  box case {
    outside 54 x 14 5/8 x 15 3/4
    top at 21 from floor
    panels top, bottom, left, right of ply.three-quarter
  }
`;

const pair = (lines: string): string => `piece bench {
  ${box}
  leg front-left, front-right handed {
    against outside case.left
    set-back 2 from case.front
    layer inner of oak.eight-quarter 2 3/4 wide from floor up to case.bottom
    layer outer of oak.four-quarter 2 3/4 wide from floor up to 5 above case.bottom
    ${lines}
  }
}`;

describe("layers", () => {
	test("one that ends under the box stands on its inner side, the other laps it", () => {
		const { corners, ids } = built(pair(""));
		expect(ids).toEqual([]);
		const underside = 21 - (14 + 5 / 8);
		expect(corners("front-left.inner")).toEqual([
			[0, 0, 15 + 3 / 4 - 2 - (2 + 3 / 4)],
			[1 + 3 / 4, underside, 15 + 3 / 4 - 2],
		]);
		const [min, max] = corners("front-left.outer");
		expect(min[0]).toBeCloseTo(-3 / 4, 9);
		expect(max[0]).toBeCloseTo(0, 9);
		expect(max[1]).toBeCloseTo(underside + 45 / 64 + 5, 9);
	});

	test("the right one is the mirror image about the middle of the box", () => {
		const { corners } = built(pair(""));
		expect(corners("front-right.inner")[0][0]).toBeCloseTo(54 - (1 + 3 / 4), 9);
		expect(corners("front-right.inner")[1][0]).toBeCloseTo(54, 9);
		expect(corners("front-right.outer")[0][0]).toBeCloseTo(54, 9);
		expect(corners("front-right.outer")[1][0]).toBeCloseTo(54 + 3 / 4, 9);
	});

	test("boards are bought longer and wider, and sawn heavy before the glue-up", () => {
		const { part } = built(pair("heavy 3/32 on each edge"));
		const [rough, heavy] = part("front-left.outer").stages;
		const length = 21 - (14 + 5 / 8) + 45 / 64 + 5;
		expect(rough?.stage).toBe("rough");
		expect(rough && inInches(rough.length)).toBeCloseTo(length + 1, 9);
		expect(rough && inInches(rough.width)).toBeCloseTo(
			2 + 3 / 4 + 2 * (3 / 32) + 1 / 4,
			9,
		);
		expect(rough && inInches(rough.thick)).toBeCloseTo(1, 9);
		expect(heavy?.stage).toBe("heavy");
		expect(heavy && inInches(heavy.width)).toBeCloseTo(
			2 + 3 / 4 + 2 * (3 / 32),
			9,
		);
		expect(inInches(part("front-left.outer").width)).toBe(2 + 3 / 4);
	});

	test("layers meet face to face, one under the box meets its panels", () => {
		const { piece } = built(pair(""));
		const joints = piece.joints.map(({ id, kind }) => `${kind} ${id}`);
		expect(joints).toContain("face front-left.inner~front-left.outer");
		expect(joints).toContain("butt case.left~front-left.inner");
		expect(joints).toContain("butt case.bottom~front-left.inner");
		expect(joints).toContain("butt case.right~front-right.inner");
	});

	test("a join in the pair reads left as right in the mirror", () => {
		const { piece, ids } = built(
			pair("join outer to case.left { screw #10 x 1 1/4 { from inside } }"),
		);
		expect(ids).toEqual([]);
		const screwed = piece.joints
			.filter((joint) => joint.fasteners.length > 0)
			.map((joint) => joint.id);
		expect(screwed).toHaveLength(2);
		expect(screwed.join()).toMatch(/case\.left/);
		expect(screwed.join()).toMatch(/case\.right/);
		const directions = piece.joints.flatMap((joint) =>
			joint.fasteners.map((run) => run.direction[0]),
		);
		expect(directions).toEqual([-1, 1]);
	});

	test("under a part all layers stand inward from the set-in face", () => {
		const { corners, ids } = built(`piece stool {
      part seat { of oak.six-quarter; size 20 x 14; bottom at 17 up from floor }
      leg a, b handed {
        against under seat
        set-in 3 from seat.left
        set-back 2 from seat.front
        layer one of oak.four-quarter 2 wide from floor up to seat
        layer two of oak.four-quarter 2 wide from floor up to seat
      }
    }`);
		expect(ids).toEqual([]);
		expect(corners("a.two")[0]).toEqual([3, 0, 14 - 2 - 2]);
		expect(corners("a.one")[0][0]).toBe(3 + 3 / 4);
		expect(corners("a.one")[1]).toEqual([3 + 2 * (3 / 4), 17, 14 - 2]);
		expect(corners("b.two")[1][0]).toBe(20 - 3);
		expect(corners("b.one")[0][0]).toBe(20 - 3 - 2 * (3 / 4));
	});

	test("a height of a leg can be named like that of any thing", () => {
		const { piece } = built(
			pair("").replace(/}$/, "mark tall = front-left.height\n}"),
		);
		const tall = piece.sizes.get("tall");
		expect(tall && inInches(tall)).toBeCloseTo(
			21 - (14 + 5 / 8) + 45 / 64 + 5,
			9,
		);
	});
});

describe("shapes and ends", () => {
	const shape = "shape back { cut-in 0 at 6 from floor; cut-in 1/2 at floor }";
	const end = "end top { angled 45 deg; falls outward; long-point inside }";

	test("a straight cut takes a wedge off every layer", () => {
		const plain = built(pair("")).part("front-left.inner").volume;
		const cut = built(pair(shape)).part("front-left.inner").volume;
		// A triangle 6 high and 1/2 deep, through 1 3/4.
		expect((plain - cut) / 25.4 ** 3).toBeCloseTo(
			((6 * (1 / 2)) / 2) * (1 + 3 / 4),
			6,
		);
	});

	test("an angled end takes a wedge off the layers that reach it, outward", () => {
		const plain = built(pair(""));
		const { part } = built(pair(end));
		for (const leg of ["front-left", "front-right"]) {
			const before = plain.part(`${leg}.outer`).volume;
			// At 45 degrees the drop is the thickness: half a square 3/4 by 3/4, 2 3/4 wide.
			expect((before - part(`${leg}.outer`).volume) / 25.4 ** 3).toBeCloseTo(
				((3 / 4) ** 2 / 2) * (2 + 3 / 4),
				6,
			);
			expect(part(`${leg}.inner`).volume).toBe(
				plain.part(`${leg}.inner`).volume,
			);
		}
		// The wood that is left lies nearer to the box than the middle of the blank.
		expect(part("front-left.outer").centre[0]).toBeGreaterThan((-3 / 8) * 25.4);
		expect(part("front-right.outer").centre[0]).toBeLessThan(
			(54 + 3 / 8) * 25.4,
		);
		expect(part("front-left.outer").edges).toEqual([
			{
				where: "top end",
				work: "angle",
				text: "falls outward 45°, long point inside",
			},
		]);
	});

	test("left and right are alike until front differs from back and inside from outside", () => {
		expect(built(pair(shape)).part("front-left.outer").hand).toBeUndefined();
		expect(built(pair(end)).part("front-left.outer").hand).toBeUndefined();
		const both = built(pair(`${shape}\n${end}`));
		expect(both.part("front-left.outer").hand).toBe("left");
		expect(both.part("front-right.outer").hand).toBe("right");
		expect(both.part("front-right.outer").handedFrom).toBe("end top angled");
		// The inner one is cut square: turned round, a left one is a right one.
		expect(both.part("front-left.inner").hand).toBeUndefined();
	});

	test("the thinnest place is told with its height", () => {
		const { piece } = built(
			pair(`${shape}\ntaper inside 1/4 from 6 up from floor to floor`),
		);
		const leg = piece.legs[0];
		expect((leg?.thinnest.depth ?? 0) / 25.4).toBeCloseTo(2 + 3 / 4 - 1 / 2, 9);
		expect(leg?.thinnest.depthAt).toBe(0);
		expect((leg?.thinnest.breadth ?? 0) / 25.4).toBeCloseTo(
			1 + 3 / 4 + 3 / 4 - 1 / 4,
			9,
		);
		expect(leg?.hand).toBe("left");
	});

	test("a cut that leaves nothing is told in sizes", () => {
		const { findings } = built(
			pair("shape back { cut-in 3 at floor; cut-in 0 at 6 from floor }"),
		);
		expect(findings.map((one) => one.id)).toEqual(["cannot-be-cut"]);
		expect(findings[0]?.message).toContain("3 in");
	});

	test("a long point on the wrong side contradicts the fall", () => {
		const { ids } = built(
			pair("end top { angled 12 deg; falls outward; long-point outside }"),
		);
		expect(ids).toEqual(["end-contradicts"]);
	});
});

describe("what is not said well enough", () => {
	const leg = (lines: string): readonly string[] =>
		built(`piece bench { ${box} leg a { ${lines} } }`).ids;
	const layer =
		"layer one of oak.four-quarter 2 wide from floor up to case.bottom";

	test.each([
		["nothing at all", "", ["missing-line", "missing-line"]],
		["no set-back", `against outside case.left; ${layer}`, ["missing-line"]],
		[
			"a set-back from nowhere",
			`against outside case.left; set-back 2; ${layer}`,
			["datum-unclear"],
		],
		[
			"against the front",
			`against outside case.front; set-back 2 from case.front; ${layer}`,
			["not-a-datum"],
		],
		[
			"a layer of no height",
			"against outside case.left; set-back 2 from case.front; layer one of oak.four-quarter 2 wide from floor up to floor",
			["no-size"],
		],
		[
			"an end that a leg has not",
			`against outside case.left; set-back 2 from case.front; ${layer}; end left { angled 5 deg }`,
			["no-such-end"],
		],
		[
			"a flat angle",
			`against outside case.left; set-back 2 from case.front; ${layer}; end top { angled 95 deg }`,
			["bad-angle"],
		],
		[
			"one face cut twice",
			`against outside case.left; set-back 2 from case.front; ${layer}; shape back { cut-in 1/4 at floor }; taper back 1/4 from 5 from floor to floor`,
			["said-twice"],
		],
	])("%s", (_, lines, ids) => {
		expect(leg(lines)).toEqual(ids);
	});

	test("two legs in one place, three that are handed", () => {
		const ids = (head: string): readonly string[] =>
			built(
				`piece bench { ${box} leg ${head} { against outside case.left; set-back 2 from case.front; ${layer} } }`,
			).ids;
		expect(ids("a, b")).toEqual(["handed-pair"]);
		expect(ids("a, b, c handed")).toEqual(["handed-pair"]);
		expect(ids("a handed")).toEqual(["handed-pair"]);
	});
});

describe("directions in a handed pair", () => {
	const points = (place: string) => {
		const { ids, piece } = built(`piece stool {
  part seat { of oak.eight-quarter; size 30 x 14; top at 18 from floor }
  leg one, two handed {
    against under seat
    set-in 4 from seat.left
    set-back 2 from seat.front
    layer inner of oak.eight-quarter 3 wide from floor up to seat
    join inner to seat { dowel 3/8 x 2 { at ${place} } }
  }
}`);
		expect(ids).toEqual([]);
		return piece.joints
			.filter(({ fasteners }) => fasteners.length > 0)
			.map(({ fasteners }) => (fasteners[0]?.points[0]?.[0] as number) / 25.4);
	};

	test.each([
		["1/2 right from inner.left", 4.5],
		["1/4 left from inner.right", 4 + 1.75 - 0.25],
		["5 right from seat.left", 5],
		["(inner.right - inner.left) / 2 right from inner.left", 4 + 1.75 / 2],
	])("%s is read in the mirror by the right one", (place, left) => {
		const [one, two] = points(place);
		expect(one).toBeCloseTo(left, 9);
		expect(two).toBeCloseTo(30 - left, 9);
	});
});
