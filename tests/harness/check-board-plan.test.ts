import { expect, test } from "vitest";
import type { BoardJob, BoardPlan } from "../../shared/cutting/index.ts";
import { faultsOfBoardPlan } from "./check-board-plan.ts";

const job: BoardJob = {
	stocks: [{ id: "lath", length: 104, price: 4, count: 2, trim: 2 }],
	parts: [
		{ id: "rail", length: 60, count: 2 },
		{ id: "stile", length: 37, count: 1 },
	],
	kerf: 3,
};
// 104 - 2 × 2 = 100 = 60 + 3 + 37; 100 - 60 - 3 = 37.
const right: BoardPlan = {
	boards: [
		{ stock: 0, parts: [0, 1], left: 0 },
		{ stock: 0, parts: [0], left: 37 },
	],
	missing: [],
	price: 8,
	leastPrice: 8,
	leastBoards: 2,
};

test("A right plan has no faults", () => {
	expect(faultsOfBoardPlan(job, right)).toEqual([]);
});

test.each<[string, Partial<BoardPlan>]>([
	["a part is left out", { boards: right.boards.slice(0, 1) }],
	[
		"too much on a board",
		{ boards: [{ stock: 0, parts: [0, 0, 1], left: 0 }] },
	],
	[
		"a wrong rest",
		{
			boards: [...right.boards.slice(0, 1), { stock: 0, parts: [0], left: 40 }],
		},
	],
	["a wrong price", { price: 7 }],
	["a bound above the plan", { leastBoards: 3 }],
	[
		"missing, though there is room",
		{
			boards: [
				{ stock: 0, parts: [0], left: 37 },
				{ stock: 0, parts: [0], left: 37 },
			],
			missing: [{ part: 1, count: 1, why: "no-stock-left" }],
		},
	],
	[
		"called too large",
		{
			boards: right.boards.slice(1),
			price: 4,
			leastBoards: 1,
			leastPrice: 4,
			missing: [
				{ part: 0, count: 1, why: "too-large" },
				{ part: 1, count: 1, why: "too-large" },
			],
		},
	],
])("%s", (_, change) => {
	expect(faultsOfBoardPlan(job, { ...right, ...change })).not.toEqual([]);
});
