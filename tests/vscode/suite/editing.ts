/** What the tests do with documents; places are marked by `<|>` in a piece of the text. */
import assert from "node:assert/strict";
import * as vscode from "vscode";

/** Opens a file of the folder's top level in the editor, at its saved state. */
export async function openDesign(name: string): Promise<vscode.TextEditor> {
	const folder = vscode.workspace.workspaceFolders?.[0];
	assert.ok(folder, "a folder is open");
	return vscode.window.showTextDocument(vscode.Uri.joinPath(folder.uri, name));
}

/** Opens a text that is no file. */
export async function openText(content: string): Promise<vscode.TextEditor> {
	const document = await vscode.workspace.openTextDocument({
		language: "storyrod",
		content,
	});
	return vscode.window.showTextDocument(document);
}

/** Drops what was changed and closes all editors. */
export async function closeAll(): Promise<void> {
	for (const _ of vscode.window.tabGroups.all.flatMap(({ tabs }) => tabs))
		await vscode.commands.executeCommand(
			"workbench.action.revertAndCloseActiveEditor",
		);
}

/** The place that `<|>` marks in a piece of the text, which must occur exactly once. */
export function place(
	document: vscode.TextDocument,
	marked: string,
): vscode.Position {
	const [before, after, ...more] = marked.split("<|>");
	assert.ok(
		before !== undefined && after !== undefined && more.length === 0,
		`one <|> in ${marked}`,
	);
	const text = document.getText();
	const at = text.indexOf(before + after);
	assert.notEqual(at, -1, `no \`${before + after}\` in ${document.fileName}`);
	assert.equal(
		text.indexOf(before + after, at + 1),
		-1,
		`\`${before + after}\` occurs once in ${document.fileName}`,
	);
	return document.positionAt(at + before.length);
}

export async function insert(
	editor: vscode.TextEditor,
	at: vscode.Position,
	text: string,
): Promise<void> {
	assert.ok(await editor.edit((edit) => edit.insert(at, text)));
}

/** Waits until `find` gives something, and gives it. Rejects after `limit` milliseconds, telling what was there instead. */
export async function until<Found>(
	what: string,
	find: () => PromiseLike<Found | undefined> | Found | undefined,
	limit: number,
	instead: () => string = () => "",
): Promise<Found> {
	const end = performance.now() + limit;
	for (;;) {
		const found = await find();
		if (found !== undefined) return found;
		if (performance.now() > end)
			assert.fail(`${what} within ${limit} ms; instead: ${instead()}`);
		await new Promise((resolve) => setTimeout(resolve, 10));
	}
}

/** Waits for the document to have a diagnostic with this code, and gives it. */
export function diagnosed(
	document: vscode.TextDocument,
	code: string,
	limit: number,
): Promise<vscode.Diagnostic> {
	return until(
		`\`${code}\` is shown`,
		() => diagnosticsOf(document).find((each) => codeOf(each) === code),
		limit,
		() => told(document),
	);
}

/** Waits for the document to have no diagnostic with this code. */
export async function cured(
	document: vscode.TextDocument,
	code: string,
	limit: number,
): Promise<void> {
	await until(
		`\`${code}\` is gone`,
		() =>
			diagnosticsOf(document).some((each) => codeOf(each) === code)
				? undefined
				: true,
		limit,
		() => told(document),
	);
}

export function diagnosticsOf(
	document: vscode.TextDocument,
): vscode.Diagnostic[] {
	return vscode.languages.getDiagnostics(document.uri);
}

/** A check's id, whether or not it carries a link to its page. */
export function codeOf({ code }: vscode.Diagnostic): string {
	return String(typeof code === "object" ? code.value : code);
}

function told(document: vscode.TextDocument): string {
	return diagnosticsOf(document)
		.map((each) => `${codeOf(each)}: ${each.message}`)
		.join("; ");
}

/** The text of all hovers at a place, once the server gives one. */
export function hoverAt(
	document: vscode.TextDocument,
	at: vscode.Position,
): Promise<string> {
	return until(
		"a hover",
		async () => {
			const hovers = await vscode.commands.executeCommand<vscode.Hover[]>(
				"vscode.executeHoverProvider",
				document.uri,
				at,
			);
			const text = hovers
				.flatMap(({ contents }) => contents)
				.map((each) => (typeof each === "string" ? each : each.value))
				.join("\n");
			return text === "" ? undefined : text;
		},
		20_000,
	);
}
