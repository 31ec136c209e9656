// Takes two sizes off a third, or adds them: told as "- 2 x 45/64" where both are alike.

import { minus, plus, type Size, times } from "./size.ts";

export function lessBoth(size: Size, one?: Size, other?: Size): Size {
	if (one && other && alike(one, other)) return minus(size, times(2, one));
	const first = taken(one) ? minus(size, one as Size) : size;
	return taken(other) ? minus(first, other as Size) : first;
}

export function plusBoth(size: Size, one?: Size, other?: Size): Size {
	if (one && other && alike(one, other)) return plus(size, times(2, one));
	const first = taken(one) ? plus(size, one as Size) : size;
	return taken(other) ? plus(first, other as Size) : first;
}

function taken(size: Size | undefined): boolean {
	return size !== undefined && !size.value.isZero();
}

/** Equal in value, and moved by the same sources: only then is one of them twice the same. */
function alike(one: Size, other: Size): boolean {
	return (
		taken(one) &&
		one.value.eq(other.value) &&
		one.feeds.length === other.feeds.length &&
		one.feeds.every(
			(feed, index) =>
				feed.source.id === other.feeds[index]?.source.id &&
				feed.weight === other.feeds[index]?.weight,
		)
	);
}
