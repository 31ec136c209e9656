// textDocument/codeLens and codeLens/resolve: what a line over a piece says is worked out when it comes into sight.

import type {
	CancellationToken,
	CodeLens,
	CodeLensParams,
	Command,
} from "vscode-languageserver";
import {
	codeLenses,
	figuresTitle,
	findingsTitle,
	type LensKind,
	pieceOf,
	usesTitle,
} from "../../shared/features/code-lenses.ts";
import { madeOf } from "../../shared/features/made-from.ts";
import type { MaterialLayout } from "../../shared/layouts/index.ts";
import { toSpan } from "../convert/from-lsp.ts";
import { toRange } from "../convert/to-lsp.ts";
import { clientCommands } from "../core/client-commands.ts";
import type { Context } from "../core/context.ts";
import type { DesignIndex } from "../core/design-index.ts";
import type { SourceText } from "../core/source-text.ts";
import { filesOf } from "./asked-name.ts";
import { quickLayouts } from "./quick-layouts.ts";

/** What a lens carries until it is asked what it says. */
interface LensData {
	readonly uri: string;
	readonly kind: LensKind;
	readonly name: string;
}

export function codeLensHandlers(context: Context, index: DesignIndex) {
	const { session, guard } = context;
	return {
		list: ({ textDocument }: CodeLensParams): CodeLens[] =>
			guard("codeLens", [], () => {
				const source = session.document(textDocument.uri);
				if (!source) return [];
				return codeLenses(source.result.tree).map(({ kind, span, name }) => {
					const data: LensData = { uri: textDocument.uri, kind, name };
					return { range: toRange(source, span), data };
				});
			}),
		resolve: async (
			lens: CodeLens,
			token: CancellationToken,
		): Promise<CodeLens> => {
			const { data } = lens;
			const source = isLensData(data) ? session.document(data.uri) : undefined;
			if (!source || !isLensData(data)) return { ...lens, command: says("") };
			const uses =
				data.kind === "uses"
					? await usesOf(context, index, source, lens, token)
					: "";
			const layouts =
				data.kind === "figures"
					? await layoutsOf(context, source, lens, token)
					: [];
			return guard("codeLens", { ...lens, command: says("") }, () => ({
				...lens,
				command: commandOf(context, source, lens, data, { uses, layouts }),
			}));
		},
	};
}

/** What had to be looked for. */
interface Found {
	readonly uses: string;
	readonly layouts: readonly MaterialLayout[];
}

async function layoutsOf(
	context: Context,
	source: SourceText,
	{ range }: CodeLens,
	token: CancellationToken,
): Promise<readonly MaterialLayout[]> {
	const design = context.session.design(source.uri);
	const piece = pieceOf(design, { span: toSpan(source, range) });
	return piece ? await quickLayouts(context, source, piece, token) : [];
}

async function usesOf(
	context: Context,
	index: DesignIndex,
	source: SourceText,
	{ range }: CodeLens,
	token: CancellationToken,
): Promise<string> {
	const { start } = toSpan(source, range);
	const files = await filesOf(context, index, source, start, token);
	const made =
		files && madeOf(context.session.names(), source.uri, start, files);
	return usesTitle((made ?? []).map(({ uri }) => uri));
}

function commandOf(
	{ session, client }: Context,
	source: SourceText,
	{ range }: CodeLens,
	{ uri, kind, name }: LensData,
	{ uses, layouts }: Found,
): Command {
	const offered = (command: string, ...args: unknown[]): Partial<Command> =>
		client.commands.includes(command) ? { command, arguments: args } : {};
	if (kind === "uses")
		return {
			...says(uses),
			...offered(clientCommands.showUses, uri, range.start),
		};
	const design = session.design(source.uri);
	const piece = pieceOf(design, { span: toSpan(source, range) });
	if (!piece) return says("");
	return kind === "figures"
		? {
				...says(figuresTitle(piece, design, layouts)),
				...offered(clientCommands.showCutList, uri, name),
			}
		: says(findingsTitle(piece, session.analysis(source.uri).findings));
}

/** A line that does nothing when it is chosen. */
function says(title: string): Command {
	return { title, command: "" };
}

const kinds: ReadonlySet<unknown> = new Set<LensKind>([
	"figures",
	"findings",
	"uses",
]);

/** A client may send anything back. */
function isLensData(value: unknown): value is LensData {
	if (typeof value !== "object" || value === null) return false;
	const { uri, kind, name } = value as Partial<Record<keyof LensData, unknown>>;
	return typeof uri === "string" && typeof name === "string" && kinds.has(kind);
}
