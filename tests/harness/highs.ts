// A solver from outside for linear programs: HiGHS (Huangfu and Hall, "Parallelizing the dual revised simplex method", Mathematical
// Programming Computation 10, 2018), by the npm package `highs`.

import highs from "highs";

// The package declares its types as those of a CommonJS module, but is imported as an ES module: the default is the loader itself.
const loadHighs = highs as unknown as typeof highs.default;

/** Least `cost · x` with `A x >= needs`, `x >= 0`. */
export interface Program {
	readonly needs: readonly number[];
	readonly columns: readonly {
		readonly cost: number;
		/** One for each need. */
		readonly entries: readonly number[];
	}[];
}

/** The least value, or "infeasible" or "unbounded". */
export type Verdict = number | "infeasible" | "unbounded";

/** A function that asks HiGHS; with `whole`, x must be whole numbers. */
export async function highsSolver(): Promise<
	(program: Program, whole?: boolean) => Verdict
> {
	const solver = await loadHighs();
	return (program, whole = false) => {
		const solution = solver.solve(textOf(program, whole), { presolve: "off" });
		if (solution.Status === "Optimal") return solution.ObjectiveValue;
		if (solution.Status === "Infeasible") return "infeasible";
		if (solution.Status === "Unbounded") return "unbounded";
		throw new Error(`HiGHS says ${solution.Status}`);
	};
}

/** CPLEX's LP format. A row without entries is given a variable that is held at zero. */
function textOf({ needs, columns }: Program, whole: boolean): string {
	const term = (value: number, name: string) =>
		value === 0 ? "" : ` ${value < 0 ? "-" : "+"} ${Math.abs(value)} ${name}`;
	const names = columns.map((_, index) => `x${index}`);
	const sum = (entryOf: (column: (typeof columns)[number]) => number) =>
		columns
			.map((column, index) => term(entryOf(column), names[index] as string))
			.join("\n");
	return [
		"Minimize",
		` cost: 0 zero ${sum(({ cost }) => cost)}`,
		"Subject To",
		...needs.map(
			(need, row) =>
				` r${row}: 0 zero ${sum(({ entries }) => entries[row] as number)} >= ${need}`,
		),
		"Bounds",
		" zero = 0",
		...(whole ? ["General", names.join("\n")] : []),
		"End",
		"",
	].join("\n");
}
