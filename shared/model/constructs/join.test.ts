// How parts meet that are not panels of one box: tenons, veneer between, which side is inside.

import { describe, expect, test } from "vitest";
import { built, inInches } from "../../../tests/harness/built.ts";
import { runChecks } from "../../checks/index.ts";

/** Two posts of six-quarter, 2 deep, and a rail as thick as they are between them. */
const frame = (tenon: string, length: string): string => `
piece frame {
  part rear { of oak.six-quarter; size 28 x 2; lies up facing side }
  part front { of oak.six-quarter; size 28 x 2; lies up facing side; front at 16 forward from rear.back }
  part rail {
    of oak.six-quarter
    size ${length} x 3
    lies deep facing side
    top at rear.top
    centred deep on frame-middle
  }
  part frame-middle { of oak.six-quarter; size 16 x 1; lies deep facing side; bottom at 4 from floor }
  join rail to rear, front { tenon ${tenon}; glue }
}`;

describe("a tenon", () => {
	test.each([
		["shorter than the rail is thick", "1 x 2 x 3/8", "14"],
		["longer than the rail is thick", "1 1/2 x 2 x 3/8", "15"],
	])("%s is cut on the end of the rail", (_, tenon, length) => {
		const { ids, piece, part } = built(frame(tenon, length));
		expect(ids).toEqual([]);
		expect(part("rear").housings.map(({ kind }) => kind)).toEqual(["mortise"]);
		expect(part("front").housings.map(({ kind }) => kind)).toEqual(["mortise"]);
		const [mortise] = part("rear").housings;
		expect(mortise && inInches(mortise.depth)).toBe(length === "14" ? 1 : 1.5);
		expect(piece.joints.map(({ kind }) => kind)).toEqual(["tenon", "tenon"]);
	});

	test("that does not reach is told by how much", () => {
		const { ids } = built(frame("1 1/2 x 2 x 3/8", "14"));
		expect(ids).toEqual(["does-not-reach", "does-not-reach"]);
	});
});

describe("a groove with a clearance", () => {
	const door = (reach: string): string => `
piece door {
  part stile { of oak.four-quarter; size 26 x 2 1/2; lies up facing front }
  part panel {
    of oak.four-quarter
    size 20 x 8 x 1/2
    lies up facing front
    left at ${reach} left from stile.right
    centred deep on stile
  }
  join panel to stile { groove 3/8 clearance 1/8 }
}`;

	test("is deeper than the panel reaches in, away from the panel", () => {
		const { ids, part } = built(door("1/4"));
		expect(ids).toEqual([]);
		const [groove] = part("stile").housings;
		// The stile ends at 2 1/2 in: 3/8 deep, and the panel stands 1/4 in it.
		expect(groove?.box.min[0]).toBeCloseTo((2.5 - 0.375) * 25.4, 6);
		expect(groove?.box.max[0]).toBeCloseTo(2.5 * 25.4, 6);
		expect(part("panel").solid.box.min[0]).toBeCloseTo((2.5 - 0.25) * 25.4, 6);
	});

	test("that a panel fills does not reach as it says", () => {
		expect(built(door("3/8")).ids).toEqual(["does-not-reach"]);
	});
});

describe("veneer between two parts", () => {
	const bench = (against: string): string => `
piece bench {
  box case { outside 30 x 12 x 14; top at 20 from floor; panels top, bottom, left, right of ply.three-quarter }
  veneer skin { on case.left, case.right; of skins.oak }
  leg left-leg, right-leg handed {
    against outside ${against}
    set-back 1 from case.front
    layer outer of oak.four-quarter 2 wide from floor up to 5 above case.bottom
    join outer to case.left { screw #10 x 1 1/4 { from inside; at 2, 4 up from case.bottom } }
  }
}`;

	test("does not keep them apart: the screws go through it", () => {
		const { design, piece, ids } = built(bench("skin.left"));
		expect(ids).toEqual([]);
		const joint = piece.joints.find(
			({ member, host }) =>
				[member.path, host.path].sort().join() === "case.left,left-leg.outer",
		);
		expect(joint?.apart).toBe(0);
		expect(joint?.fasteners.map(({ points }) => points.length)).toEqual([2]);
		expect(joint?.fasteners[0]?.through.path).toBe("case.left");
		expect(
			runChecks(design).filter(({ severity }) => severity === "error"),
		).toEqual([]);
	});

	test("is no joint where there is only air: a gap is a gap", () => {
		const { piece } = built(`
piece pair {
  part low { of oak.four-quarter; size 20 x 4 }
  part high { of oak.four-quarter; size 20 x 4; bottom at 0.025 above low }
  join high to low { glue }
}`);
		expect(piece.joints.map(({ apart }) => apart.toFixed(3))).toEqual([
			"0.635",
		]);
	});
});

test("from outside, two lone parts have an inside together: the screw goes through the end into the bar", () => {
	const { piece, ids } = built(`
piece tote {
  part end { of oak.four-quarter; size 9 x 8; lies up facing side }
  part bar { of oak.four-quarter; size 20 x 2; lies across facing front; left at end.right; bottom at 6 from floor; centred deep on end }
  join bar to end { screw #8 x 2 { from outside } }
}`);
	expect(ids).toEqual([]);
	expect(
		piece.joints.flatMap(({ fasteners }) =>
			fasteners.map(({ through, into }) => [through.path, into.path]),
		),
	).toEqual([["end", "bar"]]);
});

test("a given whose range is bare numbers can be set to a length of the design", () => {
	const { ids, part } = built(`
component foot { given width = 30 from 12 to 40; part rail { of oak.four-quarter; size width x 3 } }
piece chest {
  part board { of oak.four-quarter; size 38 x 8 }
  make short from foot { set width = board.length - 2 }
  make long from foot { set width = board.length + 3 }
}`);
	expect(ids).toEqual(["out-of-range"]);
	expect(inInches(part("short.rail").length)).toBe(36);
});

test("a back that stands between the panels with room to enter is no gap", () => {
	const { design } = built(`
piece rack {
  unit mm
  box case {
    outside 400 x 300 x 150
    panels top, bottom, left, right of ply.eighteen
    back of ply.nine inset 18 clearance 1
    join back to left, right, top, bottom { glue }
  }
}`);
	expect(
		runChecks(design).filter(({ severity }) => severity === "error"),
	).toEqual([]);
});

describe("a housing in a lone part is set out", () => {
	const set = (part: ReturnType<typeof built>, path: string) =>
		part
			.part(path)
			.housings.map(({ kind, at, datum }) => [kind, inInches(at), datum]);
	/** A housing is 0.1 mm wider than what it takes: half of that on each side. */
	const slack = 0.05 / 25.4;

	test("a mortise from the lower end: 28 less the rail's 3, and 1/2 of shoulder", () => {
		const design = built(frame("1 x 2 x 3/8", "14"));
		expect(set(design, "rear")).toEqual([
			["mortise", 28 - 3 + 1 / 2, "from the lower end"],
		]);
		expect(set(design, "rail").map(([kind, , datum]) => [kind, datum])).toEqual(
			[
				["rabbet", "from the rear end"],
				["rabbet", "from the rear end"],
				["rabbet", "from the rear end"],
				["rabbet", "from the rear end"],
				["rabbet", "from the front end"],
				["rabbet", "from the front end"],
				["rabbet", "from the front end"],
				["rabbet", "from the front end"],
			],
		);
	});

	test.each([
		[
			"across facing front",
			"lies up facing side; left at 6 right from host.left; bottom at host.top",
			"left end",
			6,
		],
		[
			"across facing up",
			"lies across facing front; back at 1 forward from host.back; left at 2 right from host.left; bottom at host.top",
			"rear edge",
			1,
		],
	])("a dado in a board that lies %s", (lies, other, datum, inch) => {
		const design = built(`piece tray {
  part host { of oak.eight-quarter; size 20 x 5; lies ${lies} }
  part leaf { of ply.three-quarter; size 2 x 2; ${other.replace("bottom at host.top", "bottom at 1/4 down from host.top")} }
  join leaf to host { dado 1/4 }
}`);
		expect(design.ids).toEqual([]);
		const [[kind, at, from] = []] = set(design, "host");
		expect([kind, from]).toEqual(["dado", `from the ${datum}`]);
		expect(at).toBeCloseTo(inch - slack, 9);
	});
});
