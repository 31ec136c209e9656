// Where fasteners may stand, against what is printed and against arithmetic: edge and end distances, cover, slots, clearance.

import { describe, expect, it } from "vitest";
import { runChecks } from "../../shared/checks/index.ts";
import { compile } from "../../shared/model/compile.ts";
import { biscuits, screwDiameter } from "../../shared/model/fastener-sizes.ts";
import type { Finding } from "../../shared/model/types.ts";
import { sourcesOf } from "../../shared/sources/sources.ts";

const inch = 25.4;
const uri = "file:///outside.rod";

const materials = `sheet ply {
  species "birch plywood"
  variant three-quarter { sold-as 3/4; thick 3/4 }
  variant quarter { sold-as 1/4; thick 1/4 }
}
board oak {
  species "white oak"
  variant four-quarter { rough 1; planed 3/4 }
  variant eight-quarter { rough 2; planed 1 3/4 }
}
`;

function findings(design: string, id: string): readonly Finding[] {
	const compiled = compile(
		sourcesOf(new Map([[uri, `${materials}${design}`]])),
		uri,
	);
	expect(
		compiled.findings.filter(({ severity }) => severity === "error"),
	).toEqual([]);
	return runChecks(compiled).filter((finding) => finding.id === id);
}

/** A board of oak on a bearer of the same width, one screw so far from an end of the board, in inches. */
function board(fastener: string, fromEnd: number, more = ""): string {
	return `piece step {
  part tread { of oak.four-quarter; size 24 x 8; bottom at 6 from floor }
  part bearer { of oak.eight-quarter; size 7 x 5; lies deep facing up; top at tread.bottom; left at tread.left }
  join tread to bearer { ${fastener} { from above; at ${fromEnd} right from tread.left; at 4 forward from tread.back ${more} } }
}
`;
}

describe("the end of solid wood", () => {
	// NDS Commentary C12.1.5.7, from memory: 10 D from an unloaded end. Diameter: ASME B18.6.1, 0.060 + 0.013 N inches.
	it.each([
		// 10 x 0.164 in = 1.64 in
		["screw #8 x 1 3/4", 1.6, 1.7],
		// 10 x 0.138 in = 1.38 in
		["screw #6 x 1 1/2", 1.35, 1.4],
		// 10 x 0.190 in = 1.90 in
		["screw #10 x 2", 1.85, 1.95],
		// 15 gauge: 1.83 mm (trade table), 10 D = 18.3 mm = 0.720 in
		["nail 15ga x 1 3/4", 0.7, 0.74],
		// 18 gauge: 1.22 mm (trade table); 5 D = 6.1 mm = 0.240 in, common practice, no source
		["brad 18ga x 1 1/2", 0.22, 0.26],
	])("%s splits it at %d in and not at %d in", (fastener, near, far) => {
		const [found] = findings(board(fastener, near), "edge-split");
		expect(found?.message).toContain("from the end of `tread`");
		expect(findings(board(fastener, far), "edge-split")).toEqual([]);
	});

	it("bears a screw nearer to it when it is pre-drilled: 2 D, common practice, no source", () => {
		// 2 x 0.164 in = 0.328 in
		expect(
			findings(board("screw #8 x 1 3/4", 0.34, "; pilot"), "edge-split"),
		).toEqual([]);
		expect(
			findings(board("screw #8 x 1 3/4", 0.31, "; pilot"), "edge-split"),
		).toHaveLength(1);
	});
});

describe("the edge of solid wood", () => {
	/** Beside the long edge, in inches. */
	const beside = (fromBack: number): string => `piece step {
  part tread { of oak.four-quarter; size 24 x 8; bottom at 6 from floor }
  part bearer { of oak.eight-quarter; size 20 x 4; top at tread.bottom; left at 2 right from tread.left }
  join tread to bearer { screw #8 x 1 3/4 { from above; at ${fromBack} forward from tread.back; at 10 right from tread.left } }
}
`;
	it("wants 2.5 D (NDS Commentary C12.1.5.7, from memory): 0.41 in for a #8", () => {
		expect(findings(beside(0.4), "edge-split")[0]?.message).toContain(
			"from the edge of",
		);
		expect(findings(beside(0.42), "edge-split")).toEqual([]);
	});
});

describe("a thin edge", () => {
	/** A back of a thickness (in) between sides, a brad through a side of 3/4 in into its edge. */
	const back = (thick: number, length: string, more = ""): string =>
		`sheet thin { species "birch plywood"; variant one { thick ${thick} } }
piece tray {
  part side { of ply.three-quarter; size 12 x 6; lies deep facing side; bottom at 10 from floor }
  part back { of thin.one; size 16 x 6; lies across facing front; left at side.right; bottom at side.bottom }
  join side to back { brad 18ga x ${length} { at 3 up from side.bottom } }
  shop { mark within 1/32 ${more} }
}
`;
	it("holds a brad that wanders 3 degrees, by arithmetic", () => {
		// 1 1/4 in less 3/4 in of the side: 12.7 mm deep. 1.22 / 2 + 0.794 + 12.7 x tan 3 deg + 1 = 3.07 mm on each side.
		const wanted =
			2 *
			(1.22 / 2 + inch / 32 + 0.5 * inch * Math.tan((3 * Math.PI) / 180) + 1);
		expect(wanted / inch).toBeCloseTo(0.242, 3);
		expect(findings(back(0.24, "1 1/4"), "edge-blowout")).toHaveLength(1);
		expect(findings(back(0.245, "1 1/4"), "edge-blowout")).toEqual([]);
	});

	it("holds less of a longer one, and the mend is the longest that stays inside", () => {
		// 2 in: 31.75 mm deep, 1.22 / 2 + 0.794 + 31.75 x tan 3 deg + 1 = 4.07 mm: an edge of 0.32 in.
		expect(findings(back(0.33, "2"), "edge-blowout")).toEqual([]);
		const [found] = findings(back(0.3, "2"), "edge-blowout");
		// 0.15 in = 3.81 mm: (3.81 - 2.404) / tan 3 deg = 26.8 mm deep, with the side 45.9 mm: 1 3/4 in is 44.45.
		expect(found?.message).toContain("one 1 3/4 in long would stay inside");
		expect(found?.fixes[0]?.edits[0]?.text).toBe("1 3/4");
	});
});

describe("the slot of a biscuit", () => {
	// Depth settings of makers, from memory; the length of a slot by a cutter of 100 mm: 2 sqrt(a (100 - a)).
	it.each([
		[0, 8, 54.3],
		[10, 10, 60],
		[20, 12.3, 65.7],
	])("#%d is %d mm deep and %d mm long", (number, depth, slot) => {
		expect(biscuits[number]?.depth).toBe(depth);
		expect(2 * Math.sqrt(depth * (100 - depth))).toBeCloseTo(slot, 1);
		expect(biscuits[number]?.slot).toBe(slot);
	});

	it("must stay inside: #20 wants 12.3 + 1 mm, 0.524 in", () => {
		const lip = (thick: string): string => `piece shelf {
  part board { of oak.four-quarter; size 24 x 6; bottom at 20 from floor }
  part lip { of oak.four-quarter; size 24 x 1 1/2 x ${thick}; lies across facing front; top at board.top; back at board.front }
  join lip to board { glue; biscuit #20 every 6 }
}
`;
		expect(findings(lip("0.52"), "biscuit-size")).toHaveLength(1);
		expect(findings(lip("0.53"), "biscuit-size")).toEqual([]);
	});
});

describe("two fasteners in one post", () => {
	/** Dowels of 3/8 in, their axes apart by so much (in) in height, one from the right and one from the front. */
	const post = (apart: number): string => `piece corner {
  part post { of oak.eight-quarter; size 28 x 1 3/4; lies up facing front }
  part long { of oak.four-quarter; size 20 x 3; lies across facing front; left at post.right; top at post.top; centred deep on post }
  part short { of oak.four-quarter; size 14 x 3; lies deep facing side; back at post.front; top at post.top; centred across on post }
  join long to post { dowel 3/8 x 2 { at 1 down from post.top } }
  join short to post { dowel 3/8 x 2 { at ${1 + apart} down from post.top } }
}
`;
	it("meet where their axes are nearer than a diameter, and want 1 mm between them", () => {
		// Axes that cross at right angles: clearance = distance - 3/8 in. 1 mm is 0.0394 in: from 0.4144 in on.
		expect(findings(post(0.3), "fastener-clash")[0]?.severity).toBe("error");
		expect(findings(post(0.4), "fastener-clash")[0]?.severity).toBe("warning");
		expect(findings(post(0.42), "fastener-clash")).toEqual([]);
	});
});

it("takes screw diameters from ASME B18.6.1: #8 is 0.164 in, #10 0.190 in", () => {
	expect(screwDiameter(8) / inch).toBeCloseTo(0.164, 6);
	expect(screwDiameter(10) / inch).toBeCloseTo(0.19, 6);
});
