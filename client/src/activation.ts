/** What the extension does once its client is made, on a desktop and in a browser alike. */
import * as vscode from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import { announceCommands, registerLists } from "./lists.ts";

/** Rejects, and so lets VS Code show the reason, if the server cannot start. */
export async function startExtension(
	context: vscode.ExtensionContext,
	client: BaseLanguageClient,
	output: vscode.LogOutputChannel,
): Promise<void> {
	context.subscriptions.push(
		output,
		vscode.commands.registerCommand("storyrod.showOutput", () => output.show()),
		vscode.commands.registerCommand("storyrod.restartServer", () =>
			restart(client, output),
		),
		registerLists(client),
	);
	announceCommands(client);
	await client.start();
}

export function createOutput(): vscode.LogOutputChannel {
	return vscode.window.createOutputChannel("Storyrod", { log: true });
}

async function restart(
	client: BaseLanguageClient,
	output: vscode.LogOutputChannel,
): Promise<void> {
	try {
		await client.stop();
		await client.start();
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
