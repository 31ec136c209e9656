// Edits in several files as the protocol has them: with versions for clients that look at them.

import type {
	TextDocumentEdit,
	TextEdit,
	WorkspaceEdit,
} from "vscode-languageserver";
import type { Edit } from "../../grammar/index.ts";
import type { Context } from "../core/context.ts";
import { toTextEdit } from "./to-lsp.ts";

/** Undefined if one of the files is gone: all edits or none. */
export function toWorkspaceEdit(
	{ session, client }: Context,
	edits: ReadonlyMap<string, readonly Edit[]>,
): WorkspaceEdit | undefined {
	const files: (TextDocumentEdit & { readonly edits: TextEdit[] })[] = [];
	for (const [uri, list] of edits) {
		const source = session.source(uri);
		if (!source) return undefined;
		files.push({
			textDocument: {
				uri: session.clientUri(uri),
				version: session.versionOf(uri) ?? null,
			},
			edits: list.map((edit) => toTextEdit(source, edit)),
		});
	}
	if (client.documentChanges) return { documentChanges: files };
	return {
		changes: Object.fromEntries(
			files.map(({ textDocument, edits: list }) => [textDocument.uri, list]),
		),
	};
}
