// Mounts: how a cleat pair hooks, where its halves stand, the room that it needs.

import { describe, expect, test } from "vitest";
import { built, inInches } from "../../../tests/harness/built.ts";
import { Rational } from "../../units/rational.ts";
import { numberOf, stated } from "../size.ts";
import { cleatPair } from "./cleat-pair.ts";

const mm = (value: number) => stated(Rational.of(value), String(value));

const rack = (lines: string, back = "inset 20"): string => `piece rack {
  unit mm
  box rack {
    outside 900 x 420 x 210
    panels top, bottom, left, right of ply.eighteen
    back of ply.nine ${back}
    caps top, bottom
  }
  mount hook { ${lines} }
}`;
const usual = "on rack.back; of ply.eighteen; height 70; down 30 from rack.top";
const corners = (design: ReturnType<typeof built>, path: string) => {
	const { min, max } = design.part(path);
	return [min.map(numberOf), max.map(numberOf)];
};

describe("a pair ripped from one strip", () => {
	test("1-1/2 in thick, 3-1/2 in wide, one 45° rip: faces 1 in and 2-1/2 in", () => {
		// About.com Woodworking, cabinets, cleat step (published worked example; no kerf counted there).
		const inch = (n: number, d = 1) =>
			stated(Rational.of(127 * n, 5 * d), `${n}/${d}`);
		const pair = cleatPair(inch(3, 2), inch(5, 2), 45, inch(0));
		expect(inInches(pair.short)).toBe(1);
		expect(inInches(pair.blank)).toBe(3 + 1 / 2);
	});

	test("a saw takes its kerf over the sine, a steeper cut falls farther", () => {
		const pair = cleatPair(mm(18), mm(70), 30, mm(3));
		expect(numberOf(pair.drop)).toBeCloseTo(18 / Math.tan(Math.PI / 6), 4);
		expect(pair.drop.exact).toBe(false);
		expect(numberOf(pair.blank)).toBeCloseTo(
			2 * 70 - 18 / Math.tan(Math.PI / 6) + 3 / Math.sin(Math.PI / 6),
			4,
		);
	});
});

describe("a cleat behind an inset back", () => {
	test("its strip stands between the sides, its top where the line says", () => {
		const design = built(rack(usual));
		expect(design.ids).toEqual([]);
		expect(corners(design, "hook.strip")).toEqual([
			[18, 420 - 30 - 70, 20 - 18],
			[900 - 18, 420 - 30, 20],
		]);
	});

	test("the wall strip hooks into it, shorter by the play at each end", () => {
		const design = built(rack(`${usual}; play 6`));
		// Its point stands where the bevel of the other ends, one thickness up at 45 degrees.
		const point = 420 - 30 - 70 + 18;
		expect(corners(design, "hook.wall-strip")).toEqual([
			[18 + 6, point - 70, 20 - 18],
			[900 - 18 - 6, point, 20],
		]);
		expect(numberOf(design.part("hook.wall-strip").length)).toBe(
			900 - 2 * 18 - 2 * 6,
		);
	});

	test("the two share a face and no wood", () => {
		const design = built(rack(usual));
		const strip = design.part("hook.strip");
		const wall = design.part("hook.wall-strip");
		// Each loses a triangle as high and as wide as the strip is thick.
		const blank = (900 - 2 * 18) * 70 * 18;
		const triangle = ((900 - 2 * 18) * 18 * 18) / 2;
		expect(strip.volume).toBeCloseTo(blank - triangle, 3);
		expect(wall.volume).toBeCloseTo(blank - triangle, 3);
		// The wood of the upper one lies to the wall, that of the lower one to the back.
		expect(strip.centre[2]).toBeLessThan(2 + 9);
		expect(wall.centre[2]).toBeGreaterThan(2 + 9);
	});

	test("the room that the hook needs is told", () => {
		const { piece } = built(rack(usual));
		const mount = piece.mounts[0];
		expect(mount?.kind).toBe("cleat");
		expect(mount && numberOf(mount.gap)).toBe(20);
		expect(mount && numberOf(mount.lift)).toBe(18);
		expect(mount && numberOf(mount.above)).toBe(30 - 18);
		// From the wall strip's lower edge down to the bottom panel.
		expect(mount && numberOf(mount.below)).toBe(420 - 30 - 70 + 18 - 70 - 18);
		expect(mount && numberOf(mount.wallStripTop)).toBe(420 - 30 - 70 + 18);
	});

	test("it is fastened to the back, and the wall is read", () => {
		const { piece, ids } = built(
			rack(
				`${usual}; fasten { glue; screw #8 x 25 every 120 }; wall { studs every 400 metal; drywall 12.5; screw #10 x 75 each 2 }`,
			),
		);
		expect(ids).toEqual([]);
		const mount = piece.mounts[0];
		expect(mount?.fasteners[0]?.points).toHaveLength(
			Math.ceil((900 - 2 * 18) / 120),
		);
		expect(mount?.wall?.studKind).toBe("metal");
		expect(mount?.wall?.each).toBe(2);
		expect(mount?.wall?.drywall && numberOf(mount.wall.drywall)).toBe(12.5);
		expect(piece.joints.find(({ kind }) => kind === "cleat")?.glue).toBe(true);
	});
});

describe("other backs", () => {
	test("in rabbets the sides reach past the back: the strip is as long as the clear room", () => {
		const design = built(rack(usual, "rabbet 9"));
		expect(numberOf(design.part("hook.strip").length)).toBe(900 - 2 * 18);
		expect(design.piece.mounts[0] && numberOf(design.piece.mounts[0].gap)).toBe(
			0,
		);
		// Nothing of the box is behind it: down to the floor.
		expect(
			design.piece.mounts[0] && numberOf(design.piece.mounts[0].below),
		).toBe(420 - 30 - 70 + 18 - 70);
	});

	test("an applied back is as wide as the box", () => {
		const design = built(rack(usual, "applied"));
		const [min, max] = corners(design, "rack.back");
		const strip = corners(design, "hook.strip");
		expect([strip[0]?.[0], strip[1]?.[0]]).toEqual([min?.[0], max?.[0]]);
	});

	test("a rail has no bevel and nothing on the wall", () => {
		const design = built(rack(`kind rail; ${usual}`));
		expect(design.ids).toEqual([]);
		expect(design.piece.mounts[0]?.wallStrip).toBeUndefined();
		expect(design.part("hook.strip").volume).toBeCloseTo(
			(900 - 2 * 18) * 70 * 18,
			3,
		);
	});
});

describe("brackets", () => {
	test("are bought: nothing is made, and only the back is named", () => {
		const design = built(
			rack(
				"kind brackets; on rack.back; wall { studs every 400; screw #10 x 75 each 2 }",
			),
		);
		expect(design.ids).toEqual([]);
		const [mount] = design.piece.mounts;
		expect(mount?.kind).toBe("brackets");
		expect(mount?.strip.path).toBe("rack.back");
		expect(mount?.wall?.each).toBe(2);
		expect(mount && numberOf(mount.wallStripTop)).toBe(
			// The back stands between top and bottom, half of its clearance of 1.5 below the top.
			420 - 18 - 0.75,
		);
		expect(design.piece.parts.some(({ role }) => role === "cleat")).toBe(false);
		expect(design.piece.joints.some(({ kind }) => kind === "cleat")).toBe(
			false,
		);
	});

	test("hold as far down as the line says", () => {
		const [mount] = built(
			rack("kind brackets; on rack.back; down 50 from rack.top"),
		).piece.mounts;
		expect(mount && numberOf(mount.wallStripTop)).toBe(420 - 50);
	});

	test.each([
		["brackets", "kind brackets; on rack.back; height 70; bevel 45 deg", 2],
		["a rail", `kind rail; ${usual}; play 5`, 1],
	])("lines that say nothing of %s are told", (_, lines, count) => {
		expect(built(rack(lines)).ids).toEqual(Array(count).fill("not-for-kind"));
	});
});

describe("what cannot hang", () => {
	test.each([
		[
			"nothing",
			"",
			["missing-line", "missing-line", "missing-line", "missing-line"],
		],
		[
			"down from nowhere",
			"on rack.back; of ply.eighteen; height 70; down 30",
			["datum-unclear"],
		],
		[
			"on a box",
			"on rack; of ply.eighteen; height 70; down 30 from rack.top",
			["not-a-part"],
		],
		[
			"on a side",
			"on rack.left; of ply.eighteen; height 70; down 30 from rack.top",
			["not-a-part"],
		],
		[
			"no height",
			"on rack.back; of ply.eighteen; height 0; down 30 from rack.top",
			["no-size"],
		],
		["a flat bevel", `${usual}; bevel 0 deg`, ["bad-angle"]],
		["a bevel that takes it all", `${usual}; bevel 10 deg`, ["bevel-too-deep"]],
		["all play", `${usual}; play 500`, ["no-size"]],
		[
			"on what is not there",
			"on shelf.back; of ply.eighteen; height 70; down 30 from rack.top",
			["unknown-name"],
		],
	])("%s", (_, lines, ids) => {
		expect(built(rack(lines)).ids).toEqual(ids);
	});

	test("a box without a back", () => {
		const { ids } = built(rack(usual).replace("back of ply.nine inset 20", ""));
		expect(ids).toEqual(["not-a-part"]);
	});
});
