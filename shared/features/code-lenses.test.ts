// What stands over pieces and components.

import { expect, test } from "vitest";
import { snap } from "../../tests/harness/snapshot.ts";
import { firstLayouts } from "../outputs/piece-layouts.ts";
import {
	codeLenses,
	figuresTitle,
	findingsTitle,
	pieceOf,
	usesTitle,
} from "./code-lenses.ts";

const stock = `
//- stock.rod
currency "USD"
sheet ply { species "birch plywood"; size 96 x 48; variant half { thick 1/2; price 92 } }
board oak { species "white oak"; variant thick { rough 1; planed 3/4; widths 4 to 8; lengths 72 to 120; price 10 per board-foot } }
fastener fixings { variant dowels { dowel 3/8 x 2; pack 100; price 5 } }
`;

function titles(text: string): string[] {
	const { snapshot } = snap(`//- a.rod\n${text}${stock}`);
	return codeLenses(snapshot.result.tree)
		.filter(({ kind }) => kind === "figures")
		.map((lens) => {
			const piece = pieceOf(snapshot.design, lens);
			return `${lens.name}: ${piece && figuresTitle(piece, snapshot.design, firstLayouts(piece))}`;
		});
}

test("over a piece two lines, over a component who makes it, too", () => {
	const { snapshot } = snap("component c { }\npiece a { }\n");
	expect(
		codeLenses(snapshot.result.tree).map(({ kind, name }) => `${name} ${kind}`),
	).toEqual(["c uses", "c figures", "c findings", "a figures", "a findings"]);
});

test("parts, sheets and cost", () => {
	// Two boards of 90 x 40 do not go on one sheet of 96 x 48: 2 x 92.
	expect(
		titles(
			'use ply from "./stock.rod"\npiece a {\n  part b { of ply.half; size 90 x 40 }\n  part c { of ply.half; size 90 x 40; bottom at 9 from floor }\n}',
		),
	).toEqual(["a: 2 parts · 2 sheets · 184.00 USD"]);
});

test("what has no price makes it the least", () => {
	expect(
		titles(
			'use ply from "./stock.rod"\nsheet thin { variant one { thick 1/4; size 96 x 48 } }\npiece a {\n  part b { of ply.half; size 9 x 4 }\n  part c { of thin.one; size 9 x 4; bottom at 9 from floor }\n}',
		),
	).toEqual(["a: 2 parts · 2 sheets · at least 92.00 USD"]);
});

test("a component by its own values; nothing to buy is not told", () => {
	expect(titles("component c {\n  given w = 9\n}\npiece a { }")).toEqual([
		"c: 0 parts",
		"a: 0 parts",
	]);
});

test("errors and warnings in the lines of the piece, not of its neighbour", () => {
	const { snapshot } = snap(
		"piece a { part b { size 1 x 2 }; given c = 1; given c = 2 }\npiece d { }\n",
	);
	const { design, result } = snapshot;
	expect(
		codeLenses(result.tree)
			.filter(({ kind }) => kind === "findings")
			.map((lens) => {
				const piece = pieceOf(design, lens);
				return piece && findingsTitle(piece, design.findings);
			}),
	).toEqual(["2 errors", "no errors, no warnings"]);
});

test.each([
	[[], "made nowhere"],
	[["a"], "made once in 1 design"],
	[["a", "a", "b"], "made 3 times in 2 designs"],
])("made in %j", (files, title) => {
	expect(usesTitle(files)).toBe(title);
});
