// What no sound client sends: the server answers with an error, or not at all where nothing is to be answered, and goes on.

import { afterEach, beforeEach, describe, expect, test } from "vitest";
import {
	CancellationTokenSource,
	ErrorCodes,
	type Hover,
	LSPErrorCodes,
} from "vscode-languageserver/node";
import { Editor, pullingClient } from "../harness/editor.ts";

const uri = "file:///shop/a.rod";
const text = "piece a {\n  given width = 3\n  must width > 2\n}\n";
const width = { line: 1, character: 9 };

let editor: Editor;

beforeEach(async () => {
	editor = await Editor.start(new Map(), pullingClient);
	await editor.open(uri, text);
});

afterEach(async () => {
	// It still answers, and rightly.
	const hover = await editor.connection.sendRequest<Hover>(
		"textDocument/hover",
		{ textDocument: { uri }, position: width },
	);
	expect(JSON.stringify(hover.contents)).toContain("width");
	editor.logged.length = 0;
	await editor.stop();
});

const ask = (method: string, params: unknown): Promise<unknown> =>
	editor.connection.sendRequest(method, params);

const placed = [
	"textDocument/hover",
	"textDocument/completion",
	"textDocument/definition",
];

describe("places", () => {
	test.each([
		{ line: -1, character: -1 },
		{ line: 1e9, character: 1e9 },
		{ line: 2 ** 53, character: -(2 ** 53) },
		{ line: 1.5, character: 0.5 },
		{ line: 1, character: 1e9 },
	])("outside the text: %j", async (position) => {
		for (const method of placed)
			await ask(method, { textDocument: { uri }, position });
		await ask("textDocument/codeAction", {
			textDocument: { uri },
			range: { start: position, end: { line: 0, character: 0 } },
			context: { diagnostics: [] },
		});
		expect(editor.logged).toEqual([]);
	});

	test("edits outside the text, and backwards", async () => {
		const far = { line: 1e9, character: 1e9 };
		await editor.connection.sendNotification("textDocument/didChange", {
			textDocument: { uri, version: 2 },
			contentChanges: [
				{ range: { start: far, end: far }, text: "// end\n" },
				{
					range: { start: far, end: { line: -5, character: 0 } },
					text,
				},
			],
		});
		expect(editor.logged).toEqual([]);
	});
});

describe("parameters", () => {
	test.each([
		["textDocument/hover", {}],
		["textDocument/hover", { textDocument: { uri } }],
		["textDocument/hover", { textDocument: {}, position: width }],
		["textDocument/hover", { textDocument: { uri: 7 }, position: width }],
		["textDocument/completion", { textDocument: { uri }, position: [1, 2] }],
		["textDocument/definition", { textDocument: null, position: width }],
		["textDocument/codeAction", { textDocument: { uri } }],
		["textDocument/documentSymbol", {}],
		["textDocument/diagnostic", { textDocument: [] }],
		["workspace/diagnostic", {}],
		["workspace/diagnostic", { previousResultIds: [null] }],
	])("%s with %j is refused", async (method, params) => {
		await expect(ask(method, params)).rejects.toMatchObject({
			code: ErrorCodes.InvalidParams,
		});
		expect(editor.logged).toEqual([]);
	});

	test("notifications that make no sense are told in the log and change nothing", async () => {
		const send = (method: string, params: unknown) =>
			editor.connection.sendNotification(method, params);
		await send("textDocument/didOpen", {});
		await send("textDocument/didOpen", {
			textDocument: { uri: "file:///b.rod" },
		});
		await send("textDocument/didChange", {
			textDocument: { uri, version: 2 },
			contentChanges: [{ text: 7 }],
		});
		await send("textDocument/didChange", {
			textDocument: { uri, version: 2 },
			contentChanges: null,
		});
		await send("textDocument/didChange", {
			textDocument: { uri, version: 2 },
			contentChanges: [{ range: {}, text: "" }],
		});
		await send("textDocument/didClose", {});
		await send("workspace/didChangeWatchedFiles", {});
		await send("workspace/didChangeWorkspaceFolders", { event: {} });
		await send("workspace/didChangeConfiguration", {});
		await send("nothing/known", {});
		await send("$/setTrace", {});
		await editor.settled();
		expect(editor.logged.length).toBeGreaterThan(5);
	});

	test("frames that are no messages", async () => {
		editor.sendRaw([
			{ method: "$/cancelRequest" },
			{ method: "$/cancelRequest", params: { id: null } },
			{ method: "$/cancelRequest", params: { id: 99_999 } },
			{ id: 99_999, result: null },
			{ id: 99_998, method: 7 },
			{},
			"{ this is no JSON",
			"[]",
			"null",
			"",
		]);
		await editor.settled();
	});
});

describe("documents that are not there", () => {
	test.each([
		"file:///shop/closed.rod",
		"file:///nowhere/at/all.rod",
		"untitled:other",
		"no uri at all",
		"",
		"file://[bad",
		"https://example.org/a.rod",
	])("%j has nothing to it", async (other) => {
		await editor.open("file:///shop/closed.rod", text);
		await editor.close("file:///shop/closed.rod");
		for (const method of placed)
			expect(
				await ask(method, { textDocument: { uri: other }, position: width }),
			).toSatisfy((answer) => answer === null || (answer as []).length === 0);
		expect(
			await ask("textDocument/diagnostic", { textDocument: { uri: other } }),
		).toMatchObject({ kind: "full", items: [] });
		await editor.connection.sendNotification("textDocument/didChange", {
			textDocument: { uri: other, version: 9 },
			contentChanges: [{ text: "x" }],
		});
		await editor.connection.sendNotification("textDocument/didClose", {
			textDocument: { uri: other },
		});
		expect(editor.logged).toEqual([]);
	});
});

describe("order", () => {
	test("a request that is cancelled before it is begun is not answered with a result", async () => {
		const source = new CancellationTokenSource();
		const asked = editor.connection.sendRequest(
			"textDocument/hover",
			{ textDocument: { uri }, position: width },
			source.token,
		);
		source.cancel();
		await expect(asked).rejects.toMatchObject({
			code: LSPErrorCodes.RequestCancelled,
		});
	});

	test("closed twice, opened twice, changed in between, versions that go back", async () => {
		await editor.open(uri, "piece b { }\n");
		await editor.close(uri);
		await editor.connection.sendNotification("textDocument/didClose", {
			textDocument: { uri },
		});
		await editor.connection.sendNotification("textDocument/didChange", {
			textDocument: { uri, version: 3 },
			contentChanges: [{ text: "nothing" }],
		});
		await editor.open(uri, "piece c { }\n");
		await editor.connection.sendNotification("textDocument/didChange", {
			textDocument: { uri, version: -1 },
			contentChanges: [{ text }],
		});
		expect(editor.logged).toEqual([]);
	});

	test("a request behind an edit sees it, one before it does not", async () => {
		const at = { textDocument: { uri }, position: width };
		const before = ask("textDocument/hover", at);
		void editor.change(uri, [{ text: text.replace("= 3", "= 5") }]);
		const after = ask("textDocument/hover", at);
		expect(JSON.stringify(await before)).toContain("3");
		expect(JSON.stringify(await after)).toContain("5");
		await editor.change(uri, [{ text }]);
	});
});

test("giant texts, in one line and in many", async () => {
	const giant = "file:///shop/giant.rod";
	for (const made of [
		"x".repeat(2_000_000),
		`piece a { ${"( ".repeat(20_000)}\n`,
		"given a = 1\n".repeat(20_000),
		`must ${"1 + ".repeat(50_000)}1\n`,
	]) {
		await editor.open(giant, made);
		await ask("textDocument/diagnostic", { textDocument: { uri: giant } });
		await ask("textDocument/hover", {
			textDocument: { uri: giant },
			position: { line: 0, character: 1_000_000 },
		});
		await editor.close(giant);
	}
	expect(editor.logged).toEqual([]);
});
