/** What the editor tells about a design: hovers, outline, folding, definitions, completion. */
import assert from "node:assert/strict";
import { basename } from "node:path";
import * as vscode from "vscode";
import * as bench from "../record-bench.ts";
import {
	closeAll,
	hoverAt,
	insert,
	openDesign,
	place,
	until,
} from "./editing.ts";

suite("Reading a design", () => {
	teardown(closeAll);

	test("the hover on the piece's name shows its cut list", async () => {
		const { document } = await openDesign(bench.file);
		const text = await hoverAt(
			document,
			place(document, "piece record-<|>bench"),
		);
		assert.match(text, /\|.*\|/, "a table");
		for (const part of ["left", "top", "bottom", "middle", "back"])
			assert.match(text, new RegExp(`\\b${part}\\b`), part);
		// Width and height of the case, as given: the sides cap, so they are as long as the case is high.
		assert.match(text, /14 5\/8/);
		assert.match(text, /15 3\/4/);
	});

	test("the hover on a measure shows both systems of units", async () => {
		const { document } = await openDesign(bench.file);
		const text = await hoverAt(
			document,
			place(document, "given depth = 15 <|>3/4"),
		);
		assert.match(text, /400\.05 mm/); // 15.75 x 25.4 = 400.05
		assert.match(text, /15 3\/4/);
	});

	test("the outline names the piece and its case", async () => {
		const { document } = await openDesign(bench.file);
		const symbols = await until(
			"an outline",
			() =>
				vscode.commands.executeCommand<vscode.DocumentSymbol[] | undefined>(
					"vscode.executeDocumentSymbolProvider",
					document.uri,
				),
			20_000,
		);
		const piece = symbols.find(({ name }) => name === "record-bench");
		assert.ok(piece, symbols.map(({ name }) => name).join());
		assert.ok(piece.children.some(({ name }) => name === "case"));
		assert.ok(piece.range.contains(piece.selectionRange));
	});

	test("blocks fold", async () => {
		const { document } = await openDesign(bench.file);
		const ranges = await vscode.commands.executeCommand<vscode.FoldingRange[]>(
			"vscode.executeFoldingRangeProvider",
			document.uri,
		);
		const start = place(document, "piece <|>record-bench").line;
		assert.ok(ranges.some((range) => range.start === start));
	});

	test("the definition of a material is in the stock file", async () => {
		const { document } = await openDesign(bench.file);
		const found = await vscode.commands.executeCommand<
			(vscode.Location | vscode.LocationLink)[]
		>(
			"vscode.executeDefinitionProvider",
			document.uri,
			place(document, "divider middle of ply.three-<|>quarter"),
		);
		const [first] = found;
		assert.ok(first, "a definition");
		const uri = "uri" in first ? first.uri : first.targetUri;
		const range =
			"uri" in first
				? first.range
				: (first.targetSelectionRange ?? first.targetRange);
		assert.equal(basename(uri.fsPath), "stock.rod");
		const stock = await vscode.workspace.openTextDocument(uri);
		assert.equal(stock.getText(range), "three-quarter");
	});

	test("completion offers what may stand in a box, with help", async () => {
		const editor = await openDesign(bench.file);
		const { document } = editor;
		await insert(editor, place(document, "caps left, right<|>"), "\n    ");
		const at = place(document, "caps left, right\n    <|>");
		const list = await vscode.commands.executeCommand<vscode.CompletionList>(
			"vscode.executeCompletionItemProvider",
			document.uri,
			at,
			undefined,
			100,
		);
		const divider = list.items.find(
			({ label }) =>
				(typeof label === "string" ? label : label.label) === "divider",
		);
		assert.ok(divider, "divider is offered");
		assert.ok(divider.documentation ?? divider.detail, "it comes with help");
	});
});
