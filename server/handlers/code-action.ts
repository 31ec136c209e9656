// textDocument/codeAction

import {
	type CodeAction,
	CodeActionKind,
	type CodeActionParams,
} from "vscode-languageserver";
import { codeActions } from "../../shared/features/code-actions.ts";
import { toSpan } from "../convert/from-lsp.ts";
import { toDiagnostic, toTextEdit } from "../convert/to-lsp.ts";
import type { Context } from "../core/context.ts";

export function codeActionHandler(context: Context) {
	const { session, guard } = context;
	return ({
		textDocument,
		range,
		context: { only },
	}: CodeActionParams): CodeAction[] =>
		guard("codeAction", [], () => {
			const source = session.document(textDocument.uri);
			if (!source) return [];
			if (only && !only.some((kind) => kind === CodeActionKind.QuickFix))
				return [];
			const { findings } = session.analysis(source.uri);
			const span = toSpan(source, range);
			return codeActions(findings, source.uri, span).map((action) => {
				const diagnostic = toDiagnostic(context, action.finding);
				const edits = action.edits.map((edit) => toTextEdit(source, edit));
				return {
					title: action.title,
					kind: CodeActionKind.QuickFix,
					isPreferred: action.preferred,
					diagnostics: diagnostic ? [diagnostic] : [],
					edit: { changes: { [textDocument.uri]: edits } },
				};
			});
		});
}
