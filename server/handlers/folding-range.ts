// textDocument/foldingRange

import type { FoldingRange, FoldingRangeParams } from "vscode-languageserver";
import { folding } from "../../shared/features/folding.ts";
import { toRange } from "../convert/to-lsp.ts";
import type { Context } from "../core/context.ts";

export function foldingRangeHandler({ session, guard }: Context) {
	return ({ textDocument }: FoldingRangeParams): FoldingRange[] =>
		guard("foldingRange", [], () => {
			const source = session.document(textDocument.uri);
			if (!source) return [];
			return folding(source.text, source.result.tree).map(({ span, kind }) => {
				const { start, end } = toRange(source, span);
				if (kind !== "block") {
					return { startLine: start.line, endLine: end.line, kind };
				}
				// The closing brace stays in sight.
				const endLine = Math.max(start.line, end.line - 1);
				return { startLine: start.line, endLine };
			});
		});
}
