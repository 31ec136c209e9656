// The change of a refactoring as the protocol has it: with a new file where one is made, and with what is to be confirmed
// where the client asks before it makes a change.

import type {
	AnnotatedTextEdit,
	CreateFile,
	TextDocumentEdit,
	TextEdit,
	WorkspaceEdit,
} from "vscode-languageserver";
import type { FinishedChange } from "../../shared/features/support/finished-change.ts";
import type { Context } from "../core/context.ts";
import { toTextEdit } from "./to-lsp.ts";
import { toWorkspaceEdit } from "./workspace-edit.ts";

/** What is to be confirmed has this name in the edit. */
const told = "told";

/** The edit of a file that is open, and of the one that it brings. */
export function toChangedFiles(
	context: Context,
	uri: string,
	title: string,
	{ edits, newFile, caution }: FinishedChange,
): WorkspaceEdit {
	const { session, client } = context;
	const source = session.source(uri);
	if (!source) return {};
	const annotates = caution !== undefined && client.codeActions.annotates;
	if (!newFile && !annotates)
		return toWorkspaceEdit(context, new Map([[uri, edits]])) ?? {};
	const annotated = (edit: TextEdit): TextEdit | AnnotatedTextEdit =>
		annotates ? { ...edit, annotationId: told } : edit;
	const start = { line: 0, character: 0 };
	const files: (CreateFile | TextDocumentEdit)[] = [
		...(newFile
			? [
					{
						kind: "create" as const,
						uri: newFile.uri,
						options: { overwrite: false, ignoreIfExists: false },
					},
					{
						textDocument: { uri: newFile.uri, version: null },
						edits: [
							annotated({
								range: { start, end: start },
								newText: newFile.text,
							}),
						],
					},
				]
			: []),
		{
			textDocument: {
				uri: session.clientUri(uri),
				version: session.versionOf(uri) ?? null,
			},
			edits: edits.map((edit) => annotated(toTextEdit(source, edit))),
		},
	];
	return {
		documentChanges: files,
		...(annotates
			? {
					changeAnnotations: {
						[told]: {
							label: title,
							description: caution,
							needsConfirmation: true,
						},
					},
				}
			: {}),
	};
}
