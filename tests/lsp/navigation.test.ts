// Ways through designs over the protocol: open files and closed ones, several folders, clients of all sorts.

import { afterEach, describe, expect, test } from "vitest";
import {
	type CallHierarchyIncomingCall,
	type CallHierarchyItem,
	type CallHierarchyOutgoingCall,
	CancellationTokenSource,
	type ClientCapabilities,
	type DocumentHighlight,
	type DocumentLink,
	ErrorCodes,
	type Location,
	LSPErrorCodes,
	type Range,
	ResponseError,
	type SymbolInformation,
	TextDocumentEdit,
	type WorkspaceEdit,
} from "vscode-languageserver/node";
import { TextDocument } from "vscode-languageserver-textdocument";
import { Editor, fullClient } from "../harness/editor.ts";
import { placeOf, readFixture } from "../harness/fixture.ts";

const { texts } = readFixture(`//- bench.rod
use ply from "./stock.rod"
use base from "./parts/base.rod"

piece bench {
  given width = 54 // 📐 over the case
  make foot from base { set height = 4; bottom at floor }
  box case {
    outside width x 14 5/8 x 15 3/4
    bottom at foot.rail.top
    panels top, bottom, left, right of ply.half
  }
  must width < 60 "the wall"
}
//- stock.rod
sheet ply { species "birch plywood"; size 96 x 48; variant half { sold-as 1/2; thick 15/32 } }
//- parts/base.rod
use ply from "../stock.rod"
component base { given height = 3; part rail { of ply.half; size 30 x height; lies across facing front } }
//- other/rack.rod
use ply, oak from "../stock.rod"
piece rack { part shelf { of ply.half; size 20 x 8 } }
//- other/alone.rod
piece alone { part shelf { of ply.half; size 20 x 8 } }
`);
const shop = "file:///shop";
const bench = `${shop}/bench.rod`;
const stock = `${shop}/stock.rod`;
const base = `${shop}/parts/base.rod`;
const rack = `${shop}/other/rack.rod`;
const alone = `${shop}/other/alone.rod`;

const client: ClientCapabilities = {
	workspace: {
		...fullClient.workspace,
		workspaceEdit: { documentChanges: true },
		fileOperations: { willRename: true, didRename: true },
	},
	textDocument: {
		...fullClient.textDocument,
		rename: { prepareSupport: true },
	},
};

let editor: Editor;

afterEach(() => editor.stop());

async function opened(
	uris: readonly string[] = [bench],
	capabilities = client,
	folders: readonly string[] = [shop],
	disk: ReadonlyMap<string, string> = texts,
): Promise<void> {
	editor = await Editor.start(disk, capabilities, {}, folders);
	for (const uri of uris) await editor.open(uri, disk.get(uri) ?? "");
}

/** On the last character of the only place where something stands. */
function ask<T>(
	method: string,
	uri: string,
	needle: string,
	more: object = {},
): Promise<T> {
	const at = placeOf(editor.text(uri), needle) + needle.length - 1;
	return editor.ask<T>(`textDocument/${method}`, uri, at, more);
}

/** `bench.rod:5 width`: the line that a range begins in, and its text. */
function shown(uri: string, range: Range): string {
	const now = TextDocument.create(
		uri,
		"storyrod",
		1,
		editor.has(uri) ? editor.text(uri) : (editor.disk.get(uri) ?? ""),
	);
	return `${uri.slice(shop.length + 1)}:${range.start.line + 1} ${now.getText(range)}`;
}

const places = (found: Location[] | null) =>
	found?.map(({ uri, range }) => shown(uri, range));

async function refusal(work: Promise<unknown>): Promise<ResponseError<void>> {
	const error = await work.then(
		() => undefined,
		(one: unknown) => one,
	);
	if (error instanceof ResponseError) return error;
	throw new Error("The request was not refused");
}

describe("references", () => {
	test("of a material in files that nobody has open, where they use its file", async () => {
		await opened();
		const found = await ask<Location[]>("references", bench, "right of ply", {
			context: { includeDeclaration: true },
		});
		expect(places(found)?.sort()).toEqual([
			"bench.rod:1 ply",
			"bench.rod:10 ply",
			"other/rack.rod:1 ply",
			"other/rack.rod:2 ply",
			"parts/base.rod:1 ply",
			"parts/base.rod:2 ply",
			"stock.rod:1 ply",
		]);
	});

	test("without the declaration; of a given that is set", async () => {
		await opened([base]);
		const found = await ask<Location[]>("references", base, "given height", {
			context: { includeDeclaration: false },
		});
		expect(places(found)).toEqual([
			"parts/base.rod:2 height",
			"bench.rod:6 height",
		]);
	});

	test("in a text that has just changed, on disk and in the editor", async () => {
		await opened();
		const ofPly = async () => {
			const found = await ask<Location[]>("references", bench, "use ply", {
				context: { includeDeclaration: true },
			});
			return found.length;
		};
		expect(await ofPly()).toBe(7);
		await editor.write(rack, undefined);
		expect(await ofPly()).toBe(5);
		await editor.write(
			`${shop}/new.rod`,
			'use ply from "./stock.rod"\npiece n { }\n',
		);
		expect(await ofPly()).toBe(6);
		await editor.edit(
			bench,
			"of ply.half",
			"of ply.half\n    back of ply.half",
		);
		expect(await ofPly()).toBe(7);
		await editor.open(stock, texts.get(stock) ?? "");
		await editor.edit(stock, "sheet ply", "sheet birch");
		// The file does not declare it any more: the name means nothing.
		expect(
			await ask("references", bench, "use ply", {
				context: { includeDeclaration: true },
			}),
		).toBeNull();
	});

	test("without folders: among the open files and what they use", async () => {
		await opened([bench], client, []);
		const found = await ask<Location[]>("references", bench, "use ply", {
			context: { includeDeclaration: true },
		});
		await editor.diagnostics(bench);
		expect(places(found)?.sort()).toEqual([
			"bench.rod:1 ply",
			"bench.rod:10 ply",
			"stock.rod:1 ply",
		]);
	});

	test("in files of several folders, one of them added and taken away", async () => {
		const far = "file:///far/far.rod";
		const disk = new Map([
			...texts,
			[far, 'use ply from "../shop/stock.rod"\npiece far { }\n'],
		]);
		await opened([stock], client, [shop], disk);
		const count = async () =>
			(
				await ask<Location[]>("references", stock, "sheet ply", {
					context: { includeDeclaration: true },
				})
			).length;
		expect(await count()).toBe(7);
		const folder = { uri: "file:///far", name: "far" };
		const change = (added: object[], removed: object[]) =>
			editor.connection.sendNotification(
				"workspace/didChangeWorkspaceFolders",
				{ event: { added, removed } },
			);
		await change([folder], []);
		expect(await count()).toBe(8);
		await change([], [folder]);
		expect(await count()).toBe(7);
	});

	test("is cancelled on the way", async () => {
		await opened();
		const source = new CancellationTokenSource();
		const answer = editor.connection.sendRequest(
			"textDocument/references",
			{
				textDocument: { uri: bench },
				position: { line: 0, character: 5 },
				context: { includeDeclaration: true },
			},
			source.token,
		);
		source.cancel();
		const { code } = await refusal(answer);
		expect(code).toBe(LSPErrorCodes.RequestCancelled);
	});
});

describe("highlights", () => {
	test("what gives it a value is a write", async () => {
		await opened();
		const found = await ask<DocumentHighlight[]>(
			"documentHighlight",
			bench,
			"must width",
		);
		expect(
			found.map(({ range, kind }) => `${shown(bench, range)} ${kind}`),
		).toEqual([
			"bench.rod:5 width 3",
			"bench.rod:8 width 2",
			"bench.rod:12 width 2",
		]);
		const set = await ask<DocumentHighlight[]>(
			"documentHighlight",
			bench,
			"set height",
		);
		expect(set.map(({ kind }) => kind)).toEqual([3]);
		expect(await ask("documentHighlight", bench, "14 5/8")).toBeNull();
	});
});

describe("rename", () => {
	test("in all files, with the versions of the open ones", async () => {
		await opened([bench, stock]);
		await editor.edit(bench, "over the case", "over all");
		expect(await ask("prepareRename", bench, "right of ply")).toEqual({
			range: {
				start: { line: 9, character: 39 },
				end: { line: 9, character: 42 },
			},
			placeholder: "ply",
		});
		const edit = await ask<WorkspaceEdit>("rename", bench, "right of ply", {
			newName: "birch",
		});
		expect(edit.changes).toBeUndefined();
		const files = (edit.documentChanges ?? []).filter(TextDocumentEdit.is);
		expect(
			files
				.map(({ textDocument: { uri, version } }) => `${uri} ${version}`)
				.sort(),
		).toEqual(
			[`${bench} 2`, `${rack} null`, `${base} null`, `${stock} 1`].sort(),
		);
		const there = files.find(({ textDocument }) => textDocument.uri === bench);
		expect(editor.applied(bench, (there?.edits ?? []) as never)).toContain(
			"right of birch.half",
		);
	});

	test("for a client that knows no versions and does not ask before", async () => {
		await opened([base], fullClient);
		expect(editor.initialized?.capabilities.renameProvider).toBe(true);
		const edit = await ask<WorkspaceEdit>("rename", base, "part rail", {
			newName: "bar",
		});
		expect(Object.keys(edit.changes ?? {}).sort()).toEqual([bench, base]);
		expect(editor.applied(base, edit.changes?.[base] ?? [])).toContain(
			"part bar {",
		);
	});

	test("is refused with the place that is in the way", async () => {
		await opened([bench]);
		const taken = await refusal(
			ask("rename", bench, "given width", { newName: "case" }),
		);
		expect(taken.code).toBe(LSPErrorCodes.RequestFailed);
		expect(taken.message).toBe(
			"`case` is already the box at line 7 of bench.rod: choose another name",
		);
		// In a file that nobody has open.
		const far = await refusal(
			ask("rename", bench, "use ply", { newName: "oak" }),
		);
		expect(far.message).toBe(
			"`oak` is already taken from another file at line 1 of rack.rod: choose another name",
		);
		const fixed = await refusal(ask("prepareRename", bench, "panels top"));
		expect(fixed.message).toMatch(/^`top` is what every box calls that side/);
		expect(await ask("prepareRename", bench, "54")).toBeNull();
		expect(await ask("rename", bench, "54", { newName: "a" })).toBeNull();
	});

	test("leaves files of packages alone, and then all files", async () => {
		const disk = new Map([
			...texts,
			[
				`${shop}/node_modules/woods/oak.rod`,
				'board oak { species "white oak" }\n',
			],
			[`${shop}/table.rod`, 'use oak from "woods/oak.rod"\npiece t { }\n'],
		]);
		await opened([`${shop}/table.rod`], client, [shop], disk);
		const { message } = await refusal(
			ask("rename", `${shop}/table.rod`, "use oak", { newName: "ash" }),
		);
		expect(message).toBe(
			"`oak` is mentioned at line 1 of oak.rod, and that file belongs to an installed package: nothing was renamed",
		);
	});

	test("not of a text that changes meanwhile", async () => {
		await opened();
		const answer = refusal(
			ask("rename", bench, "right of ply", { newName: "birch" }),
		);
		await editor.edit(bench, "over the case", "over all");
		expect((await answer).code).toBe(LSPErrorCodes.ContentModified);
	});

	test("in files with errors", async () => {
		await opened();
		await editor.edit(bench, "panels top,", "panels {{ top,");
		const edit = await ask<WorkspaceEdit>("rename", bench, "given width", {
			newName: "span",
		});
		const [file] = (edit.documentChanges ?? []).filter(TextDocumentEdit.is);
		expect(file?.edits).toHaveLength(3);
	});
});

describe("symbols of the workspace", () => {
	const found = async (query: string) =>
		(
			await editor.connection.sendRequest<SymbolInformation[]>(
				"workspace/symbol",
				{ query },
			)
		).map(
			({ name, containerName, location: { uri, range } }) =>
				`${containerName ?? ""}/${name} ${shown(uri, range)}`,
		);

	test("in open files and closed ones, by letters", async () => {
		await opened();
		expect(await found("rl")).toEqual(["base/rail parts/base.rod:2 rail"]);
		expect(await found("shelf")).toEqual([
			"alone/shelf other/alone.rod:1 shelf",
			"rack/shelf other/rack.rod:2 shelf",
		]);
		expect(await found("rack shelf")).toEqual([
			"rack/shelf other/rack.rod:2 shelf",
		]);
		await editor.edit(bench, "given width", "given breadth");
		expect(await found("breadth")).toEqual([
			"bench/breadth bench.rod:5 breadth",
		]);
		await editor.write(alone, "piece alone { mark shelves = 3 }\n");
		expect(await found("shelves")).toEqual([
			"alone/shelves other/alone.rod:1 shelves",
		]);
		expect(await found("")).toHaveLength(5);
		expect(await found("no such thing")).toEqual([]);
	});
});

describe("links", () => {
	test("lead to the files that paths mean", async () => {
		await opened();
		await editor.edit(
			bench,
			'"./parts',
			'"./gone.rod"\nuse base from "./parts',
		);
		const links = await editor.connection.sendRequest<DocumentLink[]>(
			"textDocument/documentLink",
			{ textDocument: { uri: bench } },
		);
		expect(
			links.map(({ range, target }) => `${shown(bench, range)} ${target}`),
		).toEqual([
			`bench.rod:1 ./stock.rod ${stock}`,
			`bench.rod:3 ./parts/base.rod ${base}`,
		]);
	});
});

describe("what it is made from", () => {
	test("of a thing its component, of a box its material; and back", async () => {
		await opened();
		expect(
			places(await ask<Location[]>("typeDefinition", bench, "make foot")),
		).toEqual(["parts/base.rod:2 base"]);
		expect(
			places(await ask<Location[]>("typeDefinition", bench, "box case")),
		).toEqual(["stock.rod:1 half"]);
		expect(
			places(await ask<Location[]>("implementation", bench, "foot from base")),
		).toEqual(["bench.rod:6 foot"]);
		expect(
			places(
				await ask<Location[]>("implementation", bench, "ply.half"),
			)?.sort(),
		).toEqual([
			"bench.rod:7 case",
			"other/rack.rod:2 shelf",
			"parts/base.rod:2 rail",
		]);
	});
});

describe("what depends on what", () => {
	const prepared = async (uri: string, needle: string) => {
		const [item] = await ask<CallHierarchyItem[]>(
			"prepareCallHierarchy",
			uri,
			needle,
		);
		return item as CallHierarchyItem;
	};
	const calls = <T>(way: "incoming" | "outgoing", item: CallHierarchyItem) =>
		editor.connection.sendRequest<T>(`callHierarchy/${way}Calls`, { item });

	test("a size with its value, step by step over files", async () => {
		await opened();
		const width = await prepared(bench, "given width");
		expect(width.detail).toBe("given 54");
		const users = await calls<CallHierarchyIncomingCall[]>("incoming", width);
		expect(
			users.map(
				({ from, fromRanges }) =>
					`${from.name} ${fromRanges.map((range) => shown(from.uri, range))}`,
			),
		).toEqual(["case bench.rod:8 width", "bench bench.rod:12 width"]);
		const needs = await calls<CallHierarchyOutgoingCall[]>(
			"outgoing",
			await prepared(bench, "box case"),
		);
		expect(
			needs.map(
				({ to, fromRanges }) =>
					`${to.name} ${to.detail} ${fromRanges.map((range) => shown(bench, range))}`,
			),
		).toEqual([
			"width given 54 bench.rod:8 width",
			"rail part bench.rod:9 foot.rail.top",
			"half variant bench.rod:10 ply.half",
		]);
		const [rail] = needs.filter(({ to }) => to.name === "rail");
		const on = await calls<CallHierarchyOutgoingCall[]>(
			"outgoing",
			rail?.to as CallHierarchyItem,
		);
		expect(on.map(({ to }) => to.name)).toEqual(["half", "height"]);
	});

	test("an item of a text that has changed", async () => {
		await opened();
		const width = await prepared(bench, "given width");
		await editor.edit(bench, "piece bench {", "piece bench { // new\n\n");
		expect(await calls("incoming", width)).toBeNull();
		expect(await calls("outgoing", width)).toBeNull();
	});
});

describe("files that move", () => {
	const willRename = (files: { oldUri: string; newUri: string }[]) =>
		editor.connection.sendRequest<WorkspaceEdit | null>(
			"workspace/willRenameFiles",
			{ files },
		);
	const linesOf = (edit: WorkspaceEdit | null) =>
		(edit?.documentChanges ?? [])
			.filter(TextDocumentEdit.is)
			.flatMap(({ textDocument: { uri }, edits }) => {
				const text = editor.has(uri)
					? editor.text(uri)
					: (editor.disk.get(uri) ?? "");
				const now = TextDocument.applyEdits(
					TextDocument.create(uri, "storyrod", 1, text),
					edits as never,
				).split("\n");
				return now
					.filter((line, at) => line !== text.split("\n")[at])
					.map((line) => `${uri.slice(shop.length + 1)}: ${line}`);
			})
			.sort();

	test("a file: paths to it in all files; what was known of it is forgotten", async () => {
		await opened();
		const newUri = `${shop}/parts/sheets.rod`;
		const edit = await willRename([{ oldUri: stock, newUri }]);
		expect(linesOf(edit)).toEqual([
			'bench.rod: use ply from "./parts/sheets.rod"',
			'other/rack.rod: use ply, oak from "../parts/sheets.rod"',
			'parts/base.rod: use ply from "./sheets.rod"',
		]);
		await editor.edit(bench, "./stock.rod", "./parts/sheets.rod");
		editor.disk.set(newUri, editor.disk.get(stock) ?? "");
		editor.disk.delete(stock);
		editor.disk.set(
			base,
			(editor.disk.get(base) ?? "").replace("../stock", "./sheets"),
		);
		await editor.connection.sendNotification("workspace/didRenameFiles", {
			files: [{ oldUri: stock, newUri }],
		});
		const found = await ask<Location[]>("references", bench, "use ply", {
			context: { includeDeclaration: true },
		});
		expect(places(found)).toContain("parts/sheets.rod:1 ply");
	});

	test("a folder: paths into it and out of it", async () => {
		await opened();
		const edit = await willRename([
			{ oldUri: `${shop}/parts`, newUri: `${shop}/lib/parts` },
		]);
		expect(linesOf(edit)).toEqual([
			'bench.rod: use base from "./lib/parts/base.rod"',
			'parts/base.rod: use ply from "../../stock.rod"',
		]);
	});

	test("a file that no watcher has told of yet", async () => {
		await opened();
		await willRename([{ oldUri: alone, newUri: `${shop}/lonely.rod` }]);
		editor.disk.set(
			`${shop}/fresh.rod`,
			'use ply from "./stock.rod"\npiece fresh { }\n',
		);
		const edit = await willRename([
			{ oldUri: stock, newUri: `${shop}/lager.rod` },
		]);
		expect(linesOf(edit)).toContain('fresh.rod: use ply from "./lager.rod"');
	});

	test("one that nobody uses", async () => {
		await opened();
		expect(
			await willRename([{ oldUri: alone, newUri: `${shop}/lonely.rod` }]),
		).toBeNull();
	});
});

test("documents that are not open, places outside of all, nothing on disk", async () => {
	await opened([bench]);
	const textDocument = { uri: alone };
	const position = { line: 0, character: 7 };
	for (const method of [
		"references",
		"documentHighlight",
		"prepareRename",
		"rename",
		"typeDefinition",
		"implementation",
		"prepareCallHierarchy",
		"documentLink",
	])
		expect(
			await editor.connection.sendRequest(`textDocument/${method}`, {
				textDocument,
				position,
				newName: "a",
				context: {},
			}),
			method,
		).toBeNull();
	const { code } = await refusal(
		editor.connection.sendRequest("textDocument/rename", {
			textDocument: { uri: bench },
			position,
		}),
	);
	expect(code).toBe(ErrorCodes.InvalidParams);
	editor.disk.clear();
	await editor.open(
		"untitled:Untitled-1",
		"piece a { given b = 1; must b > 0 }\n",
	);
	const edit = await ask<WorkspaceEdit>(
		"rename",
		"untitled:Untitled-1",
		"given b",
		{ newName: "c" },
	);
	expect(edit.documentChanges).toHaveLength(1);
});
