// The outline as the protocol has it: nested, or flat for clients that know no other.

import type { DocumentSymbol, SymbolInformation } from "vscode-languageserver";
import type { OutlineEntry } from "../../shared/features/outline.ts";
import type { SourceText } from "../core/source-text.ts";
import { symbolKinds } from "./kinds.ts";
import { toRange } from "./to-lsp.ts";

export function toSymbol(
	source: SourceText,
	entry: OutlineEntry,
): DocumentSymbol {
	return {
		name: entry.name,
		detail: entry.detail,
		kind: symbolKinds[entry.kind],
		range: toRange(source, entry.span),
		selectionRange: toRange(source, entry.nameSpan),
		children: entry.children.map((child) => toSymbol(source, child)),
	};
}

export function toFlatSymbols(
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
		...children.flatMap((child) => toFlatSymbols(source, uri, child, name)),
	];
}
