// The best guillotine pattern for given values of the parts: dynamic programming over cut points, any number of stages.
import { cutPoints, fewCutPoints, type Size } from "./points.ts";
import type { Kind } from "./problem.ts";

/** How one sheet is cut, without sizes: a part, or pieces that follow one another along x or y. */
export type Pattern =
	| { readonly kind: number; readonly turned: boolean }
	| { readonly alongX: boolean; readonly pieces: readonly Pattern[] };

/** How thorough a table is. */
export interface Grid {
	/** Sums that one filling may make; cut points are left out until it is so. */
	readonly mostWork: number;
	/**
	 * Only cuts at the size of a part: nearly as good and much less work (F. Furini, E. Malaguti, D. Thomopulos, Modeling
	 * two-dimensional guillotine cutting problems via integer programming, INFORMS J. on Computing 28, 2016; from memory).
	 */
	readonly atParts: boolean;
}

/**
 * Best values of all rectangles between cut points, each part as often as wanted: P. Gilmore, R. Gomory, Multistage
 * cutting stock problems of two and more dimensions, Operations Research 13 (1965), over discretised places as in
 * J. Beasley, Algorithms for unconstrained two-dimensional guillotine cutting, J. Oper. Res. Soc. 36 (1985); from memory.
 * Values are whole numbers, so that sums are exact.
 */
export class PatternTable {
	/** Whether all cuts are there, so that the best value is that of the best pattern. */
	readonly exact: boolean;
	/** Sums made by one filling: what it costs. */
	readonly work: number;
	readonly #kinds: readonly Kind[];
	readonly #x: Points;
	readonly #y: Points;
	/** By kind: its lowest points, straight and turned; -1 if it does not fit. */
	readonly #spots: Int32Array;
	readonly #best: Int32Array;
	#values: ArrayLike<number> = [];

	constructor(
		length: number,
		width: number,
		kinds: readonly Kind[],
		wanted: ArrayLike<number>,
		grid: Grid,
	) {
		this.#kinds = kinds;
		const sizesX = sizesAlong(kinds, wanted, true);
		const sizesY = sizesAlong(kinds, wanted, false);
		const allX = cutPoints(length, sizesX, mostPoints);
		const allY = cutPoints(width, sizesY, mostPoints);
		let x = allX ?? fewCutPoints(length, sizesX, mostPoints);
		let y = allY ?? fewCutPoints(width, sizesY, mostPoints);
		const work = () =>
			grid.atParts
				? x.length * y.length * (sizesX.length + sizesY.length) * 0.6
				: (x.length * y.length * (x.length + y.length)) / 4;
		for (
			let few = mostPoints;
			work() > grid.mostWork && few > fewestPoints;
			few *= 0.9
		) {
			if (x.length > few) x = fewCutPoints(length, sizesX, few);
			if (y.length > few) y = fewCutPoints(width, sizesY, few);
		}
		this.work = work();
		this.exact = x === allX && y === allY && !grid.atParts;
		this.#x = pointsOf(x, grid.atParts ? sizesX : undefined);
		this.#y = pointsOf(y, grid.atParts ? sizesY : undefined);
		this.#best = new Int32Array(x.length * y.length);
		this.#spots = new Int32Array(4 * kinds.length).fill(-1);
		kinds.forEach((kind, index) => {
			this.#spots[4 * index] = lowest(x, kind.x);
			this.#spots[4 * index + 1] = lowest(y, kind.y);
			if (!kind.turns) return;
			this.#spots[4 * index + 2] = lowest(x, kind.y);
			this.#spots[4 * index + 3] = lowest(y, kind.x);
		});
	}

	/**
	 * Fills the table for these values of the kinds, whole numbers (0: not wanted), a sheet full of any of them worth less
	 * than 2^30; returns the value of the best pattern.
	 */
	fill(values: ArrayLike<number>): number {
		this.#values = values;
		const best = this.#best;
		const columns = this.#x.at.length;
		const rows = this.#y.at.length;
		best.fill(0);
		for (let index = 0; index < this.#kinds.length; index++) {
			const value = values[index] as number;
			for (let turn = 0; turn < 4; turn += 2) {
				const i = this.#spots[4 * index + turn] as number;
				const j = this.#spots[4 * index + turn + 1] as number;
				if (i < 0 || j < 0) continue;
				const at = i * rows + j;
				if (value > (best[at] as number)) best[at] = value;
			}
		}
		const { starts: startsX, cuts: cutsX, rests: restsX } = this.#x;
		const { starts: startsY, cuts: cutsY, rests: restsY } = this.#y;
		for (let i = 1; i < columns; i++) {
			const row = i * rows;
			for (let j = 0; j < rows; j++) {
				const before = best[row - rows + j] as number;
				if (before > (best[row + j] as number)) best[row + j] = before;
			}
			const endX = startsX[i + 1] as number;
			for (let cut = startsX[i] as number; cut < endX; cut++) {
				const one = (cutsX[cut] as number) * rows;
				const other = (restsX[cut] as number) * rows;
				for (let j = 0; j < rows; j++) {
					const sum =
						((best[one + j] as number) + (best[other + j] as number)) | 0;
					if (sum > (best[row + j] as number)) best[row + j] = sum;
				}
			}
			for (let j = 1; j < rows; j++) {
				let most = best[row + j] as number;
				const below = best[row + j - 1] as number;
				if (below > most) most = below;
				const endY = startsY[j + 1] as number;
				for (let cut = startsY[j] as number; cut < endY; cut++) {
					const sum =
						((best[row + (cutsY[cut] as number)] as number) +
							(best[row + (restsY[cut] as number)] as number)) |
						0;
					if (sum > most) most = sum;
				}
				best[row + j] = most;
			}
		}
		return best[columns * rows - 1] as number;
	}

	/** The best patterns, each with another first cut, whose value is above `least`; best first, at most so many. */
	patterns(least: number, most: number): Pattern[] {
		const i = this.#x.at.length - 1;
		const j = this.#y.at.length - 1;
		const found: { value: number; make: () => Pattern | undefined }[] = [];
		this.#ways(i, j, (value, alongX, one, other) => {
			if (value <= least) return;
			const make = () =>
				row(alongX, [this.#pattern(...one), this.#pattern(...other)]);
			found.push({ value, make });
		});
		found.sort((a, b) => b.value - a.value);
		const value = this.#valueAt(i, j);
		if (value > least)
			found.unshift({ value, make: () => this.#pattern(i, j) });
		return found.slice(0, most).flatMap(({ make }) => make() ?? []);
	}

	#valueAt(i: number, j: number): number {
		return this.#best[i * this.#y.at.length + j] as number;
	}

	/** Calls back with each cut of a rectangle between points; stops when that returns true. */
	#ways(
		i: number,
		j: number,
		visit: (
			value: number,
			alongX: boolean,
			one: [number, number],
			other: [number, number],
		) => unknown,
	): void {
		const [x, y] = [this.#x, this.#y];
		for (let k = x.starts[i] as number; k < (x.starts[i + 1] as number); k++) {
			const one = x.cuts[k] as number;
			const other = x.rests[k] as number;
			const value = this.#valueAt(one, j) + this.#valueAt(other, j);
			if (visit(value, true, [one, j], [other, j]) === true) return;
		}
		for (let k = y.starts[j] as number; k < (y.starts[j + 1] as number); k++) {
			const one = y.cuts[k] as number;
			const other = y.rests[k] as number;
			const value = this.#valueAt(i, one) + this.#valueAt(i, other);
			if (visit(value, false, [i, one], [i, other]) === true) return;
		}
	}

	/** Which decisions led to a best value, found again by looking. */
	#pattern(fromI: number, fromJ: number): Pattern | undefined {
		let i = fromI;
		let j = fromJ;
		const best = this.#valueAt(i, j);
		if (best <= 0) return undefined;
		for (;;) {
			if (i > 0 && this.#valueAt(i - 1, j) === best) i--;
			else if (j > 0 && this.#valueAt(i, j - 1) === best) j--;
			else break;
		}
		for (let index = 0; index < this.#kinds.length; index++) {
			if (this.#values[index] !== best) continue;
			for (let turn = 0; turn < 4; turn += 2) {
				const atI = this.#spots[4 * index + turn] as number;
				const atJ = this.#spots[4 * index + turn + 1] as number;
				if (atI < 0 || atJ < 0 || atI > i || atJ > j) continue;
				return { kind: index, turned: turn > 0 };
			}
		}
		let pattern: Pattern | undefined;
		this.#ways(i, j, (value, alongX, one, other) => {
			if (value !== best) return false;
			pattern = row(alongX, [this.#pattern(...one), this.#pattern(...other)]);
			return true;
		});
		return pattern;
	}
}

const mostPoints = 2500;
const fewestPoints = 60;

/** Cut points along one axis, and for each stretch that ends at one, where it may be cut and what is left then. */
interface Points {
	readonly at: Float64Array;
	/** By point: where its cuts begin in the two lists. */
	readonly starts: Int32Array;
	readonly cuts: Int32Array;
	readonly rests: Int32Array;
}

function pointsOf(
	at: Float64Array,
	sizes: readonly Size[] | undefined,
): Points {
	const allowed = new Uint8Array(at.length).fill(sizes === undefined ? 1 : 0);
	for (const { size } of sizes ?? []) {
		const point = lowest(at, size);
		if (point >= 0) allowed[point] = 1;
	}
	const starts = new Int32Array(at.length + 1);
	const cuts: number[] = [];
	const rests: number[] = [];
	for (let i = 0; i < at.length; i++) {
		const end = at[i] as number;
		let rest = i;
		for (let a = 1; a < i; a++) {
			const cut = at[a] as number;
			// The other half is the same cuts seen from the other end, if all are there.
			if (sizes === undefined && cut > end / 2) break;
			while ((at[rest] as number) > end - cut) rest--;
			if (allowed[a] === 0 || rest === 0) continue;
			cuts.push(a);
			rests.push(rest);
		}
		starts[i + 1] = cuts.length;
	}
	return {
		at,
		starts,
		cuts: Int32Array.from(cuts),
		rests: Int32Array.from(rests),
	};
}

function row(
	alongX: boolean,
	pieces: readonly (Pattern | undefined)[],
): Pattern | undefined {
	const there = pieces.filter((piece) => piece !== undefined);
	return there.length > 1 ? { alongX, pieces: there } : there[0];
}

function sizesAlong(
	kinds: readonly Kind[],
	wanted: ArrayLike<number>,
	alongX: boolean,
): Size[] {
	const counts = new Map<number, number>();
	kinds.forEach(({ x, y, turns }, index) => {
		const count = wanted[index] ?? 0;
		if (count === 0) return;
		for (const size of turns ? [x, y] : alongX ? [x] : [y])
			counts.set(size, (counts.get(size) ?? 0) + count);
	});
	return [...counts]
		.map(([size, count]) => ({ size, count }))
		.sort((a, b) => b.size - a.size);
}

function lowest(points: Float64Array, size: number): number {
	return points.findIndex((point) => point >= size);
}
