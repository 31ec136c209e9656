/** The extension comes alive with the first design and can be restarted. */
import assert from "node:assert/strict";
import * as vscode from "vscode";
import * as bench from "../record-bench.ts";
import { closeAll, hoverAt, openDesign, place } from "./editing.ts";

const id = "storyrod.storyrod";

suite("Activation", () => {
	teardown(closeAll);

	test("opening a .rod file starts the extension", async () => {
		const { document } = await openDesign(bench.file);
		assert.equal(document.languageId, "storyrod");
		const extension = vscode.extensions.getExtension(id);
		assert.ok(extension, `${id} is known`);
		await extension.activate();
		assert.equal(extension.isActive, true);
	});

	test("its commands are there", async () => {
		const commands = await vscode.commands.getCommands(true);
		for (const name of [
			"storyrod.restartServer",
			"storyrod.showOutput",
			"storyrod.showCutList",
			"storyrod.showBuyingList",
		])
			assert.ok(commands.includes(name), name);
	});

	test("a restarted server answers", async () => {
		const { document } = await openDesign(bench.file);
		await vscode.commands.executeCommand("storyrod.restartServer");
		const text = await hoverAt(
			document,
			place(document, "piece record-<|>bench"),
		);
		assert.match(text, /left/);
	});
});
