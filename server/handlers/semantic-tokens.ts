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
	readonly data: Uint32Array;
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
	/** Answers the id of what is sent. */
	const remember = (source: SourceText, data: Uint32Array): string => {
		for (const uri of sent.keys()) if (!session.isOpen(uri)) sent.delete(uri);
		count += 1;
		const id = `${count}`;
		sent.set(source.uri, { id, data });
		return id;
	};
	const whole = (source: SourceText, data: Uint32Array): SemanticTokens => ({
		resultId: remember(source, data),
		data: [...data],
	});

	return {
		full: ({ textDocument }: SemanticTokensParams): SemanticTokens =>
			guard("semanticTokens", { data: [] }, () => {
				const source = session.document(textDocument.uri);
				return source
					? whole(source, encoder.encode(source, groupsOf(source)))
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
					if (before?.id !== previousResultId) return whole(source, data);
					return {
						resultId: remember(source, data),
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
				return { data: [...encoder.encode(source, groups)] };
			}),
	};
}
