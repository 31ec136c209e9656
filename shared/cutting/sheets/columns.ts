// Column generation: fractions of patterns that make all parts at the least cost, and a bound that no plan can beat.
import { LinearProgram } from "../linear/index.ts";
import { type Grid, type Pattern, PatternTable } from "./patterns.ts";
import type { Problem } from "./problem.ts";

export interface Column {
	/** Index into the problem's blanks. */
	readonly blank: number;
	readonly pattern: Pattern;
	/** Parts it makes, by kind. */
	readonly counts: ReadonlyMap<number, number>;
}

/**
 * P. Gilmore, R. Gomory, A linear programming approach to the cutting-stock problem, Operations Research 9 (1961), with
 * guillotine patterns of any depth; bound after A. Farley, A note on bounding a class of linear programming problems,
 * Operations Research 38 (1990); from memory.
 */
export class Columns {
	readonly columns: Column[] = [];
	/** No plan costs less: of the costs given, proven if the tables are exact. */
	bound = 0;
	/** Nothing left to generate. */
	finished = false;
	spent = 0;
	readonly #problem: Problem;
	readonly #costs: readonly number[];
	readonly #program: LinearProgram;
	readonly #rows: readonly number[];
	#tables: readonly PatternTable[] = [];
	readonly #limited: readonly number[];
	readonly #known = new Set<string>();
	readonly #lacking: number[] = [];
	#wanted: ArrayLike<number>;

	constructor(
		problem: Problem,
		wanted: ArrayLike<number>,
		costs: readonly number[],
	) {
		this.#problem = problem;
		this.#costs = costs;
		this.#wanted = wanted;
		this.#rows = problem.kinds.flatMap((_, kind) =>
			(wanted[kind] ?? 0) > 0 ? [kind] : [],
		);
		this.#limited = problem.blanks.flatMap(({ count }, blank) =>
			Number.isFinite(count) ? [blank] : [],
		);
		this.#program = new LinearProgram([
			...this.#rows.map((kind) => wanted[kind] ?? 0),
			...this.#limited.map((blank) => -(problem.blanks[blank]?.count ?? 0)),
		]);
		// A part that is not made costs more than any sheet.
		const dear = 1000 * Math.max(1, ...costs);
		this.#rows.forEach((_, row) => {
			this.#lacking.push(this.#program.addColumn(dear, [row], [1]));
		});
	}

	/** From now on patterns come from tables like this. */
	useGrid(grid: Grid): void {
		const { kinds, blanks } = this.#problem;
		const mostWork = grid.mostWork / blanks.length;
		this.#tables = blanks.map(
			({ x, y }) =>
				new PatternTable(x, y, kinds, this.#wanted, { ...grid, mostWork }),
		);
		this.finished = false;
	}

	get exact(): boolean {
		return this.#tables.every(({ exact }) => exact);
	}

	/** What the tables cost in one round. */
	get work(): number {
		return this.#tables.reduce((sum, { work }) => sum + work, 0);
	}

	/** Adds a pattern as a column, if it is new. */
	add(blank: number, pattern: Pattern): boolean {
		const counts = new Map<number, number>();
		countParts(pattern, counts);
		const key = `${blank}:${[...counts].sort(([a], [b]) => a - b).join(" ")}`;
		if (this.#known.has(key)) return false;
		this.#known.add(key);
		const rows: number[] = [];
		const values: number[] = [];
		this.#rows.forEach((kind, row) => {
			const count = counts.get(kind);
			if (count === undefined) return;
			rows.push(row);
			values.push(count);
		});
		const limit = this.#limited.indexOf(blank);
		if (limit >= 0) {
			rows.push(this.#rows.length + limit);
			values.push(-1);
		}
		this.#program.addColumn(this.#costs[blank] ?? 0, rows, values);
		this.columns.push({ blank, pattern, counts });
		return true;
	}

	/** One round: solves, prices, adds what would help. */
	round(): void {
		const pivots = this.#program.pivots;
		this.#program.solve();
		const size = this.#rows.length + this.#limited.length;
		this.spent +=
			(this.#program.pivots - pivots + 1) *
			(size * size + 4 * this.columns.length);
		const { kinds, blanks } = this.#problem;
		const { duals } = this.#program;
		// Prices in multiples of a power of two, so that their sums are exact, and so is the bound.
		let dearest = 0;
		let largest = 0;
		this.#rows.forEach((kind, row) => {
			dearest = Math.max(dearest, (duals[row] ?? 0) / (kinds[kind]?.area ?? 1));
		});
		for (const { x, y } of blanks) largest = Math.max(largest, x * y);
		if (dearest === 0) {
			this.finished = true;
			return;
		}
		const grain = 2 ** Math.floor(Math.log2(2 ** 30 / (dearest * largest)));
		const values = new Int32Array(kinds.length);
		let worth = 0;
		this.#rows.forEach((kind, row) => {
			values[kind] = Math.floor((duals[row] ?? 0) * grain);
			worth += ((values[kind] as number) * (this.#wanted[kind] ?? 0)) / grain;
		});
		let added = 0;
		const most = this.#tables.map((table, blank) => {
			this.spent += table.work;
			const limit = this.#limited.indexOf(blank);
			const least =
				(this.#costs[blank] ?? 0) +
				(limit < 0 ? 0 : (duals[this.#rows.length + limit] ?? 0));
			const value = table.fill(values);
			const toBeat = least * grain * (1 + tolerance) + 1;
			if (value > toBeat)
				for (const pattern of table.patterns(toBeat, perRound))
					if (this.add(blank, pattern)) added++;
			return value / grain;
		});
		if (this.exact)
			this.bound = Math.max(this.bound, this.#farley(worth, most));
		this.finished = added === 0;
	}

	/** The prices scaled down until no unlimited blank is worth more than it costs; limited ones pay for the rest. */
	#farley(worth: number, most: readonly number[]): number {
		let scale = 1;
		const { blanks } = this.#problem;
		most.forEach((value, blank) => {
			if (!Number.isFinite(blanks[blank]?.count) && value > 0)
				scale = Math.min(scale, (this.#costs[blank] ?? 0) / value);
		});
		let bound = scale * worth;
		for (const blank of this.#limited) {
			const over = scale * (most[blank] ?? 0) - (this.#costs[blank] ?? 0);
			bound -= (blanks[blank]?.count ?? 0) * Math.max(0, over);
		}
		return bound;
	}

	/** How much of each column the last solution takes. */
	values(): number[] {
		return this.columns.map((_, index) =>
			this.#program.value(index + this.#lacking.length),
		);
	}

	/** Parts that the last solution does not make. */
	get lacking(): number {
		return this.#lacking.reduce(
			(sum, column) => sum + this.#program.value(column),
			0,
		);
	}

	get objective(): number {
		return this.#program.objective;
	}
}

const tolerance = 1e-7;
const perRound = 6;

function countParts(pattern: Pattern, counts: Map<number, number>): void {
	if ("kind" in pattern)
		counts.set(pattern.kind, (counts.get(pattern.kind) ?? 0) + 1);
	else for (const piece of pattern.pieces) countParts(piece, counts);
}
