// Boards that move: what is trapped and glued across in small designs, and what a maker does every day without harm.

import { describe, expect, test } from "vitest";
import { built } from "../../tests/harness/built.ts";
import type { CheckOptions } from "./index.ts";
import { runChecks } from "./index.ts";

const wood = ["trapped-panel", "cross-grain-glue"];

function told(text: string, options: CheckOptions = {}): readonly string[] {
	return runChecks(built(text).design, options)
		.filter(({ id }) => wood.includes(id))
		.map(({ id, severity }) => `${severity} ${id}`);
}

const heated = "room { humidity 30 % to 60 %; temperature 68 F }";

/** A frame of two stiles and a rail with a panel in it, grooves as deep as it stands in them. */
const door = (of: string, room = heated, name = "door"): string => `
board quarter { species "white oak"; sawn quarter; variant thin { planed 1/2 } }
board unheard { species "moonwood"; density 500 kg per m3; variant thin { planed 1/2 } }
sheet core { species "mdf"; variant thin { thick 1/2 } }
${framed(of, room, name)}`;

const framed = (of: string, room: string, name: string): string => `
piece ${name} {
  part left-stile { of oak.four-quarter; size 26 x 2 1/2; lies up facing front }
  part right-stile { of oak.four-quarter; size 26 x 2 1/2; lies up facing front; left at 8 right from left-stile.right }
  part rail { of oak.four-quarter; size 10 x 2 1/2; lies across facing front; left at 1 left from left-stile.right }
  part panel {
    of ${of}
    size 20 x 8 1/2 x 1/2
    lies up facing front
    left at 1/4 left from left-stile.right
    bottom at 1/4 down from rail.top
    centred deep on left-stile
  }
  join rail to left-stile, right-stile { tenon 1 x 1 1/2 x 1/4; glue }
  join panel to left-stile, right-stile, rail { groove 1/4 }
  ${room}
}`;

describe("a panel that fills its grooves", () => {
	test("is trapped if it is flat-sawn", () => {
		expect(told(door("oak.four-quarter"))).toEqual(["warning trapped-panel"]);
	});

	test("is not if it is quarter-sawn and no wider", () => {
		// Half a year from 8.6 to 11.0 %: 8 1/2 in x 0.00180 x 2.4 = 0.037 in = 0.93 mm; flat-sawn twice as much.
		expect(
			told(door("quarter.thin"), {
				figures: { "trapped-panel": { give: 1 } },
			}),
		).toEqual([]);
		expect(
			told(door("oak.four-quarter"), {
				figures: { "trapped-panel": { give: 1 } },
			}),
		).toEqual(["warning trapped-panel"]);
	});

	test("is not if it is of fibreboard, or of a wood that nobody knows", () => {
		expect(told(door("core.thin"))).toEqual([]);
		expect(told(door("unheard.thin"))).toEqual([]);
	});

	test("is not in a room that hardly changes", () => {
		expect(
			told(door("oak.four-quarter", "room { humidity 49 % to 51 % }")),
		).toEqual([]);
	});

	test("brings one question in each piece whose room is not given", () => {
		expect(told(door("oak.four-quarter", ""))).toEqual(["hint trapped-panel"]);
		expect(
			told(
				door("oak.four-quarter", "") + framed("oak.four-quarter", "", "other"),
			),
		).toEqual(["hint trapped-panel", "hint trapped-panel"]);
	});
});

describe("glue where grains meet", () => {
	const rail = (wide: string, room = heated): string => `
piece side {
  part rear { of oak.six-quarter; size 28 x 2; lies up facing side }
  part front { of oak.six-quarter; size 28 x 2; lies up facing side; front at 16 forward from rear.back }
  part rail {
    of oak.six-quarter
    size 14 x ${wide} x 1
    lies deep facing side
    top at rear.top
    back at 1 back from rear.front
    centred across on rear
  }
  join rail to rear, front { tenon 1 x ${wide} x 3/8; glue }
  ${room}
}`;

	test("a rail of 4 in holds, one of 6 in does not", () => {
		// 4 in x (0.00365 - 0.00005) x 4.8 = 0.069 in = 1.8 mm; 6 in: 2.6 mm; the limit is 2 mm.
		expect(told(rail("4"))).toEqual([]);
		expect(told(rail("6"))).toEqual(["warning cross-grain-glue"]);
	});

	test("a wide rail brings one question where the room is not given", () => {
		expect(told(rail("6", ""))).toEqual(["hint cross-grain-glue"]);
	});

	test("a case whose grain runs round it holds, however deep", () => {
		expect(
			told(`
board wide { species "sugar maple"; variant plank { planed 3/4 } }
piece case {
  box case {
    outside 30 x 12 x 18
    panels top, bottom, left, right of wide.plank
    join top, bottom to left, right { dado 1/4; glue }
  }
  ${heated}
}`),
		).toEqual([]);
	});

	test("a top glued to one rail along its grain holds; to two across it does not", () => {
		const table = (lies: string, size: string): string => `
piece table {
  part top { of oak.four-quarter; size 40 x 20; strips 3; bottom at 28 from floor }
  part rail { of oak.four-quarter; size ${size}; lies ${lies} facing ${lies === "deep" ? "side" : "front"}; top at top.bottom; centred across on top; centred deep on top }
  join rail to top { glue }
  ${heated}
}`;
		expect(told(table("across", "36 x 3"))).toEqual([]);
		expect(told(table("deep", "18 x 3"))).toEqual(["warning cross-grain-glue"]);
	});

	test("strips edge to edge and layers face to face hold", () => {
		expect(
			told(`
piece slab {
  part one { of oak.four-quarter; size 40 x 8 }
  part two { of oak.four-quarter; size 40 x 8; back at one.front }
  part three { of oak.four-quarter; size 40 x 8; top at one.bottom }
  join one to two, three { glue }
  ${heated}
}`),
		).toEqual([]);
	});
});
