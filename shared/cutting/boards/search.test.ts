import fc from "fast-check";
import { expect, test } from "vitest";
import {
	anyBoardJob,
	cutUp,
	drawFrom,
	plainJob,
	triplets,
} from "../../../tests/harness/board-jobs.ts";
import { faultsOfBoardPlan } from "../../../tests/harness/check-board-plan.ts";
import type { BoardJob } from "../job.ts";
import { layOutBoards, searchBoards } from "./search.ts";

/** Lengths of the parts, board by board. */
function lengths(job: BoardJob, plan = layOutBoards(job)): number[][] {
	expect(faultsOfBoardPlan(job, plan)).toEqual([]);
	return plan.boards.map(({ parts }) =>
		parts.map((part) => job.parts[part]?.length as number),
	);
}

test("Parts are one blade apart, and the last cut may run off the end", () => {
	// 3 × 32 + 2 × 2 = 100: three go into a board of 100, though 3 × (32 + 2) = 102.
	const job = plainJob(100, [32, 32, 32], 2);
	expect(lengths(job)).toEqual([[32, 32, 32]]);
	expect(layOutBoards(job).boards[0]?.left).toBe(0);
	// One more millimetre of blade, and they do not: 96 + 6 = 102.
	expect(lengths(plainJob(100, [32, 32, 32], 3))).toEqual([[32, 32], [32]]);
});

test("What is left is told less the blade", () => {
	// 100 - 32 - 2 = 66; 100 - 99 = 1 is sawdust.
	expect(layOutBoards(plainJob(100, [32], 2)).boards[0]?.left).toBe(66);
	expect(layOutBoards(plainJob(100, [99], 2)).boards[0]?.left).toBe(0);
});

test("Trim comes off both ends", () => {
	const job: BoardJob = {
		...plainJob(100, [48, 48]),
		stocks: [{ id: "board", length: 100, price: 1, count: 9, trim: 2 }],
	};
	expect(lengths(job)).toEqual([[48, 48]]);
	expect(
		lengths({ ...job, stocks: [{ ...job.stocks[0], trim: 3 } as never] }),
	).toEqual([[48], [48]]);
});

test("The cheapest boards are taken, not the fewest", () => {
	// Three parts of 50: one board of 150 for 10, or three of 50 for 2 each = 6.
	const job: BoardJob = {
		stocks: [
			{ id: "long", length: 150, price: 10, count: 9 },
			{ id: "short", length: 50, price: 2, count: 9 },
		],
		parts: [{ id: "part", length: 50, count: 3 }],
		kerf: 0,
	};
	const plan = layOutBoards(job);
	expect(lengths(job, plan)).toEqual([[50], [50], [50]]);
	expect(plan.price).toBe(6);
	expect(plan.leastPrice).toBe(6);
	// One board would do, whatever it costs.
	expect(plan.leastBoards).toBe(1);
});

test("Of two plans at one price the one with fewer boards is taken", () => {
	const job: BoardJob = {
		stocks: [
			{ id: "short", length: 50, price: 2, count: 9 },
			{ id: "long", length: 150, price: 6, count: 9 },
		],
		parts: [{ id: "part", length: 50, count: 3 }],
		kerf: 0,
	};
	expect(lengths(job)).toEqual([[50, 50, 50]]);
});

test("What is in the shop is used before any is bought", () => {
	const job: BoardJob = {
		stocks: [
			{ id: "bought", length: 200, price: 8, count: Number.POSITIVE_INFINITY },
			{ id: "offcut", length: 90, price: 0, count: 1, onHand: true },
		],
		// 200 = 80 + 120; without the offcut the 85 would need a second board.
		parts: [
			{ id: "a", length: 80, count: 1 },
			{ id: "b", length: 120, count: 1 },
			{ id: "c", length: 85, count: 1 },
		],
		kerf: 0,
	};
	const plan = layOutBoards(job);
	expect(faultsOfBoardPlan(job, plan)).toEqual([]);
	expect(plan.price).toBe(8);
	expect(plan.leastPrice).toBe(8);
});

test("What cannot be had is told with its reason", () => {
	const job: BoardJob = {
		stocks: [{ id: "board", length: 100, price: 3, count: 1 }],
		parts: [
			{ id: "giant", length: 101, count: 2 },
			{ id: "half", length: 50, count: 3 },
		],
		kerf: 0,
	};
	const plan = layOutBoards(job);
	expect(faultsOfBoardPlan(job, plan)).toEqual([]);
	expect(plan.missing).toEqual([
		{ part: 0, count: 2, why: "too-large" },
		{ part: 1, count: 1, why: "no-stock-left" },
	]);
});

test("Nothing is missing where a better plan than the first one does with the boards there are", () => {
	// Longest first needs 3 boards: 60 + 40, 50 + 30, 20 …; 60 + 30 + 10, 50 + 30 + 20 and 40 + … do with what is there.
	const parts = [44, 24, 24, 22, 21, 17, 8, 8, 6, 6];
	// 44 + 24 + 22 + … : 180 in all, two boards of 90: 44 + 24 + 22, 24 + 21 + 17 + 8 + 8 + 6 + 6.
	const job: BoardJob = {
		...plainJob(90, parts),
		stocks: [{ id: "board", length: 90, price: 1, count: 2 }],
	};
	const plan = layOutBoards(job);
	expect(faultsOfBoardPlan(job, plan)).toEqual([]);
	expect(plan.missing).toEqual([]);
});

test("What is left over is gathered on one board", () => {
	// 2 × 100 hold 160: 100 and 60 leave 40 in one piece.
	const job = plainJob(100, [30, 30, 30, 40, 30]);
	const plan = layOutBoards(job);
	expect(faultsOfBoardPlan(job, plan)).toEqual([]);
	expect(plan.boards.map(({ left }) => left)).toEqual([0, 40]);
});

test("Equal boards follow one another", () => {
	const cut = lengths(plainJob(100, [70, 70, 70, 30, 30, 30, 55, 45]));
	expect(cut.map((board) => board.join("+"))).toEqual([
		"70+30",
		"70+30",
		"70+30",
		"55+45",
	]);
});

test("Triplets that fill their boards are found, and the bound says so", () => {
	for (const seed of [1, 2, 3, 4]) {
		const job = plainJob(1000, triplets(20, drawFrom(seed)));
		const plan = layOutBoards(job, "thorough");
		expect(faultsOfBoardPlan(job, plan)).toEqual([]);
		expect(plan.boards).toHaveLength(20);
		expect(plan.leastBoards).toBe(20);
		expect(plan.leastPrice).toBe(200);
	}
});

test("Boards that were cut up are put together again", () => {
	for (const [seed, kerf] of [0, 3, 3, 0].entries()) {
		const job = plainJob(600, cutUp(12, 600, kerf, drawFrom(seed)), kerf);
		const plan = layOutBoards(job, "thorough");
		expect(faultsOfBoardPlan(job, plan)).toEqual([]);
		expect(plan.boards).toHaveLength(12);
		expect(plan.leastBoards).toBe(12);
	}
});

test("One board more than the length asks for is proven where it is so", () => {
	// Parts of 51 share no board of 100, however little the others leave: 5 boards, though 5 × 51 + 20 = 275 would fill 2.75.
	const plan = layOutBoards(plainJob(100, [51, 51, 51, 51, 51, 20]));
	expect(plan.boards).toHaveLength(5);
	expect(plan.leastBoards).toBe(5);
});

test("Every plan is sound and no bound is above it", () => {
	fc.assert(
		fc.property(anyBoardJob, (job) => {
			expect(faultsOfBoardPlan(job, layOutBoards(job, "quick"))).toEqual([]);
		}),
		{ numRuns: 1500 },
	);
});

test("Every plan on the way is sound, and none is worse than the one before", () => {
	fc.assert(
		fc.property(anyBoardJob, (job) => {
			let price = Number.POSITIVE_INFINITY;
			let missing = Number.POSITIVE_INFINITY;
			for (const { plan, done } of searchBoards(job, "quick")) {
				expect(faultsOfBoardPlan(job, plan)).toEqual([]);
				expect(done).toBeGreaterThanOrEqual(0);
				expect(done).toBeLessThanOrEqual(1);
				const now = plan.missing.reduce((sum, { count }) => sum + count, 0);
				if (now === missing)
					expect(plan.price).toBeLessThanOrEqual(price + 1e-9);
				missing = now;
				price = plan.price;
			}
		}),
		{ numRuns: 150 },
	);
});

test("The same job gives the same plan", () => {
	const job = plainJob(1000, triplets(15, drawFrom(9)), 0);
	expect(layOutBoards(job)).toEqual(layOutBoards(structuredClone(job)));
});

test("The search can be left at any time, with a plan in hand", () => {
	const job = plainJob(1000, triplets(40, drawFrom(5)));
	const search = searchBoards(job, "thorough");
	const first = search.next();
	if (first.done) throw new Error("no first plan");
	expect(faultsOfBoardPlan(job, first.value.plan)).toEqual([]);
	expect(search.return(first.value.plan).done).toBe(true);
	expect(search.next().done).toBe(true);
});

test("5,000 parts are laid out", () => {
	const draw = drawFrom(7);
	const parts = Array.from({ length: 5000 }, () => draw(200_000, 2_000_000));
	const job = plainJob(2_440_000, parts, 3200);
	const plan = layOutBoards(job, "quick");
	expect(faultsOfBoardPlan(job, plan)).toEqual([]);
	expect(plan.boards.length).toBeLessThan(1.02 * plan.leastBoards);
});

test("Rough jobs are no trouble", () => {
	const board = plainJob(100, [40]);
	const odd = [Number.NaN, -5, 0, Number.POSITIVE_INFINITY, 1e300, 0.3, 1e9];
	for (const value of odd)
		for (const job of [
			{ ...board, kerf: value },
			{ ...board, parts: [{ id: "part", length: value, count: 2 }] },
			{ ...board, parts: [{ id: "part", length: 40, count: value }] },
			...["length", "price", "count", "trim"].map((field) => ({
				...board,
				stocks: [{ ...board.stocks[0], [field]: value } as never],
			})),
		])
			expect(() => layOutBoards(job, "quick")).not.toThrow();
	expect(layOutBoards({ stocks: [], parts: [], kerf: 0 }).boards).toEqual([]);
	expect(layOutBoards({ ...board, stocks: [] }).missing).toEqual([
		{ part: 0, count: 1, why: "too-large" },
	]);
	// Wider than the part: 30 + 50 + 20 = 100.
	expect(lengths(plainJob(100, [30, 20], 50))).toEqual([[30, 20]]);
});
