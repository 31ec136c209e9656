// An exact size with its story: what it is worked out from, and whose tolerance it carries.

import { Rational } from "../units/rational.ts";

export type Dimension =
	| "length"
	| "angle"
	| "mass"
	| "temperature"
	| "ratio"
	| "number"
	| "text";

/**
 * Something that can be off in the shop: one thickness of one material, one saw setting, one reading. Sizes that name
 * the same source move together.
 */
export interface Source {
	/** Equal ids are the same thing in the shop. */
	readonly id: string;
	/** For the maker: "ply.three-quarter, as it measures". */
	readonly label: string;
	/** Half range, mm: it may be off by this much either way. */
	readonly tolerance: number;
}

/** A source and how far a size moves when the source moves by 1: d(size)/d(source). */
export interface Feed {
	readonly source: Source;
	readonly weight: number;
}

/** How a size was come by. */
export type Why =
	| { readonly kind: "written"; readonly text: string }
	| { readonly kind: "named"; readonly name: string; readonly of: Size }
	| {
			readonly kind: "sum";
			readonly operator: "+" | "-";
			readonly left: Size;
			readonly right: Size;
	  }
	| {
			readonly kind: "product";
			readonly operator: "*" | "/";
			readonly left: Size;
			readonly right: Size;
	  }
	| {
			readonly kind: "function";
			readonly name: string;
			readonly args: readonly Size[];
	  }
	/** A fact of the shop or the table: "ply.three-quarter as it measures", "common practice". */
	| { readonly kind: "fact"; readonly text: string; readonly of?: Size };

/** A quantity in the base unit of its dimension: mm, degrees, kg, °C, 1. */
export interface Size {
	readonly dimension: Dimension;
	readonly value: Rational;
	readonly why: Why;
	/** Sorted by source id; none for a size that the maker just states. */
	readonly feeds: readonly Feed[];
	/** Of a bare number: the unit that it takes where a length is wanted; undefined for a pure number. */
	readonly bare?: "in" | "mm";
	/** False where trigonometry or a curve came in: the value is the nearest micrometre. */
	readonly exact: boolean;
}

const noFeeds: readonly Feed[] = [];

/** A size that is stated: a literal, a table value. */
export function stated(
	value: Rational,
	text: string,
	dimension: Dimension = "length",
): Size {
	return {
		dimension,
		value,
		why: { kind: "written", text },
		feeds: noFeeds,
		exact: true,
	};
}

export const zero: Size = stated(Rational.ZERO, "0");

/** The same size by a name, so that its story stops there: `width 54`. */
export function named(name: string, size: Size): Size {
	return retold(size, { kind: "named", name, of: size });
}

/** The same size with a fact told about it. */
export function fact(text: string, size: Size): Size {
	return retold(size, { kind: "fact", text, of: size });
}

// Written out, not spread: these run for every size of a design, and members in one order keep them quick.

/** The same size with another story. */
export function retold(size: Size, why: Why): Size {
	const { dimension, value, feeds, exact, bare } = size;
	return bare === undefined
		? { dimension, value, why, feeds, exact }
		: { dimension, value, why, feeds, exact, bare };
}

/** The same size with other feeds. */
function refed(size: Size, feeds: readonly Feed[]): Size {
	const { dimension, value, why, exact, bare } = size;
	return bare === undefined
		? { dimension, value, why, feeds, exact }
		: { dimension, value, why, feeds, exact, bare };
}

/** A pure number that takes a unit where a length is wanted. */
export function statedBare(
	value: Rational,
	text: string,
	bare: "in" | "mm",
): Size {
	return {
		dimension: "number",
		value,
		why: { kind: "written", text },
		feeds: noFeeds,
		exact: true,
		bare,
	};
}

/** The same size, moved by one more source. */
export function fedBy(size: Size, source: Source, weight = 1): Size {
	return refed(size, addFeeds(size.feeds, [{ source, weight }], 1));
}

/** The same size as a stated fact: what fed it before is forgotten (a reading, a cut made to a stop). */
export function settled(size: Size, source?: Source): Size {
	return refed(size, source ? [{ source, weight: 1 }] : noFeeds);
}

export function plus(left: Size, right: Size): Size {
	return {
		dimension: left.dimension,
		value: left.value.add(right.value),
		why: { kind: "sum", operator: "+", left, right },
		feeds: addFeeds(left.feeds, right.feeds, 1),
		exact: left.exact && right.exact,
	};
}

export function minus(left: Size, right: Size): Size {
	return {
		dimension: left.dimension,
		value: left.value.sub(right.value),
		why: { kind: "sum", operator: "-", left, right },
		feeds: addFeeds(left.feeds, right.feeds, -1),
		exact: left.exact && right.exact,
	};
}

/** `factor` is a pure number. */
export function times(factor: Size | number, size: Size): Size {
	const by =
		typeof factor === "number"
			? stated(Rational.of(factor), String(factor), "number")
			: factor;
	return {
		dimension: size.dimension,
		value: by.value.mul(size.value),
		why: { kind: "product", operator: "*", left: by, right: size },
		feeds: scaleFeeds(size.feeds, by.value.toNumber()),
		exact: by.exact && size.exact,
	};
}

/** `divisor` is a pure number and not zero. */
export function over(size: Size, divisor: Size | number): Size {
	const by =
		typeof divisor === "number"
			? stated(Rational.of(divisor), String(divisor), "number")
			: divisor;
	return {
		dimension: size.dimension,
		value: size.value.div(by.value),
		why: { kind: "product", operator: "/", left: size, right: by },
		feeds: scaleFeeds(size.feeds, 1 / by.value.toNumber()),
		exact: by.exact && size.exact,
	};
}

export function negated(size: Size): Size {
	return times(-1, size);
}

/** Whether two sizes are exactly equal in value. */
export function sameValue(a: Size, b: Size): boolean {
	return a.value.eq(b.value);
}

/** The value in base units as a floating number, for geometry and statics. */
export function numberOf(size: Size): number {
	return size.value.toNumber();
}

/** Merges two sorted lists; `sign` scales the second. Feeds that cancel are dropped. */
export function addFeeds(
	a: readonly Feed[],
	b: readonly Feed[],
	sign: number,
): readonly Feed[] {
	if (b.length === 0) return a;
	if (a.length === 0) return sign === 1 ? b : scaleFeeds(b, sign);
	const merged: Feed[] = [];
	let i = 0;
	let j = 0;
	while (i < a.length || j < b.length) {
		const left = a[i];
		const right = b[j];
		if (left && (!right || left.source.id < right.source.id)) {
			merged.push(left);
			i++;
		} else if (right && (!left || right.source.id < left.source.id)) {
			merged.push(
				sign === 1
					? right
					: { source: right.source, weight: right.weight * sign },
			);
			j++;
		} else if (left && right) {
			const weight = left.weight + sign * right.weight;
			if (Math.abs(weight) > 1e-12)
				merged.push({ source: left.source, weight });
			i++;
			j++;
		}
	}
	return merged;
}

function scaleFeeds(feeds: readonly Feed[], by: number): readonly Feed[] {
	if (feeds.length === 0 || by === 1) return feeds;
	if (by === 0) return noFeeds;
	return feeds.map(({ source, weight }) => ({ source, weight: weight * by }));
}
