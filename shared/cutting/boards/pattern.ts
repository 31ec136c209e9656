// One way to cut a board: how many of which sizes.

/** Sizes by index into the problem's, in ascending order, each once, and how many of each. */
export interface Pattern {
	/** Index into the problem's stocks. */
	readonly stock: number;
	readonly kinds: readonly number[];
	readonly counts: readonly number[];
}

/** A pattern as a text: equal for equal patterns. */
export function keyOf({ stock, kinds, counts }: Pattern): string {
	return `${stock}|${kinds.join()}|${counts.join()}`;
}

/** From a count for each size. */
export function patternFrom(stock: number, counts: ArrayLike<number>): Pattern {
	const kinds: number[] = [];
	const some: number[] = [];
	for (let kind = 0; kind < counts.length; kind++) {
		const count = counts[kind] as number;
		if (count > 0) {
			kinds.push(kind);
			some.push(count);
		}
	}
	return { stock, kinds, counts: some };
}

/** How much of the board's capacity the pattern takes. */
export function lengthOf(
	{ kinds, counts }: Pattern,
	sizes: readonly number[],
): number {
	return kinds.reduce(
		(sum, kind, k) => sum + (sizes[kind] as number) * (counts[k] as number),
		0,
	);
}
