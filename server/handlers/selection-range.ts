// textDocument/selectionRange

import type {
	SelectionRange,
	SelectionRangeParams,
} from "vscode-languageserver";
import { selectionRanges } from "../../shared/features/selection-ranges.ts";
import { toOffset } from "../convert/from-lsp.ts";
import { toRange } from "../convert/to-lsp.ts";
import type { Context } from "../core/context.ts";

export function selectionRangeHandler({ session, guard }: Context) {
	return ({
		textDocument,
		positions,
	}: SelectionRangeParams): SelectionRange[] | null =>
		guard("selectionRange", null, () => {
			const source = session.document(textDocument.uri);
			if (!source) return null;
			const { text, result } = source;
			return positions.map(
				(position) =>
					selectionRanges(
						text,
						result.tree,
						toOffset(source, position),
					).reduceRight<SelectionRange | undefined>(
						(parent, span) => ({
							range: toRange(source, span),
							...(parent ? { parent } : {}),
						}),
						undefined,
					) ?? { range: { start: position, end: position } },
			);
		});
}
