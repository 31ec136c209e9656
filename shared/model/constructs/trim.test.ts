// Trim: how wide and how long its strips are, how they meet, what they stand on.

import { describe, expect, test } from "vitest";
import { built, inInches } from "../../../tests/harness/built.ts";

const t = 45 / 64;
const caseOf = (more = ""): string => `
  box case {
    outside 30 x 20 x 12
    panels top, bottom, left, right of ply.three-quarter
    ${more}
  }
`;
const lip = (lines: string, more = ""): string => `piece cabinet {
  ${caseOf(more)}
  trim lip { on case.front.edges; of oak.four-quarter; thick 3/8; ${lines} }
}`;

describe("a mitred frame", () => {
	test("is as long as the box outside, as wide as the edges once flushed", () => {
		const { part, corners, ids } = built(lip("proud 1/64 on both faces"));
		expect(ids).toEqual([]);
		expect(inInches(part("lip.top").length)).toBe(30);
		expect(inInches(part("lip.left").length)).toBe(20);
		expect(inInches(part("lip.top").width)).toBe(t);
		expect(corners("lip.top")).toEqual([
			[0, 20 - t, 12],
			[30, 20, 12 + 3 / 8],
		]);
		expect(corners("lip.left")[0]).toEqual([0, 0, 12]);
		const heavy = part("lip.top").stages[0];
		expect(heavy?.stage).toBe("heavy");
		expect(heavy && inInches(heavy.width)).toBe(t + 2 * (1 / 64));
		expect(heavy && inInches(heavy.length)).toBe(30 + 2 * (1 / 64));
		expect(part("lip.top").edges).toEqual([
			{ where: "both ends", work: "mitre", text: "45°" },
		]);
	});

	test("its strips are trapezoids", () => {
		const { part } = built(lip(""));
		// The mean of the outer and the inner length, by width and thickness.
		expect(part("lip.top").volume / 25.4 ** 3).toBeCloseTo(
			((30 + (30 - 2 * t)) / 2) * t * (3 / 8),
			6,
		);
	});

	test("adds its thickness to the front of the piece", () => {
		const { piece } = built(
			lip("").replace(/}$/, "mark over-all = case.depth + lip.thick\n}"),
		);
		const depth = piece.overAll?.[2];
		expect(depth && inInches(depth)).toBe(12 + 3 / 8);
		const mark = piece.sizes.get("over-all");
		expect(mark && inInches(mark)).toBe(12 + 3 / 8);
	});

	test("can be measured from: its front, and the outside faces of its strips", () => {
		const { corners, ids } = built(
			lip("").replace(
				/}$/,
				"part board { of ply.quarter; size 4 x 4; front at 1 back from lip.front; left at 2 right from lip.left; top at 3 down from lip.top }\n}",
			),
		);
		expect(ids).toEqual([]);
		const [min, max] = corners("board");
		expect(max[2]).toBe(12 + 3 / 8 - 1);
		expect(min[0]).toBe(2);
		expect(max[1]).toBe(20 - 3);
	});
});

describe("butted corners", () => {
	test("caps run over the ends of the others, which stop at what stays proud", () => {
		const { part, corners } = built(
			lip("corners butted; proud 1/64 on both faces"),
		);
		expect(inInches(part("lip.left").length)).toBe(20);
		expect(inInches(part("lip.top").length)).toBe(30 - 2 * (t + 1 / 64));
		expect(corners("lip.top")[0][0]).toBe(t + 1 / 64);
		expect(part("lip.top").edges).toEqual([]);
	});

	test("other strips can be the caps", () => {
		const { part } = built(lip("corners butted; caps top, bottom"));
		expect(inInches(part("lip.top").length)).toBe(30);
		expect(inInches(part("lip.left").length)).toBe(20 - 2 * t);
	});

	test("each corner is one joint", () => {
		const { piece } = built(lip("corners butted"));
		const corners = piece.joints.filter(
			({ host, member }) => host.role === "trim" && member.role === "trim",
		);
		expect(corners.map(({ host }) => host.name).sort()).toEqual([
			"left",
			"left",
			"right",
			"right",
		]);
	});
});

describe("single edges", () => {
	test("a board alone is covered from end to end", () => {
		const { corners, part } = built(`piece desk {
      part top { of ply.three-quarter; size 40 x 20 }
      trim edge { on top.front; of oak.four-quarter; thick 1/4 }
    }`);
		expect(corners("edge.top")).toEqual([
			[0, 0, 20],
			[40, t, 20 + 1 / 4],
		]);
		expect(part("edge.top").stages).toEqual([]);
	});

	test("round a board the corners are mitred the other way", () => {
		const { part, corners } = built(`piece desk {
      part top { of ply.three-quarter; size 40 x 20 }
      trim edge { on top.edges; of oak.four-quarter; thick 1/4 }
    }`);
		expect(inInches(part("edge.front").length)).toBe(40 + 2 * (1 / 4));
		expect(inInches(part("edge.left").length)).toBe(20 + 2 * (1 / 4));
		expect(corners("edge.left")[0]).toEqual([-1 / 4, 0, -1 / 4]);
		expect(part("edge.front").volume / 25.4 ** 3).toBeCloseTo(
			((40 + 40 + 2 * (1 / 4)) / 2) * (1 / 4) * t,
			6,
		);
	});

	test("a divider is covered where it shows: not in its dadoes, not behind the frame", () => {
		const { corners } = built(`piece cabinet {
      ${caseOf("divider middle of ply.three-quarter centred dado 1/4")}
      trim lip {
        on case.front.edges, case.middle.front
        of oak.four-quarter
        thick 3/8
        proud 1/64 on both faces
      }
    }`);
		expect(corners("lip.middle")[0][1]).toBe(t + 1 / 64);
		expect(corners("lip.middle")[1][1]).toBe(20 - t - 1 / 64);
	});
});

describe("widths", () => {
	test("a written width shares what it has over between both faces", () => {
		const { piece } = built(lip("wide 25/32"));
		const strip = piece.trims[0]?.strips[0];
		expect(strip && inInches(strip.width)).toBe(25 / 32);
		expect(strip?.proud.map(inInches)).toEqual([
			(25 / 32 - t) / 2,
			(25 / 32 - t) / 2,
		]);
		expect(strip?.widthSpan).toBeDefined();
	});

	test("a width below the edge stays as written, for a check to tell", () => {
		const { part } = built(lip("wide 1/2"));
		expect(inInches(part("lip.top").width)).toBe(1 / 2);
	});

	test("proud on one face", () => {
		const { piece } = built(lip("proud 1/32 on outside faces"));
		expect(piece.trims[0]?.strips[0]?.proud.map(inInches)).toEqual([1 / 32, 0]);
	});
});

test("each strip is fastened to its panel", () => {
	const { piece, ids } = built(
		lip("fasten { glue; pin 23ga x 1 1/8 every 8 }"),
	);
	expect(ids).toEqual([]);
	const trims = piece.joints.filter(({ kind }) => kind === "trim");
	expect(trims.map(({ id }) => id)).toEqual([
		"case.top~lip.top",
		"case.bottom~lip.bottom",
		"case.left~lip.left",
		"case.right~lip.right",
	]);
	expect(trims.every(({ glue }) => glue)).toBe(true);
	const run = trims[2]?.fasteners[0];
	expect(run?.direction).toEqual([0, 0, -1]);
	expect(run?.through.path).toBe("lip.left");
	// 20 high, every 8 at most: 3.
	expect(run?.points).toHaveLength(Math.ceil(20 / 8));
});

describe("what cannot be trimmed", () => {
	test.each([
		["nothing", "", ["missing-line", "missing-line", "missing-line"]],
		["a part", "on case.top; of oak.four-quarter; thick 3/8", ["not-an-edge"]],
		[
			"a broad face",
			"on case.top.top; of oak.four-quarter; thick 3/8",
			["not-an-edge"],
		],
		[
			"a size",
			"on case.width; of oak.four-quarter; thick 3/8",
			["not-an-edge"],
		],
		[
			"with a sheet",
			"on case.front.edges; of ply.quarter; thick 3/8",
			["not-a-material"],
		],
		[
			"with no thickness",
			"on case.front.edges; of oak.four-quarter; thick 0",
			["no-size"],
		],
		[
			"what is not there",
			"on shelf.front; of oak.four-quarter; thick 3/8",
			["unknown-name"],
		],
	])("%s", (_, lines, ids) => {
		expect(
			built(`piece cabinet { ${caseOf()} trim lip { ${lines} } }`).ids,
		).toEqual(ids);
	});
});
