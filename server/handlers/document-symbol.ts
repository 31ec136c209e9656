// textDocument/documentSymbol

import type {
	DocumentSymbol,
	DocumentSymbolParams,
	SymbolInformation,
} from "vscode-languageserver";
import { outline } from "../../shared/features/outline.ts";
import { toFlatSymbols, toSymbol } from "../convert/symbols.ts";
import type { Context } from "../core/context.ts";

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
				: entries.flatMap((entry) => toFlatSymbols(source, uri, entry));
		});
}
