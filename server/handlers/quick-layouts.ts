// The layouts of one piece, looked for in slices: other messages come through, and a cancelled question ends the search.

import {
	type CancellationToken,
	LSPErrorCodes,
	ResponseError,
} from "vscode-languageserver";
import {
	type MaterialLayout,
	searchLayouts,
} from "../../shared/layouts/index.ts";
import type { Piece } from "../../shared/model/types.ts";
import { pieceToCut } from "../../shared/outputs/piece-layouts.ts";
import { rest } from "../core/answers.ts";
import type { Context } from "../core/context.ts";
import type { SourceText } from "../core/source-text.ts";

/** A piece that did not change is the same object. */
const kept = new WeakMap<Piece, readonly MaterialLayout[]>();

/** Throws if the request was cancelled or the text has changed meanwhile. */
export async function quickLayouts(
	context: Context,
	{ uri }: SourceText,
	piece: Piece,
	token: CancellationToken,
): Promise<readonly MaterialLayout[]> {
	const known = kept.get(piece);
	if (known) return known;
	const { session } = context;
	const version = session.versionOf(uri);
	const search = searchLayouts([pieceToCut(piece)], { effort: "quick" });
	for (;;) {
		const { done, value } = search.next();
		if (done === true) {
			kept.set(piece, value);
			return value;
		}
		await rest(context, token);
		if (session.versionOf(uri) !== version)
			throw new ResponseError(
				LSPErrorCodes.ContentModified,
				"The text has changed since",
			);
	}
}
