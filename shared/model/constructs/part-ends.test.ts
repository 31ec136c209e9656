// Angled ends of single parts: what they take away, and where.

import { describe, expect, test } from "vitest";
import { built } from "../../../tests/harness/built.ts";
import { overlapOf } from "../../geometry/overlap.ts";

const rail = (lines: string, lies = "across facing front"): string =>
	`piece frame { part rail { of oak.four-quarter; size 20 x 4; lies ${lies}; ${lines} } }`;

describe("an angled end", () => {
	test("that falls outward is short above", () => {
		const plain = built(rail("")).part("rail");
		const { part, ids } = built(
			rail("end right { angled 45 deg; falls outward }"),
		);
		expect(ids).toEqual([]);
		// At 45 degrees half a square of the width, through the thickness.
		expect((plain.volume - part("rail").volume) / 25.4 ** 3).toBeCloseTo(
			((4 * 4) / 2) * (3 / 4),
			6,
		);
		expect(part("rail").centre[1]).toBeLessThan(plain.centre[1]);
		expect(part("rail").centre[0]).toBeLessThan(plain.centre[0]);
		expect(part("rail").edges).toEqual([
			{
				where: "right end",
				work: "angle",
				text: "falls outward 45°, long point bottom",
			},
		]);
	});

	test("that falls forward is short at the front", () => {
		const plain = built(rail("", "across facing up")).part("rail");
		const { part } = built(
			rail("end left { angled 45 deg; falls forward }", "across facing up"),
		);
		expect((plain.volume - part("rail").volume) / 25.4 ** 3).toBeCloseTo(
			((4 * 4) / 2) * (3 / 4),
			6,
		);
		expect(part("rail").centre[0]).toBeGreaterThan(plain.centre[0]);
		expect(part("rail").centre[2]).toBeLessThan(plain.centre[2]);
	});

	test("of a post falls forward at the top and at the bottom alike: a parallelogram", () => {
		const { part, ids } = built(
			rail(
				"end top { angled 30 deg; falls forward; long-point back }\nend bottom { angled 30 deg; falls forward; long-point front }",
				"up facing side",
			),
		);
		expect(ids).toEqual([]);
		const drop = 4 * Math.tan(Math.PI / 6);
		expect(part("rail").volume / 25.4 ** 3).toBeCloseTo(
			(20 - drop) * 4 * (3 / 4),
			6,
		);
		// Its middle does not move.
		expect(part("rail").centre[1] / 25.4).toBeCloseTo(10, 6);
	});
});

test.each([
	["the side of a board", "end top { angled 5 deg }", ["no-such-end"]],
	[
		"one end twice",
		"end left { angled 5 deg }\nend left { angled 6 deg }",
		["said-twice"],
	],
	["no angle", "end left { falls outward }", ["missing-line"]],
	["square", "end left { angled 0 deg }", ["bad-angle"]],
	[
		"a long point that is short",
		"end left { angled 5 deg; falls forward; long-point front }",
		["end-contradicts"],
	],
	["an end that leaves a point", "end left { angled 89 deg }", []],
])("%s", (_, lines, ids) => {
	expect(built(rail(lines)).ids).toEqual(ids);
});

test("a post alone has no inside", () => {
	expect(
		built(rail("end top { angled 5 deg; falls outward }", "up facing side"))
			.ids,
	).toEqual(["fall-unclear"]);
});

describe("ends by the sides that they fall to", () => {
	const ends = (lines: string, lies: string) => {
		const { ids, part } = built(rail(lines, lies));
		const { edges, centre } = part("rail");
		return { ids, text: edges[0]?.text, centre };
	};

	test("a rail that runs front to back falls to the left", () => {
		const plain = built(rail("", "deep facing side")).part("rail");
		const { ids, text, centre } = ends(
			"end front { angled 45 deg; falls left }",
			"deep facing side",
		);
		expect(ids).toEqual([]);
		expect(text).toBe("falls left 45°, long point right");
		// What is gone lay at the front and on the left.
		expect(centre[0]).toBeGreaterThan(plain.centre[0]);
		expect(centre[2]).toBeLessThan(plain.centre[2]);
	});

	test.each([
		["end left { angled 9 deg; falls up }", "bottom"],
		["end left { angled 9 deg; falls down }", "top"],
		["end right { angled 9 deg; long-point top }", "top"],
		["end right { angled 9 deg; long-point front }", "front"],
	])("across: %s", (lines, longest) => {
		const { ids, text } = ends(lines, "across facing front");
		expect(ids).toEqual([]);
		expect(text).toMatch(new RegExp(`9°, long point ${longest}$`));
	});

	test.each([
		["end top { angled 9 deg; falls left }", "right"],
		["end bottom { angled 9 deg; falls left }", "left"],
	])("a post: %s", (lines, longest) => {
		expect(ends(lines, "up facing side").text).toBe(
			`falls left 9°, long point ${longest}`,
		);
	});

	test.each([
		["end left { angled 9 deg; falls left }", "across facing front"],
		["end top { angled 9 deg; falls up }", "up facing side"],
		["end front { angled 9 deg; falls forward }", "deep facing side"],
	])("not along the part: %s", (lines, lies) => {
		expect(ends(lines, lies).ids).toEqual(["fall-unclear"]);
	});

	test("four rails make a mitred plinth that shares no wood", () => {
		const { ids, piece } = built(`piece plinth {
  part front { of ply.three-quarter; size 20 x 3; lies across facing front; front at 10 forward from back.back
    end left { angled 45 deg; long-point front }
    end right { angled 45 deg; long-point front } }
  part back { of ply.three-quarter; size 20 x 3; lies across facing front
    end left { angled 45 deg; long-point back }
    end right { angled 45 deg; long-point back } }
  part left { of ply.three-quarter; size 10 x 3; lies deep facing side
    end front { angled 45 deg; falls right; long-point left }
    end back { angled 45 deg; falls right } }
  part right { of ply.three-quarter; size 10 x 3; lies deep facing side; right at 20 right from back.left
    end front { angled 45 deg; falls left }
    end back { angled 45 deg; falls left } }
}`);
		expect(ids).toEqual([]);
		for (const [index, a] of piece.parts.entries())
			for (const b of piece.parts.slice(index + 1))
				expect(overlapOf(a.solid, b.solid, 0.01)).toBeUndefined();
		// Each loses a wedge of its thickness at both ends: the four fill the frame and no more.
		const t = 45 / 64;
		const wood = piece.parts.reduce((sum, one) => sum + one.volume, 0);
		expect(wood / 25.4 ** 3).toBeCloseTo(
			(20 * 10 - (20 - 2 * t) * (10 - 2 * t)) * 3,
			6,
		);
	});
});
