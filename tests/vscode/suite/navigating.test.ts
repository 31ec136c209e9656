/** Ways through designs in the editor: references, new names, symbols, links, what hangs on what, files that move. */
import assert from "node:assert/strict";
import { basename } from "node:path";
import * as vscode from "vscode";
import * as bench from "../record-bench.ts";
import { closeAll, openDesign, place, until } from "./editing.ts";

suite("Finding ways through designs", () => {
	teardown(closeAll);

	const ask = <Found>(
		command: string,
		document: vscode.TextDocument,
		marked: string,
		...more: unknown[]
	): Thenable<Found> =>
		vscode.commands.executeCommand<Found>(
			`vscode.${command}`,
			document.uri,
			place(document, marked),
			...more,
		);
	const filesOf = (uris: readonly vscode.Uri[]): string[] =>
		[...new Set(uris.map(({ fsPath }) => basename(fsPath)))].sort();

	test("a material is found in designs that are not open", async () => {
		const { document } = await openDesign("stock.rod");
		const found = await until(
			"references",
			async () => {
				const places = await ask<vscode.Location[]>(
					"executeReferenceProvider",
					document,
					"sheet <|>birch",
				);
				return places.length > 0 ? places : undefined;
			},
			20_000,
		);
		const files = filesOf(found.map(({ uri }) => uri));
		assert.ok(files.includes("record-bench.rod"), files.join());
		assert.ok(files.includes("workshop-odds.rod"), files.join());
	});

	test("a size is highlighted where it is given and where it is used", async () => {
		const { document } = await openDesign(bench.file);
		const found = await ask<vscode.DocumentHighlight[]>(
			"executeDocumentHighlights",
			document,
			"given wi<|>dth",
		);
		assert.deepEqual(
			found.map(({ range }) => document.getText(range)),
			["width", "width"],
		);
		assert.deepEqual(
			found.map(({ kind }) => kind),
			[vscode.DocumentHighlightKind.Write, vscode.DocumentHighlightKind.Read],
		);
	});

	test("a new name in all files; one that is taken is refused with its place", async () => {
		const { document } = await openDesign(bench.file);
		const edit = await ask<vscode.WorkspaceEdit>(
			"executeDocumentRenameProvider",
			document,
			"divider middle of p<|>ly.three-quarter",
			"panel-stock",
		);
		const files = filesOf(edit.entries().map(([uri]) => uri));
		assert.ok(files.includes("stock.rod"), files.join());
		assert.ok(files.includes("components.rod"), files.join());
		assert.ok(await vscode.workspace.applyEdit(edit));
		assert.match(document.getText(), /divider middle of panel-stock\./);
		const back = await ask<vscode.WorkspaceEdit>(
			"executeDocumentRenameProvider",
			document,
			"divider middle of p<|>anel-stock.three-quarter",
			"ply",
		);
		assert.equal(back.size, edit.size);
		assert.ok(await vscode.workspace.applyEdit(back));
		await vscode.workspace.saveAll();
		const again = await openDesign(bench.file);
		await assert.rejects(
			async () =>
				await ask(
					"executeDocumentRenameProvider",
					again.document,
					"trim l<|>ip",
					"case",
				),
			/`case` is already the box at line \d+ of record-bench\.rod/,
		);
	});

	test("symbols of the whole folder", async () => {
		await openDesign(bench.file);
		const found = await vscode.commands.executeCommand<
			vscode.SymbolInformation[]
		>("vscode.executeWorkspaceSymbolProvider", "pigeon");
		assert.deepEqual(
			found.map(
				({ name, location }) => `${name} ${basename(location.uri.fsPath)}`,
			),
			["pigeon-holes components.rod"],
		);
	});

	test("paths are links to their files", async () => {
		const { document } = await openDesign(bench.file);
		const links = await vscode.commands.executeCommand<vscode.DocumentLink[]>(
			"vscode.executeLinkProvider",
			document.uri,
		);
		const [link] = links;
		assert.ok(link?.target);
		assert.equal(basename(link.target.fsPath), "stock.rod");
		assert.equal(document.getText(link.range), "./stock.rod");
	});

	test("what depends on a size, and what that depends on", async () => {
		const { document } = await openDesign(bench.file);
		const [width] = await ask<vscode.CallHierarchyItem[]>(
			"prepareCallHierarchy",
			document,
			"given wi<|>dth",
		);
		assert.equal(width?.detail, "given 54");
		const users = await vscode.commands.executeCommand<
			vscode.CallHierarchyIncomingCall[]
		>("vscode.provideIncomingCalls", width);
		assert.deepEqual(
			users.map(({ from }) => from.name),
			["case"],
		);
		const needs = await vscode.commands.executeCommand<
			vscode.CallHierarchyOutgoingCall[]
		>("vscode.provideOutgoingCalls", users[0]?.from);
		const names = needs.map(({ to }) => to.name);
		assert.ok(names.includes("three-quarter"), names.join());
	});

	test("what a thing is made from", async () => {
		const { document } = await openDesign("workshop-odds.rod");
		const [found] = await ask<(vscode.Location | vscode.LocationLink)[]>(
			"executeTypeDefinitionProvider",
			document,
			"make left-<|>end",
		);
		assert.ok(found);
		const uri = "uri" in found ? found.uri : found.targetUri;
		assert.equal(basename(uri.fsPath), "components.rod");
	});

	test("paths follow a file that is moved", async () => {
		const { document } = await openDesign(bench.file);
		const folder = vscode.Uri.joinPath(document.uri, "..");
		const at = (name: string) => vscode.Uri.joinPath(folder, name);
		await vscode.workspace.fs.writeFile(
			at("moving.rod"),
			new TextEncoder().encode("coating wax { kind finish }\n"),
		);
		await vscode.workspace.fs.writeFile(
			at("user.rod"),
			new TextEncoder().encode('use wax from "./moving.rod"\n'),
		);
		const edit = new vscode.WorkspaceEdit();
		edit.renameFile(at("moving.rod"), at("deeper/moved.rod"));
		assert.ok(await vscode.workspace.applyEdit(edit));
		const text = await until(
			"the path follows",
			async () => {
				const user = await vscode.workspace.openTextDocument(at("user.rod"));
				return /deeper/.test(user.getText()) ? user.getText() : undefined;
			},
			20_000,
		);
		assert.equal(text, 'use wax from "./deeper/moved.rod"\n');
	});
});
