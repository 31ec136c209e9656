// Small systems of linear equations, by elimination with row exchange.

/** Solves rows x = right; undefined where the rows do not determine it or a figure is not finite. The arguments are left alone. */
export function solveLinear(
	rows: readonly (readonly number[])[],
	right: readonly number[],
): readonly number[] | undefined {
	const size = rows.length;
	const m = rows.map((row, i) => [...row, right[i] ?? 0]);
	const cell = (row: number, column: number): number =>
		(m[row] as number[])[column] as number;
	// Rows of very different size are compared by their share, not as they stand.
	const sizes = rows.map((row) => Math.max(...row.map(Math.abs)));
	if (!m.every((row) => row.length === size + 1 && row.every(Number.isFinite)))
		return undefined;
	for (let column = 0; column < size; column++) {
		let pivot = column;
		for (let row = column + 1; row < size; row++) {
			const share = (at: number): number =>
				Math.abs(cell(at, column)) / (sizes[at] as number);
			if (share(row) > share(pivot)) pivot = row;
		}
		if (!(Math.abs(cell(pivot, column)) > 1e-14 * (sizes[pivot] as number)))
			return undefined;
		swap(m, column, pivot);
		swap(sizes, column, pivot);
		for (let row = column + 1; row < size; row++) {
			const factor = cell(row, column) / cell(column, column);
			if (factor === 0) continue;
			for (let k = column; k <= size; k++)
				(m[row] as number[])[k] = cell(row, k) - factor * cell(column, k);
		}
	}
	const found = new Array<number>(size).fill(0);
	for (let row = size - 1; row >= 0; row--) {
		let sum = cell(row, size);
		for (let k = row + 1; k < size; k++)
			sum -= cell(row, k) * (found[k] as number);
		found[row] = sum / cell(row, row);
	}
	return found;
}

function swap<T>(list: T[], a: number, b: number): void {
	const kept = list[a] as T;
	list[a] = list[b] as T;
	list[b] = kept;
}
