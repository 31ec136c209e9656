// Keeps what a check found in a piece for as long as the piece, the materials and the check's figures stay the same.
// What is kept follows an edit elsewhere in the text by itself: places are spans of the tree, which move with it. A check
// must therefore never copy offsets: it uses the spans of nodes, and `spanBehind` and its like for places made from them.

import type { Design, Piece } from "../model/types.ts";
import type { Check, CheckContext, Found } from "./check.ts";

interface Memory {
	readonly stocks: Design["stocks"];
	readonly found: Map<
		Check,
		{
			readonly figures: CheckContext["figures"];
			readonly found: readonly Found[];
		}
	>;
}

const memories = new WeakMap<Piece, Memory>();

/** What `find` answers, or answered for the same piece, materials and figures. */
export function remembered(
	check: Check,
	piece: Piece,
	context: CheckContext,
	find: () => readonly Found[],
): readonly Found[] {
	let memory = memories.get(piece);
	if (!memory || memory.stocks !== context.design.stocks) {
		memory = { stocks: context.design.stocks, found: new Map() };
		memories.set(piece, memory);
	}
	const known = memory.found.get(check);
	if (known && sameFigures(known.figures, context.figures)) return known.found;
	const found = find();
	memory.found.set(check, { figures: context.figures, found });
	return found;
}

function sameFigures(
	a: CheckContext["figures"],
	b: CheckContext["figures"],
): boolean {
	if (a === b) return true;
	const names = Object.keys(a);
	return (
		names.length === Object.keys(b).length &&
		names.every((name) => a[name] === b[name])
	);
}
