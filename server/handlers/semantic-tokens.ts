// textDocument/semanticTokens/full, /full/delta and /range

import type {
	SemanticTokens,
	SemanticTokensDelta,
	SemanticTokensDeltaParams,
	SemanticTokensParams,
	SemanticTokensRangeParams,
} from "vscode-languageserver";
import {
	declaredKinds,
	type ImportKind,
	semanticTokens,
	tokensWithin,
} from "../../shared/features/semantic-tokens.ts";
import { toSpan } from "../convert/from-lsp.ts";
import { TokenEncoder, tokenEdits } from "../convert/semantic-tokens.ts";
import type { Context } from "../core/context.ts";
import type { SourceText } from "../core/source-text.ts";

interface Sent {
	readonly id: string;
	readonly data: readonly number[];
}

export function semanticTokensHandlers({ session, guard }: Context) {
	const encoder = new TokenEncoder();
	/** What each open document was last told, by its uri: a delta starts from there. */
	const sent = new Map<string, Sent>();
	let count = 0;

	const importKind = (source: SourceText): ImportKind => {
		const beside = session.beside(source);
		return (name, path) => {
			const tree = beside.tree(path);
			return tree && declaredKinds(tree).get(name);
		};
	};
	const groupsOf = (source: SourceText) =>
		semanticTokens(source.result.tree, importKind(source));
	const remember = (source: SourceText, data: number[]): SemanticTokens => {
		const open = new Set(session.openUris());
		for (const uri of sent.keys()) if (!open.has(uri)) sent.delete(uri);
		count += 1;
		const id = `${count}`;
		sent.set(source.uri, { id, data });
		return { resultId: id, data };
	};

	return {
		full: ({ textDocument }: SemanticTokensParams): SemanticTokens =>
			guard("semanticTokens", { data: [] }, () => {
				const source = session.document(textDocument.uri);
				return source
					? remember(source, encoder.encode(source, groupsOf(source)))
					: { data: [] };
			}),
		delta: ({
			textDocument,
			previousResultId,
		}: SemanticTokensDeltaParams): SemanticTokens | SemanticTokensDelta =>
			guard<SemanticTokens | SemanticTokensDelta>(
				"semanticTokens",
				{ data: [] },
				() => {
					const source = session.document(textDocument.uri);
					if (!source) return { data: [] };
					const before = sent.get(source.uri);
					const data = encoder.encode(source, groupsOf(source));
					const now = remember(source, data);
					if (before?.id !== previousResultId) return now;
					return {
						...(now.resultId ? { resultId: now.resultId } : {}),
						edits: tokenEdits(before.data, data),
					};
				},
			),
		range: ({
			textDocument,
			range,
		}: SemanticTokensRangeParams): SemanticTokens =>
			guard("semanticTokens", { data: [] }, () => {
				const source = session.document(textDocument.uri);
				if (!source) return { data: [] };
				const groups = tokensWithin(groupsOf(source), toSpan(source, range));
				return { data: encoder.encode(source, groups) };
			}),
	};
}
