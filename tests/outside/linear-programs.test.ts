// The simplex method beside a solver from outside, on programs of every kind: feasible or not, bounded or not, grown by columns.

import fc from "fast-check";
import { expect, test } from "vitest";
import { LinearProgram } from "../../shared/cutting/linear/index.ts";
import { highsSolver, type Program } from "../harness/highs.ts";

const ask = await highsSolver();

const programs = fc
	.record({
		rows: fc.integer({ min: 1, max: 8 }),
		columns: fc.integer({ min: 0, max: 14 }),
		few: fc.boolean(),
	})
	.chain(({ rows, columns, few }) =>
		fc.record({
			needs: fc.array(fc.integer({ min: -4, max: 9 }), {
				minLength: rows,
				maxLength: rows,
			}),
			columns: fc.array(
				fc.record({
					cost: fc.integer({ min: -1, max: 12 }),
					entries: fc.array(
						few
							? fc.constantFrom(0, 0, 0, 1, 1, 2)
							: fc.integer({ min: -3, max: 5 }),
						{ minLength: rows, maxLength: rows },
					),
				}),
				{ minLength: columns, maxLength: columns },
			),
		}),
	);

function programOf({ needs }: Program): LinearProgram {
	return new LinearProgram(needs);
}

function add(
	program: LinearProgram,
	{ cost, entries }: Program["columns"][number],
): void {
	const rows = [...entries.keys()].filter((row) => entries[row] !== 0);
	program.addColumn(
		cost,
		rows,
		rows.map((row) => entries[row] as number),
	);
}

/** What the program says of itself must prove itself, whatever anybody else says. */
function prove(program: LinearProgram, model: Program): void {
	const duals = [...program.duals];
	const x = model.columns.map((_, index) => program.value(index));
	model.needs.forEach((need, row) => {
		const got = model.columns.reduce(
			(sum, { entries }, index) =>
				sum + (entries[row] as number) * (x[index] as number),
			0,
		);
		expect(got).toBeGreaterThan(need - 1e-6);
	});
	for (const { cost, entries } of model.columns)
		expect(
			entries.reduce(
				(sum, entry, row) => sum + entry * (duals[row] as number),
				0,
			),
		).toBeLessThan(cost + 1e-6);
	const worth = model.needs.reduce(
		(sum, need, row) => sum + need * (duals[row] as number),
		0,
	);
	expect(worth).toBeCloseTo(program.objective, 6);
}

function compare(program: LinearProgram, model: Program): void {
	const outcome = program.solve();
	const verdict = ask(model);
	if (typeof verdict === "number") {
		expect(outcome).toBe("optimal");
		expect(program.objective).toBeCloseTo(verdict, 6);
		prove(program, model);
	} else expect(outcome).toBe(verdict);
}

test("The least value is that of HiGHS, and the prices prove it", () => {
	fc.assert(
		fc.property(programs, (model) => {
			const program = programOf(model);
			for (const column of model.columns) add(program, column);
			compare(program, model);
		}),
		{ numRuns: 400 },
	);
});

test("Columns that come later and needs that change lead to the same value as a fresh start", () => {
	fc.assert(
		fc.property(
			programs,
			fc.array(fc.integer({ min: -4, max: 9 }), {
				minLength: 8,
				maxLength: 8,
			}),
			(model, others) => {
				const program = programOf(model);
				const half = model.columns.length >> 1;
				for (const column of model.columns.slice(0, half)) add(program, column);
				program.solve();
				for (const column of model.columns.slice(half)) add(program, column);
				compare(program, model);
				const needs = model.needs.map((_, row) => others[row] as number);
				needs.forEach((need, row) => {
					program.setNeed(row, need);
				});
				compare(program, { ...model, needs });
				const columns = model.columns.map((column, index) => ({
					...column,
					cost: (column.cost + index) % 7,
				}));
				columns.forEach(({ cost }, index) => {
					program.setCost(index, cost);
				});
				compare(program, { needs, columns });
			},
		),
		{ numRuns: 150 },
	);
});
