// textDocument/typeDefinition: what something is made from. textDocument/implementation: what is made from it.

import type {
	CancellationToken,
	ImplementationParams,
	Location,
	TypeDefinitionParams,
} from "vscode-languageserver";
import { madeFrom, madeOf } from "../../shared/features/made-from.ts";
import type { Named } from "../../shared/features/support/names/named.ts";
import { toOffset } from "../convert/from-lsp.ts";
import { toLocation } from "../convert/to-lsp.ts";
import type { Context } from "../core/context.ts";
import type { DesignIndex } from "../core/design-index.ts";
import { filesOf } from "./asked-name.ts";

export function madeFromHandlers(context: Context, index: DesignIndex) {
	const { session } = context;
	const placesOf = (found: readonly Named[] | undefined): Location[] | null =>
		found?.flatMap(
			({ uri, node }) => toLocation(context, { uri, span: node.span }) ?? [],
		) ?? null;
	return {
		from: ({
			textDocument,
			position,
		}: TypeDefinitionParams): Location[] | null => {
			const source = session.document(textDocument.uri);
			if (!source) return null;
			const offset = toOffset(source, position);
			return placesOf(madeFrom(session.names(), source.uri, offset));
		},
		of: async (
			{ textDocument, position }: ImplementationParams,
			token: CancellationToken,
		): Promise<Location[] | null> => {
			const source = session.document(textDocument.uri);
			if (!source) return null;
			const offset = toOffset(source, position);
			const files = await filesOf(context, index, source, offset, token);
			return placesOf(
				files && madeOf(session.names(), source.uri, offset, files),
			);
		},
	};
}
