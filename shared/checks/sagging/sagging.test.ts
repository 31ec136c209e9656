// Sag worked out of whole designs: what holds a part, what stiffens it, what mends it. Figures: the arithmetic stands beside.

import { describe, expect, it } from "vitest";
import { compile } from "../../model/compile.ts";
import type { Design, Piece } from "../../model/types.ts";
import { sourcesOf } from "../../sources/sources.ts";
import { applyEdits } from "../../text/edits.ts";
import { figuresOf } from "../options.ts";
import { sag } from "../rules/strength/sag.ts";
import { type Sagging, sagFiguresOf, sagOf, standingOn } from "./sag.ts";

const figures = sagFiguresOf(figuresOf(sag, {}));

/** Sizes in mm; birch plywood 18 mm has 10 048 MPa along, 7452 across and 685 kg/m3, white oak 12 270 MPa and 762 kg/m3. */
const stock = `unit mm
sheet birch { species "birch plywood"; size 2440 x 1220; variant eighteen { sold-as 18; thick 18 }; variant thin { sold-as 9; thick 9 }; variant thick { sold-as 24; thick 24 } }
board oak { species "white oak"; variant plank { rough 27; planed 20; widths 100 to 300; lengths 2 m to 3 m } }
`;

function designOf(text: string): Design {
	const uri = "file:///shelf.rod";
	return compile(sourcesOf(new Map([[uri, stock + text]])), uri);
}

function pieceOf(text: string): Piece {
	const design = designOf(text);
	expect(design.findings.map(({ message }) => message)).toEqual([]);
	return design.pieces[0] as Piece;
}

function sagging(piece: Piece, path: string): Sagging | undefined {
	const part = piece.partByPath.get(path);
	if (!part) throw new Error(`no ${path}`);
	return sagOf(piece, part, standingOn(piece, part), figures);
}

/** A case of 918 x 400 x 300 over its panels of 18: 882 clear between the sides. */
function caseOf(inside: string, rest = ""): Piece {
	return pieceOf(`piece a {
  unit mm
  box case {
    outside 918 x 400 x 300
    top at 1400 from floor
    panels top, bottom, left, right of birch.eighteen
    ${inside}
  }
  ${rest}
}`);
}

/** N/mm of an 18 mm birch shelf 300 deep: 300 x 18 mm2 x 685e-9 kg/mm3 x 9.80665 N/kg. */
const ownWeight = 300 * 18 * 685e-9 * 9.80665;

describe("one span", () => {
	it("a shelf between two sides: 5 w L^4 / 384 E I, its own weight counted", () => {
		const piece = caseOf(
			"shelf one of birch.eighteen 200 above bottom dado 6",
			"load 40 kg per m on case.one",
		);
		const found = sagging(piece, "case.one");
		// 40 kg/m x 9.80665 / 1000; I = 300 x 18^3 / 12 = 145 800 mm4; 882 clear between the sides.
		const w = (40 * 9.80665) / 1000 + ownWeight;
		const expected = (5 * w * 882 ** 4) / (384 * 10048 * 145800);
		// What lies in the dadoes takes 2 parts in 10 000 off.
		expect((found?.worst.sag ?? 0) / expected).toBeCloseTo(1, 3);
		expect(found?.worst.limit).toBeCloseTo(882 / 600, 9);
		expect(found?.creep).toBe(1.8);
		expect(found?.used).toBeCloseTo((expected * 1.8) / (882 / 384), 2);
	});

	it("the same load as one mass sags the same", () => {
		const shelf =
			"shelf one of birch.eighteen 200 above bottom on pins clearance 1";
		// On pins the shelf is 880 long: 35.2 kg are 40 kg/m.
		const spread = sagging(
			caseOf(shelf, "load 40 kg per m on case.one"),
			"case.one",
		);
		const whole = sagging(
			caseOf(shelf, "load 35.2 kg on case.one"),
			"case.one",
		);
		expect(whole?.worst.sag).toBeCloseTo(spread?.worst.sag ?? 0, 9);
	});

	it("plywood with its face grain from front to back is as much softer as the table has it", () => {
		const shelf = "shelf one of birch.eighteen 200 above bottom dado 6";
		const along = sagging(caseOf(shelf, "load 10 kg on case.one"), "case.one");
		const across = sagging(
			caseOf(`${shelf}\ngrain deep on one`, "load 10 kg on case.one"),
			"case.one",
		);
		expect((across?.worst.sag ?? 0) / (along?.worst.sag ?? 1)).toBeCloseTo(
			10048 / 7452,
			9,
		);
	});
});

describe("several supports", () => {
	it("a bottom over a divider, with a back: as two spans, w L^4 / 185 E I", () => {
		const piece = caseOf(
			"back of birch.thin applied\ndivider middle of birch.eighteen centred dado 6",
			"load 40 kg per m on case.bottom",
		);
		const found = sagging(piece, "case.bottom");
		// From the side's inner face to the middle of the divider: 441. 184.6 is the figure behind 185. The applied back takes
		// 9 of the 300 of depth.
		const depth = 300 - 9;
		const w = (40 * 9.80665) / 1000 + (ownWeight * depth) / 300;
		const expected = (w * 441 ** 4) / (184.6 * 10048 * depth * 486);
		expect(found?.spans).toHaveLength(2);
		expect((found?.worst.sag ?? 0) / expected).toBeCloseTo(1, 3);
	});

	it("the same divider without a back holds nothing up", () => {
		const piece = caseOf(
			"divider middle of birch.eighteen centred dado 6",
			"load 40 kg per m on case.bottom",
		);
		expect(sagging(piece, "case.bottom")?.spans).toHaveLength(1);
	});

	it("a bottom that lies on the floor does not sag", () => {
		const piece = pieceOf(`piece a {
  unit mm
  box case { outside 918 x 400 x 300; panels top, bottom, left, right of birch.eighteen }
  load 40 kg on case.bottom
}`);
		expect(sagging(piece, "case.bottom")).toBeUndefined();
	});

	it("a board over two supports far in sags most at its ends", () => {
		const piece = pieceOf(`piece a {
  unit mm
  part board { of oak.plank; size 1400 x 200; bottom at 400 from floor }
  part one { of oak.plank; size 400 x 200; lies up facing side; left at 500 right from board.left; top at board.bottom }
  part two { of oak.plank; size 400 x 200; lies up facing side; right at 500 left from board.right; top at board.bottom }
  load 50 kg on board
}`);
		const found = sagging(piece, "board");
		expect(found?.worst.overhang).toBe(true);
		// 510 to the middle of the support; its limit is that of a span of 1020.
		expect(found?.worst.limit).toBeCloseTo(1020 / 600, 9);
	});
});

describe("edging", () => {
	const shelf =
		"shelf one of birch.eighteen 200 above bottom dado 6 set-back 20";
	const lip = (joint: string) => `part lip {
    of oak.plank
    size 882 x 40
    lies across facing front
    top at case.one.top
    left at case.left.inside
    back at case.one.front
  }
  join lip to case.one { ${joint} }
  load 10 kg on case.one`;

	it("a glued lip makes one section with the shelf", () => {
		const bare = sagging(caseOf(shelf, "load 10 kg on case.one"), "case.one");
		const edged = sagging(caseOf(shelf, lip("glue")), "case.one");
		// Depth 280. E A: 10 048 x 280 x 18 = 50 641 920 at 31 above the lip's underside (40 - 18 / 2), and
		// 12 270 x 20 x 40 = 9 816 000 at 20; axis (1 569 899 520 + 196 320 000) / 60 457 920 = 29.2140.
		const axis = (50641920 * 31 + 9816000 * 20) / 60457920;
		const stiffness =
			10048 * (280 * 486 + 280 * 18 * (31 - axis) ** 2) +
			12270 * ((20 * 40 ** 3) / 12 + 20 * 40 * (20 - axis) ** 2);
		// Woods of the table: white oak 12 270 MPa.
		expect((edged?.beam.stiffness ?? 0) / stiffness).toBeCloseTo(1, 3);
		expect((bare?.worst.sag ?? 0) / (edged?.worst.sag ?? 1)).toBeCloseTo(
			stiffness / (10048 * 280 * 486),
			3,
		);
	});

	it("one that is only pinned does not count", () => {
		const bare = sagging(caseOf(shelf, "load 10 kg on case.one"), "case.one");
		const pinned = sagging(caseOf(shelf, lip("pin 23ga x 25")), "case.one");
		expect(pinned?.worst.sag).toBe(bare?.worst.sag);
	});
});

describe("the check", () => {
	const text = (material: string, mass: string) => `piece a {
  unit mm
  box case {
    outside 918 x 400 x 300
    top at 1400 from floor
    panels top, bottom, left, right of birch.eighteen
    shelf one of birch.${material} 200 above bottom dado 6
  }
  ${mass}
}`;
	const found = (whole: string) => {
		const design = designOf(whole);
		const context = { design, figures: figuresOf(sag, {}) };
		return design.pieces.flatMap((piece) => sag.find(piece, context));
	};

	it("mends by the thicker material of the same sort, and names no more than is needed", () => {
		const before = text("eighteen", "load 25 kg on case.one");
		const [one, ...others] = found(before);
		expect(others).toEqual([]);
		expect(one?.message).toContain("`birch.thick` (24 mm thick)");
		const after = applyEdits(
			stock + before,
			(one?.fixes?.[0]?.edits ?? []).map(({ span, text: insert }) => ({
				...span,
				text: insert,
			})),
		).slice(stock.length);
		expect(after).toBe(text("thick", "load 25 kg on case.one"));
		expect(found(after)).toEqual([]);
	});

	it("asks once what stands there, and only where books would be too much", () => {
		expect(found(text("eighteen", "")).map(({ severity }) => severity)).toEqual(
			["hint"],
		);
		expect(found(text("eighteen", "").replace("918", "500"))).toEqual([]);
	});

	it("asks for the species where a loaded part's is in no table", () => {
		const unknown = stock.replace(
			'species "birch plywood"',
			'species "driftwood"',
		);
		const uri = "file:///shelf.rod";
		const design = compile(
			sourcesOf(
				new Map([[uri, unknown + text("eighteen", "load 5 kg on case.one")]]),
			),
			uri,
		);
		const context = { design, figures: figuresOf(sag, {}) };
		const told = design.pieces.flatMap((piece) => sag.find(piece, context));
		expect(told.map(({ severity, message }) => [severity, message])).toEqual([
			[
				"hint",
				"Nothing says how stiff `case.one` is: a `species` that the tables know, or a `stiffness` line, at `birch.eighteen`, lets its sag be worked out",
			],
		]);
	});
});
