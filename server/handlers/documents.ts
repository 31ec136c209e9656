// Takes in what the client tells about documents and files.

import type { Connection } from "vscode-languageserver";
import type { Context } from "../core/context.ts";

export function takeDocuments(
	connection: Connection,
	{ session, guard }: Context,
): void {
	const take = (what: string, work: () => void): void =>
		guard(what, undefined, work);
	connection.onDidOpenTextDocument(({ textDocument }) =>
		take("didOpen", () => {
			const { uri, version, text } = textDocument;
			session.didOpen(uri, version, text);
		}),
	);
	connection.onDidChangeTextDocument(({ textDocument, contentChanges }) =>
		take("didChange", () =>
			session.didChange(textDocument.uri, contentChanges, textDocument.version),
		),
	);
	connection.onDidCloseTextDocument(({ textDocument }) =>
		take("didClose", () => session.didClose(textDocument.uri)),
	);
	connection.onDidChangeWatchedFiles(({ changes }) =>
		take("didChangeWatchedFiles", () =>
			session.didChangeFiles(changes.map(({ uri }) => uri)),
		),
	);
}
