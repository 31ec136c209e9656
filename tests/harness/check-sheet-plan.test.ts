// The checker must find what is wrong: a sound plan drawn by hand, and the same plan spoilt in every way.

import { expect, it } from "vitest";
import type {
	Region,
	SheetJob,
	SheetPlan,
} from "../../shared/cutting/index.ts";
import { faultsOfSheetPlan } from "./check-sheet-plan.ts";

/*
 *   0      40 42                 98 trimmed 1 all round: 98 x 58 usable, kerf 2
 *   +-------+--+------------------+
 *   |  A    |  |   B              |  A 40 x 58, B 56 x 30, remnant 56 x 26
 *   |       |  +------------------+
 *   |       |  |   (left)         |
 *   +-------+--+------------------+
 */
const job: SheetJob = {
	stocks: [
		{ id: "sheet", length: 100, width: 60, price: 9, count: 2, trim: 1 },
	],
	parts: [
		{ id: "A", length: 40, width: 58, count: 1, turns: false },
		{ id: "B", length: 30, width: 56, count: 1, turns: true },
		{ id: "C", length: 101, width: 10, count: 1, turns: true },
	],
	kerf: 2,
};
const a: Region = {
	kind: "part",
	part: 0,
	turned: false,
	x: 1,
	y: 1,
	length: 40,
	width: 58,
};
const b: Region = {
	kind: "part",
	part: 1,
	turned: true,
	x: 43,
	y: 1,
	length: 56,
	width: 30,
};
const left: Region = { kind: "remnant", x: 43, y: 33, length: 56, width: 26 };
const right: Region = {
	kind: "cut",
	along: "y",
	x: 43,
	y: 1,
	length: 56,
	width: 58,
	pieces: [b, left],
};
const root: Region = {
	kind: "cut",
	along: "x",
	x: 1,
	y: 1,
	length: 98,
	width: 58,
	pieces: [a, right],
};
const plan: SheetPlan = {
	sheets: [{ stock: 0, root }],
	missing: [{ part: 2, count: 1, why: "too-large" }],
	price: 9,
	leastPrice: 9,
	leastSheets: 1,
};

const withRoot = (changed: Region): SheetPlan => ({
	...plan,
	sheets: [{ stock: 0, root: changed }],
});
const withRight = (pieces: readonly Region[]): SheetPlan =>
	withRoot({ ...root, pieces: [a, { ...right, pieces }] } as Region);

it("finds nothing in a sound plan", () => {
	expect(faultsOfSheetPlan(job, plan)).toEqual([]);
});

it.each<readonly [string, SheetJob, SheetPlan, RegExp]>([
	["a part that is not there", job, withRight([left]), /part 1: 0 of 1/],
	[
		"a part twice",
		{
			...job,
			stocks: [{ ...job.stocks[0], count: 3 } as SheetJob["stocks"][0]],
		},
		{ ...plan, sheets: [...plan.sheets, ...plan.sheets], price: 18 },
		/part 0: 2 of 1/,
	],
	[
		"parts without a kerf between",
		{ ...job, kerf: 3 },
		plan,
		/less than a kerf/,
	],
	["a rest that belongs to nobody", job, withRight([b]), /rest of 28/],
	[
		"a part in a wrong size",
		job,
		withRight([{ ...b, width: 29 } as Region, left]),
		/wrong size/,
	],
	[
		"a part across its grain",
		{ ...job, parts: job.parts.map((part) => ({ ...part, turns: false })) },
		plan,
		/across its grain/,
	],
	[
		"a part outside",
		{
			...job,
			stocks: [{ ...job.stocks[0], length: 90 } as SheetJob["stocks"][0]],
		},
		plan,
		/outside/,
	],
	[
		"untrimmed edges",
		{
			...job,
			stocks: [{ ...job.stocks[0], trim: 0 } as SheetJob["stocks"][0]],
		},
		plan,
		/trimmed edges/,
	],
	[
		"a defect under a part",
		{
			...job,
			stocks: [
				{
					...job.stocks[0],
					defects: [{ x: 50, y: 5, length: 1, width: 1 }],
				} as SheetJob["stocks"][0],
			],
		},
		plan,
		/defect/,
	],
	[
		"more sheets than there are",
		{
			...job,
			stocks: [{ ...job.stocks[0], count: 0 } as SheetJob["stocks"][0]],
		},
		plan,
		/used 1 times/,
	],
	["a wrong price", job, { ...plan, price: 8 }, /price is 9/],
	["a bound above the plan", job, { ...plan, leastPrice: 10 }, /cheaper/],
	["too high a least number", job, { ...plan, leastSheets: 2 }, /fewer sheets/],
	[
		"a part that is missing without a reason",
		job,
		{
			...withRight([{ ...left, y: 1, width: 58 } as Region]),
			missing: [...plan.missing, { part: 1, count: 1, why: "too-large" }],
		},
		/called too large/,
	],
	[
		"a part that is missing though stock is left",
		job,
		{
			...withRight([{ ...left, y: 1, width: 58 } as Region]),
			missing: [...plan.missing, { part: 1, count: 1, why: "no-stock-left" }],
		},
		/is left/,
	],
	[
		"too long a first cut",
		{ ...job, longestFirstCut: 57 },
		plan,
		/first cut of 58/,
	],
	["too many stages", { ...job, stages: 1 }, plan, /2 stages/],
	[
		"a strip of waste that is too narrow",
		{ ...job, leastStrip: 27 },
		plan,
		/cannot be held/,
	],
])("finds %s", (_, changed, wrong, fault) => {
	expect(faultsOfSheetPlan(changed, wrong).join("\n")).toMatch(fault);
});

it("finds parts that no edge-to-edge cut takes apart", () => {
	// The windmill: four parts around a middle, each in the way of the next one's cut. 30 x 30, kerf 0.
	const part = (
		index: number,
		x: number,
		y: number,
		length: number,
		width: number,
	): Region => ({
		kind: "part",
		part: index,
		turned: false,
		x,
		y,
		length,
		width,
	});
	const pieces = [
		part(0, 0, 0, 20, 10),
		part(1, 20, 0, 10, 20),
		part(2, 10, 20, 20, 10),
		part(3, 0, 10, 10, 20),
	];
	const windmill: SheetJob = {
		stocks: [{ id: "s", length: 30, width: 30, price: 1, count: 1 }],
		parts: [
			{ id: "a", length: 20, width: 10, count: 1, turns: false },
			{ id: "b", length: 10, width: 20, count: 1, turns: false },
			{ id: "c", length: 20, width: 10, count: 1, turns: false },
			{ id: "d", length: 10, width: 20, count: 1, turns: false },
		],
		kerf: 0,
	};
	const faults = faultsOfSheetPlan(windmill, {
		sheets: [
			{
				stock: 0,
				root: {
					kind: "cut",
					along: "x",
					x: 0,
					y: 0,
					length: 30,
					width: 30,
					pieces,
				},
			},
		],
		missing: [],
		price: 1,
		leastPrice: 1,
		leastSheets: 1,
	});
	expect(faults.join("\n")).toMatch(/no edge-to-edge cuts/);
});
