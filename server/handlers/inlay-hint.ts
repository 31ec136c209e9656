// textDocument/inlayHint and inlayHint/resolve: where a hint comes from is told when the pointer rests on it.

import type { InlayHint, InlayHintParams } from "vscode-languageserver";
import { hintStory, inlayHints } from "../../shared/features/inlay-hints.ts";
import {
	type Hint,
	hintKinds,
} from "../../shared/features/support/hints/hint.ts";
import {
	type Shown,
	stillShown,
} from "../../shared/features/support/hints/typed-line.ts";
import { toSpan } from "../convert/from-lsp.ts";
import type { Context } from "../core/context.ts";

/** What a hint carries until it is asked where it comes from. */
interface HintData extends Omit<Hint, "label"> {
	readonly uri: string;
	readonly version: number | undefined;
}

export function inlayHintHandlers({ session, guard }: Context) {
	/** What each open document shows, by its uri: the line that is being typed is kept still. */
	const shown = new Map<string, Shown>();
	return {
		list: ({ textDocument, range }: InlayHintParams): InlayHint[] =>
			guard("inlayHint", [], () => {
				const source = session.document(textDocument.uri);
				if (!source) return [];
				const { uri, text, lines } = source;
				const span = toSpan(source, range);
				for (const one of shown.keys())
					if (!session.isOpen(one)) shown.delete(one);
				const still = stillShown(
					shown.get(uri),
					text,
					lines,
					inlayHints(session.snapshot(source), span, session.settings.hints),
					lines.positionAt(span.start).line,
					lines.positionAt(span.end).line,
				);
				shown.set(uri, still.shown);
				const version = session.versionOf(uri);
				return still.hints.map(({ kind, offset, label, about }) => {
					const data: HintData = { uri, version, kind, offset, about };
					return {
						position: lines.positionAt(offset),
						label,
						paddingLeft: true,
						data,
					};
				});
			}),
		resolve: (hint: InlayHint): InlayHint =>
			guard("inlayHint", hint, () => {
				const { data } = hint;
				if (!isHintData(data)) return hint;
				const source = session.document(data.uri);
				if (!source || session.versionOf(data.uri) !== data.version)
					return hint;
				const story = hintStory(session.snapshot(source), data);
				return story === undefined
					? hint
					: { ...hint, tooltip: { kind: "markdown", value: story } };
			}),
	};
}

/** A client may send anything back. */
function isHintData(value: unknown): value is HintData {
	if (typeof value !== "object" || value === null) return false;
	const { uri, kind, offset, about } = value as Partial<
		Record<keyof HintData, unknown>
	>;
	return (
		typeof uri === "string" &&
		typeof kind === "string" &&
		Object.hasOwn(hintKinds, kind) &&
		typeof offset === "number" &&
		typeof about === "string"
	);
}
