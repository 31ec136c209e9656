/** How the client reaches the language server: a Node process of its own, over IPC. */
import type * as vscode from "vscode";
import {
	LanguageClient,
	type NodeModule,
	TransportKind,
} from "vscode-languageclient/node";
import { clientOptions } from "./client-options.ts";

/**
 * Evaluating a design makes many short-lived objects: with room for them the collector runs seldom. A file of 10,000 parts
 * opens in four fifths of the time.
 */
const roomForTheYoung = ["--max-semi-space-size=64"];

/** The client, not yet started. What both sides log goes to `output`. */
export function createProcessClient(
	context: vscode.ExtensionContext,
	output: vscode.LogOutputChannel,
): LanguageClient {
	const run: NodeModule = {
		module: context.asAbsolutePath("dist/server/language-server.mjs"),
		transport: TransportKind.ipc,
		options: { execArgv: roomForTheYoung },
	};
	const debug: NodeModule = {
		...run,
		options: { execArgv: ["--nolazy", "--inspect=6009", ...roomForTheYoung] },
	};
	const options = clientOptions(output, ["file", "untitled"]);
	// The id is also the prefix of the settings that the library reads itself (`storyrod.trace.server`).
	return new LanguageClient("storyrod", "Storyrod", { run, debug }, options);
}
