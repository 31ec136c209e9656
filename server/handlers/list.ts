// storyrod/list, a request of ours: the cut list or the buying list of one piece, as Markdown, as the command line writes it.

import {
	type CancellationToken,
	ProtocolRequestType,
} from "vscode-languageserver";
import { buyingList } from "../../shared/outputs/buying-list.ts";
import { buyingListMarkdown } from "../../shared/outputs/buying-list-markdown.ts";
import { cutList } from "../../shared/outputs/cut-list.ts";
import { cutListMarkdown } from "../../shared/outputs/cut-list-markdown.ts";
import type { Context } from "../core/context.ts";
import { quickLayouts } from "./quick-layouts.ts";

export interface ListParams {
	readonly textDocument: { readonly uri: string };
	/** Name of the piece or component. */
	readonly piece: string;
	readonly list: "cut" | "buy";
}

export const ListRequest = {
	type: new ProtocolRequestType<ListParams, string | null, never, void, void>(
		"storyrod/list",
	),
} as const;

/** Null where there is no such piece. */
export function listHandler(context: Context) {
	const { session } = context;
	return async (
		{ textDocument, piece: name, list }: ListParams,
		token: CancellationToken,
	): Promise<string | null> => {
		const source = session.document(`${textDocument?.uri}`);
		if (!source) return null;
		const { pieces, stocks, uri } = session.design(source.uri);
		const piece = pieces.find(
			(one) => one.name === name && one.declaration.origin.uri === uri,
		);
		if (!piece) return null;
		if (list === "cut") return cutListMarkdown(cutList(piece));
		const layouts = await quickLayouts(context, source, piece, token);
		return buyingListMarkdown(buyingList([{ piece, stocks }], layouts));
	};
}
