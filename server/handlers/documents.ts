// Takes in what the client tells about documents, files and folders.

import {
	type Connection,
	DidChangeWorkspaceFoldersNotification,
} from "vscode-languageserver";
import type { Context } from "../core/context.ts";
import { areChanges } from "../core/params.ts";

export function takeDocuments(
	connection: Connection,
	{ session, guard }: Context,
): void {
	const take = (what: string, work: () => void): void =>
		guard(what, undefined, work);
	connection.onDidOpenTextDocument(({ textDocument }) =>
		take("didOpen", () => {
			const { uri, version, text } = textDocument;
			if (typeof text !== "string") throw new Error("`text` is no text");
			session.didOpen(uri, version, text);
		}),
	);
	connection.onDidChangeTextDocument(({ textDocument, contentChanges }) =>
		take("didChange", () => {
			if (!areChanges(contentChanges))
				throw new Error("`contentChanges` are no changes");
			session.didChange(textDocument.uri, contentChanges, textDocument.version);
		}),
	);
	// What is on disk may be seen now, also where nobody watches it.
	connection.onDidSaveTextDocument(() =>
		take("didSave", () => {
			session.filesMoved();
			session.refresh();
		}),
	);
	connection.onDidCloseTextDocument(({ textDocument }) =>
		take("didClose", () => session.didClose(textDocument.uri)),
	);
	connection.onDidChangeWatchedFiles(({ changes }) =>
		take("didChangeWatchedFiles", () =>
			session.didChangeFiles(changes.map(({ uri }) => uri)),
		),
	);
	connection.onNotification(
		DidChangeWorkspaceFoldersNotification.type,
		({ event: { added, removed } }) =>
			take("didChangeWorkspaceFolders", () => {
				session.workspace.changeFolders(
					added.map(({ uri }) => uri),
					removed.map(({ uri }) => uri),
				);
				session.filesMoved();
				session.refresh();
			}),
	);
}
