// An editor that asks for diagnostics: what it gets, when it is asked to ask again, and that nothing comes unasked.

import { afterEach, describe, expect, test } from "vitest";
import {
	CancellationTokenSource,
	type DocumentDiagnosticReport,
	type DocumentSymbol,
	LSPErrorCodes,
	ResponseError,
	type WorkspaceDiagnosticReport,
} from "vscode-languageserver/node";
import { Editor, pullingClient } from "../harness/editor.ts";

const stock = `sheet ply {
  species "birch plywood"
  size 96 x 48
  variant half { sold-as 1/2; thick 15/32; thick 1/2 }
}
`;
const shelf = (thick: string): string => `use ply from "./stock.rod"
piece shelf {
  part board { of ply.${thick}; size 12 x 6 }
}
`;
const a = "file:///shop/a.rod";
const b = "file:///shop/b.rod";
const stockUri = "file:///shop/stock.rod";

let editor: Editor;

afterEach(() => editor.stop());

async function started(
	files: Readonly<Record<string, string>> = {
		[a]: shelf("haf"),
		[b]: shelf("half"),
		[stockUri]: stock,
	},
): Promise<void> {
	editor = await Editor.start(
		new Map(Object.entries(files)),
		pullingClient,
		{},
		["file:///shop"],
	);
}

const pull = (
	uri: string,
	previousResultId?: string,
): Promise<DocumentDiagnosticReport> =>
	editor.connection.sendRequest("textDocument/diagnostic", {
		textDocument: { uri },
		previousResultId,
	});

const codes = (report: DocumentDiagnosticReport | undefined): unknown =>
	report?.kind === "full" ? report.items.map(({ code }) => code) : report?.kind;

describe("a document", () => {
	test("is told once, then that nothing changed, then what changed", async () => {
		await started();
		await editor.open(a, shelf("haf"));
		const first = await pull(a);
		expect(codes(first)).toEqual(["unknown-name"]);
		const again = await pull(a, first.resultId);
		expect(codes(again)).toBe("unchanged");
		expect(again.resultId).toBe(first.resultId);
		await editor.edit(a, "haf", "half");
		const cured = await pull(a, first.resultId);
		expect(codes(cured)).toEqual([]);
		await editor.edit(a, "half", "haf");
		// The same findings have the same name, whatever was in between.
		expect(codes(await pull(a, first.resultId))).toBe("unchanged");
	});

	test("brings along what there is to tell about a used file that is not open, and takes it back", async () => {
		await started();
		await editor.open(b, shelf("half"));
		const { relatedDocuments } = await pull(b);
		expect(Object.keys(relatedDocuments ?? {})).toEqual([stockUri]);
		expect(codes(relatedDocuments?.[stockUri])).toEqual(["said-twice"]);
		await editor.changeDisk({ [stockUri]: stock.replace("; thick 1/2", "") });
		await editor.settled();
		expect(editor.refreshes).toBe(1);
		const later = await pull(b);
		expect(codes(later.relatedDocuments?.[stockUri])).toEqual([]);
		expect((await pull(b)).relatedDocuments).toBeUndefined();
		// Once it is open it is asked for itself.
		await editor.open(stockUri, stock);
		expect((await pull(b)).relatedDocuments).toBeUndefined();
		expect(codes(await pull(stockUri))).toEqual(["said-twice"]);
	});

	test("nothing comes unasked", async () => {
		await started();
		await editor.open(a, shelf("haf"));
		await editor.edit(a, "12 x 6", "13 x 6");
		await editor.settled();
		await pull(a);
		expect(editor.published).toEqual([]);
	});

	test("of requests that edits have overtaken only the newest is worked out, the others are to be sent again", async () => {
		await started();
		await editor.open(a, shelf("haf"));
		await editor.settled();
		const asked: Promise<unknown>[] = [];
		for (let width = 0; width < 20; width++) {
			const whole = [{ text: shelf(width === 19 ? "half" : "haf") }];
			void editor.change(a, whole);
			asked.push(pull(a).catch((error: unknown) => error));
		}
		const answers = await Promise.all(asked);
		const overtaken = answers.filter((one) => one instanceof ResponseError);
		expect(overtaken.length).toBeGreaterThan(10);
		for (const { code, data } of overtaken) {
			expect(code).toBe(LSPErrorCodes.ServerCancelled);
			expect(data).toEqual({ retriggerRequest: true });
		}
		expect(codes(answers.at(-1) as DocumentDiagnosticReport)).toEqual([]);
	});
});

describe("the workspace", () => {
	const pullAll = (
		previousResultIds: { uri: string; value: string }[] = [],
		more: object = {},
	): Promise<WorkspaceDiagnosticReport> =>
		editor.connection.sendRequest("workspace/diagnostic", {
			previousResultIds,
			...more,
		});
	const table = ({ items }: WorkspaceDiagnosticReport): object =>
		Object.fromEntries(
			items.map((item) => [
				item.uri,
				item.kind === "full" ? item.items.map(({ code }) => code) : item.kind,
			]),
		);

	test("is told with designs that nobody has open, and what is gone is taken back", async () => {
		await started();
		await editor.settled();
		const first = await pullAll();
		expect(table(first)).toEqual({
			[a]: ["unknown-name"],
			[b]: [],
			[stockUri]: ["said-twice"],
		});
		const previous = first.items.map(({ uri, resultId }) => ({
			uri,
			value: resultId ?? "",
		}));
		expect(table(await pullAll(previous))).toEqual({
			[a]: "unchanged",
			[b]: "unchanged",
			[stockUri]: "unchanged",
		});
		await editor.changeDisk({ [a]: null, [stockUri]: null });
		await editor.settled();
		expect(editor.refreshes).toBe(1);
		expect(table(await pullAll(previous))).toEqual({
			[a]: [],
			[b]: ["no-file"],
			[stockUri]: [],
		});
	});

	test("comes in parts with its progress, file by file", async () => {
		await started();
		const parts: unknown[] = [];
		const steps: string[] = [];
		editor.connection.onNotification(
			"$/progress",
			({
				token,
				value,
			}: {
				token: string;
				value: WorkspaceDiagnosticReport & { kind: string };
			}) => {
				if (token === "parts") parts.push(table(value));
				else steps.push(value.kind);
			},
		);
		const last = await pullAll([], {
			partialResultToken: "parts",
			workDoneToken: "work",
		});
		expect(last.items).toEqual([]);
		expect(parts).toEqual([
			{ [a]: ["unknown-name"] },
			{ [b]: [] },
			{ [stockUri]: ["said-twice"] },
		]);
		expect(steps[0]).toBe("begin");
		expect(steps.at(-1)).toBe("end");
		expect(steps.filter((kind) => kind === "report")).toHaveLength(3);
	});

	test("stops when it is cancelled on the way, and lets edits and questions through", async () => {
		const many = Object.fromEntries(
			Array.from({ length: 40 }, (_, index) => [
				`file:///shop/many-${index}.rod`,
				shelf("half"),
			]),
		);
		await started({ ...many, [stockUri]: stock });
		await editor.open(a, shelf("haf"));
		const source = new CancellationTokenSource();
		let parts = 0;
		let answeredAt = -1;
		editor.connection.onNotification("$/progress", () => {
			parts++;
			if (parts === 3)
				void editor.connection
					.sendRequest<DocumentSymbol[]>("textDocument/documentSymbol", {
						textDocument: { uri: a },
					})
					.then(() => {
						answeredAt = parts;
						source.cancel();
					});
		});
		const asked = editor.connection.sendRequest(
			"workspace/diagnostic",
			{ previousResultIds: [], workDoneToken: "work" },
			source.token,
		);
		await expect(asked).rejects.toMatchObject({
			code: LSPErrorCodes.RequestCancelled,
		});
		expect(answeredAt).toBeGreaterThan(0);
		expect(answeredAt).toBeLessThan(40);
		expect(parts).toBeLessThan(40);
	});
});

test("a design is asked for again when a file that it uses is edited in another tab", async () => {
	await started();
	await editor.open(b, shelf("half"));
	await editor.open(stockUri, stock);
	expect(codes(await pull(b))).toEqual([]);
	await pull(stockUri);
	await editor.edit(stockUri, "variant half", "variant whole");
	await editor.settled();
	expect(editor.refreshes).toBe(1);
	expect(codes(await pull(b))).toEqual(["unknown-name"]);
	await pull(stockUri);
	// What changes nothing there asks for nothing.
	await editor.edit(stockUri, "96 x 48", "96 x 49");
	await editor.settled();
	expect(editor.refreshes).toBe(1);
});
