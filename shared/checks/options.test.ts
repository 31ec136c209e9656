// What a workspace may set: severity by id, figures by name; and what the run as a whole keeps to.

import { expect, it } from "vitest";
import { compile } from "../model/compile.ts";
import type { Design } from "../model/types.ts";
import { sourcesOf } from "../sources/sources.ts";
import { examplePreamble } from "./example.ts";
import { allFindings, checkById, checks, runChecks } from "./index.ts";
import { figuresOf } from "./options.ts";

function designOf(id: string): Design {
	const uri = "file:///example.rod";
	const text = `${examplePreamble}${checkById(id)?.fires}\n`;
	return compile(sourcesOf(new Map([[uri, text]])), uri);
}

it("turns a check off, or gives it another severity", () => {
	const design = designOf("fit-nominal");
	const severityOf = (severity: "off" | "hint"): readonly string[] =>
		runChecks(design, { severity: { "fit-nominal": severity } })
			.filter(({ id }) => id === "fit-nominal")
			.map((finding) => finding.severity);
	expect(severityOf("off")).toEqual([]);
	expect(severityOf("hint")).toEqual(["hint"]);
});

it.each(checks.map(({ id }) => id))(
	"%s obeys its severity, wherever it is found",
	(id) => {
		const design = designOf(id);
		const severities = (severity: "off" | "hint"): readonly string[] =>
			allFindings(design, { severity: { [id]: severity } })
				.filter((finding) => finding.id === id)
				.map((finding) => finding.severity);
		expect(severities("off")).toEqual([]);
		expect(severities("hint")).toEqual(["hint"]);
	},
);

it("speaks of one member, and of several, as English does", () => {
	const told = (line: string): string | undefined => {
		const text = `${examplePreamble}
piece rack {
  box case {
    outside 30 x 20 x 10
    panels top, bottom, left, right of ply.three-quarter
    ${line} { dado 1/4 wide 3/4; glue }
  }
}
`;
		const uri = "file:///example.rod";
		const design = compile(sourcesOf(new Map([[uri, text]])), uri);
		return runChecks(design).find(({ id }) => id === "fit-nominal")?.message;
	};
	expect(told("join top to left, right")).toContain("`case.top` measures ");
	expect(told("join top, bottom to left, right")).toContain(
		"`case.bottom` and `case.top` measure ",
	);
});

it("takes another figure", () => {
	const design = designOf("fit-mitre");
	const found = (opening: number): number =>
		runChecks(design, {
			figures: { "fit-mitre": { opening, closing: 10 } },
		}).filter(({ id }) => id === "fit-mitre").length;
	// 2 3/4 in thick: 69.85 x sqrt(2) x tan(0.2 deg) = 0.345 mm.
	expect(found(0.34)).toBe(1);
	expect(found(0.35)).toBe(0);
});

it("keeps the default where a figure makes no sense", () => {
	const check = checkById("fit-mitre");
	if (!check) throw new Error("No such check");
	const own = check.figures;
	for (const opening of [Number.NaN, -1, Number.POSITIVE_INFINITY]) {
		expect(
			figuresOf(check, { figures: { "fit-mitre": { opening } } }).opening,
		).toBe(own.opening?.value);
	}
});

it("gives the same findings for the same design, in the order of the text", () => {
	for (const { id } of checks) {
		const first = runChecks(designOf(id));
		expect(JSON.stringify(runChecks(designOf(id)))).toBe(JSON.stringify(first));
		const starts = first.map(({ origin }) => origin.span.start);
		expect(starts).toEqual(starts.toSorted((a, b) => a - b));
	}
});
