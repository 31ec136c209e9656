// textDocument/documentSymbol

import type {
	DocumentSymbol,
	DocumentSymbolParams,
	SymbolInformation,
} from "vscode-languageserver";
import { type OutlineEntry, outline } from "../../shared/features/outline.ts";
import { symbolKinds } from "../convert/kinds.ts";
import { toRange } from "../convert/to-lsp.ts";
import type { Context } from "../core/context.ts";
import type { SourceText } from "../core/source-text.ts";

export function documentSymbolHandler(context: Context) {
	const { session, guard } = context;
	return ({
		textDocument: { uri },
	}: DocumentSymbolParams): DocumentSymbol[] | SymbolInformation[] =>
		guard<DocumentSymbol[] | SymbolInformation[]>("documentSymbol", [], () => {
			const source = session.document(uri);
			if (!source) return [];
			const entries = outline(source.text, source.result.tree);
			return context.client.nestedSymbols
				? entries.map((entry) => toSymbol(source, entry))
				: entries.flatMap((entry) => toFlat(source, uri, entry));
		});
}

function toSymbol(source: SourceText, entry: OutlineEntry): DocumentSymbol {
	return {
		name: entry.name,
		detail: entry.detail,
		kind: symbolKinds[entry.kind],
		range: toRange(source, entry.span),
		selectionRange: toRange(source, entry.nameSpan),
		children: entry.children.map((child) => toSymbol(source, child)),
	};
}

function toFlat(
	source: SourceText,
	uri: string,
	entry: OutlineEntry,
	containerName?: string,
): SymbolInformation[] {
	const { name, kind, span, children } = entry;
	return [
		{
			name,
			kind: symbolKinds[kind],
			location: { uri, range: toRange(source, span) },
			...(containerName === undefined ? {} : { containerName }),
		},
		...children.flatMap((child) => toFlat(source, uri, child, name)),
	];
}
