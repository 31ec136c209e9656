// What a block cannot do without, added by the table's examples.

import { describe, expect, test } from "vitest";
import { contexts, parse } from "../../../grammar/index.ts";
import { shopFiles, tried } from "../../../tests/harness/refactoring.ts";

test("adds the lines that are missing, of a material that is there", () => {
	const { offers, text } = tried(`//- main.rod
use ply, oak from "./stock.rod"

piece a {
  leg l { heavy 1<|>/8 }
}
${shopFiles}`);
	const [offer] = offers;
	expect(offer).toMatchObject({
		kind: "quickfix",
		title: "Add to `l` what it needs: `against`, `layer`",
		finding: { id: "missing-line" },
	});
	expect(text("fill-required")).toBe(`use ply, oak from "./stock.rod"

piece a {
  leg l {
    heavy 1/8
    against outside case.left
    layer inner of oak.six-quarter 2 3/4 wide from floor up to case.bottom
  }
}
`);
});

describe("every block that needs something", () => {
	const blocks = Object.entries(contexts).flatMap(([context, rows]) =>
		rows.some(({ required }) => required) ? [context] : [],
	);
	/** How one comes to stand in each. */
	const holders: Readonly<Record<string, string>> = {
		sheet: "sheet m {<|>}",
		"sheet-variant": "sheet m { variant v {<|>} }",
		board: "board m {<|>}",
		"board-variant": "board m { variant v {<|>} }",
		"veneer-stock": "veneer m {<|>}",
		"veneer-variant": "veneer m { variant v {<|>} }",
		fastener: "fastener m {<|>}",
		box: "piece p { box m {<|>} }",
		part: "piece p { part m {<|>} }",
		leg: "piece p { leg m {<|>} }",
		shape: "piece p { leg m { shape back {<|>} } }",
		end: "piece p { leg m { end top {<|>} } }",
		trim: "piece p { trim m {<|>} }",
		veneer: "piece p { veneer m {<|>} }",
		mount: "piece p { mount m {<|>} }",
		step: "piece p { step m {<|>} }",
		aid: "piece p { aid m {<|>} }",
	};

	test("is tried here", () => {
		expect(Object.keys(holders).sort()).toEqual(blocks.sort());
	});

	test.each(blocks)("%s: what is added can be read, and is all", (context) => {
		const after = tried(`${holders[context]}\n`).text("fill-required");
		expect(parse(after).faults).toEqual([]);
		expect(
			tried(after.replace(/\n( *)\}(?=[\s}]*$)/, "\n$1<|>}")).titles.filter(
				(one) => one.startsWith("Add to `m`"),
			),
		).toEqual([]);
	});
});

test("nothing where another line makes it needless", () => {
	expect(
		tried(
			"piece p { mount m { kind brackets; on case.back<|> } }\n",
		).titles.filter((one) => one.startsWith("Add")),
	).toEqual([]);
});
