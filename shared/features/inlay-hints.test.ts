// Hints in the text: each expectation is the text with the hints written into it, as `«…»`.

import { describe, expect, test } from "vitest";
import { snap } from "../../tests/harness/snapshot.ts";
import { hintStory, inlayHints } from "./inlay-hints.ts";
import { type Hint, readHintChoice, usualHints } from "./support/hints/hint.ts";

const stock = `//- stock.rod
sheet ply {
  species "birch plywood"
  size 96 x 48
  variant three-quarter { sold-as 3/4; thick 45/64 }
}
board oak { species "white oak"; variant thick { planed 3/4 } }
`;
const nothing = readHintChoice({
	sizes: false,
	thickness: false,
	totals: false,
	otherUnit: false,
});

function hinted(
	lines: string,
	choice: Partial<typeof usualHints>,
): { text: string; hints: Hint[]; stories: (string | undefined)[] } {
	const { snapshot } = snap(
		`//- a.rod\nuse ply, oak from "./stock.rod"\npiece a {\n${lines}\n}\n${stock}`,
	);
	const { text } = snapshot;
	const hints = inlayHints(
		snapshot,
		{ start: 0, end: text.length },
		{ ...nothing, ...choice },
	);
	let shown = text;
	for (const { offset, label } of hints.toReversed())
		shown = `${shown.slice(0, offset)}«${label}»${shown.slice(offset)}`;
	return {
		text: shown.split("\n").slice(2, -2).join("\n"),
		hints,
		stories: hints.map((hint) => hintStory(snapshot, hint)),
	};
}

const box = `  box case {
    outside 30 x 20 x 12
    panels top, bottom, left, right of ply.three-quarter
    divider middle of ply.three-quarter centred
    join top, bottom to left, right { glue; dowel 5/16 x 1 1/4 every 5 }
  }`;

describe("sizes", () => {
	// 30 - 2 x 45/64 = 28 19/32; between top and bottom 20 - 2 x 45/64 = 18 19/32.
	test("as they are cut, those of neighbours in a list once", () => {
		expect(hinted(box, { sizes: true }).text.split("\n").slice(2, 4)).toEqual([
			"    panels top, bottom«28 19/32 x 12 x 45/64 in», left, right«20 x 12 x 45/64 in» of ply.three-quarter",
			"    divider middle«18 19/32 x 12 x 45/64 in» of ply.three-quarter centred",
		]);
	});

	test("say what they follow from", () => {
		const [first] = hinted(box, { sizes: true }).stories;
		expect(first).toContain("`case.bottom` as it is cut");
		expect(first).toContain("length 28 19/32 = 30 - 2 x 45/64");
	});

	test("in the unit and to the step of the piece", () => {
		expect(
			hinted("  unit mm\n  part b { of oak.thick; size 300.2 x 50 }", {
				sizes: true,
			}).text,
		).toContain("part b«300 x 50 x 19.05 mm» {");
	});

	test("of a component by its own values, not where it is made", () => {
		const { snapshot } = snap(`//- a.rod
use oak from "./stock.rod"
component c {
  given w = 10
  part b { of oak.thick; size w x 2 }
}
piece a { make d from c { set w = 20 } }
${stock}`);
		const { text } = snapshot;
		const hints = inlayHints(
			snapshot,
			{ start: 0, end: text.length },
			{ ...nothing, sizes: true },
		);
		expect(hints.map(({ label }) => label)).toEqual(["10 x 2 x 3/4 in"]);
	});
});

describe("thickness", () => {
	test("as it measures, with what it is sold as", () => {
		const { text, stories } = hinted(
			"  part b { of ply.three-quarter; size 9 x 2 }",
			{
				thickness: true,
			},
		);
		expect(text).toBe(
			"  part b { of ply.three-quarter«45/64 in»; size 9 x 2 }",
		);
		expect(stories[0]).toContain(
			"`ply.three-quarter` measures 45/64 in, sold as 3/4 in",
		);
	});

	test("of what is not known there is none", () => {
		expect(
			hinted("  part b { of ply.half; size 9 x 2 }", { thickness: true }).hints,
		).toEqual([]);
	});
});

describe("totals", () => {
	test("of fasteners over all joints of a line", () => {
		const { text, stories } = hinted(box, { totals: true });
		// On 12 in of joint, 5 apart: three in each of four joints.
		expect(text).toContain("dowel 5/16 x 1 1/4 every 5«12 in all» }");
		expect(stories[0]?.split("\n")).toHaveLength(4);
		expect(stories[0]).toContain("- 3 dowels: ");
	});

	test("of trim its strips and their length", () => {
		const { text, stories } = hinted(
			`${box}\n  trim lip { on case.front.edges; of oak.thick; thick 1/4; wide 45/64; corners butted }`,
			{ totals: true },
		);
		// Left and right run through, 2 x 20; top and bottom between them, 2 x (30 - 2 x 45/64) = 57 3/16.
		expect(text).toContain("trim lip«4 strips, 97 3/16 in» {");
		expect(stories.find((story) => story?.includes("lip.top"))).toContain(
			"`lip.top`: 28 19/32 x ",
		);
	});
});

describe("the other unit", () => {
	test.each([
		["in", "10 x 2", "10«254 mm» x 2«50.8 mm»"],
		["in", "10 mm x 1 ft", "10 mm«~25/64 in» x 1 ft«304.8 mm»"],
		["mm", "254 x 3 in", "254«10 in» x 3 in«76.2 mm»"],
	])("in %s: %s", (unit, written, shown) => {
		expect(
			hinted(`  unit ${unit}\n  part b { of oak.thick; size ${written} }`, {
				otherUnit: true,
			}).text,
		).toContain(`size ${shown} }`);
	});

	test("of no angle and no count", () => {
		expect(hinted("  edition 2", { otherUnit: true }).hints).toEqual([]);
	});
});

test("only in the part of the text that is asked for", () => {
	const { snapshot } = snap(
		`//- a.rod\nuse oak from "./stock.rod"\npiece a {\n<|>  part b { of oak.thick; size 9 x 2 }\n  part c { of oak.thick; size 9 x 3; bottom at 9 from floor }\n}\n${stock}`,
	);
	const start = snapshot.text.indexOf("  part b");
	const end = snapshot.text.indexOf("\n", start);
	expect(
		inlayHints(snapshot, { start, end }, usualHints).map(({ label }) => label),
	).toEqual(["9 x 2 x 3/4 in", "3/4 in"]);
});

test("what is set wrong stays as usual", () => {
	expect(readHintChoice({ sizes: "no", totals: false, spaces: true })).toEqual({
		...usualHints,
		totals: false,
	});
	for (const value of [undefined, null, 3, "all", []])
		expect(readHintChoice(value)).toEqual(usualHints);
});
