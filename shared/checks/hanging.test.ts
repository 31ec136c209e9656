// How a design becomes a case of statics: places worked out by hand, walls that give a figure and walls that give none.

import { describe, expect, it } from "vitest";
import { compile } from "../model/compile.ts";
import type { Finding, MountInfo, Piece } from "../model/types.ts";
import { weightOf } from "../outputs/weight.ts";
import { sourcesOf } from "../sources/sources.ts";
import { applyEdits } from "../text/edits.ts";
import { hangingOf, wallHold } from "./hanging.ts";
import { runChecks } from "./index.ts";

const uri = "file:///case.rod";
const steel = { steel: 0.455, steelStrength: 310 };

function textOf(wall: string, more = ""): string {
	return `sheet birch {
  species "birch plywood"
  size 2440 mm x 1220 mm
  variant eighteen { sold-as 18 mm; thick 18 mm }
  variant nine { sold-as 9 mm; thick 9 mm }
}
piece cabinet {
  unit mm
  box case {
    outside 600 x 400 x 200
    bottom at 1000 from floor
    panels top, bottom, left, right of birch.eighteen
    back of birch.nine inset 18
    join top, bottom to left, right { glue }
    join back to left, right, top, bottom { glue }
  }
  mount hook {
    on case.back
    of birch.eighteen
    height 70
    down 30 from case.top
    ${wall}
  }
  ${more}
}
`;
}

function compiled(text: string) {
	return compile(sourcesOf(new Map([[uri, text]])), uri);
}

function cabinetOf(
	wall: string,
	more?: string,
): { readonly piece: Piece; readonly mount: MountInfo } {
	const design = compiled(textOf(wall, more));
	expect(design.findings).toEqual([]);
	const piece = design.pieces[0] as Piece;
	return { piece, mount: piece.mounts[0] as MountInfo };
}

function findings(text: string, id: string): readonly Finding[] {
	return runChecks(compiled(text)).filter((one) => one.id === id);
}

const wall = "wall { studs every 400 wood; drywall 12.5; screw #10 x 75 }";

describe("places", () => {
	it("are those of the drawing", () => {
		const { piece, mount } = cabinetOf(wall);
		const hanging = hangingOf(piece, mount, { lean: 0 });
		// Strip from 1300 to 1370, its bevel 18 high: middle 1309. The wall strip's point 1318, its foot 1248, its middle 1283.
		expect(hanging?.geometry).toEqual({
			contact: 9,
			rise: 309,
			slope: 1,
			contactUp: 61,
			screwsUp: 35,
		});
		expect(hanging?.front).toBe(200);
		expect(hanging?.legsAt).toBeUndefined();
	});

	it("take the load where it stands, and the wood where its middle is", () => {
		const { piece, mount } = cabinetOf(wall, "load 40 kg on case.bottom.front");
		const { total, centre } = weightOf(piece);
		const forces = hangingOf(piece, mount, { lean: 200 })?.cases;
		// A load at the front edge stands for whoever leans: there is no second case.
		expect(forces).toHaveLength(1);
		expect(forces?.[0]?.hung.weight).toBeCloseTo((total + 40) * 9.80665, 6);
		expect(forces?.[0]?.hung.fromWall).toBeCloseTo(
			(total * (centre?.fromBack ?? 0) + 40 * 200) / (total + 40),
			3,
		);
	});
});

describe("the wall", () => {
	it("of wood studs: 564 mm are sure of one stud 400 apart, 44.5 mm deep", () => {
		const { mount } = cabinetOf(wall);
		// 600 - 2 x 18 = 564; 75 - 18 - 12.5 = 44.5; 2850 x 0.42^2 x 0.19 lb/in = 95.52 lb/in = 16.729 N/mm; x 44.5 = 744.4 N
		const hold = wallHold(mount, steel);
		expect(hold?.studs).toEqual([1, 2]);
		expect(hold?.reach).toBeCloseTo(44.5, 6);
		expect(hold?.withdrawal).toBeCloseTo(744.4, 0);
		// The plain equations, without the plasterboard, give 99.6 lb for 3/4 in and 1 3/4 in: with it, less.
		expect(hold?.lateral).toBeGreaterThan(200);
		expect(hold?.lateral).toBeLessThan(443);
	});

	it.each([
		["", "no wall"],
		["wall { masonry plaster 12; screw #10 x 75 }", "masonry"],
		["wall { drywall 12.5; screw #10 x 75 }", "plasterboard alone"],
		["wall { studs every 400 wood; drywall 12.5 }", "no screw"],
	])("gives no figure: %s (%s)", (given) => {
		const { mount } = cabinetOf(given);
		expect(wallHold(mount, steel)).toBeUndefined();
	});
});

it("what `cleat-load` offers mends it, where a count is written and where none is", () => {
	for (const each of ["", " each 1"]) {
		const text = textOf(
			wall.replace("x 75", `x 75${each}`),
			"load 45 kg on case.bottom",
		);
		const [found] = findings(text, "cleat-load");
		expect(found?.message).toContain("asked for");
		const edits = found?.fixes[0]?.edits ?? [];
		expect(edits).toHaveLength(1);
		const mended = applyEdits(
			text,
			edits.map(({ span, text: insert }) => ({ ...span, text: insert })),
		);
		expect(mended).toMatch(/x 75 each \d }/);
		expect(findings(mended, "cleat-load")).toEqual([]);
	}
});
