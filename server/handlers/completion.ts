// textDocument/completion

import type { CompletionItem, CompletionParams } from "vscode-languageserver";
import { completion } from "../../shared/features/completion.ts";
import { toCompletionItem } from "../convert/completion-item.ts";
import { toOffset } from "../convert/from-lsp.ts";
import type { Context } from "../core/context.ts";

export function completionHandler(context: Context) {
	const { session, guard } = context;
	return ({
		textDocument,
		position,
		context: asked,
	}: CompletionParams): CompletionItem[] =>
		guard("completion", [], () => {
			const source = session.document(textDocument.uri);
			if (!source) return [];
			const offset = toOffset(source, position);
			const typed = asked?.triggerCharacter;
			const snapshot = session.snapshot(source);
			return completion(snapshot, offset, {
				afterBlank: typed === " ",
				onlyPaths: typed === '"' || typed === "/",
				beside: session.beside(source),
			}).map((offer) => toCompletionItem(context, source, offer));
		});
}
