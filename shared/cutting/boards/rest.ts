// What is left of a problem once some boards are fixed, as a problem of its own.

import type { Pattern } from "./pattern.ts";
import type { Problem } from "./problem.ts";

export interface Rest {
	readonly problem: Problem;
	/** By kind of the whole problem: its index here, or -1. */
	readonly indexOf: Int32Array;
	/** A pattern of the rest in terms of the whole. */
	readonly back: (pattern: Pattern) => Pattern;
}

/** The kinds that are still needed, and the boards that are left. */
export function restOf(
	problem: Problem,
	needs: ArrayLike<number>,
	left: ArrayLike<number>,
): Rest {
	const kinds = [...problem.sizes.keys()].filter(
		(kind) => (needs[kind] as number) > 0,
	);
	const pick = <T>(list: ArrayLike<T>) => kinds.map((kind) => list[kind] as T);
	const indexOf = new Int32Array(problem.sizes.length).fill(-1);
	kinds.forEach((kind, index) => {
		indexOf[kind] = index;
	});
	return {
		problem: {
			...problem,
			sizes: pick(problem.sizes),
			demands: pick(needs),
			parts: pick(problem.parts),
			stocks: problem.stocks.map((stock, index) => ({
				...stock,
				count: left[index] as number,
			})),
		},
		indexOf,
		back: (pattern) => ({
			...pattern,
			kinds: pattern.kinds.map((index) => kinds[index] as number),
		}),
	};
}
