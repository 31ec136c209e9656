// What is shown beside the text and how it is laid out, over the protocol: for each request that the wire works.

import { afterEach, describe, expect, test } from "vitest";
import type {
	CodeLens,
	InlayHint,
	SelectionRange,
	SemanticTokens,
	SemanticTokensDelta,
	SignatureHelp,
	TextEdit,
} from "vscode-languageserver/node";
import { Editor, fullClient } from "../harness/editor.ts";
import { type FixtureFile, placeOf, readFixture } from "../harness/fixture.ts";

const design = readFixture(`//- bench.rod
use ply from "./stock.rod"

/// 📐 Low.
piece bench {
  unit in
  given width = 54 from 40 to 66 // 📐 over the case
  box case {
    outside width x 14 5/8 x 15 3/4
    panels top, bottom, left, right of ply.three-quarter
    divider middle of ply.three-quarter centred
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

let editor: Editor;

afterEach(() => editor.stop());

async function opened(
	file: FixtureFile = design.main,
	capabilities = fullClient,
): Promise<Editor> {
	editor = await Editor.start(design.texts, capabilities);
	await editor.openFile(file);
	return editor;
}

/** `word:type.modifier`, as the legend and the places that were sent have it. */
function words(data: readonly number[]): string[] {
	const legend =
		editor.initialized?.capabilities.semanticTokensProvider?.legend;
	const lines = editor.text(bench).split("\n");
	const found: string[] = [];
	let [line, character] = [0, 0];
	for (let at = 0; at < data.length; at += 5) {
		const [down = 0, along = 0, length = 0, type = 0, modifiers = 0] =
			data.slice(at);
		line += down;
		character = down === 0 ? character + along : along;
		const names = (legend?.tokenModifiers ?? []).filter(
			(_one, bit) => modifiers & (1 << bit),
		);
		found.push(
			`${lines[line]?.slice(character, character + length)}:${[legend?.tokenTypes[type], ...names].join(".")}`,
		);
	}
	return found;
}

describe("coloured words", () => {
	const full = (): Promise<SemanticTokens> =>
		editor.connection.sendRequest("textDocument/semanticTokens/full", {
			textDocument: { uri: bench },
		});

	test("stand where the legend and the text say", async () => {
		await opened();
		const all = words((await full()).data);
		expect(all.slice(0, 5)).toEqual([
			"use:keyword",
			"ply:class.declaration",
			"from:modifier",
			'"./stock.rod":string',
			"/// 📐 Low.:comment.documentation",
		]);
		expect(all).toContain("width:variable.declaration");
		expect(all).toContain("// 📐 over the case:comment");
		expect(all.slice(-4)).toEqual([
			"of:modifier",
			"ply:class",
			"three-quarter:enumMember",
			"centred:modifier",
		]);
	});

	test("after an edit only what changed is sent, and leads to the whole", async () => {
		await opened();
		const before = await full();
		await editor.edit(
			bench,
			"given width = 54",
			"given depth = 3\n  given width = 54",
		);
		const { edits } = await editor.connection.sendRequest<SemanticTokensDelta>(
			"textDocument/semanticTokens/full/delta",
			{ textDocument: { uri: bench }, previousResultId: before.resultId },
		);
		const now = [...before.data];
		for (const { start, deleteCount, data = [] } of edits)
			now.splice(start, deleteCount, ...data);
		expect(edits[0]?.data?.length).toBeLessThan(40);
		expect(now).toEqual((await full()).data);
		expect(words(now)).toContain("depth:variable.declaration.unused");
	});

	test("from a state that the server does not know, all is sent", async () => {
		await opened();
		const told = await editor.connection.sendRequest<
			SemanticTokens | SemanticTokensDelta
		>("textDocument/semanticTokens/full/delta", {
			textDocument: { uri: bench },
			previousResultId: "of another life",
		});
		expect(told).toHaveProperty("data");
	});

	test("of a range", async () => {
		await opened();
		const { data } = await editor.connection.sendRequest<SemanticTokens>(
			"textDocument/semanticTokens/range",
			{
				textDocument: { uri: bench },
				range: {
					start: { line: 4, character: 0 },
					end: { line: 5, character: 7 },
				},
			},
		);
		expect(words(data)).toEqual([
			"unit:keyword",
			"in:modifier",
			"given:keyword",
		]);
	});

	test("are counted as agreed with the client", async () => {
		await opened(design.main, {
			...fullClient,
			general: { positionEncodings: ["utf-8"] },
		});
		const { data } = await full();
		// `/// 📐 Low.`: eleven code units, thirteen bytes.
		const comment = Array.from({ length: data.length / 5 }, (_one, index) =>
			data.slice(index * 5, index * 5 + 5),
		)[4];
		expect(comment?.[2]).toBe(13);
	});

	test("a document that is not open has none", async () => {
		await opened();
		expect(
			await editor.connection.sendRequest("textDocument/semanticTokens/full", {
				textDocument: { uri: "file:///shop/none.rod" },
			}),
		).toEqual({ data: [] });
	});
});

describe("hints in the text", () => {
	const hints = async (): Promise<InlayHint[]> =>
		editor.connection.sendRequest("textDocument/inlayHint", {
			textDocument: { uri: bench },
			range: {
				start: { line: 0, character: 0 },
				end: { line: 99, character: 0 },
			},
		});
	const labels = async (): Promise<unknown[]> =>
		(await hints()).map(({ label }) => label);
	// 54 less two sheets of 45/64.
	const usual = [
		"52 19/32 x 15 3/4 x 45/64 in",
		"14 5/8 x 15 3/4 x 45/64 in",
		"45/64 in",
		"13 7/32 x 15 3/4 x 45/64 in",
		"45/64 in",
	];
	const refreshing = {
		...fullClient,
		workspace: {
			...fullClient.workspace,
			inlayHint: { refreshSupport: true },
		},
	};

	test("stand behind the names, and tell when asked where they come from", async () => {
		await opened();
		const all = await hints();
		expect(all.map(({ label }) => label)).toEqual(usual);
		expect(all[0]?.position).toEqual({ line: 8, character: 22 });
		expect(all[0]?.tooltip).toBeUndefined();
		const resolved = await editor.connection.sendRequest<InlayHint>(
			"inlayHint/resolve",
			all[0],
		);
		expect(JSON.stringify(resolved.tooltip)).toContain(
			"length 52 19/32 = width 54 - 2 x 45/64",
		);
	});

	test("of each kind can be turned off, and go at once", async () => {
		await opened(design.main, refreshing);
		await hints();
		editor.hints = { sizes: false };
		await editor.set({});
		await editor.until(() =>
			editor.askedAgain.includes("inlayHint") ? true : undefined,
		);
		expect(await labels()).toEqual(["45/64 in", "45/64 in"]);
	});

	test("follow a file that the design uses", async () => {
		await opened(design.main, refreshing);
		await editor.diagnostics(bench);
		await hints();
		const before = editor.askedAgain.length;
		await editor.write(
			"file:///shop/stock.rod",
			design.texts.get("file:///shop/stock.rod")?.replace("45/64", "3/4"),
		);
		await editor.until(() =>
			editor.askedAgain.length > before ? true : undefined,
		);
		expect((await labels())[2]).toBe("3/4 in");
	});

	test("on the line that is typed stay while it cannot be read", async () => {
		await opened();
		await hints();
		await editor.edit(bench, "centred", "centred dado");
		expect(await labels()).toEqual(usual);
		await editor.edit(bench, "centred dado", "centred dado 1/4");
		expect((await labels())[3]).toBe("13 23/32 x 15 3/4 x 45/64 in");
	});

	test("of a text that has changed since are not told", async () => {
		await opened();
		const [first] = await hints();
		await editor.edit(bench, "centred", "centred dado 1/4");
		expect(
			await editor.connection.sendRequest("inlayHint/resolve", first),
		).toEqual(first);
	});
});

describe("lines over pieces and components", () => {
	const lenses = async (): Promise<string[]> => {
		const listed = await editor.connection.sendRequest<CodeLens[]>(
			"textDocument/codeLens",
			{ textDocument: { uri: bench } },
		);
		expect(listed.every(({ command }) => command === undefined)).toBe(true);
		const resolved: CodeLens[] = [];
		for (const one of listed)
			resolved.push(
				await editor.connection.sendRequest("codeLens/resolve", one),
			);
		return resolved.map(
			({ range, command }) =>
				`${range.start.line}: ${command?.title}${command?.command ? ` (${command.command})` : ""}`,
		);
	};

	test("say what a piece takes and what is wrong in it", async () => {
		await opened();
		const found = await editor.diagnostics(bench);
		expect(found.filter(({ severity }) => severity === 2)).toHaveLength(1);
		expect(await lenses()).toEqual(["3: 5 parts · 1 sheet", "3: 1 warning"]);
		await editor.edit(bench, "centred", "centred dado lost");
		expect((await lenses())[1]).toMatch(/^3: \d+ errors?/);
	});

	test("who makes a component, over the files of the workspace", async () => {
		const files = new Map([
			[bench, "component foot {\n  given w = 2\n}\n"],
			[
				"file:///shop/a.rod",
				'use foot from "./bench.rod"\npiece a { make b from foot { }; make c from foot { } }\n',
			],
			[
				"file:///shop/d.rod",
				'use foot from "./bench.rod"\npiece d { make e from foot { } }\n',
			],
		]);
		editor = await Editor.start(files, fullClient, {}, ["file:///shop"]);
		await editor.open(bench, files.get(bench) ?? "");
		expect((await lenses())[0]).toBe("0: made 3 times in 2 designs");
	});

	test("lead to a list where the client has the command", async () => {
		await opened(design.main, {
			...fullClient,
			experimental: { commands: ["storyrod.showCutList"] },
		});
		expect((await lenses())[0]).toBe(
			"3: 5 parts · 1 sheet (storyrod.showCutList)",
		);
	});

	test("the lists themselves, as Markdown", async () => {
		await opened();
		const list = (piece: string, which: string) =>
			editor.connection.sendRequest<string | null>("storyrod/list", {
				textDocument: { uri: bench },
				piece,
				list: which,
			});
		expect(await list("bench", "cut")).toContain("52 19/32");
		expect(await list("bench", "buy")).toContain("## Buying list: bench");
		expect(await list("lost", "cut")).toBeNull();
	});
});

describe("the form of the line at hand", () => {
	const ask = async (): Promise<SignatureHelp> => {
		await editor.edit(bench, "centred", "centred dado ");
		return editor.ask(
			"textDocument/signatureHelp",
			bench,
			placeOf(editor.text(bench), "centred dado ") + "centred dado ".length,
		);
	};

	test("names what comes next, as places in the label", async () => {
		await opened(design.main, {
			...fullClient,
			textDocument: {
				...fullClient.textDocument,
				signatureHelp: {
					signatureInformation: {
						parameterInformation: { labelOffsetSupport: true },
					},
				},
			},
		});
		const { signatures, activeParameter } = await ask();
		const [first] = signatures;
		const place = first?.parameters?.[activeParameter ?? -1]?.label;
		expect(first?.label.slice(...(place as [number, number]))).toBe(
			"[dado LENGTH]",
		);
	});

	test("names it as words for a plain client", async () => {
		await opened();
		const { signatures, activeParameter } = await ask();
		expect(signatures[0]?.parameters?.[activeParameter ?? -1]?.label).toBe(
			"[dado LENGTH]",
		);
	});
});

test("selections grow step by step", async () => {
	await opened();
	const at = editor.positionAt(bench, placeOf(editor.text(bench), "centred"));
	const [first] = await editor.connection.sendRequest<SelectionRange[]>(
		"textDocument/selectionRange",
		{ textDocument: { uri: bench }, positions: [at] },
	);
	expect(first?.range.start).toEqual(at);
	expect(first?.parent?.range).toEqual({
		start: { line: 9, character: 4 },
		end: { line: 9, character: 47 },
	});
});

describe("laying out", () => {
	const untidy = readFixture(
		"//- bench.rod\npiece a {\nunit   in\n<|given   w=20|>\n  given   h=30\n}\n",
	).main;

	test("the statements that a selection touches", async () => {
		await opened(untidy);
		const [span] = untidy.selections;
		const edits = await editor.connection.sendRequest<TextEdit[]>(
			"textDocument/rangeFormatting",
			{
				textDocument: { uri: bench },
				range: {
					start: editor.positionAt(bench, span?.start ?? 0),
					end: editor.positionAt(bench, span?.end ?? 0),
				},
				options: { tabSize: 8, insertSpaces: false },
			},
		);
		expect(editor.applied(bench, edits)).toBe(
			"piece a {\nunit   in\n  given w = 20\n  given   h=30\n}\n",
		);
	});

	test("several selections at once", async () => {
		await opened(untidy);
		const line = (number: number) => ({
			start: { line: number, character: 0 },
			end: { line: number, character: 1 },
		});
		const edits = await editor.connection.sendRequest<TextEdit[]>(
			"textDocument/rangesFormatting",
			{
				textDocument: { uri: bench },
				ranges: [line(1), line(3)],
				options: { tabSize: 2, insertSpaces: true },
			},
		);
		expect(editor.applied(bench, edits)).toBe(
			"piece a {\n  unit in\ngiven   w=20\n  given h = 30\n}\n",
		);
	});

	test("the line behind a line end", async () => {
		await opened();
		await editor.edit(bench, "centred\n", "centred\n\n");
		const edits = await editor.connection.sendRequest<TextEdit[]>(
			"textDocument/onTypeFormatting",
			{
				textDocument: { uri: bench },
				position: { line: 10, character: 0 },
				ch: "\n",
				options: { tabSize: 2, insertSpaces: true },
			},
		);
		expect(edits).toEqual([
			{
				range: {
					start: { line: 10, character: 0 },
					end: { line: 10, character: 0 },
				},
				newText: "    ",
			},
		]);
	});
});
