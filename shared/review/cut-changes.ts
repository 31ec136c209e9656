// What a change does to wood that is cut already.

import { excess, lacking } from "../model/already-cut.ts";
import type { CutInfo, Part, Piece } from "../model/types.ts";
import type { CutChange, CutVerdict } from "./types.ts";

/** Still right, to be trimmed, or too small: with what must come off or is missing. */
export function verdictOn(
	piece: Piece,
	cut: CutInfo,
): Pick<CutChange, "length" | "width"> & { readonly verdict: CutVerdict } {
	const short = lacking(piece, cut);
	if (short.length || short.width) return { verdict: "too-small", ...short };
	const over = excess(piece, cut);
	if (over.length || over.width) return { verdict: "trim", ...over };
	return { verdict: "right", length: undefined, width: undefined };
}

/**
 * The parts that were cut before the change, held against the design after it; and those that are said to be cut only
 * there. `now`: what a part of before is afterwards. Parts that are right on both sides are left out.
 */
export function cutChanges(
	before: Piece,
	after: Piece,
	now: ReadonlyMap<Part, Part>,
): readonly CutChange[] {
	const known = new Set<Part>();
	const old = before.cuts.flatMap((cut): readonly CutChange[] => {
		const part = now.get(cut.part);
		const was = verdictOn(before, cut).verdict;
		if (!part) {
			return [
				{
					cut,
					before: was,
					after: "not-used",
					length: undefined,
					width: undefined,
				},
			];
		}
		known.add(part);
		// The wood is what it was, also where the text afterwards says nothing of it, or something else.
		const { verdict, length, width } = verdictOn(
			after,
			after.cuts.find((one) => one.part === part) ?? { ...cut, part },
		);
		return was === "right" && verdict === "right"
			? []
			: [{ cut, before: was, after: verdict, length, width }];
	});
	const fresh = after.cuts
		.filter(({ part }) => !known.has(part))
		.flatMap((cut): readonly CutChange[] => {
			const { verdict, length, width } = verdictOn(after, cut);
			return verdict === "right"
				? []
				: [{ cut, before: "right", after: verdict, length, width }];
		});
	return [...old, ...fresh];
}
