// textDocument/definition

import type {
	DefinitionLink,
	DefinitionParams,
	Location,
} from "vscode-languageserver";
import { definition } from "../../shared/features/definition.ts";
import { toOffset } from "../convert/from-lsp.ts";
import { toRange } from "../convert/to-lsp.ts";
import type { Context } from "../core/context.ts";

export function definitionHandler(context: Context) {
	const { session, guard } = context;
	return ({
		textDocument,
		position,
	}: DefinitionParams): DefinitionLink[] | Location | null =>
		guard("definition", null, () => {
			const source = session.document(textDocument.uri);
			if (!source) return null;
			const offset = toOffset(source, position);
			const found = definition(session.names(), source.uri, offset);
			const file = found && session.source(found.uri);
			if (!found || !file) return null;
			const uri = session.clientUri(found.uri);
			const name = toRange(file, found.nameSpan);
			if (!context.client.definitionLinks) return { uri, range: name };
			return [
				{
					originSelectionRange: toRange(source, found.from),
					targetUri: uri,
					targetRange: toRange(file, found.span),
					targetSelectionRange: name,
				},
			];
		});
}
