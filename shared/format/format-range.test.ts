// Laying out what a selection touches; `<|…|>` is the selection.

import { expect, test } from "vitest";
import { readFixture } from "../../tests/harness/fixture.ts";
import { applyEdits } from "../text/edits.ts";
import { formatRange } from "./format-range.ts";

function laidOut(source: string): string {
	const { text, selections } = readFixture(source).main;
	const [span] = selections;
	if (!span) throw new Error("Nothing is selected");
	return applyEdits(text, formatRange(text, span));
}

test.each([
	[
		"a line, and not its neighbours",
		"piece a {\nunit   in\n<|given   w=20|>\ngiven   h=30\n}\n",
		"piece a {\nunit   in\n  given w = 20\ngiven   h=30\n}\n",
	],
	[
		"two lines with what stands between",
		"piece a {\ngiven   w=20\n<|given   h=30\n\n\n// why\ngiven|>   d=40\nunit   in\n}\n",
		"piece a {\ngiven   w=20\n  given h = 30\n\n  // why\n  given d = 40\nunit   in\n}\n",
	],
	[
		"a whole block by its first line",
		"piece   a {\n<|box   b|> {\ncaps   left\n}\nunit   in\n}\n",
		"piece   a {\n  box b {\n    caps left\n  }\nunit   in\n}\n",
	],
	[
		"lines in a block, not its head",
		"piece   a {\nbox   b {\n<|caps   left|>\n}\n}\n",
		"piece   a {\nbox   b {\n    caps left\n}\n}\n",
	],
	[
		"the comment behind a line",
		"piece a {\n<|unit   in|>   // inches\n}\n",
		"piece a {\n  unit in  // inches\n}\n",
	],
	[
		"the description that is selected, too",
		"<|/// One.\nunit   in|>\nprecision   1\n",
		"/// One.\nunit in\nprecision   1\n",
	],
	[
		"all lines of a statement that goes on",
		'use  oak,\n  <|ply|>  from   "./stock.rod"\nunit   in\n',
		'use oak,\n    ply from "./stock.rod"\nunit   in\n',
	],
])("%s", (_name, before, after) => {
	expect(laidOut(before)).toBe(after);
});

test("nothing where nothing is selected but blanks", () => {
	const before = "unit   in\n<|\n|>\nprecision   1\n";
	expect(laidOut(before)).toBe("unit   in\n\n\nprecision   1\n");
});
