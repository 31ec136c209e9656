// textDocument/prepareCallHierarchy, callHierarchy/incomingCalls and /outgoingCalls: what depends on a size or a thing, and
// what it depends on.

import type {
	CallHierarchyIncomingCall,
	CallHierarchyIncomingCallsParams,
	CallHierarchyItem,
	CallHierarchyOutgoingCall,
	CallHierarchyOutgoingCallsParams,
	CallHierarchyPrepareParams,
	CancellationToken,
} from "vscode-languageserver";
import {
	dependentAt,
	dependents,
	dependsOn,
	measureOf,
} from "../../shared/features/dependencies.ts";
import type { Named } from "../../shared/features/support/names/named.ts";
import { toOffset } from "../convert/from-lsp.ts";
import { symbolKinds } from "../convert/kinds.ts";
import { toRange } from "../convert/to-lsp.ts";
import type { Context } from "../core/context.ts";
import type { DesignIndex } from "../core/design-index.ts";

export function callHierarchyHandlers(context: Context, index: DesignIndex) {
	const { session } = context;
	/** The thing of an item, as the text is now. */
	const thingOf = (item: CallHierarchyItem | undefined): Named | undefined => {
		const uri = session.canonical(item?.uri ?? "");
		const source = session.source(uri);
		if (!item || !source) return undefined;
		const offset = toOffset(source, item.selectionRange.start);
		const named = dependentAt(session.names(), uri, offset);
		return named?.name === item.name ? named : undefined;
	};
	const itemOf = (named: Named): CallHierarchyItem[] => {
		const { uri, name, kind, node, statement, construct } = named;
		const source = session.source(uri);
		if (!source) return [];
		// What nobody has open is not worked out for a line in a list.
		const value = session.isOpen(uri)
			? measureOf(session.design(uri), named)
			: undefined;
		return [
			{
				name,
				kind: symbolKinds[kind],
				detail: value ? `${construct.head} ${value}` : construct.head,
				uri: session.clientUri(uri),
				range: toRange(source, statement.span),
				selectionRange: toRange(source, node.span),
			},
		];
	};
	return {
		prepare: ({
			textDocument,
			position,
		}: CallHierarchyPrepareParams): CallHierarchyItem[] | null => {
			const source = session.document(textDocument.uri);
			if (!source) return null;
			const offset = toOffset(source, position);
			const named = dependentAt(session.names(), source.uri, offset);
			return named ? itemOf(named) : null;
		},
		incoming: async (
			{ item }: CallHierarchyIncomingCallsParams,
			token: CancellationToken,
		): Promise<CallHierarchyIncomingCall[] | null> => {
			const before = thingOf(item);
			if (!before) return null;
			const files = await index.mentioning(before, [before.name], token);
			const named = thingOf(item);
			if (!named) return null;
			return dependents(session.names(), named, files).flatMap(
				({ named: other, spans }) => {
					const source = session.source(other.uri);
					return itemOf(other).map((from) => ({
						from,
						fromRanges: source
							? spans.map((span) => toRange(source, span))
							: [],
					}));
				},
			);
		},
		outgoing: ({
			item,
		}: CallHierarchyOutgoingCallsParams):
			| CallHierarchyOutgoingCall[]
			| null => {
			const named = thingOf(item);
			const source = named && session.source(named.uri);
			if (!named || !source) return null;
			return dependsOn(session.names(), named).flatMap(
				({ named: other, spans }) =>
					itemOf(other).map((to) => ({
						to,
						fromRanges: spans.map((span) => toRange(source, span)),
					})),
			);
		},
	};
}
