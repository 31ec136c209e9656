// Entry of the language server as a web worker: what an editor in a browser starts.

import {
	BrowserMessageReader,
	BrowserMessageWriter,
	createConnection,
} from "vscode-languageserver/browser";
import {
	type EditorFileNames,
	type EditorFileTexts,
	listEditorFiles,
	readEditorFiles,
} from "../../shared/protocol/editor-files.ts";
import { start } from "../core/start.ts";
import { EditorFiles } from "./editor-files.ts";

/** The worker itself is the port to the editor. */
type Port = ConstructorParameters<typeof BrowserMessageReader>[0];
const port = globalThis as unknown as Port;

const connection = createConnection(
	new BrowserMessageReader(port),
	new BrowserMessageWriter(port),
);
const editor = {
	readFiles: async (uris: readonly string[]) => {
		const { texts } = await connection.sendRequest<EditorFileTexts>(
			readEditorFiles,
			{ uris },
		);
		return texts;
	},
	listFiles: async () => {
		const { uris } =
			await connection.sendRequest<EditorFileNames>(listEditorFiles);
		return uris;
	},
};

start(connection, new EditorFiles(editor));
