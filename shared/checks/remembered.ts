// Keeps what the checks found in a piece for as long as the piece, the materials and the checks' figures stay the same.
// What is kept follows an edit elsewhere in the text by itself: places are spans of the tree, which move with it. A check
// must therefore never copy offsets: it uses the spans of nodes, and `spanBehind` and its like for places made from them.

import type { Design, Piece, Severity } from "../model/types.ts";
import type { Check, CheckContext, Found } from "./check.ts";

/** A check that is not turned off, with what is set for it. */
export interface Active {
	readonly check: Check;
	readonly figures: CheckContext["figures"];
	/** Of every finding of the check; undefined: its own. */
	readonly severity: Severity | undefined;
}

/** What a check found in a piece: one thing at least. */
export interface FoundBy {
	readonly check: Check;
	readonly found: readonly Found[];
}

interface Memory {
	readonly stocks: Design["stocks"];
	readonly active: readonly Active[];
	readonly found: readonly FoundBy[];
}

const memories = new WeakMap<Piece, Memory>();

/**
 * What the checks find in a piece, those that find nothing left out; `find` is called where that is not known. The same
 * list of checks is the quickest to answer for.
 */
export function remembered(
	piece: Piece,
	stocks: Design["stocks"],
	active: readonly Active[],
	find: (one: Active) => readonly Found[],
): readonly FoundBy[] {
	const memory = memories.get(piece);
	const usable = memory?.stocks === stocks ? memory : undefined;
	if (usable?.active === active) return usable.found;
	const found = active.flatMap((one): FoundBy[] => {
		const list = (usable && foundBefore(usable, one)) ?? find(one);
		return list.length > 0 ? [{ check: one.check, found: list }] : [];
	});
	memories.set(piece, { stocks, active, found });
	return found;
}

/** What a check found with the same figures; undefined if it did not look. */
function foundBefore(
	{ active, found }: Memory,
	{ check, figures }: Active,
): readonly Found[] | undefined {
	const before = active.find((one) => one.check === check);
	if (!before || !sameFigures(before.figures, figures)) return undefined;
	return found.find((one) => one.check === check)?.found ?? [];
}

function sameFigures(
	a: CheckContext["figures"],
	b: CheckContext["figures"],
): boolean {
	const names = Object.keys(a);
	return (
		names.length === Object.keys(b).length &&
		names.every((name) => a[name] === b[name])
	);
}
