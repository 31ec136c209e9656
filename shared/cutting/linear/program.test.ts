import { expect, test } from "vitest";
import { LinearProgram } from "./program.ts";

test("The cheaper of two ways is taken, and the price says what one more costs", () => {
	// 10 of one part: a board of 3 for 2 costs 10 / 3 × 2 = 6.67, a board of 1 for 1 costs 10.
	const program = new LinearProgram([10]);
	program.addColumn(1, [0], [1]);
	const three = program.addColumn(2, [0], [3]);
	expect(program.solve()).toBe("optimal");
	expect(program.objective).toBeCloseTo(20 / 3, 9);
	expect(program.value(three)).toBeCloseTo(10 / 3, 9);
	expect(program.duals[0]).toBeCloseTo(2 / 3, 9);
});

test("A column that is added later is used", () => {
	const program = new LinearProgram([4, 4]);
	program.addColumn(1, [0], [1]);
	program.addColumn(1, [1], [1]);
	program.solve();
	expect(program.objective).toBeCloseTo(8, 9);
	program.addColumn(1, [0, 1], [1, 1]);
	expect(program.solve()).toBe("optimal");
	expect(program.objective).toBeCloseTo(4, 9);
});

test("An upper limit is a row of negative entries", () => {
	// At most 2 of the column that costs nothing: 5 - 2 = 3 have to be bought.
	const program = new LinearProgram([5, -2]);
	program.addColumn(0, [0, 1], [1, -1]);
	program.addColumn(1, [0], [1]);
	expect(program.solve()).toBe("optimal");
	expect(program.objective).toBeCloseTo(3, 9);
	// One more in the shop would save 1.
	expect(program.duals[1]).toBeCloseTo(1, 9);
});

test("What cannot be had is told, with prices by which to look for a column", () => {
	const program = new LinearProgram([1, 1]);
	program.addColumn(1, [0], [1]);
	expect(program.solve()).toBe("infeasible");
	expect(program.duals[1]).toBeGreaterThan(0);
	program.addColumn(7, [1], [1]);
	expect(program.solve()).toBe("optimal");
	expect(program.objective).toBeCloseTo(8, 9);
});

test("Needs that change are met from the basis of before", () => {
	const program = new LinearProgram([3, 5]);
	program.addColumn(1, [0], [1]);
	program.addColumn(1, [0, 1], [1, 2]);
	program.solve();
	// 2.5 of the second column, 0.5 of the first.
	expect(program.objective).toBeCloseTo(3, 9);
	program.setNeed(0, 1);
	program.setNeed(1, 8);
	expect(program.solve()).toBe("optimal");
	expect(program.objective).toBeCloseTo(4, 9);
	expect(program.pivots).toBeLessThan(8);
});

test("No programs and no columns are no trouble", () => {
	const none = new LinearProgram([]);
	expect(none.solve()).toBe("optimal");
	expect(none.objective).toBe(0);
	expect(new LinearProgram([0, -1]).solve()).toBe("optimal");
	expect(new LinearProgram([1]).solve()).toBe("infeasible");
});

test("The example on which the plain rule goes round for ever ends", () => {
	// Beale, "Cycling in the dual simplex algorithm", Naval Research Logistics Quarterly 2 (1955), as it is usually printed; least value -1/20.
	const program = new LinearProgram([0, 0, -1]);
	program.addColumn(-3 / 4, [0, 1], [-1 / 4, -1 / 2]);
	program.addColumn(150, [0, 1], [60, 90]);
	program.addColumn(-1 / 50, [0, 1, 2], [1 / 25, 1 / 50, -1]);
	program.addColumn(6, [0, 1], [-9, -3]);
	expect(program.solve()).toBe("optimal");
	expect(program.objective).toBeCloseTo(-1 / 20, 9);
});

test("The work can be stopped and taken up again", () => {
	const program = new LinearProgram([3, 4, 5]);
	for (let row = 0; row < 3; row++) program.addColumn(1, [row], [1]);
	expect(program.solve(1)).toBe("stopped");
	expect(program.solve()).toBe("optimal");
	expect(program.objective).toBeCloseTo(12, 9);
});

test("Mending after needs have changed can be stopped and taken up again", () => {
	const program = new LinearProgram([3, 4, 5]);
	for (let row = 0; row < 3; row++)
		for (let other = row; other < 3; other++)
			program.addColumn(
				2,
				row === other ? [row] : [row, other],
				row === other ? [1] : [1, 2],
			);
	program.solve();
	for (const [row, need] of [9, 1, 7].entries()) program.setNeed(row, need);
	let stops = 0;
	while (program.solve(1) === "stopped") stops++;
	expect(stops).toBeGreaterThan(0);
	// Each column has the first part once at most: 9 of them, at 2.
	expect(program.objective).toBeCloseTo(18, 9);
});
