// A completion as the protocol has it.

import {
	type CompletionItem,
	InsertTextFormat,
	InsertTextMode,
} from "vscode-languageserver";
import type { CompletionItem as Offer } from "../../shared/features/completion.ts";
import type { Context } from "../core/context.ts";
import type { SourceText } from "../core/source-text.ts";
import { completionKinds } from "./kinds.ts";
import { toRange } from "./to-lsp.ts";

export function toCompletionItem(
	{ client }: Context,
	source: SourceText,
	offer: Offer,
): CompletionItem {
	const snippet = client.snippets ? offer.snippet : undefined;
	return {
		label: offer.label,
		kind: completionKinds[offer.kind],
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
