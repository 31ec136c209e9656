// textDocument/references

import type {
	CancellationToken,
	Location,
	ReferenceParams,
} from "vscode-languageserver";
import { references } from "../../shared/features/references.ts";
import { toOffset } from "../convert/from-lsp.ts";
import { toLocation } from "../convert/to-lsp.ts";
import type { Context } from "../core/context.ts";
import type { DesignIndex } from "../core/design-index.ts";
import { filesOf } from "./asked-name.ts";

export function referencesHandler(context: Context, index: DesignIndex) {
	const { session } = context;
	return async (
		{ textDocument, position, context: wanted }: ReferenceParams,
		token: CancellationToken,
	): Promise<Location[] | null> => {
		const source = session.document(textDocument.uri);
		if (!source) return null;
		const offset = toOffset(source, position);
		const files = await filesOf(context, index, source, offset, token);
		if (!files) return null;
		const found = references(session.names(), source.uri, offset, files) ?? [];
		return found
			.filter(
				({ kind }) =>
					kind !== "declaration" || wanted?.includeDeclaration !== false,
			)
			.flatMap((place) => toLocation(context, place) ?? []);
	};
}
