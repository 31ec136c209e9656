/** Where VS Code on a desktop or a remote machine enters the extension: the language server is a process. */
import type * as vscode from "vscode";
import { createOutput, startExtension } from "./activation.ts";
import { createProcessClient } from "./process-client.ts";

let stop: (() => Promise<void>) | undefined;

/** Called by VS Code when the first design is opened. Rejects, and so shows the reason, if the server cannot start. */
export async function activate(
	context: vscode.ExtensionContext,
): Promise<void> {
	const output = createOutput();
	const client = createProcessClient(context, output);
	stop = () => client.stop();
	await startExtension(context, client, output);
}

/** Called by VS Code before it ends; the server is given the time to end by itself. */
export async function deactivate(): Promise<void> {
	await stop?.();
	stop = undefined;
}
