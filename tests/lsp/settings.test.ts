// What an editor or a settings file sets for the checks, over the protocol: seen at the start and at each change.

import { afterEach, expect, test } from "vitest";
import type { Diagnostic } from "vscode-languageserver/node";
import { Editor } from "../harness/editor.ts";

const uri = "file:///shop/bench.rod";
const file = "file:///shop/.storyrod.json";

// 3/4 wide for a sheet that measures 45/64: `fit-nominal`, a warning; the gap of 3/64 is `fit-gap`, an error.
const text = `sheet ply {
  species "birch plywood"
  size 96 x 48
  variant three-quarter { sold-as 3/4; thick 45/64 }
}
piece bench {
  box case {
    outside 54 x 14 5/8 x 15 3/4
    panels top, bottom, left, right of ply.three-quarter
    join top, bottom to left, right { dado 1/4 wide 3/4; glue }
  }
}
`;

let editor: Editor;

afterEach(() => editor.stop());

const severityOf = (
	id: string,
	diagnostics: readonly Diagnostic[] | undefined,
): number | undefined => diagnostics?.find(({ code }) => code === id)?.severity;

async function becomes(
	id: string,
	severity: number | undefined,
): Promise<void> {
	await editor.until(
		() => severityOf(id, editor.last(uri)) === severity || undefined,
	);
}

test("the editor's settings hold from the first finding on, and a change is seen at once", async () => {
	editor = await Editor.start(new Map(), undefined, {
		severity: { "fit-nominal": "off" },
		figures: {},
	});
	await editor.open(uri, text);
	const first = await editor.diagnostics(uri);
	expect(first.length).toBeGreaterThan(0);
	expect(severityOf("fit-nominal", first)).toBeUndefined();
	expect(
		editor.published.filter((one) =>
			severityOf("fit-nominal", one.diagnostics),
		),
	).toEqual([]);
	await editor.set({ severity: { "fit-nominal": "error" }, figures: {} });
	await becomes("fit-nominal", 1);
	// Label and sheet differ by 3/64 in = 1.19 mm.
	await editor.set({ figures: { "fit-nominal.difference": 1.2 } });
	await becomes("fit-nominal", undefined);
	await editor.set({ figures: { "fit-nominal.difference": 1.18 } });
	await becomes("fit-nominal", 2);
	expect(editor.told).toEqual([]);
});

test("a settings file holds too, the editor wins, and the file may come and go", async () => {
	editor = await Editor.start(
		new Map([[file, '{ "severity": { "fit-nominal": "hint" } }']]),
	);
	await editor.open(uri, text);
	expect(severityOf("fit-nominal", await editor.diagnostics(uri))).toBe(4);
	await editor.write(file, '{ "severity": { "fit-nominal": "information" } }');
	await becomes("fit-nominal", 3);
	await editor.set({ severity: { "fit-nominal": "error" } });
	await becomes("fit-nominal", 1);
	await editor.set({});
	await becomes("fit-nominal", 3);
	await editor.write(file, undefined);
	await becomes("fit-nominal", 2);
	await editor.write(file, '{ "severity": { "fit-nominal": "off" } }');
	await becomes("fit-nominal", undefined);
});

test("what is wrong is told once, with the nearest name, and the rest holds", async () => {
	editor = await Editor.start(
		new Map([
			[file, '{ "severity": { "fit-nominel": "off", "fit-gap": "hint" } }'],
		]),
	);
	await editor.open(uri, text);
	expect(severityOf("fit-gap", await editor.diagnostics(uri))).toBe(4);
	await editor.until(() => editor.told[0]);
	await editor.edit(uri, "14 5/8", "15 5/8");
	await editor.diagnostics(uri);
	expect(editor.told).toEqual([
		"`.storyrod.json`: There is no check `fit-nominel`: did you mean `fit-nominal`?",
	]);
	await editor.write(file, "{");
	await editor.until(() => editor.told[1]);
	expect(editor.told[1]).toMatch(/^`\.storyrod\.json`: It is no JSON: /);
	await editor.set({ severity: 3, figures: { "fit-gap": {} } });
	await editor.until(() => editor.told[2]);
	expect(editor.told[2]).toBe(
		'Settings `storyrod.checks`: `severity` is an object, not a number: `{ "fit-gap": "warning" }` (2 more in the output)',
	);
	expect(severityOf("fit-gap", editor.last(uri))).toBe(1);
});

test("a client that is never asked sends what is set with the change", async () => {
	editor = await Editor.start(new Map(), {});
	await editor.open(uri, text);
	expect(severityOf("fit-nominal", await editor.diagnostics(uri))).toBe(2);
	await editor.set({ severity: { "fit-nominal": "off" } });
	await becomes("fit-nominal", undefined);
	await editor.connection.sendNotification("workspace/didChangeConfiguration", {
		settings: null,
	});
	await becomes("fit-nominal", 2);
});

test("a client that refuses the question gets its findings all the same", async () => {
	editor = await Editor.start();
	editor.connection.onRequest("workspace/configuration", () => {
		throw new Error("No");
	});
	await editor.open(uri, text);
	expect((await editor.diagnostics(uri)).length).toBeGreaterThan(0);
	await editor.set({});
	await editor.edit(uri, "14 5/8", "15 5/8");
	expect((await editor.diagnostics(uri)).length).toBeGreaterThan(0);
});
