// textDocument/documentLink

import type { DocumentLink, DocumentLinkParams } from "vscode-languageserver";
import { documentLinks } from "../../shared/features/document-links.ts";
import { toRange } from "../convert/to-lsp.ts";
import type { Context } from "../core/context.ts";

export function documentLinkHandler({ session }: Context) {
	return ({ textDocument }: DocumentLinkParams): DocumentLink[] | null => {
		const source = session.document(textDocument.uri);
		if (!source) return null;
		return documentLinks(session.names(), source.uri).map(({ span, uri }) => ({
			range: toRange(source, span),
			target: session.clientUri(uri),
		}));
	};
}
