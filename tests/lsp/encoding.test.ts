// Positions counted as the client counts them: the same places in a text with characters of one to four bytes.

import { afterEach, expect, test } from "vitest";
import type {
	Diagnostic,
	PositionEncodingKind,
	TextDocumentContentChangeEvent,
} from "vscode-languageserver/node";
import { Editor, fullClient } from "../harness/editor.ts";

const uri = "file:///shop/a.rod";
// Four, two and three bytes stand before the unknown name.
const line = `  edition 1 "🪵 é ½ …"; given width = other`;
const design = `piece a {\n${line}\n}\n`;

const counts: Readonly<Record<string, (part: string) => number>> = {
	"utf-8": (part) => new TextEncoder().encode(part).length,
	"utf-16": (part) => part.length,
	"utf-32": (part) => [...part].length,
};

let editor: Editor;

afterEach(() => editor.stop());

const startedWith = async (encodings: PositionEncodingKind[]) => {
	editor = await Editor.start(new Map(), {
		...fullClient,
		general: { positionEncodings: encodings },
	});
	return editor.initialized?.capabilities.positionEncoding;
};

/** The diagnostics of the newest version, as they come. */
const told = (version: number): Promise<readonly Diagnostic[]> =>
	editor.until(
		() =>
			editor.published.find((one) => one.uri === uri && one.version === version)
				?.diagnostics,
	);

test.each(["utf-8", "utf-16", "utf-32"])("%s", async (encoding) => {
	expect(await startedWith([encoding])).toBe(encoding);
	const count = counts[encoding] as (part: string) => number;
	await editor.open(uri, design);
	const [unknown] = (await told(1)).filter(
		({ code }) => code === "unknown-name",
	);
	const before = line.slice(0, line.indexOf("other"));
	expect(unknown?.range).toEqual({
		start: { line: 1, character: count(before) },
		end: { line: 1, character: count(before) + "other".length },
	});
	// An edit behind those characters reaches the very place.
	const change: TextDocumentContentChangeEvent = {
		range: unknown?.range ?? {
			start: { line: 0, character: 0 },
			end: { line: 0, character: 0 },
		},
		text: "1",
	};
	await editor.connection.sendNotification("textDocument/didChange", {
		textDocument: { uri, version: 2 },
		contentChanges: [change],
	});
	expect((await told(2)).filter(({ code }) => code === "unknown-name")).toEqual(
		[],
	);
});

test("UTF-16 where the client says nothing, or knows more than one", async () => {
	expect(await startedWith(["utf-8", "utf-16"])).toBe("utf-16");
	await editor.stop();
	editor = await Editor.start();
	expect(editor.initialized?.capabilities.positionEncoding).toBe("utf-16");
});
