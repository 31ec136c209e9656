// What a change does to a piece: resized, moved, renamed, gone; joints, findings and wood that is cut already.

import { describe, expect, it } from "vitest";
import { allFindings } from "../checks/index.ts";
import { compile } from "../model/compile.ts";
import { compare, type Reviewed } from "./compare.ts";
import type { Comparison, PieceComparison } from "./types.ts";

const stock = `unit mm
sheet ply { species "birch plywood"; size 2440 x 1220; variant eighteen { sold-as 18; thick 18; price 90 } }
`;
const rack = `${stock}
piece rack {
  given width = 800
  box case {
    outside width x 400 x 300
    panels top, bottom, left, right of ply.eighteen
    shelf one of ply.eighteen 180 above bottom on pins clearance 1
    join top, bottom to left, right { glue }
  }
  load 5 kg on case.one
}
`;

function reviewed(text: string): Reviewed {
	const uri = "file:///rack.rod";
	const sources = {
		read: (asked: string) => (asked === uri ? text : undefined),
		resolve: () => undefined,
	};
	const design = compile(sources, uri);
	return { design, findings: allFindings(design) };
}

function change(before: string, after: string): Comparison {
	return compare(reviewed(before), reviewed(after));
}

function only(comparison: Comparison): PieceComparison {
	expect(comparison.pieces).toHaveLength(1);
	return comparison.pieces[0] as PieceComparison;
}

const changedPaths = ({ changed }: PieceComparison): string[] =>
	changed.map(({ after, sizes, texts }) =>
		[after.path, ...[...sizes, ...texts].map(({ what }) => what)].join(" "),
	);

describe("a comparison", () => {
	it("of a design with itself is empty", () => {
		expect(change(rack, rack)).toEqual({
			pieces: [],
			findings: { fresh: [], cured: [], changed: [] },
		});
	});

	it("tells what is resized and what moves", () => {
		const piece = only(change(rack, rack.replace("= 800", "= 900")));
		expect(changedPaths(piece)).toEqual([
			"case.top length",
			"case.bottom length",
			"case.one length",
		]);
		const [top] = piece.changed;
		// Between the sides: 800 - 2 x 18 = 764, then 864.
		expect(top?.sizes[0]?.before?.value.toNumber()).toBe(764);
		expect(top?.sizes[0]?.after?.value.toNumber()).toBe(864);
		expect(piece.moved).toMatchObject([{ by: [100, 0, 0] }]);
		expect(piece.moved[0]?.parts.map(({ after }) => after.path)).toEqual([
			"case.right",
		]);
		expect(piece.same).toBe(1);
		expect(piece.givens.map(({ name }) => name)).toEqual(["width"]);
		expect(piece.overall.map(({ what }) => what)).toEqual([
			"width over the case",
			"width",
		]);
	});

	it("takes a renamed part for the same", () => {
		const piece = only(
			change(
				rack,
				rack
					.replace("shelf one", "shelf lower")
					.replace("case.one", "case.lower"),
			),
		);
		expect(piece.renamed).toMatchObject([
			{ before: { path: "case.one" }, after: { path: "case.lower" } },
		]);
		expect([piece.gone, piece.added, piece.changed, piece.moved]).toEqual([
			[],
			[],
			[],
			[],
		]);
	});

	it("tells what came and what went", () => {
		const two = rack.replace(
			"    join",
			"    shelf two of ply.eighteen 280 above bottom on pins clearance 1\n    join",
		);
		expect(only(change(rack, two)).added.map(({ path }) => path)).toEqual([
			"case.two",
		]);
		expect(only(change(two, rack)).gone.map(({ path }) => path)).toEqual([
			"case.two",
		]);
	});

	it("tells joints that are made otherwise", () => {
		const piece = only(
			change(
				rack,
				rack.replace("{ glue }", "{ glue; screw #8 x 45 mm every 100 }"),
			),
		);
		expect(piece.joints.gone).toEqual([]);
		expect(piece.joints.changed).toHaveLength(4);
		expect(piece.joints.changed[0]?.texts).toMatchObject([
			{ what: "fasteners", before: undefined },
		]);
	});

	it("tells what becomes of wood that is cut", () => {
		const cut = rack.replace("  load", "  cut case.top 764 x 300\n  load");
		const shorter = only(change(cut, cut.replace("= 800", "= 790")));
		expect(shorter.cuts).toMatchObject([{ before: "right", after: "trim" }]);
		// 764 is cut, 790 - 36 = 754 is wanted.
		expect(shorter.cuts[0]?.length?.toNumber()).toBe(10);
		const longer = only(change(cut, cut.replace("= 800", "= 900")));
		expect(longer.cuts).toMatchObject([
			{ before: "right", after: "too-small" },
		]);
		expect(longer.cuts[0]?.length?.toNumber()).toBe(100);
		const without = only(
			change(
				cut,
				cut
					.replace("top, bottom, left", "bottom, left")
					.replace("join top, bottom", "join bottom")
					.replace("  cut case.top 764 x 300\n", ""),
			),
		);
		expect(without.cuts).toMatchObject([{ after: "not-used" }]);
	});

	it("tells findings that are new, cured and told with another figure", () => {
		const heavy = rack.replace("5 kg", "80 kg");
		const fresh = only(change(rack, heavy)).findings;
		expect(fresh.fresh.map(({ id }) => id)).toContain("sag");
		const cured = only(change(heavy, rack)).findings;
		expect(cured.cured.map(({ id }) => id)).toContain("sag");
		const worse = only(change(heavy, rack.replace("5 kg", "90 kg"))).findings;
		expect(worse.changed.map(({ after }) => after.id)).toContain("sag");
		expect(worse.fresh).toEqual([]);
	});

	it("tells a piece that is new, gone or renamed", () => {
		expect(only(compare(undefined, reviewed(rack)))).toMatchObject({
			name: "rack",
			before: undefined,
		});
		expect(only(compare(reviewed(rack), undefined))).toMatchObject({
			name: "rack",
			after: undefined,
		});
		const renamed = only(
			change(rack, rack.replace("piece rack", "piece shelf")),
		);
		expect(renamed.name).toBe("shelf");
		expect(renamed.before?.name).toBe("rack");
		expect([renamed.gone, renamed.added, renamed.changed]).toEqual([
			[],
			[],
			[],
		]);
	});
});
