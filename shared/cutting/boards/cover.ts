// Exact cover: which of some patterns, each as often as wanted, cut exactly what is needed.

import type { Steps } from "../steps.ts";
import type { TightPattern } from "./tight.ts";

/**
 * The patterns of a plan that loses no more than `loss`. Depth first on the kind that the fewest patterns have (Knuth, "Dancing
 * links", Millennial Perspectives in Computer Science, 2000, for the choice); patterns that take more than is needed, or
 * lose more than may be lost, are put aside. Among the patterns of a kind those that `liking` is high for come first.
 * `impossible` if there is none; undefined if `mostWork` was not enough to tell.
 */
export function coverExactly(
	patterns: readonly TightPattern[],
	wanted: ArrayLike<number>,
	loss: number,
	liking: (pattern: TightPattern) => number,
	mostWork: number,
	steps: Steps,
): TightPattern[] | "impossible" | undefined {
	const likings = new Map(patterns.map((one) => [one, liking(one)]));
	// Those that lose most first: as less may be lost, they are put aside one after the other.
	const all = [...patterns].sort((a, b) => b.loss - a.loss);
	const needs = Int32Array.from(wanted);
	const having: number[][] = Array.from(needs, () => []);
	all.forEach(({ kinds }, index) => {
		for (const kind of kinds) having[kind]?.push(index);
	});
	for (const list of having)
		list.sort(
			(a, b) =>
				(likings.get(all[b] as TightPattern) as number) -
					(likings.get(all[a] as TightPattern) as number) ||
				(all[a] as TightPattern).loss - (all[b] as TightPattern).loss ||
				a - b,
		);
	const usable = Int32Array.from(having, (list) => list.length);
	const aside = new Uint8Array(all.length);
	const trail: number[] = [];
	const chosen: TightPattern[] = [];
	let work = 0;

	const putAside = (index: number) => {
		if (aside[index] === 1) return;
		aside[index] = 1;
		trail.push(index);
		for (const kind of (all[index] as TightPattern).kinds)
			usable[kind] = (usable[kind] as number) - 1;
		work += 4;
	};
	const bringBack = (to: number) => {
		while (trail.length > to) {
			const index = trail.pop() as number;
			aside[index] = 0;
			for (const kind of (all[index] as TightPattern).kinds)
				usable[kind] = (usable[kind] as number) + 1;
		}
	};
	const scarcest = (): number => {
		let best = -1;
		for (let kind = 0; kind < needs.length; kind++)
			if (
				(needs[kind] as number) > 0 &&
				(best < 0 || (usable[kind] as number) < (usable[best] as number))
			)
				best = kind;
		work += needs.length >> 1;
		return best;
	};
	const use = (pattern: TightPattern) => {
		pattern.kinds.forEach((kind, k) => {
			needs[kind] = (needs[kind] as number) - (pattern.counts[k] as number);
			for (const other of having[kind] as number[]) {
				if (aside[other] === 1) continue;
				const { kinds, counts } = all[other] as TightPattern;
				if ((counts[kinds.indexOf(kind)] as number) > (needs[kind] as number))
					putAside(other);
			}
			work += (having[kind] as number[]).length;
		});
	};
	const unuse = (pattern: TightPattern) => {
		pattern.kinds.forEach((kind, k) => {
			needs[kind] = (needs[kind] as number) + (pattern.counts[k] as number);
		});
	};
	const go = (budget: number, from: number): boolean => {
		let losing = from;
		while (losing < all.length && (all[losing] as TightPattern).loss > budget)
			putAside(losing++);
		const kind = scarcest();
		if (kind < 0) return true;
		if (usable[kind] === 0) return false;
		for (const index of having[kind] as number[]) {
			if (aside[index] === 1) continue;
			const pattern = all[index] as TightPattern;
			const before = trail.length;
			use(pattern);
			chosen.push(pattern);
			if (go(budget - pattern.loss, losing)) return true;
			chosen.pop();
			bringBack(before);
			unuse(pattern);
			if (work > mostWork) return false;
			// All plans that have it are done.
			putAside(index);
			if (usable[kind] === 0) return false;
		}
		return false;
	};
	const found = go(loss, 0);
	steps.spend(3 * work + 30 * all.length);
	if (found) return chosen;
	return work > mostWork ? undefined : "impossible";
}
