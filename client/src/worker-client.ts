/** How the client reaches a language server in a web worker, and answers what that asks of the editor's files. */
import * as vscode from "vscode";
import {
	BrowserMessageReader,
	BrowserMessageWriter,
	LanguageClient,
	type MessageTransports,
} from "vscode-languageclient/browser";
import {
	type EditorFileNames,
	type EditorFileTexts,
	listEditorFiles,
	type ReadEditorFiles,
	readEditorFiles,
	type ToldAtStart,
} from "../../shared/protocol/editor-files.ts";
import { clientOptions } from "./client-options.ts";

/** Of the browser; the types of Node, which the desktop's client is built with, have another. */
declare class Worker {
	constructor(script: string);
	terminate(): void;
}

/** The files that designs are made of: designs, components and stock; and the settings of the checks. */
const designFiles = ["**/*.rod", "**/.storyrod.json"];

/** Larger files are no designs, bytes. */
const largest = 32 * 1024 * 1024;

/** Nobody keeps more designs together. */
const mostFiles = 10_000;

/** The client, not yet started. What both sides log goes to `output`. */
export function createWorkerClient(
	context: vscode.ExtensionContext,
	output: vscode.LogOutputChannel,
): LanguageClient {
	const script = vscode.Uri.joinPath(
		context.extensionUri,
		"dist/server/language-server-worker.js",
	).toString(true);
	let worker: Worker | undefined;
	// Made here, as the library would not know the editor's own kind of worker for one.
	const startWorker = async (): Promise<MessageTransports> => {
		worker?.terminate(); // of the server before a restart
		worker = new Worker(script);
		return {
			reader: new BrowserMessageReader(worker),
			writer: new BrowserMessageWriter(worker),
		};
	};
	context.subscriptions.push({ dispose: () => worker?.terminate() });
	const client = new LanguageClient("storyrod", "Storyrod", startWorker, {
		...clientOptions(output),
		initializationOptions: toldAtStart(context),
	});
	client.onRequest(
		readEditorFiles,
		async ({ uris }: ReadEditorFiles): Promise<EditorFileTexts> => ({
			texts: await Promise.all(uris.map(readText)),
		}),
	);
	client.onRequest(listEditorFiles, async (): Promise<EditorFileNames> => {
		const found = await Promise.all(
			designFiles.map((pattern) =>
				vscode.workspace.findFiles(pattern, undefined, mostFiles),
			),
		);
		return { uris: found.flat().map((uri) => uri.toString()) };
	});
	return client;
}

/** Where the pages of the extension lie: the worker has no place of its own. */
function toldAtStart(context: vscode.ExtensionContext): ToldAtStart {
	const page = vscode.Uri.joinPath(
		context.extensionUri,
		"shared/checks/CHECKS.md",
	);
	return { checksPage: page.toString() };
}

/** `null` for what is no file, too large, or not to be read. */
async function readText(address: string): Promise<string | null> {
	try {
		const uri = vscode.Uri.parse(address, true);
		// Only what designs are made of: a design cannot make the tool show another file.
		if (!/\/(?:[^/]+\.rod|\.storyrod\.json)$/.test(uri.path)) return null;
		const { type, size } = await vscode.workspace.fs.stat(uri);
		if (!(type & vscode.FileType.File) || size > largest) return null;
		const bytes = await vscode.workspace.fs.readFile(uri);
		// A byte order mark is taken away, as editors do.
		return new TextDecoder().decode(bytes);
	} catch {
		return null;
	}
}
