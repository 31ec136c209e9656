// Navigation where files come later than they are asked for: an editor without a disk, whose answers take their time.

import { PassThrough } from "node:stream";
import { setTimeout } from "node:timers/promises";
import { afterEach, expect, test } from "vitest";
import {
	createConnection,
	createProtocolConnection,
	type Location,
	type ProtocolConnection,
	StreamMessageReader,
	StreamMessageWriter,
	type SymbolInformation,
	type WorkspaceEdit,
} from "vscode-languageserver/node";
import { start } from "../../server/core/start.ts";
import { EditorFiles } from "../../server/hosts/editor-files.ts";
import { placeOf } from "../harness/fixture.ts";

const shop = "vscode-vfs://shop";
const bench = `${shop}/bench.rod`;
const files: Readonly<Record<string, string>> = {
	[bench]: `use base from "./parts/more.rod"
piece bench { make foot from base { set height = 4 } }
`,
	[`${shop}/parts/more.rod`]: 'use base from "./base.rod"\n',
	[`${shop}/parts/base.rod`]: "component base { given height = 3 }\n",
	[`${shop}/rack.rod`]: `use base from "./parts/base.rod"
piece rack { make foot from base }
`,
	[`${shop}/alone.rod`]: "piece alone { given height = 3 }\n",
};

let connection: ProtocolConnection;

afterEach(async () => {
	await connection.sendRequest("shutdown");
	connection.dispose();
});

/** Each answer takes so many milliseconds. */
async function opened(delay: number): Promise<void> {
	const up = new PassThrough();
	const down = new PassThrough();
	start(
		createConnection(
			new StreamMessageReader(up),
			new StreamMessageWriter(down),
		),
		new EditorFiles({
			readFiles: async (uris) => {
				await setTimeout(delay);
				return uris.map((uri) => files[uri] ?? null);
			},
			listFiles: async () => {
				await setTimeout(delay);
				return Object.keys(files);
			},
		}),
	);
	connection = createProtocolConnection(
		new StreamMessageReader(down),
		new StreamMessageWriter(up),
	);
	connection.listen();
	await connection.sendRequest("initialize", {
		processId: null,
		rootUri: null,
		workspaceFolders: [{ uri: shop, name: "shop" }],
		capabilities: {},
	});
	await connection.sendNotification("initialized", {});
	await connection.sendNotification("textDocument/didOpen", {
		textDocument: {
			uri: bench,
			languageId: "storyrod",
			version: 1,
			text: files[bench],
		},
	});
}

function ask<T>(method: string, needle: string, more: object): Promise<T> {
	const text = files[bench] ?? "";
	const before = text.slice(0, placeOf(text, needle)).split("\n");
	return connection.sendRequest<T>(`textDocument/${method}`, {
		textDocument: { uri: bench },
		position: {
			line: before.length - 1,
			character: (before.at(-1)?.length ?? 0) + needle.length - 1,
		},
		...more,
	});
}

const short = (uri: string) => uri.slice(shop.length + 1);

test.each([0, 1, 5])(
	"answers that take %i ms: nothing is missing",
	async (delay) => {
		await opened(delay);
		const found = await ask<Location[]>("references", "from base", {
			context: { includeDeclaration: true },
		});
		expect(
			found
				.map(({ uri, range }) => `${short(uri)}:${range.start.line + 1}`)
				.sort(),
		).toEqual([
			"bench.rod:1",
			"bench.rod:2",
			"parts/base.rod:1",
			"parts/more.rod:1",
			"rack.rod:1",
			"rack.rod:2",
		]);
	},
);

test.each([0, 1, 5])(
	"a name is changed in files that had to come first, %i ms later",
	async (delay) => {
		await opened(delay);
		const edit = await ask<WorkspaceEdit>("rename", "set height", {
			newName: "tall",
		});
		expect(Object.keys(edit.changes ?? {}).map(short)).toEqual([
			"parts/base.rod",
			"bench.rod",
		]);
	},
);

test("symbols of files that had to come first", async () => {
	await opened(1);
	const symbols = await connection.sendRequest<SymbolInformation[]>(
		"workspace/symbol",
		{ query: "height" },
	);
	expect(symbols.map(({ location: { uri } }) => short(uri))).toEqual([
		"alone.rod",
		"parts/base.rod",
	]);
});

test("a file that moves", async () => {
	await opened(1);
	const edit = await connection.sendRequest<WorkspaceEdit>(
		"workspace/willRenameFiles",
		{
			files: [
				{
					oldUri: `${shop}/parts/base.rod`,
					newUri: `${shop}/base.rod`,
				},
			],
		},
	);
	expect(
		Object.keys(edit.changes ?? {})
			.map(short)
			.sort(),
	).toEqual(["parts/more.rod", "rack.rod"]);
});
