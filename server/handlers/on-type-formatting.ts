// textDocument/onTypeFormatting: the indentation of the line at hand, behind a line end and where a brace closes.

import type {
	DocumentOnTypeFormattingParams,
	TextEdit,
} from "vscode-languageserver";
import { indentLine } from "../../shared/format/indent-line.ts";
import { toOffset } from "../convert/from-lsp.ts";
import { toTextEdit } from "../convert/to-lsp.ts";
import type { Context } from "../core/context.ts";

export function onTypeFormattingHandler({ session, guard }: Context) {
	return ({
		textDocument,
		position,
		ch,
	}: DocumentOnTypeFormattingParams): TextEdit[] =>
		guard("onTypeFormatting", [], () => {
			const source = session.document(textDocument.uri);
			if (!source || (ch !== "}" && ch !== "\n")) return [];
			const offset = toOffset(source, position);
			const edit = indentLine(source.text, source.result, offset, ch);
			if (!edit) return [];
			const { start, end, text } = edit;
			return [toTextEdit(source, { span: { start, end }, text })];
		});
}
