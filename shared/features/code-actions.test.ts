// Which mends are offered where, and the text after each.

import { expect, test } from "vitest";
import { snap } from "../../tests/harness/snapshot.ts";
import { applyEdits } from "../text/edits.ts";
import { indexLines } from "../text/line-index.ts";
import { codeActions } from "./code-actions.ts";
import { diagnose } from "./diagnostics.ts";

function offered(
	source: string,
): { title: string; text: string; preferred: boolean }[] {
	const { fixture, snapshot, offset } = snap(source);
	const span = fixture.main.selections[0] ?? { start: offset, end: offset };
	return codeActions(
		diagnose(snapshot.design, () => indexLines(snapshot.text)),
		snapshot.uri,
		span,
	).map(({ title, edits, preferred }) => ({
		title,
		preferred,
		text: applyEdits(
			snapshot.text,
			edits.map(({ span: { start, end }, text }) => ({ start, end, text })),
		),
	}));
}

test("a misspelt head", () => {
	expect(offered("pi<|>ce a { }\n")).toEqual([
		{ title: "Change to `piece`", preferred: true, text: "piece a { }\n" },
	]);
});

test("a fault of syntax", () => {
	const [action] = offered("piece a {\n  mark b = 1+<|>2\n}\n");
	expect(action?.text).toBe("piece a {\n  mark b = 1 + 2\n}\n");
});

test("all that a selection touches, nothing beside it", () => {
	const text = "pice a { }\nunit mm\npice b { }\n";
	expect(offered(`<|${text}|>`)).toHaveLength(2);
	expect(offered(text.replace("unit", "un<|>it"))).toEqual([]);
});

test("nothing where nothing can be mended by machine", () => {
	expect(offered("piece a {\n  box b {<|> }\n}\n")).toEqual([]);
});
