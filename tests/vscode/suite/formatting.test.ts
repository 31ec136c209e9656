/** Formatting sets the layout and nothing else. */
import assert from "node:assert/strict";
import * as vscode from "vscode";
import * as bench from "../record-bench.ts";
import { closeAll, insert, openDesign, place } from "./editing.ts";

/** Every comment of a text, in order, as the maker wrote it. */
function comments(text: string): string[] {
	return [...text.matchAll(/\/\/.*$/gm)].map(([comment]) => comment.trimEnd());
}

suite("Formatting", () => {
	teardown(closeAll);

	test("keeps every comment, mends the layout, and changes nothing the second time", async () => {
		const editor = await openDesign(bench.file);
		const { document } = editor;
		await vscode.commands.executeCommand("editor.action.formatDocument");
		const tidy = document.getText();
		await insert(editor, place(document, "given width<|>"), "      ");
		const untidy = document.getText();
		await vscode.commands.executeCommand("editor.action.formatDocument");
		assert.notEqual(document.getText(), untidy);
		assert.equal(document.getText(), tidy);
		assert.ok(comments(tidy).length > 3, "the design has comments");
		assert.deepEqual(comments(tidy), comments(untidy));
		const { version } = document;
		await vscode.commands.executeCommand("editor.action.formatDocument");
		assert.equal(document.version, version);
	});
});
