// A slip in a shipped design is told by the check that is there for it; the designs themselves are sound (another test).

import { expect, it } from "vitest";
import { shippedSources, textOf, uriOf } from "../../tests/harness/designs.ts";
import { compile } from "../model/compile.ts";
import type { Finding } from "../model/types.ts";
import { runChecks } from "./index.ts";

function findingsAfter(
	file: string,
	from: string,
	to: string,
): readonly Finding[] {
	const path = `shared/designs/${file}`;
	const text = textOf(path);
	// Lines are in columns, however the formatter sets them.
	const pattern = new RegExp(
		from
			.split(" ")
			.map((word) => word.replace(/[.*+?^${}()|[\]\\]/g, "\\$&"))
			.join(" +"),
	);
	expect(text).toMatch(pattern);
	const changed = text.replace(pattern, to);
	const design = compile(
		{
			...shippedSources,
			read: (uri) => (uri === uriOf(path) ? changed : shippedSources.read(uri)),
		},
		uriOf(path),
	);
	return runChecks(design);
}

it.each([
	[
		"record-bench.rod",
		"centred dado 3/16",
		"centred dado 3/16 wide 3/4",
		"fit-gap",
	],
	[
		"record-bench.rod",
		"centred dado 3/16",
		"centred dado 3/16 wide 3/4",
		"fit-nominal",
	],
	["wall-cabinet.rod", "fit one, two after top, bottom", "", "fit-stack"],
	[
		"record-bench.rod",
		"dowel 5/16 x 1 1/4 every 5",
		"dowel 5/16 x 1 1/2 every 5",
		"fastener-through",
	],
	[
		"record-bench.rod",
		"screw #8 x 25 every 120",
		"screw #8 x 35 every 120",
		"fastener-through",
	],
	["garden-bench.rod", "countersink 30", "countersink 45", "fastener-through"],
	[
		"record-bench.rod",
		"screw #8 x 45 every 90",
		"screw #8 x 20 every 90",
		"fastener-short",
	],
	[
		"record-bench.rod",
		"biscuit #10 1 3/4 down from inner.top",
		"biscuit #10 1/2 down from inner.top",
		"fastener-through",
	],
	[
		"record-bench.rod",
		"cut-in 5/8 at floor",
		"cut-in 2 1/4 at floor",
		"foot-thin",
	],
	["garden-bench.rod", "taper inside 14", "taper inside 40", "foot-thin"],
	["record-bench.rod", "overhang 5/16", "overhang 1/16", "veneer-overhang"],
	["record-bench.rod", "proud 1/64 on both faces", "wide 5/8", "trim-width"],
	[
		"record-bench.rod",
		"given depth = 15 3/4",
		"given depth = 15 1/2",
		"trim-back",
	],
	["record-bench.rod", "given depth = 15 3/4", "given depth = 16", "too-small"],
	[
		"record-bench.rod",
		"set-back 2 3/8 from lip.front",
		"set-back 10 from lip.front",
		"interfere",
	],
	[
		"tall-bookcase.rod",
		"left at west.right",
		"left at 1 left from west.right",
		"interfere",
	],
	[
		"tall-bookcase.rod",
		"left at west.right",
		"left at 1 right from west.right",
		"gap",
	],
	["record-bench.rod", "groove 6 inset 18", "groove 6 inset 10", "cleat-fit"],
	["record-bench.rod", "900 x 420 x 210", "2600 x 420 x 210", "stock-size"],
	["garden-bench.rod", "strips 4", "strips 1", "stock-size"],
	["wall-cabinet.rod", "unit mm", "unit in", "unit-slip"],
	[
		"tall-bookcase.rod",
		"measured ply.three-quarter.thick 0.71",
		"measured ply.three-quarter.thick 0.17",
		"odd-reading",
	],
] as const)("%s: %s -> %s is %s", (file, from, to, id) => {
	expect(findingsAfter(file, from, to).map((finding) => finding.id)).toContain(
		id,
	);
});
