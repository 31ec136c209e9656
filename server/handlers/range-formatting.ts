// textDocument/rangeFormatting and rangesFormatting: the whole statements that a selection touches.

import type {
	DocumentRangeFormattingParams,
	DocumentRangesFormattingParams,
	Range,
	TextEdit,
} from "vscode-languageserver";
import { formatRange } from "../../shared/format/format-range.ts";
import { overlap } from "../../shared/text/edits.ts";
import { toSpan } from "../convert/from-lsp.ts";
import { toTextEdit } from "../convert/to-lsp.ts";
import type { Context } from "../core/context.ts";

export function rangeFormattingHandlers({ session, guard }: Context) {
	const edits = (uri: string, ranges: readonly Range[]): TextEdit[] =>
		guard("rangeFormatting", [], () => {
			const source = session.document(uri);
			if (!source) return [];
			const all = ranges.flatMap((range) =>
				formatRange(source.text, toSpan(source, range)),
			);
			// Two selections in one statement lay it out once.
			const distinct = [
				...new Map(all.map((edit) => [JSON.stringify(edit), edit])).values(),
			];
			if (overlap(distinct)) return [];
			return distinct.map(({ start, end, text }) =>
				toTextEdit(source, { span: { start, end }, text }),
			);
		});
	return {
		one: ({ textDocument, range }: DocumentRangeFormattingParams) =>
			edits(textDocument.uri, [range]),
		many: ({ textDocument, ranges }: DocumentRangesFormattingParams) =>
			edits(textDocument.uri, ranges),
	};
}
