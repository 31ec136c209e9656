// Dividers and shelves that are told from one another.

import { expect, test } from "vitest";
import { built } from "../../../tests/harness/built.ts";

const shelves = (lines: string): string => `
piece rack {
  unit mm
  box case {
    outside 600 x 900 x 300
    panels top, bottom, left, right of ply.eighteen
    ${lines}
  }
}`;

const bottomOf = (text: string, path: string): number | undefined =>
	built(text).part(path).min[1].value.toNumber();

test("a shelf can be told from another, whichever comes first in the text", () => {
	const first = "shelf low of ply.eighteen 200 above bottom";
	const second = "shelf high of ply.eighteen 250 above low";
	for (const lines of [`${first}\n${second}`, `${second}\n${first}`]) {
		const text = shelves(lines);
		expect(built(text).ids).toEqual([]);
		expect(bottomOf(text, "case.low")).toBe(18 + 200);
		expect(bottomOf(text, "case.high")).toBe(18 + 200 + 18 + 250);
	}
});

test("a divider can be told from another", () => {
	const { ids, part } = built(
		shelves(
			"divider one of ply.eighteen 150 right from left.inside\ndivider two of ply.eighteen 120 right from one.right",
		),
	);
	expect(ids).toEqual([]);
	expect(part("case.two").min[0].value.toNumber()).toBe(18 + 150 + 18 + 120);
});

test("shelves that are told from one another in a circle are told so, once", () => {
	const { ids } = built(
		shelves(
			"shelf low of ply.eighteen 200 below high\nshelf high of ply.eighteen 250 above low",
		),
	);
	expect(ids).toEqual(["circle"]);
});
