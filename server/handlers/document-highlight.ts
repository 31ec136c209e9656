// textDocument/documentHighlight

import {
	type DocumentHighlight,
	DocumentHighlightKind,
	type DocumentHighlightParams,
} from "vscode-languageserver";
import { references } from "../../shared/features/references.ts";
import { toOffset } from "../convert/from-lsp.ts";
import { toRange } from "../convert/to-lsp.ts";
import type { Context } from "../core/context.ts";

export function documentHighlightHandler({ session }: Context) {
	return ({
		textDocument,
		position,
	}: DocumentHighlightParams): DocumentHighlight[] | null => {
		const source = session.document(textDocument.uri);
		if (!source) return null;
		const { uri } = source;
		const found = references(session.names(), uri, toOffset(source, position), [
			uri,
		]);
		return (
			found?.map(({ span, kind }) => ({
				range: toRange(source, span),
				kind:
					kind === "read"
						? DocumentHighlightKind.Read
						: DocumentHighlightKind.Write,
			})) ?? null
		);
	};
}
