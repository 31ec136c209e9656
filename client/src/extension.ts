/** Where VS Code enters the extension: starts the language server and offers the commands. */
import * as vscode from "vscode";
import type { LanguageClient } from "vscode-languageclient/node";
import { createClient } from "./language-client.ts";

let running: LanguageClient | undefined;

/** Called by VS Code when the first design is opened. Rejects, and so shows the reason, if the server cannot start. */
export async function activate(
	context: vscode.ExtensionContext,
): Promise<void> {
	const output = vscode.window.createOutputChannel("Storyrod", { log: true });
	const client = createClient(context, output);
	running = client;
	context.subscriptions.push(
		output,
		vscode.commands.registerCommand("storyrod.showOutput", () => output.show()),
		vscode.commands.registerCommand("storyrod.restartServer", () =>
			restart(client, output),
		),
	);
	await client.start();
}

/** Called by VS Code before it ends; the server is given the time to end by itself. */
export async function deactivate(): Promise<void> {
	await running?.stop();
	running = undefined;
}

async function restart(
	client: LanguageClient,
	output: vscode.LogOutputChannel,
): Promise<void> {
	try {
		await client.restart();
		vscode.window.setStatusBarMessage(
			vscode.l10n.t("Storyrod: language server restarted"),
			5000,
		);
	} catch (error) {
		output.error(error instanceof Error ? error : String(error));
		const show = vscode.l10n.t("Show Output");
		const chosen = await vscode.window.showErrorMessage(
			vscode.l10n.t("The Storyrod language server did not start again"),
			show,
		);
		if (chosen === show) output.show();
	}
}
