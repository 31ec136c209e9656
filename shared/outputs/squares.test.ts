// The diagonals of a case, by Pythagoras.

import { expect, it } from "vitest";
import { compile } from "../model/compile.ts";
import type { Piece } from "../model/types.ts";
import { sourcesOf } from "../sources/sources.ts";
import { cutList } from "./cut-list.ts";
import { cutListMarkdown } from "./cut-list-markdown.ts";
import { cutListText } from "./cut-list-text.ts";
import { squaresOf } from "./squares.ts";

function pieceOf(panels: string): Piece {
	const uri = "file:///case.rod";
	const text = `sheet ply { size 96 x 48; variant half { thick 1/2 } }
piece a { box case { outside 40 x 30 x 12; panels ${panels} of ply.half } }`;
	return compile(sourcesOf(new Map([[uri, text]])), uri).pieces[0] as Piece;
}

it("a case of 40 x 30 in has diagonals of 50 in, 3/32 in apart at the most", () => {
	const piece = pieceOf("top, bottom, left, right");
	const [square] = squaresOf(piece);
	// 3-4-5; 2 x 40 x 30 x 0.002 / 50 = 0.096 in = 2.4384 mm
	expect(square?.diagonal).toBeCloseTo(50 * 25.4, 9);
	expect(square?.apart).toBeCloseTo(2.4384, 9);
	const list = cutList(piece);
	expect(cutListText(list)).toContain(
		"TO CLAMP UP SQUARE\n  case: both diagonals 50 from corner to corner outside, no more than ~3/32 apart\n",
	);
	expect(cutListMarkdown(list)).toContain("### To clamp up square\n\n- case");
});

it("a case that lacks a side has none", () => {
	expect(squaresOf(pieceOf("bottom, left, right"))).toEqual([]);
});
