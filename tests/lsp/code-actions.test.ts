// Mends and refactorings over the protocol: what is listed, what an editor gets when it chooses, for clients of all sorts.

import { afterEach, describe, expect, test } from "vitest";
import {
	type ClientCapabilities,
	type CodeAction,
	type CodeActionContext,
	CodeActionTriggerKind,
	CreateFile,
	LSPErrorCodes,
	ResponseError,
	TextDocumentEdit,
	type WorkspaceEdit,
} from "vscode-languageserver/node";
import { Editor, fullClient } from "../harness/editor.ts";
import { placeOf, readFixture } from "../harness/fixture.ts";

const { texts } = readFixture(`//- bench.rod
use ply from "./stock.rod"

piece bench {
  unit in // the shop's own
  given width = 54 // 📐 over the case
  part top { of ply.half; size width x 14 5/8; bottom at 18 from floor }
  part shelf { of ply.half; size width - 2 x 14 5/8 }
  load 3 kg on shelf
}
//- stock.rod
unit in
sheet ply { species "birch plywood"; size 96 x 48; variant half { sold-as 1/2; thick 15/32 } }
//- parts/base.rod
use ply from "../stock.rod"
component base { given height = 3; part rail { of ply.half; size 30 x height; lies across facing front } }
`);
const shop = "file:///shop";
const bench = `${shop}/bench.rod`;

/** What a full client can do with actions. */
const client: ClientCapabilities = {
	workspace: {
		...fullClient.workspace,
		workspaceEdit: {
			documentChanges: true,
			resourceOperations: ["create"],
			changeAnnotationSupport: {},
		},
	},
	textDocument: {
		...fullClient.textDocument,
		codeAction: {
			dataSupport: true,
			disabledSupport: true,
			isPreferredSupport: true,
			resolveSupport: { properties: ["edit"] },
		},
	},
};

let editor: Editor;

afterEach(() => editor.stop());

async function opened(
	capabilities: ClientCapabilities = client,
	text = texts.get(bench) ?? "",
): Promise<void> {
	editor = await Editor.start(texts, capabilities, {}, [shop]);
	await editor.open(bench, text);
}

/** The actions on a text that stands once. */
function list(
	needle: string,
	more: Partial<CodeActionContext> = {},
	from = 0,
): Promise<CodeAction[]> {
	const at = placeOf(editor.text(bench), needle);
	return editor.connection.sendRequest("textDocument/codeAction", {
		textDocument: { uri: bench },
		range: {
			start: editor.positionAt(bench, at + from),
			end: editor.positionAt(bench, at + (from > 0 ? from : needle.length)),
		},
		context: { diagnostics: [], ...more },
	});
}

function named(actions: readonly CodeAction[], title: string): CodeAction {
	const action = actions.find((one) => one.title.startsWith(title));
	if (!action)
		throw new Error(
			`Not among them: ${actions.map((one) => one.title).join("; ")}`,
		);
	return action;
}

function chosen(action: CodeAction): Promise<CodeAction> {
	return editor.connection.sendRequest("codeAction/resolve", action);
}

/** The text of the bench after an edit. */
function changed(edit: WorkspaceEdit | undefined): string {
	const changes =
		edit?.changes?.[bench] ??
		edit?.documentChanges
			?.filter(TextDocumentEdit.is)
			.find(({ textDocument }) => textDocument.uri === bench)?.edits ??
		[];
	return editor.applied(
		bench,
		changes.flatMap((one) => ("newText" in one ? [one] : [])),
	);
}

describe("a refactoring", () => {
	test("is worked out when it is chosen, with the version that it is for", async () => {
		await opened();
		const action = named(
			await list("x 14 5/8; bottom", {}, 4),
			"Make `14 5/8`",
		);
		expect(action.kind).toBe("refactor.extract");
		expect(action.edit).toBeUndefined();
		const { edit } = await chosen(action);
		expect(
			edit?.documentChanges?.map((one) =>
				TextDocumentEdit.is(one) ? one.textDocument : one,
			),
		).toEqual([{ uri: bench, version: 1 }]);
		expect(changed(edit)).toContain(`  given width = 54  // 📐 over the case
  given top-width = 14 5/8
  part top { of ply.half; size width x top-width; bottom at 18 from floor }
  part shelf { of ply.half; size width - 2 x top-width }
`);
	});

	test("comes with its edit for a client that does not ask again", async () => {
		await opened(fullClient);
		const action = named(await list("width = 54", {}, 1), "Put `54`");
		expect(action.kind).toBe("refactor.inline");
		expect(Object.keys(action.edit?.changes ?? {})).toEqual([bench]);
		expect(changed(action.edit)).toContain(
			"  // 📐 over the case\n  part top { of ply.half; size 54 x 14 5/8;",
		);
	});

	test("of a text that has changed since is not made", async () => {
		await opened();
		const action = named(
			await list("x 14 5/8; bottom", {}, 4),
			"Make `14 5/8`",
		);
		await editor.edit(bench, "54", "55");
		const error = await chosen(action).catch((one: unknown) => one);
		expect(error).toBeInstanceOf(ResponseError);
		expect((error as ResponseError<void>).code).toBe(
			LSPErrorCodes.ContentModified,
		);
	});

	test("that would change what is cut is refused with the reason when it is chosen", async () => {
		await opened(
			client,
			`use ply from "./stock.rod"
veneer skins { variant oak { thick 1/40; size 96 x 24 } }
piece bench {
  box case { outside 54 x 16 x 14; bottom at 12 from floor; panels top, bottom, left, right of ply.half }
  leg l { against outside case.left; set-back 2 from case.front; layer only of ply.half 2 wide from floor up to 3 above case.bottom }
  veneer skin { on case.left; of skins.oak }
}
`,
		);
		const text = editor.text(bench);
		const action = named(
			await list(text.slice(text.indexOf("box"), text.indexOf("\n  veneer"))),
			"Make a component of these 2",
		);
		const error = await chosen(action).catch((one: unknown) => one);
		expect((error as ResponseError<void>).code).toBe(
			LSPErrorCodes.RequestFailed,
		);
		expect((error as Error).message).toBe(
			"`l.only` would not be cut the same any more",
		);
	});
});

describe("what cannot be done", () => {
	const both = `part shelf { of ply.half; size width - 2 x 14 5/8 }
  load 3 kg on shelf`;

	test("is shown with the reason where somebody asks, and the client can", async () => {
		await opened();
		const action = named(
			await list(both, { triggerKind: CodeActionTriggerKind.Invoked }),
			"Make a component",
		);
		expect(action.disabled?.reason).toBe(
			"A `load` line stays in the piece: leave it out of the selection",
		);
		expect(action.data).toBeUndefined();
	});

	test("is left out else", async () => {
		await opened();
		const titles = (actions: readonly CodeAction[]): string[] =>
			actions.map(({ title }) => title);
		expect(
			titles(
				await list(both, { triggerKind: CodeActionTriggerKind.Automatic }),
			),
		).toEqual([]);
		await editor.stop();
		await opened(fullClient);
		expect(titles(await list(both))).toEqual([]);
	});
});

describe("kinds", () => {
	test("are announced", async () => {
		await opened();
		expect(editor.initialized?.capabilities.codeActionProvider).toEqual({
			codeActionKinds: [
				"quickfix",
				"refactor.rewrite",
				"refactor.extract",
				"refactor.inline",
				"source.convertUnit.storyrod",
				"source.fixAll.storyrod",
			],
			resolveProvider: true,
		});
	});

	test("that are asked for are all that comes, those below one included", async () => {
		await opened();
		const kinds = async (...only: string[]): Promise<string[]> => [
			...new Set(
				(await list("x 14 5/8; bottom", { only }, 4)).map(
					({ kind }) => kind ?? "",
				),
			),
		];
		expect(await kinds("refactor")).toEqual(["refactor.extract"]);
		expect(await kinds("refactor.extract")).toEqual(["refactor.extract"]);
		expect(await kinds("refactor.inline")).toEqual([]);
		expect(await kinds("refactor.ext")).toEqual([]);
		expect(await kinds("source")).toEqual(["source.convertUnit.storyrod"]);
		expect(await kinds("quickfix")).toEqual([]);
	});
});

describe("a new file", () => {
	const shelf = "part shelf { of ply.half; size width - 2 x 14 5/8 }";
	const title = 'Make a component of this in a new file "./shelf-unit.rod"';

	test("is made by the edit, before the text that uses it changes", async () => {
		await opened();
		await editor.edit(bench, "  load 3 kg on shelf\n", "");
		const { edit } = await chosen(named(await list(shelf), title));
		const [create, fill] = edit?.documentChanges ?? [];
		expect(CreateFile.is(create) && create).toMatchObject({
			uri: `${shop}/shelf-unit.rod`,
			options: { overwrite: false },
		});
		expect(
			TextDocumentEdit.is(fill) &&
				fill.edits.map((one) => ("newText" in one ? one.newText : "")),
		).toEqual([
			`use ply from "./stock.rod"
unit in

component shelf-unit {
  given width = 54

  part shelf { of ply.half; size width - 2 x 14 5/8 }
}
`,
		]);
		expect(changed(edit)).toContain(`use shelf-unit from "./shelf-unit.rod"`);
	});

	test("is not offered to a client that can make none, nor over one that is there", async () => {
		await opened(fullClient);
		expect((await list(shelf)).map((one) => one.title)).toEqual([
			"Make a component of this",
		]);
		await editor.stop();
		editor = await Editor.start(
			new Map([...texts, [`${shop}/shelf-unit.rod`, "unit in\n"]]),
			client,
			{},
			[shop],
		);
		await editor.open(bench, texts.get(bench) ?? "");
		named(
			await list(shelf),
			'Make a component of this in a new file "./shelf-unit-2.rod"',
		);
	});
});

describe("an import", () => {
	test("is found in folders that nobody has opened a file of, by the shortest path", async () => {
		await opened(
			client,
			`use ply from "./stock.rod"
piece bench {
  make foot from base { set height = 4 }
}
`,
		);
		const action = named(
			await list("base"),
			'Take `base` from "./parts/base.rod"',
		);
		expect(action).toMatchObject({ kind: "quickfix", isPreferred: true });
		expect(action.diagnostics?.map(({ code }) => code)).toEqual([
			"unknown-name",
		]);
		expect(changed((await chosen(action)).edit)).toContain(
			'use ply from "./stock.rod"\nuse base from "./parts/base.rod"\n',
		);
		// A file that goes is offered no more.
		await editor.write(`${shop}/parts/base.rod`, undefined);
		expect(
			(await list("base")).filter(({ title }) => title.startsWith("Take")),
		).toEqual([]);
	});

	test("without a folder is found beside the file", async () => {
		editor = await Editor.start(texts, client);
		await editor.open(
			bench,
			"piece b { part p { of ply.half; size 3 x 4 } }\n",
		);
		named(await list("ply"), 'Take `ply` from "./stock.rod"');
	});
});

describe("a unit", () => {
	test("is converted with what is to be confirmed", async () => {
		await opened();
		const action = named(
			await list("unit in", {}, 2),
			"Convert `bench` to millimetres: nothing changes by more than 0.48 mm",
		);
		const { edit } = await chosen(action);
		expect(Object.values(edit?.changeAnnotations ?? {})).toEqual([
			{
				label: action.title,
				// 14 5/8 in = 371.475 mm, 371 now.
				description: "Nothing changes by more than 0.48 mm (`top`)",
				needsConfirmation: true,
			},
		]);
		expect(changed(edit)).toContain(`  unit mm             // the shop's own
  given width = 1372  // 📐 over the case
  part top { of ply.half; size width x 371; bottom at 457 from floor }
`);
	});
});

describe("mends", () => {
	test("all that a machine can mend, when it is asked for by its kind", async () => {
		await opened(
			client,
			`use ply from "./stock.rod"
pice bench {
  prat p { of ply.half; size 9 x 4 }
}
`,
		);
		const [action] = await list("pice", { only: ["source.fixAll"] });
		expect(action?.kind).toBe("source.fixAll.storyrod");
		expect(changed(action && (await chosen(action)).edit)).toBe(
			`use ply from "./stock.rod"
piece bench {
  part p { of ply.half; size 9 x 4 }
}
`,
		);
		expect(
			(await list("pice")).map(({ title, isPreferred }) => ({
				title,
				isPreferred,
			})),
		).toContainEqual({ title: "Change to `piece`", isPreferred: true });
	});
});

test("an action that is not ours, or of a closed file, is given back or refused", async () => {
	await opened();
	expect(await chosen({ title: "Other" })).toEqual({ title: "Other" });
	expect(await chosen({ title: "Other", data: { uri: 3 } })).toMatchObject({
		title: "Other",
	});
	const action = named(await list("x 14 5/8; bottom", {}, 4), "Make `14 5/8`");
	await editor.close(bench);
	const error = await chosen(action).catch((one: unknown) => one);
	expect(error).toBeInstanceOf(ResponseError);
});
