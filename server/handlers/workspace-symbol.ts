// workspace/symbol

import type {
	CancellationToken,
	SymbolInformation,
	WorkspaceSymbolParams,
} from "vscode-languageserver";
import { findThings } from "../../shared/features/workspace-symbols.ts";
import { symbolKinds } from "../convert/kinds.ts";
import type { Context } from "../core/context.ts";
import type { DesignIndex } from "../core/design-index.ts";

export function workspaceSymbolHandler(
	{ session }: Context,
	index: DesignIndex,
) {
	return async (
		{ query }: WorkspaceSymbolParams,
		token: CancellationToken,
	): Promise<SymbolInformation[]> =>
		findThings(query, await index.things(token)).map(
			({ name, kind, container, uri, range }) => ({
				name,
				kind: symbolKinds[kind],
				location: { uri: session.clientUri(uri), range },
				...(container === "" ? {} : { containerName: container }),
			}),
		);
}
