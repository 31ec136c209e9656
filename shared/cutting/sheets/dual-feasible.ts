// A bound on the number of sheets for any packing, guillotine or not: areas, after sizes are stretched by dual feasible functions.
import type { Kind } from "./problem.ts";

/**
 * The most sheets that a pair of dual feasible functions, one for each axis, proves to be needed (S. Fekete, J. Schepers,
 * New classes of fast lower bounds for bin packing problems, Mathematical Programming 91, 2001; the last family: J. Carlier,
 * F. Clautiaux, A. Moukrim, New reduction procedures and lower bounds for the two-dimensional bin packing problem with
 * fixed orientation, Computers & OR 34, 2007; from memory). A part that may turn counts as it counts least.
 */
export function dualFeasibleBound(
	length: number,
	width: number,
	kinds: readonly Kind[],
	wanted: ArrayLike<number>,
	mostWork: number,
): { readonly sheets: number; readonly work: number } {
	const there = kinds.flatMap((kind, index) =>
		(wanted[index] ?? 0) > 0
			? [
					{
						kind,
						count: wanted[index] ?? 0,
						straight: kind.x <= length && kind.y <= width,
						turned: kind.turns && kind.y <= length && kind.x <= width,
					},
				]
			: [],
	);
	if (there.length === 0) return { sheets: 0, work: 0 };
	const most = Math.max(8, Math.floor(Math.sqrt(mostWork / there.length)));
	const alongX = stretched(length, there, true, most);
	const alongY = stretched(width, there, false, most);
	let best = 0;
	for (const x of alongX)
		for (const y of alongY) {
			let sum = 0;
			for (let i = 0; i < there.length; i++) {
				const { straight, turned } = there[i] as Placeable;
				let area = straight
					? (x[2 * i] as number) * (y[2 * i] as number)
					: Number.POSITIVE_INFINITY;
				if (turned) {
					const other = (x[2 * i + 1] as number) * (y[2 * i + 1] as number);
					if (other < area) area = other;
				}
				sum += area * (there[i]?.count ?? 0);
			}
			if (sum > best) best = sum;
		}
	return {
		sheets: Math.ceil(best - 1e-7),
		work: alongX.length * alongY.length * there.length,
	};
}

interface Placeable {
	readonly kind: Kind;
	readonly count: number;
	readonly straight: boolean;
	readonly turned: boolean;
}

/** By function: the stretched sizes of all parts along an axis, straight and turned. */
function stretched(
	whole: number,
	parts: readonly Placeable[],
	alongX: boolean,
	most: number,
): Float64Array[] {
	const sizes = new Set<number>();
	for (const { kind } of parts) {
		for (const size of kind.turns
			? [kind.x, kind.y]
			: [alongX ? kind.x : kind.y]) {
			if (size <= whole / 2) sizes.add(size);
			else if (size < whole) sizes.add(whole - size);
		}
	}
	const limits = thinned(
		[...sizes].sort((a, b) => a - b),
		Math.max(2, Math.floor((most - 8) / 2)),
	);
	const functions: ((size: number) => number)[] = [(size) => size / whole];
	for (let k = 1; k <= 6; k++)
		functions.push((size) => rounded(size, whole, k));
	for (const limit of limits) {
		functions.push((size) => cutOff(size, whole, limit));
		functions.push((size) => counted(size, whole, limit));
	}
	const tables = functions.map((stretch) => {
		const table = new Float64Array(2 * parts.length);
		parts.forEach(({ kind }, index) => {
			const [one, other] = alongX ? [kind.x, kind.y] : [kind.y, kind.x];
			table[2 * index] = stretch(Math.min(one, whole));
			table[2 * index + 1] = stretch(Math.min(other, whole));
		});
		return table;
	});
	const known = new Set<string>();
	return tables.filter((table) => {
		const key = table.join();
		if (known.has(key)) return false;
		known.add(key);
		return true;
	});
}

function thinned(values: readonly number[], most: number): number[] {
	if (values.length <= most) return [...values];
	return values.filter(
		(_, index) =>
			Math.floor((index * most) / values.length) !==
			Math.floor(((index - 1) * most) / values.length),
	);
}

/** Parts so small that they are below the limit vanish, those that leave less than it fill the whole. */
function cutOff(size: number, whole: number, limit: number): number {
	if (size > whole - limit) return 1;
	return size < limit ? 0 : size / whole;
}

/** Rounded down to k-ths, but for what is a multiple of a (k + 1)-th. */
function rounded(size: number, whole: number, k: number): number {
	const share = (k + 1) * size;
	return share % whole === 0 ? size / whole : Math.floor(share / whole) / k;
}

/** How many pieces of the limit's size a part takes the room of; large parts by what they leave. */
function counted(size: number, whole: number, limit: number): number {
	const most = Math.floor(whole / limit);
	if (size > whole / 2)
		return (most - Math.floor((whole - size) / limit)) / most;
	return size === whole / 2 ? 0.5 : Math.floor(size / limit) / most;
}
