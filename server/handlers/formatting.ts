// textDocument/formatting: the client's options are not asked for, the language has one layout.

import type { DocumentFormattingParams, TextEdit } from "vscode-languageserver";
import { format } from "../../shared/format/format.ts";
import { lineEdits } from "../../shared/format/line-edits.ts";
import { toTextEdit } from "../convert/to-lsp.ts";
import type { Context } from "../core/context.ts";

export function formattingHandler({ session, guard }: Context) {
	return ({ textDocument }: DocumentFormattingParams): TextEdit[] =>
		guard("formatting", [], () => {
			const source = session.document(textDocument.uri);
			if (!source) return [];
			const { text } = format(source.text);
			return lineEdits(source.text, text).map(({ start, end, text: put }) =>
				toTextEdit(source, { span: { start, end }, text: put }),
			);
		});
}
