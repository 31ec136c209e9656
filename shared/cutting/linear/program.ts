// Linear programs that grow by columns while they are solved: what both optimisers ask their bounds and their best patterns of.

import { Inverse } from "./inverse.ts";

/** Reduced costs and values that differ from zero by less are zero. */
const tolerance = 1e-9;
/** More than this below zero is a value that has to be mended. */
const infeasible = 1e-7;
/** Exchanges between two fresh inverses. */
const freshAfter = 150;

/**
 * `optimal`; `infeasible`: no plan with these columns, `duals` is then a proof (duals × A <= 0 column by column, duals ×
 * needs > 0) and tells which column would help: one with duals × column > 0; `unbounded`; `stopped`: the pivots ran out.
 */
export type Outcome = "optimal" | "infeasible" | "unbounded" | "stopped";

/**
 * Least `cost · x` with `A x >= needs`, `x >= 0`, where columns of A may be added, costs and needs changed between solves;
 * each solve starts from the basis of the last one. An upper limit is a row with negative entries and a negative need.
 *
 * Revised simplex method with an explicit inverse: two phases, the dual method after needs have changed, Dantzig's choice of
 * the column (first index on ties), and Bland's rule ("New finite pivoting rules for the simplex method", Mathematics of
 * Operations Research 2, 1977) while a vertex holds on. The same calls give the same answers everywhere.
 */
export class LinearProgram {
	readonly rows: number;
	/** Exchanges made since the beginning: a measure of work that is the same everywhere. */
	pivots = 0;
	#needs: Float64Array;
	#columns = 0;
	#costs = new Float64Array(64);
	#starts = new Int32Array(65);
	#rowsOf = new Int32Array(256);
	#values = new Float64Array(256);
	/** By column: its position in the basis, or -1. */
	#places = new Int32Array(64).fill(-1);
	#surplusPlaces: Int32Array;
	/** By position: a column, `-1 - row` for the surplus of a row, `-1 - rows - row` for the artificial one. */
	#basis: Int32Array;
	#inverse: Inverse;
	#x: Float64Array;
	#prices: Float64Array;
	#direction: Float64Array;
	#scratch: Float64Array;
	#sinceFresh = 0;
	/** Exchanges since the prices were worked out from the basis. */
	#pricesAge = 0;
	#stale = true;
	#dualFeasible = false;
	#objective = 0;

	/** One row for each need; needs may be negative. */
	constructor(needs: ArrayLike<number>) {
		const rows = needs.length;
		this.rows = rows;
		this.#needs = Float64Array.from(needs);
		this.#inverse = new Inverse(rows);
		this.#basis = new Int32Array(rows);
		this.#surplusPlaces = new Int32Array(rows);
		this.#x = new Float64Array(rows);
		this.#prices = new Float64Array(rows);
		this.#direction = new Float64Array(rows);
		this.#scratch = new Float64Array(rows);
		this.#startOver();
	}

	get columns(): number {
		return this.#columns;
	}

	/** Numbers of the inverse changed since the beginning: a finer measure than `pivots`. */
	get work(): number {
		return this.#inverse.work;
	}

	/** Of the last solve: cost · x if optimal, what is missing if infeasible. */
	get objective(): number {
		return this.#objective;
	}

	/** A price for each row, none negative: of the last solve. */
	get duals(): Float64Array {
		return this.#prices.map((price) => Math.max(0, price));
	}

	/** How much of a column the last solve takes. */
	value(column: number): number {
		const place = this.#places[column] as number;
		return place < 0 ? 0 : Math.max(0, this.#x[place] as number);
	}

	/** The columns in the basis, in the order in which they were added. */
	basic(): number[] {
		return [...this.#basis].filter((one) => one >= 0).sort((a, b) => a - b);
	}

	/** Adds a column with `values[k]` in row `rows[k]` (each row at most once); returns its index. */
	addColumn(
		cost: number,
		rows: ArrayLike<number>,
		values: ArrayLike<number>,
	): number {
		const column = this.#columns++;
		const from = this.#starts[column] as number;
		const to = from + rows.length;
		if (column + 1 >= this.#costs.length) {
			this.#costs = grown(this.#costs, new Float64Array(2 * column + 2));
			this.#places = grown(
				this.#places,
				new Int32Array(2 * column + 2).fill(-1),
			);
			this.#starts = grown(this.#starts, new Int32Array(2 * column + 3));
		}
		if (to > this.#values.length) {
			this.#values = grown(this.#values, new Float64Array(2 * to));
			this.#rowsOf = grown(this.#rowsOf, new Int32Array(2 * to));
		}
		for (let k = 0; k < rows.length; k++) {
			this.#rowsOf[from + k] = rows[k] as number;
			this.#values[from + k] = values[k] as number;
		}
		this.#starts[column + 1] = to;
		this.#costs[column] = cost;
		this.#dualFeasible = false;
		return column;
	}

	/** Changes what a row needs; the next solve mends the plan by the dual method. */
	setNeed(row: number, need: number): void {
		if (this.#needs[row] === need) return;
		this.#needs[row] = need;
		this.#stale = true;
	}

	/** Changes the cost of a column. */
	setCost(column: number, cost: number): void {
		if (this.#costs[column] === cost) return;
		this.#costs[column] = cost;
		this.#dualFeasible = false;
	}

	/** Solves, with at most so many exchanges. */
	solve(mostPivots = Number.POSITIVE_INFINITY): Outcome {
		const end = this.pivots + mostPivots;
		if (this.#stale) {
			this.#inverse.timesDense(this.#needs, this.#x);
			this.#stale = false;
		}
		if (this.#below()) {
			const outcome = this.#dualFeasible ? this.#mend(end) : "lost";
			if (outcome === "stopped") return "stopped";
			if (outcome === "lost") this.#startOver();
		}
		this.#dualFeasible = false;
		if (this.#missing() > infeasible) {
			const outcome = this.#improve(true, end);
			if (outcome !== "optimal") return outcome;
			this.#objective = this.#missing();
			if (this.#objective > infeasible) return "infeasible";
		}
		const outcome = this.#improve(false, end);
		this.#objective = 0;
		for (let i = 0; i < this.rows; i++) {
			const one = this.#basis[i] as number;
			if (one >= 0)
				this.#objective +=
					(this.#costs[one] as number) * Math.max(0, this.#x[i] as number);
		}
		this.#dualFeasible = outcome === "optimal";
		return outcome;
	}

	/** The basis of surplus columns, and of artificial ones where something is needed. */
	#startOver(): void {
		const { rows } = this;
		this.#places.fill(-1);
		this.#surplusPlaces.fill(-1);
		for (let row = 0; row < rows; row++)
			this.#setBasic(
				row,
				(this.#needs[row] as number) > 0 ? -1 - rows - row : -1 - row,
			);
		this.#refresh();
		this.#dualFeasible = false;
	}

	#setBasic(position: number, one: number): void {
		this.#basis[position] = one;
		if (one >= 0) this.#places[one] = position;
		else if (one >= -this.rows) this.#surplusPlaces[-1 - one] = position;
	}

	/** The inverse and the values anew from the basis. */
	#refresh(): void {
		const { rows } = this;
		// Columns with one entry first: the inverse then fills up least.
		const order = [...this.#basis].sort(
			(a, b) => this.#entries(a) - this.#entries(b) || a - b,
		);
		const at = this.#inverse.rebuild(rows, (index, into) => {
			const one = order[index] as number;
			if (one < -rows) into[-1 - rows - one] = 1;
			else if (one < 0) into[-1 - one] = -1;
			else
				for (
					let k = this.#starts[one] as number;
					k < (this.#starts[one + 1] as number);
					k++
				)
					into[this.#rowsOf[k] as number] = this.#values[k] as number;
		});
		this.#places.fill(-1);
		this.#surplusPlaces.fill(-1);
		// A column that turned out to depend on the others gives way to the artificial one of its row.
		for (let i = 0; i < rows; i++)
			this.#setBasic(
				i,
				at[i] === -1 ? -1 - rows - i : (order[at[i] as number] as number),
			);
		this.#inverse.timesDense(this.#needs, this.#x);
		this.#sinceFresh = 0;
		this.#stale = false;
	}

	#entries(one: number): number {
		return one < 0
			? 1
			: (this.#starts[one + 1] as number) - (this.#starts[one] as number);
	}

	/** The order that Bland's rule goes by: columns as they were added, surplus, artificial. */
	#rank(one: number): number {
		return one >= 0 ? one : this.#columns - 1 - one;
	}

	#isArtificial(one: number): boolean {
		return one < -this.rows;
	}

	#below(): boolean {
		return this.#x.some((value) => value < -infeasible);
	}

	/** How much the artificial columns still carry. */
	#missing(): number {
		let sum = 0;
		for (let i = 0; i < this.rows; i++)
			if (this.#isArtificial(this.#basis[i] as number))
				sum += Math.max(0, this.#x[i] as number);
		return sum;
	}

	/** Prices of the rows anew, for the costs of this phase. */
	#priceRows(first: boolean): void {
		for (let i = 0; i < this.rows; i++) {
			const one = this.#basis[i] as number;
			this.#scratch[i] = first
				? Number(this.#isArtificial(one))
				: one >= 0
					? (this.#costs[one] as number)
					: 0;
		}
		this.#inverse.vectorTimes(this.#scratch, this.#prices);
		this.#pricesAge = 0;
	}

	#reduced(column: number, first: boolean): number {
		let cost = first ? 0 : (this.#costs[column] as number);
		const end = this.#starts[column + 1] as number;
		for (let k = this.#starts[column] as number; k < end; k++)
			cost -=
				(this.#prices[this.#rowsOf[k] as number] as number) *
				(this.#values[k] as number);
		return cost;
	}

	/** The column to bring in, as in `#basis`; undefined if none helps. */
	#entering(first: boolean, bland: boolean): number | undefined {
		let best: number | undefined;
		let least = -tolerance;
		for (let column = 0; column < this.#columns; column++) {
			if ((this.#places[column] as number) >= 0) continue;
			const reduced = this.#reduced(column, first);
			if (reduced >= least) continue;
			if (bland) return column;
			least = reduced;
			best = column;
		}
		for (let row = 0; row < this.rows; row++) {
			const price = this.#prices[row] as number;
			if (price >= least || (this.#surplusPlaces[row] as number) >= 0) continue;
			if (bland) return -1 - row;
			least = price;
			best = -1 - row;
		}
		return best;
	}

	/** Writes inverse × column into `#direction`. */
	#towards(one: number): void {
		if (one >= 0)
			this.#inverse.times(
				this.#rowsOf,
				this.#values,
				this.#starts[one] as number,
				this.#starts[one + 1] as number,
				this.#direction,
			);
		else
			for (let i = 0; i < this.rows; i++)
				this.#direction[i] = -(this.#inverse.row(i)[-1 - one] as number);
	}

	/** The position that gives way to the entering column, or -1. */
	#leaving(first: boolean, bland: boolean): number {
		let best = -1;
		let step = Number.POSITIVE_INFINITY;
		for (let i = 0; i < this.rows; i++) {
			const slope = this.#direction[i] as number;
			const one = this.#basis[i] as number;
			// In the second phase an artificial column may not grow again: it leaves as soon as anything would move it.
			const held = !first && this.#isArtificial(one);
			if (held ? Math.abs(slope) <= 1e-7 : slope <= tolerance) continue;
			const most = held
				? 0
				: Math.max(0, this.#x[i] as number) / Math.abs(slope);
			if (best === -1 || most < step - 1e-12) {
				best = i;
				step = most;
			} else if (most <= step + 1e-12) {
				const better = bland
					? this.#rank(one) < this.#rank(this.#basis[best] as number)
					: Math.abs(slope) > Math.abs(this.#direction[best] as number);
				if (better) {
					best = i;
					step = Math.min(step, most);
				}
			}
		}
		return best;
	}

	/** The primal method, from a basis without negative values. */
	#improve(first: boolean, end: number): Outcome {
		let held = 0;
		let tried = 0;
		this.#priceRows(first);
		while (this.pivots < end) {
			const bland = held > 2 * this.rows + 20;
			const enters = this.#entering(first, bland);
			if (enters === undefined) {
				const sure = this.#pricesAge === 0;
				if (sure && (this.#sinceFresh === 0 || this.#isSound()))
					return "optimal";
				if (sure) this.#refresh();
				this.#priceRows(first);
				continue;
			}
			this.#towards(enters);
			const position = this.#leaving(first, bland);
			if (position === -1) return "unbounded";
			const pivot = this.#direction[position] as number;
			// A pivot this small may be rounding: look again with a fresh inverse before it is used.
			if (Math.abs(pivot) < 1e-7 && this.#sinceFresh > 0 && tried < 3) {
				tried++;
				this.#refresh();
				this.#priceRows(first);
				continue;
			}
			tried = 0;
			const step = this.#isHeld(position, first)
				? 0
				: Math.max(0, this.#x[position] as number) / pivot;
			held = step > tolerance ? 0 : held + 1;
			this.#exchange(position, enters, step, first);
		}
		return "stopped";
	}

	#isHeld(position: number, first: boolean): boolean {
		return !first && this.#isArtificial(this.#basis[position] as number);
	}

	/** Moves by `step` along the direction, exchanges the columns and brings the prices of the rows up to date. */
	#exchange(
		position: number,
		enters: number,
		step: number,
		first: boolean,
	): void {
		const leaves = this.#basis[position] as number;
		const reduced =
			enters >= 0
				? this.#reduced(enters, first)
				: (this.#prices[-1 - enters] as number);
		this.#inverse.exchange(position, this.#direction);
		const row = this.#inverse.row(position);
		for (let k = 0; k < this.rows; k++)
			this.#prices[k] =
				(this.#prices[k] as number) + reduced * (row[k] as number);
		this.#pricesAge++;
		for (let i = 0; i < this.rows; i++)
			this.#x[i] =
				(this.#x[i] as number) - step * (this.#direction[i] as number);
		this.#x[position] = step;
		if (leaves >= 0) this.#places[leaves] = -1;
		else if (!this.#isArtificial(leaves)) this.#surplusPlaces[-1 - leaves] = -1;
		this.#setBasic(position, enters);
		this.pivots++;
		this.#sinceFresh++;
		if (this.#sinceFresh >= freshAfter) {
			this.#refresh();
			this.#priceRows(first);
		}
	}

	/** Whether the values still satisfy the rows, and none has slipped below zero. */
	#isSound(): boolean {
		const { rows } = this;
		const sums = this.#scratch.fill(0);
		let largest = 1;
		for (let i = 0; i < rows; i++) {
			const one = this.#basis[i] as number;
			const x = this.#x[i] as number;
			if (x < -infeasible) return false;
			largest = Math.max(largest, Math.abs(x));
			if (this.#isArtificial(one))
				sums[-1 - rows - one] = (sums[-1 - rows - one] as number) + x;
			else if (one < 0) sums[-1 - one] = (sums[-1 - one] as number) - x;
			else
				for (
					let k = this.#starts[one] as number;
					k < (this.#starts[one + 1] as number);
					k++
				) {
					const row = this.#rowsOf[k] as number;
					sums[row] = (sums[row] as number) + (this.#values[k] as number) * x;
				}
		}
		return sums.every(
			(sum, row) =>
				Math.abs(sum - (this.#needs[row] as number)) < 1e-9 * largest,
		);
	}

	/**
	 * The dual method (Lemke, "The dual method of solving the linear programming problem", Naval Research Logistics Quarterly
	 * 1, 1954), from an optimal basis whose needs have changed; the row that leaves is the one that is furthest off, measured along
	 * the edge that it leaves by (Forrest and Goldfarb, "Steepest-edge simplex algorithms for linear programming", Mathematical
	 * Programming 57, 1992). `lost`: it does not get there, begin anew.
	 */
	#mend(end: number): "mended" | "stopped" | "lost" {
		const most = this.pivots + 20 + 3 * this.rows;
		this.#priceRows(false);
		while (this.pivots < end && this.pivots < most) {
			let position = -1;
			let furthest = 0;
			for (let i = 0; i < this.rows; i++) {
				const x = this.#x[i] as number;
				if (x >= -infeasible) continue;
				const row = this.#inverse.row(i);
				let norm = 0;
				for (let k = 0; k < this.rows; k++)
					norm += (row[k] as number) * (row[k] as number);
				if ((x * x) / norm > furthest) {
					furthest = (x * x) / norm;
					position = i;
				}
			}
			if (position === -1) return "mended";
			const enters = this.#enteringDual(position);
			if (enters === undefined) return "lost";
			this.#towards(enters);
			const pivot = this.#direction[position] as number;
			if (Math.abs(pivot) < 1e-7) return "lost";
			this.#exchange(
				position,
				enters,
				(this.#x[position] as number) / pivot,
				false,
			);
		}
		if (!this.#below()) return "mended";
		return this.pivots < end ? "lost" : "stopped";
	}

	/** The column that enters so that no reduced cost becomes negative when `position` leaves. */
	#enteringDual(position: number): number | undefined {
		const row = this.#inverse.row(position);
		let best: number | undefined;
		let ratio = Number.POSITIVE_INFINITY;
		let slopeOfBest = 0;
		const weigh = (one: number, slope: number, reduced: number) => {
			if (slope >= -1e-7) return;
			const now = Math.max(0, reduced) / -slope;
			if (now < ratio - 1e-12 || (now <= ratio && slope < slopeOfBest)) {
				ratio = Math.min(ratio, now);
				best = one;
				slopeOfBest = slope;
			}
		};
		for (let column = 0; column < this.#columns; column++) {
			if ((this.#places[column] as number) >= 0) continue;
			let slope = 0;
			const end = this.#starts[column + 1] as number;
			for (let k = this.#starts[column] as number; k < end; k++)
				slope +=
					(row[this.#rowsOf[k] as number] as number) *
					(this.#values[k] as number);
			if (slope < 0) weigh(column, slope, this.#reduced(column, false));
		}
		for (let i = 0; i < this.rows; i++)
			if ((this.#surplusPlaces[i] as number) < 0)
				weigh(-1 - i, -(row[i] as number), this.#prices[i] as number);
		return best;
	}
}

function grown<T extends Float64Array | Int32Array>(old: T, larger: T): T {
	larger.set(old);
	return larger;
}
