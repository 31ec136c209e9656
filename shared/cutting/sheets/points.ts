// Where cuts are worth making: sums of part sizes, however fine the unit in which sizes are given.

/** A size that parts have along one axis, and how many parts have it. */
export interface Size {
	readonly size: number;
	readonly count: number;
}

/**
 * The places along a length at which a pattern needs a cut, ascending, from 0 to the length itself; `undefined` if there
 * are more than `most`. Either the sums that the parts at hand can make (normal points: N. Christofides, C. Whitlock,
 * An algorithm for two-dimensional cutting problems, Operations Research 25, 1977), or, if that is less, those sums of
 * any number of parts that another sum faces from the far end (raster points: J. Terno, R. Lindemann, G. Scheithauer,
 * Zuschnittprobleme und ihre praktische Lösung, 1987). Both from memory.
 */
export function cutPoints(
	length: number,
	sizes: readonly Size[],
	most: number,
): Float64Array | undefined {
	const normal = sums(length, sizes, most);
	const endless = sizes.map(({ size }) => ({
		size,
		count: Number.POSITIVE_INFINITY,
	}));
	const all = sums(length, endless, 4 * most);
	const raster = all && facing(length, all);
	const fewer =
		normal && (!raster || normal.length <= raster.length) ? normal : raster;
	if (fewer === undefined || fewer.length > most) return undefined;
	return fewer.at(-1) === length
		? fewer
		: Float64Array.from([...fewer, length]);
}

function sums(
	length: number,
	sizes: readonly Size[],
	most: number,
): Float64Array | undefined {
	const known = new Set([0]);
	for (const { size, count } of sizes) {
		const bases = [...known];
		for (const base of bases) {
			let sum = base + size;
			for (let copy = 0; copy < count && sum <= length; copy++) {
				known.add(sum);
				sum += size;
			}
		}
		if (known.size > most) return undefined;
	}
	return Float64Array.from(known).sort();
}

function facing(length: number, points: Float64Array): Float64Array {
	const known = new Set<number>();
	let at = points.length - 1;
	for (const point of points) {
		while ((points[at] as number) > length - point) at--;
		known.add(points[at] as number);
	}
	return Float64Array.from(known).sort();
}

/**
 * At most about `most` of the cut points, where all would be too many: sums of few parts and what they leave. Patterns
 * over them are sound, but the best may be missed.
 */
export function fewCutPoints(
	length: number,
	sizes: readonly Size[],
	most: number,
): Float64Array {
	const known = new Set([0, length]);
	let last = [0];
	while (known.size < most && last.length > 0) {
		const next: number[] = [];
		for (const { size } of sizes) {
			for (const base of last) {
				const sum = base + size;
				if (sum > length || known.has(sum)) continue;
				known.add(sum);
				next.push(sum);
				if (known.size >= most) break;
			}
			if (known.size >= most) break;
		}
		last = next;
	}
	return Float64Array.from(known).sort();
}
