// Every size of every part in the shipped designs against sums that were done by hand, exactly. The sheets in `pencil` were
// worked out from the texts of the designs; no figure in them comes from the program.

import { Fraction } from "fraction.js";
import { describe, expect, test } from "vitest";
import { compile } from "../../shared/model/compile.ts";
import type { Size } from "../../shared/model/size.ts";
import type { Part, Piece } from "../../shared/model/types.ts";
import { cutList } from "../../shared/outputs/cut-list.ts";
import { sourcesOf } from "../../shared/sources/sources.ts";
import type { Rational } from "../../shared/units/rational.ts";
import { designOf, shippedDesigns } from "../harness/designs.ts";
import {
	type PencilSheet,
	type PencilSheets,
	sum,
	workOut,
} from "../harness/pencil.ts";
import { components } from "./pencil/components.ts";
import { gardenBench } from "./pencil/garden-bench.ts";
import { halfHungCase } from "./pencil/half-hung-case.ts";
import { recordBench } from "./pencil/record-bench.ts";
import { tallBookcase } from "./pencil/tall-bookcase.ts";
import { wallCabinet } from "./pencil/wall-cabinet.ts";
import { workshopOdds } from "./pencil/workshop-odds.ts";

const sheets: Readonly<Record<string, PencilSheets>> = {
	"shared/designs/components.rod": components,
	"shared/designs/garden-bench.rod": gardenBench,
	"shared/designs/record-bench.rod": recordBench,
	"shared/designs/stock.rod": {},
	"shared/designs/tall-bookcase.rod": tallBookcase,
	"shared/designs/wall-cabinet.rod": wallCabinet,
	"shared/designs/workshop-odds.rod": workshopOdds,
	"tests/corpus/half-hung-case.rod": halfHungCase,
};

function fraction(value: Rational): Fraction {
	return new Fraction(value.numerator, value.denominator);
}

/** Exact, in the sheet's unit, as a text that a failing test shows: `3366/64`. */
function asText(sizes: readonly Size[], unit: "in" | "mm"): string {
	const perUnit = new Fraction(unit === "in" ? "25.4" : "1");
	return sizes
		.map(({ value }) => fraction(value).div(perUnit).toFraction(true))
		.join(" x ");
}

function figures(part: Part, unit: "in" | "mm"): Record<string, string> {
	const stages: Record<string, string> = {};
	for (const { stage, length, width, thick } of part.stages)
		stages[stage] = asText([length, width, thick], unit);
	stages.final = asText([part.length, part.width, part.thick], unit);
	return stages;
}

/** What the program says of all parts and aids in the cut list. */
function fromProgram(
	piece: Piece,
	unit: "in" | "mm",
): Record<string, Record<string, string>> {
	const list = cutList(piece);
	const parts = list.sections.flatMap(({ rows }) =>
		rows.flatMap((row) => row.parts),
	);
	return Object.fromEntries([
		...parts.map((part) => [part.path, figures(part, unit)] as const),
		...list.aids.map(
			({ name, length, width, thick }) =>
				[
					`aid ${name}`,
					{ final: asText([length, width, ...(thick ? [thick] : [])], unit) },
				] as const,
		),
	]);
}

function fromPencil(
	sheet: PencilSheet,
): Record<string, Record<string, string>> {
	return Object.fromEntries(
		[...workOut(sheet)].map(([path, stages]) => [
			path,
			Object.fromEntries(
				[...stages].map(([stage, sizes]) => [
					stage,
					sizes.map((size) => size.toFraction(true)).join(" x "),
				]),
			),
		]),
	);
}

describe("sizes worked out by hand", () => {
	test("there is a sheet for every shipped design, and for every piece and component in it", () => {
		expect(Object.keys(sheets)).toEqual(
			expect.arrayContaining(shippedDesigns as string[]),
		);
		for (const [path, pieces] of Object.entries(sheets))
			expect(
				designOf(path)
					.pieces.map(({ name }) => name)
					.sort(),
				path,
			).toEqual(Object.keys(pieces).sort());
	});

	const cases = Object.entries(sheets).flatMap(([path, pieces]) =>
		Object.entries(pieces).map(([name, sheet]) => ({ path, name, sheet })),
	);

	test.each(cases)(
		"$name: every part, every stage",
		({ path, name, sheet }) => {
			const piece = designOf(path).pieces.find((one) => one.name === name);
			expect(piece?.display.unit).toBe(sheet.unit);
			expect(fromProgram(piece as Piece, sheet.unit)).toEqual(
				fromPencil(sheet),
			);
		},
	);
});

describe("sums on paper", () => {
	test.each([
		["54 - 2 * 45/64", 52 + 38 / 64],
		["(54 - 4 * 45/64) / 3", (54 - 180 / 64) / 3],
		["15 + 3/4 - 0.25", 15.5],
		["2 - 3 + 4", 3],
		["12 / 4 / 3", 1],
	])("%s", (text, value) => {
		expect(sum(text).valueOf()).toBeCloseTo(value, 12);
	});
	test.each(["54 -", "(2", "2 )", "ply", "2 3/4", ""])(
		"%j is no sum",
		(text) => {
			expect(() => sum(text)).toThrow();
		},
	);
});

describe("published sizing examples", () => {
	// Wood Magazine, "Precise layout for plywood projects"
	// (woodmagazine.com/woodworking-how-to/layout-measuring-marking/precise-layout-for-plywood-projects): a case 26 in wide
	// over all, sides of plywood sold as 3/4 in, rabbets 3/8 in deep in both sides for top and bottom: these are cut
	// 25-7/16 in long. It holds for an actual thickness of 21/32 in; with the sold-as 3/4 the sum gives 25-1/4.
	const lengths = (thick: string): readonly string[] => {
		const text = `
sheet ply { species "hardwood plywood"; variant three-quarter { sold-as 3/4; thick ${thick} } }
piece case {
  box case {
    outside 26 x 30 x 12
    panels top, bottom, left, right of ply.three-quarter
    caps left, right
    join top, bottom to left, right { rabbet 3/8; glue }
  }
}`;
		const uri = "file:///house/published.rod";
		const [piece] = compile(sourcesOf(new Map([[uri, text]])), uri).pieces;
		return ["case.top", "case.bottom"].map((path) => {
			const part = piece?.partByPath.get(path);
			return part ? asText([part.length], "in") : "there is no such part";
		});
	};

	test("a case 26 in wide with rabbets of 3/8 in and sides that measure 21/32: top and bottom 25-7/16 in", () => {
		expect(lengths("21/32")).toEqual(["25 7/16", "25 7/16"]);
	});

	test("by the label instead of the calipers they come out 3/16 in short", () => {
		expect(lengths("3/4")).toEqual(["25 1/4", "25 1/4"]);
	});
});
