// textDocument/completion

import {
	type CompletionItem,
	CompletionItemKind,
	type CompletionParams,
	InsertTextFormat,
	InsertTextMode,
} from "vscode-languageserver";
import {
	completion,
	type CompletionItem as Offer,
} from "../../shared/features/completion.ts";
import { toOffset } from "../convert/from-lsp.ts";
import { completionKinds } from "../convert/kinds.ts";
import { toRange } from "../convert/to-lsp.ts";
import type { Context } from "../core/context.ts";
import type { SourceText } from "../core/source-text.ts";

export function completionHandler(context: Context) {
	const { session, guard } = context;
	return ({ textDocument, position }: CompletionParams): CompletionItem[] =>
		guard("completion", [], () => {
			const source = session.document(textDocument.uri);
			if (!source) return [];
			const offset = toOffset(source, position);
			return completion(session.snapshot(source), offset).map((offer) =>
				toItem(context, source, offer),
			);
		});
}

function toItem(
	{ client }: Context,
	source: SourceText,
	offer: Offer,
): CompletionItem {
	const snippet = client.snippets ? offer.snippet : undefined;
	return {
		label: offer.label,
		kind: completionKinds[offer.kind] ?? CompletionItemKind.Text,
		...(offer.detail ? { detail: offer.detail } : {}),
		...(offer.documentation
			? { documentation: { kind: "markdown", value: offer.documentation } }
			: {}),
		sortText: `${offer.rank}${offer.label}`,
		textEdit: {
			range: toRange(source, offer.replace),
			newText: snippet ?? offer.insert,
		},
		...(snippet
			? {
					insertTextFormat: InsertTextFormat.Snippet,
					insertTextMode: InsertTextMode.adjustIndentation,
				}
			: {}),
	};
}
