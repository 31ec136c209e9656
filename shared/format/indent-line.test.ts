// The indentation of a line behind a line end and of one that a brace closes; `<|>` is the cursor.

import { expect, test } from "vitest";
import { parse } from "../../grammar/index.ts";
import { readFixture } from "../../tests/harness/fixture.ts";
import { applyEdits } from "../text/edits.ts";
import { indentLine, type Typed } from "./indent-line.ts";

function typed(source: string, what: Typed): string {
	const { file, offset } = readFixture(source).cursor;
	const edit = indentLine(file.text, parse(file.text), offset, what);
	return edit ? applyEdits(file.text, [edit]) : file.text;
}

test.each([
	["behind a brace", "piece a {\n<|>\n}\n", "piece a {\n  \n}\n"],
	[
		"deeper",
		"piece a {\n  box b {\n  <|>\n  }\n}\n",
		"piece a {\n  box b {\n    \n  }\n}\n",
	],
	[
		"behind a line",
		"piece a {\n  unit in\n      <|>\n}\n",
		"piece a {\n  unit in\n  \n}\n",
	],
	[
		"behind a block",
		"piece a {\n  box b {\n    caps left\n  }\n    <|>\n}\n",
		"piece a {\n  box b {\n    caps left\n  }\n  \n}\n",
	],
	[
		"behind a block on one line",
		"piece a {\n  join b { glue }\n      <|>\n}\n",
		"piece a {\n  join b { glue }\n  \n}\n",
	],
	[
		"in a list that goes on",
		'use oak,\n<|>ply from "./stock.rod"\n',
		'use oak,\n    ply from "./stock.rod"\n',
	],
	[
		"behind a comment that looks like a brace",
		"piece a {\n  unit in // {\n<|>\n}\n",
		"piece a {\n  unit in // {\n  \n}\n",
	],
	["between two braces", "piece a {\n  <|>}\n", "piece a {\n}\n"],
	["at the top", "unit in\n  <|>\n", "unit in\n\n"],
	[
		"after a blank line",
		"piece a {\n  unit in\n\n<|>\n}\n",
		"piece a {\n  unit in\n\n  \n}\n",
	],
	["with no closing brace yet", "piece a {\n<|>", "piece a {\n  "],
	[
		"as its maker indents",
		"piece a {\n\tbox b {\n<|>\n\t}\n}\n",
		"piece a {\n\tbox b {\n\t  \n\t}\n}\n",
	],
])("a new line %s", (_name, before, after) => {
	expect(typed(before, "\n")).toBe(after);
});

test("words are left where they stand while a brace is missing: their blanks say what they belong to", () => {
	const before = "piece a {\n  box b {\n<|>  caps left\n}\n";
	expect(typed(before, "\n")).toBe(before.replace("<|>", ""));
});

test.each([
	[
		"its head",
		"piece a {\n  box b {\n    caps left\n    }<|>\n}\n",
		"piece a {\n  box b {\n    caps left\n  }\n}\n",
	],
	["the piece", "piece a {\n  unit in\n  }<|>", "piece a {\n  unit in\n}"],
])("a brace goes under %s", (_name, before, after) => {
	expect(typed(before, "}")).toBe(after);
});

test("a brace behind words stays there", () => {
	const before = "piece a {\n  join b { glue }<|>\n}\n";
	expect(typed(before, "}")).toBe(before.replace("<|>", ""));
});
