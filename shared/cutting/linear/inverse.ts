// The inverse of a basis, kept dense and brought up to date pivot by pivot: bases here have a few hundred rows and columns with few entries.

/**
 * The inverse of a square matrix whose columns are exchanged one at a time (the explicit form of the revised simplex
 * method; Dantzig and Orchard-Hays, "The product form for the inverse in the simplex method", Mathematical Tables and
 * Other Aids to Computation 8, 1954). Row-major: row `i` belongs to the column at position `i` of the basis.
 */
export class Inverse {
	readonly size: number;
	/** Numbers changed since the beginning: what the exchanges cost. */
	work = 0;
	readonly #cells: Float64Array;
	readonly #places: Int32Array;

	/** Starts as the unit matrix. */
	constructor(size: number) {
		this.size = size;
		this.#cells = new Float64Array(size * size);
		this.#places = new Int32Array(size);
		this.reset();
	}

	/** Back to the unit matrix. */
	reset(): void {
		this.#cells.fill(0);
		for (let i = 0; i < this.size; i++) this.#cells[i * this.size + i] = 1;
	}

	/** One row; a view that changes with the next exchange. */
	row(i: number): Float64Array {
		return this.#cells.subarray(i * this.size, (i + 1) * this.size);
	}

	/** Writes inverse × column into `into`; the column as `rows[from..to)`, `values[from..to)`. */
	times(
		rows: Int32Array,
		values: Float64Array,
		from: number,
		to: number,
		into: Float64Array,
	): void {
		const { size } = this;
		const cells = this.#cells;
		into.fill(0);
		for (let k = from; k < to; k++) {
			const value = values[k] as number;
			for (let i = 0, at = rows[k] as number; i < size; i++, at += size)
				into[i] = (into[i] as number) + value * (cells[at] as number);
		}
	}

	/** Writes inverse × vector into `into`. */
	timesDense(vector: Float64Array, into: Float64Array): void {
		const { size } = this;
		const cells = this.#cells;
		for (let i = 0, at = 0; i < size; i++) {
			let sum = 0;
			for (let k = 0; k < size; k++, at++)
				sum += (cells[at] as number) * (vector[k] as number);
			into[i] = sum;
		}
	}

	/** Writes vector × inverse into `into`. */
	vectorTimes(vector: Float64Array, into: Float64Array): void {
		const { size } = this;
		const cells = this.#cells;
		into.fill(0);
		for (let i = 0; i < size; i++) {
			const value = vector[i] as number;
			if (value === 0) continue;
			for (let k = 0, at = i * size; k < size; k++, at++)
				into[k] = (into[k] as number) + value * (cells[at] as number);
		}
	}

	/** The column at `position` is exchanged for one of which `direction` = inverse × column is known, and not zero there. */
	exchange(position: number, direction: Float64Array): void {
		const { size } = this;
		const cells = this.#cells;
		const pivot = direction[position] as number;
		const start = position * size;
		// Rows of an inverse are sparse as long as the basis is: only what is there is carried on.
		let used = 0;
		const places = this.#places;
		for (let k = 0; k < size; k++) {
			const cell = cells[start + k] as number;
			if (cell === 0) continue;
			cells[start + k] = cell / pivot;
			places[used++] = k;
		}
		for (let i = 0; i < size; i++) {
			const factor = direction[i] as number;
			if (i === position || factor === 0) continue;
			const base = i * size;
			this.work += used;
			for (let u = 0; u < used; u++) {
				const k = places[u] as number;
				cells[base + k] =
					(cells[base + k] as number) - factor * (cells[start + k] as number);
			}
		}
		this.work += size;
	}

	/**
	 * The inverse anew, of `columns` given by `read(column, into)` (which writes a dense column), so that rounding does not
	 * add up. Columns with few entries should come first. Returns, by position, the index of the column that ended there
	 * (-1: its unit column stayed because no column had anything left for it).
	 */
	rebuild(
		columns: number,
		read: (column: number, into: Float64Array) => void,
	): Int32Array {
		const { size } = this;
		this.reset();
		const at = new Int32Array(size).fill(-1);
		const dense = new Float64Array(size);
		const direction = new Float64Array(size);
		for (let column = 0; column < columns; column++) {
			dense.fill(0);
			read(column, dense);
			direction.fill(0);
			const cells = this.#cells;
			for (let k = 0; k < size; k++) {
				const value = dense[k] as number;
				if (value === 0) continue;
				this.work += size;
				for (let i = 0, cell = k; i < size; i++, cell += size)
					direction[i] =
						(direction[i] as number) + value * (cells[cell] as number);
			}
			let best = -1;
			for (let i = 0; i < size; i++)
				if (
					at[i] === -1 &&
					(best === -1 ||
						Math.abs(direction[i] as number) >
							Math.abs(direction[best] as number))
				)
					best = i;
			if (best === -1 || Math.abs(direction[best] as number) < 1e-7) continue;
			this.exchange(best, direction);
			at[best] = column;
		}
		return at;
	}
}
