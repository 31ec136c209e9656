// Angled ends of single parts: what they take away, and where.

import { describe, expect, test } from "vitest";
import { built } from "../../../tests/harness/built.ts";

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
