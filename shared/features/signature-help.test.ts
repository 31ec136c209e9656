// The form of the line at the cursor: what comes next stands in `«…»`.

import { describe, expect, test } from "vitest";
import { snap } from "../../tests/harness/snapshot.ts";
import { signatureHelp } from "./signature-help.ts";

/** All forms, the fitting one first. */
function shown(source: string): string[] {
	const { snapshot, offset } = snap(source);
	const help = signatureHelp(snapshot, offset);
	if (!help) return [];
	const all = help.signatures.map(({ label, parameters, active }) => {
		const at = active === undefined ? undefined : parameters[active];
		return at
			? `${label.slice(0, at.start)}«${label.slice(at.start, at.end)}»${label.slice(at.end)}`
			: label;
	});
	const [first] = all.splice(help.active, 1);
	return [first ?? "", ...all];
}

const inBox = (line: string): string =>
	`piece a {\n  box b {\n    ${line}\n  }\n}\n`;

describe("the form of a line", () => {
	const tail =
		"[centred] [equal] [dado LENGTH] [wide LENGTH] [set-back LENGTH] [POSITION]";

	test.each([
		["divider <|>", `divider «NEW-NAMES» of MATERIAL ${tail}`],
		["divider mid<|>", `divider «NEW-NAMES» of MATERIAL ${tail}`],
		["divider middle <|>", `divider NEW-NAMES «of» MATERIAL ${tail}`],
		["divider middle of ply.<|>", `divider NEW-NAMES of «MATERIAL» ${tail}`],
		[
			"divider middle of ply.half <|>",
			`divider NEW-NAMES of MATERIAL «[centred]» ${tail.slice("[centred] ".length)}`,
		],
		[
			"divider middle of ply.half da<|>",
			`divider NEW-NAMES of MATERIAL ${tail.replace("[dado LENGTH]", "«[dado LENGTH]»")}`,
		],
		[
			"divider middle of ply.half centred dado <|>",
			`divider NEW-NAMES of MATERIAL ${tail.replace("[dado LENGTH]", "«[dado LENGTH]»")}`,
		],
		["outside 3 x <|>", "outside «SIZES3»"],
		["outside max(3, <|>", "outside «SIZES3»"],
		["corners <|>", "corners «butted|mitred»"],
	])("%s", (line, form) => {
		expect(shown(inBox(line))).toEqual([form]);
	});

	test("the one of several that fits is in front", () => {
		expect(shown(inBox("back at <|>"))).toEqual([
			"back at «POSITION»",
			"back of MATERIAL [rabbet LENGTH] [groove LENGTH] [inset LENGTH] [applied] [clearance LENGTH]",
		]);
	});

	test("says what the line is for and what each of its parts is", () => {
		const { snapshot, offset } = snap(inBox("outside <|>"));
		const [first] = signatureHelp(snapshot, offset)?.signatures ?? [];
		expect(first?.documentation).toContain("Size over the panels and the back");
		expect(first?.parameters[0]?.documentation).toBe(
			"size: three sizes (`a x b x c`)",
		);
	});

	test.each([
		["where a line begins", "outside 1 x 2 x 3\n    <|>"],
		["in a comment", "outside 1 x 2 x 3 // <|>"],
		["behind a word that is no line", "thing <|>"],
	])("nothing %s", (_where, line) => {
		expect(shown(inBox(line))).toEqual([]);
	});
});

describe("the givens of a component", () => {
	const made = (line: string): string => `component base {
  /// Over all.
  given width = 30 in from 20 in to 40 in
  given depth = 12 in
}
piece a {
  make plinth from base {
    ${line}
  }
}
`;

	test.each([
		["set <|>", "base { «width = 30 from 20 to 40»; depth = 12 }"],
		[
			"set width = 25; set <|>",
			"base { width = 30 from 20 to 40; «depth = 12» }",
		],
		["set depth = <|>", "base { width = 30 from 20 to 40; «depth = 12» }"],
	])("%s", (line, form) => {
		expect(shown(made(line))).toEqual([form]);
	});

	test("with what is said of each", () => {
		const { snapshot, offset } = snap(made("set <|>"));
		const [first] = signatureHelp(snapshot, offset)?.signatures ?? [];
		expect(first?.parameters[0]?.documentation).toBe("Over all\\.");
	});
});
