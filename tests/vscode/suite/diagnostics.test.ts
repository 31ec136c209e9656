/** Warnings come and go while typing. */
import assert from "node:assert/strict";
import * as vscode from "vscode";
import * as bench from "../record-bench.ts";
import {
	closeAll,
	codeOf,
	cured,
	diagnosed,
	diagnosticsOf,
	hoverAt,
	insert,
	openDesign,
	openText,
	place,
} from "./editing.ts";

/** How soon a warning must follow the edit, in milliseconds. */
const soon = 1000;

suite("Diagnostics", () => {
	teardown(closeAll);

	test("a shipped design has no error", async () => {
		const { document } = await openDesign(bench.file);
		await hoverAt(document, place(document, "piece record-<|>bench")); // the server has read it
		const errors = diagnosticsOf(document).filter(
			({ severity }) => severity === vscode.DiagnosticSeverity.Error,
		);
		assert.deepEqual(errors.map(codeOf), []);
	});

	test("a dado made too wide is told at its place within a second, and undo cures it", async () => {
		const editor = await openDesign(bench.file);
		const { document } = editor;
		await hoverAt(document, place(document, "piece record-<|>bench"));
		await cured(document, "fit-gap", soon);

		const at = place(document, `${bench.dadoLine}<|>`);
		await insert(editor, at, bench.tooWide);
		const found = await diagnosed(document, "fit-gap", soon);
		assert.ok(
			found.range.intersection(document.lineAt(at).range),
			`told in line ${found.range.start.line + 1}, edited in line ${at.line + 1}`,
		);
		assert.ok(!found.range.isEmpty, "something is underlined");
		assert.ok(
			typeof found.code === "object" && found.code.target.toString(),
			"the check's page is linked",
		);

		await vscode.commands.executeCommand("undo");
		await cured(document, "fit-gap", soon);
	});

	test("a syntax error costs its statement, not the rest", async () => {
		const editor = await openDesign(bench.file);
		const { document } = editor;
		await insert(
			editor,
			place(document, "piece record-bench {<|>"),
			"\n  given = = 3\n",
		);
		const marked = place(document, "given = <|>= 3");
		await hoverAt(document, place(document, "piece record-<|>bench")).then(
			(text) => assert.match(text, /left/),
		);
		assert.ok(
			diagnosticsOf(document).some(
				({ range }) => range.start.line === marked.line,
			),
			"the bad line is told",
		);
	});

	test("an untitled design is checked too", async () => {
		const { document } = await openText(
			"piece a {\n  given width = 2 + 30 deg\n}\n",
		);
		const end = Date.now() + 20_000;
		while (diagnosticsOf(document).length === 0 && Date.now() < end)
			await new Promise((resolve) => setTimeout(resolve, 20));
		const lines = diagnosticsOf(document).map(({ range }) => range.start.line);
		assert.ok(lines.includes(1), `a length plus an angle is told: ${lines}`);
	});
});
