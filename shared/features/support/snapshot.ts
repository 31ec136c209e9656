// What a feature looks at: one text with its tree, and the design that was evaluated from it.

import type { ParseResult } from "../../../grammar/index.ts";
import type { Design, Piece } from "../../model/types.ts";

/** Everything belongs to the same moment: spans of the design that name `uri` are spans of `text`. */
export interface Snapshot {
	readonly uri: string;
	readonly text: string;
	readonly result: ParseResult;
	readonly design: Design;
}

/** The piece or component in whose text an offset lies. */
export function pieceAt(
	{ design, uri }: Snapshot,
	offset: number,
): Piece | undefined {
	return design.pieces.find(
		({ declaration: { origin } }) =>
			origin.uri === uri &&
			origin.span.start <= offset &&
			offset <= origin.span.end,
	);
}
