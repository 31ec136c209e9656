/** A recorded session in the editor: a design is typed key by key, and then every kind of question is asked of it. */
import assert from "node:assert/strict";
import * as vscode from "vscode";
import { begun, ended, steps } from "../recorded-session.ts";
import {
	closeAll,
	codeOf,
	diagnosticsOf,
	hoverAt,
	place,
	until,
} from "./editing.ts";

suite("A recorded session", () => {
	let editor: vscode.TextEditor;
	const uri = (): vscode.Uri => editor.document.uri;
	const ask = <Found>(command: string, ...more: unknown[]): Thenable<Found> =>
		vscode.commands.executeCommand<Found>(`vscode.${command}`, uri(), ...more);
	const at = (marked: string): vscode.Position =>
		place(editor.document, marked);
	const errors = (): string[] =>
		diagnosticsOf(editor.document)
			.filter(({ severity }) => severity === vscode.DiagnosticSeverity.Error)
			.map(codeOf);

	suiteSetup(async () => {
		const folder = vscode.workspace.workspaceFolders?.[0];
		assert.ok(folder);
		const file = vscode.Uri.joinPath(folder.uri, "evening.rod");
		await vscode.workspace.fs.writeFile(file, new TextEncoder().encode(begun));
		editor = await vscode.window.showTextDocument(file);
	});

	suiteTeardown(async () => {
		const file = uri();
		await closeAll();
		await vscode.workspace.fs.delete(file);
	});

	async function keys(text: string, from: vscode.Position): Promise<void> {
		const start = editor.document.offsetAt(from);
		for (const [index, key] of [...text].entries())
			assert.ok(
				await editor.edit((edit) =>
					edit.insert(editor.document.positionAt(start + index), key),
				),
			);
	}

	test("is typed key by key, slips and all", async () => {
		for (const step of steps) {
			if ("replace" in step) {
				const start = at(`<|>${step.replace}`);
				const range = new vscode.Range(
					start,
					start.translate(0, step.replace.length),
				);
				assert.ok(await editor.edit((edit) => edit.replace(range, step.by)));
				continue;
			}
			const from = at(`${step.after}<|>`);
			if ("type" in step) {
				await keys(step.type, from);
				continue;
			}
			await keys(step.slip, from);
			await until(
				"the slip is told",
				() => (diagnosticsOf(editor.document).length > 0 ? true : undefined),
				10_000,
			);
			const start = editor.document.offsetAt(from);
			for (let left = step.slip.length; left > 0; left--)
				assert.ok(
					await editor.edit((edit) =>
						edit.delete(
							new vscode.Range(
								editor.document.positionAt(start + left - 1),
								editor.document.positionAt(start + left),
							),
						),
					),
				);
		}
		assert.equal(editor.document.getText(), ended);
		await until(
			"nothing is wrong with what was typed",
			() => (errors().length === 0 ? true : undefined),
			10_000,
			() => errors().join(),
		);
	});

	test("hover, completion and the form of a line", async () => {
		assert.match(await hoverAt(editor.document, at("piece ra<|>ck")), /A rack/);
		const offered = await ask<vscode.CompletionList>(
			"executeCompletionItemProvider",
			at("panels top, bottom, left, right of birch.<|>eighteen"),
		);
		assert.ok(
			offered.items.some(({ label }) =>
				String(typeof label === "string" ? label : label.label).includes(
					"twelve",
				),
			),
		);
		const help = await ask<vscode.SignatureHelp | undefined>(
			"executeSignatureHelpProvider",
			at("back of <|>birch.six"),
		);
		assert.match(help?.signatures[0]?.label ?? "", /back/);
	});

	test("colours, hints and the lines over a piece", async () => {
		const legend = await ask<vscode.SemanticTokensLegend>(
			"provideDocumentSemanticTokensLegend",
		);
		const tokens = await ask<vscode.SemanticTokens>(
			"provideDocumentSemanticTokens",
		);
		assert.ok(legend.tokenTypes.includes("keyword"));
		assert.ok(tokens.data.length > 5 * 40, `${tokens.data.length / 5} tokens`);
		const whole = new vscode.Range(0, 0, editor.document.lineCount, 0);
		const hints = await ask<vscode.InlayHint[]>(
			"executeInlayHintProvider",
			whole,
		);
		assert.ok(hints.length > 0, "hints");
		const lenses = await ask<vscode.CodeLens[]>("executeCodeLensProvider", 10);
		assert.match(
			lenses.map(({ command }) => command?.title).join("; "),
			/parts/,
		);
	});

	test("ways: definition, references, highlights, symbols, links, what hangs on what", async () => {
		const definition = await ask<(vscode.Location | vscode.LocationLink)[]>(
			"executeDefinitionProvider",
			at("outside wi<|>dth"),
		);
		assert.equal(definition.length, 1);
		for (const command of [
			"executeReferenceProvider",
			"executeDocumentHighlights",
		])
			assert.equal(
				(await ask<unknown[]>(command, at("given wi<|>dth"))).length,
				2,
				command,
			);
		const outline = await ask<vscode.DocumentSymbol[]>(
			"executeDocumentSymbolProvider",
		);
		assert.deepEqual(
			outline.map(({ name }) => name),
			["birch, fixings, yellow-glue", "rack"],
		);
		const symbols = await vscode.commands.executeCommand<
			vscode.SymbolInformation[]
		>("vscode.executeWorkspaceSymbolProvider", "rack");
		assert.ok(symbols.some(({ name }) => name.includes("rack")));
		const links = await ask<vscode.DocumentLink[]>("executeLinkProvider");
		assert.match(String(links[0]?.target), /stock\.rod/);
		const [item] = await ask<vscode.CallHierarchyItem[]>(
			"prepareCallHierarchy",
			at("given wi<|>dth"),
		);
		assert.ok(item, "a size has what hangs on it");
		for (const [command, marked] of [
			["executeTypeDefinitionProvider", "shelf o<|>ne"],
			["executeFoldingRangeProvider", undefined],
		] as const)
			assert.ok(
				(await ask<unknown[]>(command, ...(marked ? [at(marked)] : [])))
					.length > 0,
				command,
			);
		const [selection] = await ask<vscode.SelectionRange[]>(
			"executeSelectionRangeProvider",
			[at("outside wi<|>dth")],
		);
		assert.ok(selection?.parent?.parent, "wider and wider");
	});

	test("a new name, offers to change, and the layout of the text", async () => {
		const edit = await ask<vscode.WorkspaceEdit>(
			"executeDocumentRenameProvider",
			at("given wi<|>dth"),
			"breadth",
		);
		assert.equal(edit.get(uri()).length, 2);
		const actions = await ask<vscode.CodeAction[]>(
			"executeCodeActionProvider",
			new vscode.Range(at("given wi<|>dth"), at("given wi<|>dth")),
		);
		assert.ok(actions.length > 0, "something can be changed");
		const options = { insertSpaces: true, tabSize: 2 };
		const whole = await ask<vscode.TextEdit[] | undefined>(
			"executeFormatDocumentProvider",
			options,
		);
		const part = await ask<vscode.TextEdit[] | undefined>(
			"executeFormatRangeProvider",
			new vscode.Range(0, 0, editor.document.lineCount, 0),
			options,
		);
		const laidOut = (edits: readonly vscode.TextEdit[] | undefined): string =>
			[...(edits ?? [])]
				.sort((a, b) => b.range.start.compareTo(a.range.start))
				.reduce((text, { range, newText }) => {
					const start = editor.document.offsetAt(range.start);
					const end = editor.document.offsetAt(range.end);
					return text.slice(0, start) + newText + text.slice(end);
				}, editor.document.getText());
		assert.equal(laidOut(part), laidOut(whole));
	});

	test("its cut list and buying list open beside it", async () => {
		for (const [command, title] of [
			["storyrod.showCutList", "cut list"],
			["storyrod.showBuyingList", "buying list"],
		] as const) {
			await vscode.window.showTextDocument(editor.document, 1);
			await vscode.commands.executeCommand(command, uri().toString(), "rack");
			await until(
				`a tab with the ${title}`,
				() =>
					vscode.window.tabGroups.all
						.flatMap(({ tabs }) => tabs)
						.find(({ label }) => label.includes(title)),
				10_000,
				() =>
					vscode.window.tabGroups.all
						.flatMap(({ tabs }) => tabs.map(({ label }) => label))
						.join(),
			);
		}
	});

	test("undone to where it began, it tells nothing that is not true", async () => {
		await vscode.window.showTextDocument(editor.document, 1);
		for (
			let tries = 0;
			tries < 2000 && editor.document.getText() !== begun;
			tries++
		)
			await vscode.commands.executeCommand("undo");
		assert.equal(editor.document.getText(), begun);
		await until(
			"nothing is told",
			() => (errors().length === 0 ? true : undefined),
			10_000,
			() => errors().join(),
		);
	});
});
