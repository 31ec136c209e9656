// A server over the protocol: messages as an editor writes them, and every request that there is.

import type {
	Diagnostic,
	DocumentDiagnosticReport,
} from "vscode-languageserver/node";
import { indexLines } from "../../shared/text/line-index.ts";
import { Editor, pullingClient } from "../harness/editor.ts";
import type { Chance } from "./chance.ts";
import type { Typed } from "./fuzz.ts";
import type { TypedEdit } from "./typist.ts";

const atPlace = [
	"hover",
	"completion",
	"definition",
	"references",
	"documentHighlight",
	"signatureHelp",
	"prepareRename",
	"prepareCallHierarchy",
	"prepareTypeHierarchy",
	"linkedEditingRange",
];
const ofDocument = [
	"documentSymbol",
	"foldingRange",
	"formatting",
	"codeLens",
	"documentLink",
	"semanticTokens/full",
];
const ofRange = ["inlayHint", "semanticTokens/range", "rangeFormatting"];

export class TypedServer implements Typed {
	private editor: Editor | undefined;

	async start(disk: ReadonlyMap<string, string>): Promise<void> {
		const files = [...disk].map(([uri, text]) => [asFile(uri), text] as const);
		this.editor = await Editor.start(new Map(files), pullingClient, {}, [
			"file:///designs",
		]);
	}

	open(uri: string, text: string): Promise<void> {
		return this.running().open(asFile(uri), text);
	}

	async edit(uri: string, edit: TypedEdit, text: string): Promise<void> {
		const editor = this.running();
		const file = asFile(uri);
		const lines = indexLines(editor.text(file));
		const range = {
			start: lines.positionAt(edit.start),
			end: lines.positionAt(edit.end),
		};
		const named =
			lines.offsetAt(range.start) === edit.start &&
			lines.offsetAt(range.end) === edit.end;
		await editor.change(file, [named ? { range, text: edit.text } : { text }]);
	}

	close(uri: string): Promise<void> {
		return this.running().close(asFile(uri));
	}

	async told(uri: string): Promise<readonly string[]> {
		const report =
			await this.running().connection.sendRequest<DocumentDiagnosticReport>(
				"textDocument/diagnostic",
				{ textDocument: { uri: asFile(uri) } },
			);
		if (report.kind !== "full") throw new Error("Unchanged from nothing");
		return [...new Set(report.items.map(lineOf))].sort();
	}

	async ask(uri: string, offset: number, chance: Chance): Promise<void> {
		const editor = this.running();
		const textDocument = { uri: asFile(uri) };
		const position = editor.positionAt(textDocument.uri, offset);
		const end = editor.positionAt(
			textDocument.uri,
			offset + chance.below(chance.of([1, 40, 4000])),
		);
		const range = { start: position, end };
		const options = { tabSize: 4, insertSpaces: false };
		const params = {
			textDocument,
			position,
			range,
			options,
			context: { includeDeclaration: chance.is(0.5), diagnostics: [] },
		};
		const methods = [
			chance.of(atPlace),
			chance.of(ofDocument),
			chance.of(ofRange),
		];
		const requests = methods.map((method) =>
			this.request(`textDocument/${method}`, params),
		);
		requests.push(
			this.request("textDocument/codeAction", params),
			this.request("textDocument/rename", { ...params, newName: "other" }),
			this.request("textDocument/onTypeFormatting", { ...params, ch: "\n" }),
			this.request("textDocument/selectionRange", {
				textDocument,
				positions: [position],
			}),
			this.request("workspace/symbol", { query: chance.of(["", "a", "case"]) }),
		);
		await Promise.all(requests);
	}

	async end(): Promise<void> {
		await this.running().shutDown();
		this.editor = undefined;
	}

	/** Refusals are answers; faults of the server's own are not. */
	private async request(method: string, params: object): Promise<void> {
		try {
			await this.running().connection.sendRequest(method, params);
		} catch (error) {
			const { code } = error as { code?: number };
			// Internal errors, and parameters that it says it cannot read.
			if (code === undefined || code === -32603 || code === -32602) throw error;
		}
	}

	private running(): Editor {
		if (!this.editor) throw new Error("Not started");
		return this.editor;
	}
}

function asFile(uri: string): string {
	return `file://${uri}`;
}

function lineOf({ range: { start, end }, code, message }: Diagnostic): string {
	return `${start.line}:${start.character}-${end.line}:${end.character} ${code}: ${message}`;
}
