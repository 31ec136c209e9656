// Whole sessions over the protocol: that the wire works, for each kind of message once or twice.

import { afterEach, describe, expect, test } from "vitest";
import type {
	CodeAction,
	CompletionItem,
	DefinitionLink,
	DocumentSymbol,
	FoldingRange,
	Hover,
	Location,
	MarkupContent,
	SymbolInformation,
	TextEdit,
} from "vscode-languageserver/node";
import { refused } from "../../server/handlers/refused.ts";
import { Editor } from "../harness/editor.ts";
import { type Fixture, placeOf, readFixture } from "../harness/fixture.ts";

const design = readFixture(`//- bench.rod
use ply from "./stock.rod"

piece bench {
  unit in
  given width = 54 from 40 to 66 // 📐 over the case
  box case {
    outside width x 14 5/8 x 15 3/4
    panels top, bottom, left, right of ply.three-quarter
    caps left, right
    join top, bottom to left, right { dado 1/4; glue }
  }
}
//- stock.rod
sheet ply {
  species "birch plywood"
  size 96 x 48
  variant three-quarter { sold-as 3/4; thick 45/64 }
}
`);
const bench = "file:///shop/bench.rod";
const stock = "file:///shop/stock.rod";

let editor: Editor;

afterEach(() => editor.stop());

async function opened(fixture: Fixture = design): Promise<Editor> {
	editor = await Editor.start(fixture.texts);
	await editor.openFile(fixture.main);
	return editor;
}

describe("diagnostics", () => {
	test("come with their version, are cured by an edit and come back by another", async () => {
		await opened();
		expect(await editor.diagnostics(bench)).toEqual([]);

		// 3/4 wide for a sheet that measures 45/64: 3/64 too wide.
		await editor.edit(bench, "dado 1/4;", "dado 1/4 wide 3/4;");
		const wide = await editor.diagnostics(bench);
		expect(editor.published.at(-1)?.version).toBe(2);
		expect(wide.length).toBeGreaterThan(0);
		const [first] = wide;
		expect(first?.source).toBe("storyrod");
		expect(
			first && editor.text(bench).split("\n")[first.range.start.line],
		).toContain("wide 3/4");
		expect(first?.codeDescription?.href).toBe(
			`file:///package/CHECKS.md#${first?.code}`,
		);

		await editor.edit(bench, " wide 3/4", "");
		expect(await editor.diagnostics(bench)).toEqual([]);
		expect(editor.published.at(-1)?.version).toBe(3);
	});

	test("of syntax stand where the fault is, beside those of the design", async () => {
		await opened();
		await editor.edit(
			bench,
			"caps left, right",
			"caps left,\n    shelf one of ply.half",
		);
		const shown = editor.shown(bench, await editor.diagnostics(bench));
		expect(shown).toContainEqual(
			expect.stringMatching(/^\[,\] error missing-after-comma: /),
		);
		expect(shown).toContainEqual(
			expect.stringMatching(
				/^\[half\] error unknown-name: .*`ply` has no `half`/,
			),
		);
	});

	test("lead to the other place that they are about", async () => {
		await opened();
		await editor.edit(
			bench,
			"caps left, right",
			"caps left, right\n    caps top",
		);
		const [twice] = await editor.diagnostics(bench);
		expect(twice?.code).toBe("said-twice");
		const [related] = twice?.relatedInformation ?? [];
		expect(related?.location.uri).toBe(bench);
		expect(related?.location.range.start).toEqual({ line: 8, character: 4 });
	});

	test("a change of a used file is seen: open in the editor, on disk, gone and back", async () => {
		await opened();
		expect(await editor.diagnostics(bench)).toEqual([]);
		await editor.open(stock, design.texts.get(stock) as string);
		await editor.edit(stock, "variant three-quarter", "variant half");
		await editor.until(() =>
			editor.last(bench)?.find(({ code }) => code === "unknown-name"),
		);
		// Closed without saving: what is on disk holds again.
		await editor.close(stock);
		await editor.until(() => editor.last(bench)?.length === 0 || undefined);
		await editor.write(stock, undefined);
		await editor.until(() =>
			editor.last(bench)?.find(({ code }) => code === "no-file"),
		);
		await editor.write(stock, design.texts.get(stock));
		await editor.until(() => editor.last(bench)?.length === 0 || undefined);
	});

	test("of a closed document are taken back", async () => {
		await opened(readFixture("piece a {\n  box b { }\n}\n"));
		const uri = "file:///shop/main.rod";
		expect((await editor.diagnostics(uri)).length).toBeGreaterThan(0);
		await editor.close(uri);
		await editor.until(() => editor.last(uri)?.length === 0 || undefined);
	});

	test("many edits that wait together are answered once, for the newest", async () => {
		await opened();
		await editor.diagnostics(bench);
		const before = editor.published.length;
		const text = editor.text(bench);
		const typed = Array.from({ length: 30 }, (_, i) =>
			text.replace("14 5/8", `${15 + i} 5/8`),
		);
		editor.changeTogether(bench, typed);
		await editor.diagnostics(bench);
		expect(editor.published.at(-1)?.version).toBe(31);
		expect(editor.published.length - before).toBe(1);
	});

	test("a used file is read once, not at every keystroke", async () => {
		await opened();
		await editor.diagnostics(bench);
		const before = editor.reads;
		await editor.edit(bench, "14 5/8", "15 5/8");
		await editor.diagnostics(bench);
		expect(editor.reads).toBe(before);
	});

	test("of two designs that use one file", async () => {
		await opened();
		await editor.open(
			"file:///shop/rack.rod",
			'use ply from "./stock.rod"\npiece rack {\n  part a { of ply.nothing; size 3 x 2 }\n}\n',
		);
		const shown = editor.shown(
			"file:///shop/rack.rod",
			await editor.diagnostics("file:///shop/rack.rod"),
		);
		expect(shown[0]).toMatch(/^\[nothing\] error unknown-name/);
		expect(await editor.diagnostics(bench)).toEqual([]);
	});
});

describe("requests", () => {
	test("hover", async () => {
		await opened();
		const at = placeOf(editor.text(bench), "case {") + 1;
		const hover = await editor.ask<Hover>("textDocument/hover", bench, at);
		expect((hover.contents as MarkupContent).kind).toBe("markdown");
		expect((hover.contents as MarkupContent).value).toContain("**Cut now**");
		expect(hover.range).toEqual({
			start: { line: 5, character: 6 },
			end: { line: 5, character: 10 },
		});
	});

	test("positions count UTF-16 units, also behind an emoji", async () => {
		await opened();
		await editor.edit(bench, "// 📐 over the case\n", "\n  /* 📐");
		await editor.edit(
			bench,
			"/* 📐",
			'must width > 1 "📐"; mark half = width / 2\n',
		);
		const at = placeOf(editor.text(bench), "half") + 1;
		const hover = await editor.ask<Hover>("textDocument/hover", bench, at);
		const line = editor.text(bench).split("\n")[5] ?? "";
		expect(hover.range).toEqual({
			start: { line: 5, character: line.indexOf("half") },
			end: { line: 5, character: line.indexOf("half") + 4 },
		});
	});

	test("completion, with snippets for clients that take them", async () => {
		await opened();
		await editor.edit(
			bench,
			"    caps left, right\n",
			"    ca\n    shelf one of \n",
		);
		const text = editor.text(bench);
		const heads = await editor.ask<CompletionItem[]>(
			"textDocument/completion",
			bench,
			placeOf(text, "    ca\n") + 6,
		);
		const caps = heads.find(({ label }) => label === "caps");
		expect(caps?.insertTextFormat).toBe(2);
		expect((caps?.documentation as MarkupContent | undefined)?.value).toContain(
			"The panels that run over the ends",
		);
		expect(editor.applied(bench, [caps?.textEdit as TextEdit])).toContain(
			"    caps ${1:",
		);
		const materials = await editor.ask<CompletionItem[]>(
			"textDocument/completion",
			bench,
			placeOf(text, "shelf one of ") + 13,
		);
		expect(materials.map(({ label }) => label)).toEqual(["ply.three-quarter"]);
	});

	test("completion of files beside and of the names that they have", async () => {
		editor = await Editor.start(
			new Map([
				...design.texts,
				["file:///shop/parts/base.rod", "component base { }\n"],
			]),
		);
		await editor.open(bench, 'use  from "./stock.rod"\nuse base from ""\n');
		const text = editor.text(bench);
		const labels = async (offset: number, typed: string) => {
			const items = await editor.ask<CompletionItem[]>(
				"textDocument/completion",
				bench,
				offset,
				{ context: { triggerKind: 2, triggerCharacter: typed } },
			);
			return items.map(({ label }) => label);
		};
		expect(await labels(4, " ")).toEqual(["ply"]);
		expect(await labels(text.indexOf('""') + 1, '"')).toEqual([
			"./stock.rod",
			"./parts/",
			"../",
		]);
	});

	test("formatting: narrow edits that give the formatted text, none when there is nothing to do", async () => {
		await opened();
		await editor.edit(
			bench,
			"    caps left, right",
			"  caps   left,right   // they   run past",
		);
		const ask = () =>
			editor.connection.sendRequest<TextEdit[]>("textDocument/formatting", {
				textDocument: { uri: bench },
				options: { tabSize: 8, insertSpaces: false },
			});
		const edits = await ask();
		expect(
			edits.every(({ range }) => range.start.line === range.end.line),
		).toBe(true);
		const text = editor.applied(bench, edits);
		expect(text).toContain("\n    caps left, right  // they   run past\n");
		await editor.change(bench, [{ text }]);
		expect(await ask()).toEqual([]);
	});

	test("definition in another file, and of the file", async () => {
		await opened();
		const at = placeOf(editor.text(bench), "ply.three") + 6;
		const [link] = await editor.ask<DefinitionLink[]>(
			"textDocument/definition",
			bench,
			at,
		);
		expect(link?.targetUri).toBe(stock);
		expect(link?.targetSelectionRange).toEqual({
			start: { line: 3, character: 10 },
			end: { line: 3, character: 23 },
		});
		const [file] = await editor.ask<DefinitionLink[]>(
			"textDocument/definition",
			bench,
			placeOf(editor.text(bench), "./stock"),
		);
		expect(file?.targetUri).toBe(stock);
	});

	test("outline and folding", async () => {
		await opened();
		const params = { textDocument: { uri: bench } };
		const symbols = await editor.connection.sendRequest<DocumentSymbol[]>(
			"textDocument/documentSymbol",
			params,
		);
		expect(symbols.map(({ name }) => name)).toEqual(["ply", "bench"]);
		expect(symbols[1]?.children?.map(({ name }) => name)).toEqual([
			"width",
			"case",
		]);
		const folds = await editor.connection.sendRequest<FoldingRange[]>(
			"textDocument/foldingRange",
			params,
		);
		expect(folds).toEqual([
			{ startLine: 2, endLine: 10 },
			{ startLine: 5, endLine: 9 },
		]);
	});

	test("mends of what is wrong at a place", async () => {
		await opened();
		await editor.edit(bench, "ply.three-quarter", "ply.three-quater");
		await editor.diagnostics(bench);
		const at = editor.positionAt(
			bench,
			placeOf(editor.text(bench), "three-quater") + 3,
		);
		const params = {
			textDocument: { uri: bench },
			range: { start: at, end: at },
			context: { diagnostics: [] },
		};
		const [action] = await editor.connection.sendRequest<CodeAction[]>(
			"textDocument/codeAction",
			params,
		);
		expect(action?.kind).toBe("quickfix");
		expect(action?.diagnostics?.[0]?.code).toBe("unknown-name");
		const edits = action?.edit?.changes?.[bench] ?? [];
		expect(editor.applied(bench, edits)).toContain("of ply.three-quarter\n");
		const other = {
			...params,
			context: { diagnostics: [], only: ["refactor"] },
		};
		expect(
			await editor.connection.sendRequest("textDocument/codeAction", other),
		).toEqual([]);
	});

	test("in a text with errors, half a text and at every place", async () => {
		await opened();
		const text = editor.text(bench);
		await editor.change(bench, [
			{ text: `${text.slice(0, text.indexOf("caps"))}caps left,\n  @ {{ "` },
		]);
		await editor.diagnostics(bench);
		for (let offset = 0; offset <= editor.text(bench).length; offset += 3) {
			await editor.ask("textDocument/hover", bench, offset);
			await editor.ask("textDocument/completion", bench, offset);
			await editor.ask("textDocument/definition", bench, offset);
		}
		const hover = await editor.ask<Hover>(
			"textDocument/hover",
			bench,
			placeOf(editor.text(bench), "box") + 1,
		);
		expect((hover.contents as MarkupContent).value).toContain(
			"A case of four panels",
		);
	});

	test("positions outside the text are taken to its nearest place", async () => {
		await opened();
		await editor.diagnostics(bench);
		for (const position of [
			{ line: 1e6, character: 0 },
			{ line: 0, character: 1e6 },
			{ line: 2 ** 31 - 1, character: 2 ** 31 - 1 },
		]) {
			const params = { textDocument: { uri: bench }, position };
			await editor.connection.sendRequest("textDocument/hover", params);
			await editor.connection.sendRequest("textDocument/completion", params);
			await editor.connection.sendRequest("textDocument/definition", params);
		}
		const range = {
			start: { line: 1e6, character: 9 },
			end: { line: 0, character: 0 },
		};
		expect(
			await editor.connection.sendRequest("textDocument/codeAction", {
				textDocument: { uri: bench },
				range,
				context: { diagnostics: [] },
			}),
		).toEqual([]);
		// An edit beyond the end is put at the end.
		await editor.change(bench, [
			{
				range: {
					start: { line: 999, character: 9 },
					end: { line: 1000, character: 0 },
				},
				text: "// end\n",
			},
		]);
		expect(await editor.diagnostics(bench)).toEqual([]);
	});

	test("documents that are not open get empty answers", async () => {
		await opened();
		const textDocument = { uri: "file:///shop/closed.rod" };
		const position = { line: 0, character: 0 };
		const range = { start: position, end: position };
		const ask = (method: string, more: object) =>
			editor.connection.sendRequest(`textDocument/${method}`, {
				textDocument,
				...more,
			});
		expect(await ask("hover", { position })).toBeNull();
		expect(await ask("completion", { position })).toEqual([]);
		expect(await ask("definition", { position })).toBeNull();
		expect(await ask("documentSymbol", {})).toEqual([]);
		expect(await ask("foldingRange", {})).toEqual([]);
		expect(
			await ask("formatting", { options: { tabSize: 2, insertSpaces: true } }),
		).toEqual([]);
		expect(
			await ask("codeAction", { range, context: { diagnostics: [] } }),
		).toEqual([]);
		await editor.connection.sendNotification("textDocument/didChange", {
			textDocument: { ...textDocument, version: 2 },
			contentChanges: [{ text: "x" }],
		});
		await editor.connection.sendNotification("textDocument/didClose", {
			textDocument,
		});
		expect(await editor.diagnostics(bench)).toEqual([]);
	});

	test("a uri that the client spells otherwise is the same document", async () => {
		editor = await Editor.start(
			new Map([
				["file:///shop/my-stock.rod", design.texts.get(stock) as string],
			]),
		);
		const spelled = "file:///shop/my%2Dstock.rod";
		await editor.open(bench, design.main.text.replace("./stock", "./my-stock"));
		await editor.diagnostics(bench);
		await editor.open(
			spelled,
			(design.texts.get(stock) as string).replace("three-quarter", "half"),
		);
		await editor.until(() =>
			editor.last(bench)?.find(({ code }) => code === "unknown-name"),
		);
		const [link] = await editor.ask<DefinitionLink[]>(
			"textDocument/definition",
			bench,
			placeOf(editor.text(bench), "ply from") + 1,
		);
		expect(link?.targetUri).toBe(spelled);
	});

	test("requests that are not supported are refused by name", async () => {
		await opened();
		expect(Object.keys(refused)).toContain("textDocument/documentColor");
		for (const method of Object.keys(refused)) {
			await expect(
				editor.connection.sendRequest(method, { textDocument: { uri: bench } }),
			).rejects.toThrow(`\`${method}\` is not supported`);
		}
	});
});

test("a fault of ours in one request is logged and answered empty, and the session goes on", async () => {
	await opened();
	await editor.diagnostics(bench);
	editor.failsToRead = true;
	await editor.write(stock, design.texts.get(stock));
	const at = placeOf(editor.text(bench), "case {") + 1;
	expect(await editor.ask("textDocument/hover", bench, at)).toBeNull();
	expect(editor.logged.join()).toContain(
		"Fault in hover: Error: The disk is on fire",
	);
	editor.failsToRead = false;
	await editor.write(stock, design.texts.get(stock));
	expect(await editor.ask("textDocument/hover", bench, at)).not.toBeNull();
	await editor.edit(bench, "14 5/8", "15 5/8");
	expect(await editor.diagnostics(bench)).toEqual([]);
	editor.logged.length = 0;
});

test("a plain client gets no snippets, no links, a flat outline", async () => {
	editor = await Editor.start(design.texts, {});
	await editor.openFile(design.main);
	await editor.edit(bench, "caps left, right", "ca");
	const items = await editor.ask<CompletionItem[]>(
		"textDocument/completion",
		bench,
		placeOf(editor.text(bench), "    ca\n") + 6,
	);
	expect(
		items.every(({ insertTextFormat }) => insertTextFormat === undefined),
	).toBe(true);
	const place = await editor.ask<Location>(
		"textDocument/definition",
		bench,
		placeOf(editor.text(bench), "ply.three") + 1,
	);
	expect(place.uri).toBe(stock);
	const flat = await editor.connection.sendRequest<SymbolInformation[]>(
		"textDocument/documentSymbol",
		{ textDocument: { uri: bench } },
	);
	expect(flat.map(({ name, containerName }) => [containerName, name])).toEqual([
		[undefined, "ply"],
		[undefined, "bench"],
		["bench", "width"],
		["bench", "case"],
	]);
});
