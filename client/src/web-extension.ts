/** Where VS Code in a browser enters the extension: the language server is a web worker and the editor its disk. */
import type * as vscode from "vscode";
import { createOutput, startExtension } from "./activation.ts";
import { createWorkerClient } from "./worker-client.ts";

let stop: (() => Promise<void>) | undefined;

/** Called by VS Code when the first design is opened. Rejects, and so shows the reason, if the server cannot start. */
export async function activate(
	context: vscode.ExtensionContext,
): Promise<void> {
	const output = createOutput();
	const client = createWorkerClient(context, output);
	stop = () => client.stop();
	await startExtension(context, client, output);
}

/** Called by VS Code before it ends. */
export async function deactivate(): Promise<void> {
	await stop?.();
	stop = undefined;
}
