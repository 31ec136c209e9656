// textDocument/hover

import type { Hover, HoverParams } from "vscode-languageserver";
import { hover } from "../../shared/features/hover.ts";
import { toOffset } from "../convert/from-lsp.ts";
import { toRange } from "../convert/to-lsp.ts";
import type { Context } from "../core/context.ts";

export function hoverHandler({ session, guard }: Context) {
	return ({ textDocument, position }: HoverParams): Hover | null =>
		guard("hover", null, () => {
			const source = session.document(textDocument.uri);
			if (!source) return null;
			const offset = toOffset(source, position);
			const found = hover(session.snapshot(source), offset);
			if (!found) return null;
			return {
				range: toRange(source, found.span),
				contents: { kind: "markdown", value: found.markdown },
			};
		});
}
