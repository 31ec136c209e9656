// The order of the cuts: nothing is cut before it is there, every part comes off once, the fence moves seldom.

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
	inch,
	laidOut,
	laidPart,
	laidSheet,
	placed,
	randomLayout,
} from "../../../tests/harness/laid.ts";
import type { Rectangle } from "../../cutting/index.ts";
import type { MaterialLayout } from "../../layouts/types.ts";
import { type SawingPlan, sawingPlan } from "./sawing-plan.ts";
import { sawingText } from "./sawing-text.ts";
import { partsIn } from "./sawing-words.ts";

const kerf = inch / 8;

const key = ({ x, y, length, width }: Rectangle): string =>
	[x, y, length, width].join(" ");

/** Saws the sheets up by the plan, as somebody with a tape; all that goes wrong, in words. */
function sawnUp(plan: SawingPlan): {
	faults: string[];
	parts: string[];
} {
	const faults: string[] = [];
	const { kerf } = plan.layout;
	// What lies about, of each sheet.
	const lying = plan.sheets.map(
		({ length, width }) => new Set([key({ x: 0, y: 0, length, width })]),
	);
	let number = 0;
	for (const { cuts } of plan.settings) {
		for (const cut of cuts) {
			number += 1;
			if (cut.number !== number)
				faults.push(`cut ${cut.number} is no. ${number}`);
			const pile = lying[cut.sheet] as Set<string>;
			if (!pile.delete(key(cut.blank)))
				faults.push(`cut ${number}: ${key(cut.blank)} is not there`);
			const { blank, kerf: blade } = cut;
			const x = blade.width === blank.width && blade.y === blank.y;
			const [at, size] = x ? [blade.x, blade.length] : [blade.y, blade.width];
			const [from, to] = x
				? [blank.x, blank.x + blank.length]
				: [blank.y, blank.y + blank.width];
			if (cut.kind !== "trim" && size > kerf)
				faults.push(`cut ${number} takes ${size}`);
			if (cut.kind !== "trim" && size < kerf && at + size !== to)
				faults.push(`cut ${number} takes too little`);
			for (const [start, end] of [
				[from, at],
				[at + size, to],
			] as const) {
				if (end <= start) continue;
				pile.add(
					key(
						x
							? { ...blank, x: start, length: end - start }
							: { ...blank, y: start, width: end - start },
					),
				);
			}
			if (
				cut.off &&
				cut.off.part === undefined &&
				!pile.has(key(cut.off.region))
			)
				faults.push(`cut ${number} does not give ${key(cut.off.region)}`);
			if (
				cut.left &&
				cut.left.part === undefined &&
				!pile.has(key(cut.left.region))
			)
				faults.push(`cut ${number} does not leave ${key(cut.left.region)}`);
		}
	}
	const parts: string[] = [];
	plan.sheets.forEach((sheet, index) => {
		const walk = (region: typeof sheet.root): void => {
			if (region.kind === "cut") region.pieces.forEach(walk);
			else if (region.kind === "part") {
				parts.push(region.of.id);
				if (!lying[index]?.delete(key(region)))
					faults.push(`${region.of.id} does not lie there, or was cut on`);
			}
		};
		walk(sheet.root);
	});
	return { faults, parts };
}

const idsIn = ({ sheets }: Pick<MaterialLayout, "sheets">): string[] =>
	sheets.flatMap(({ root }) => partsIn(root).map(({ id }) => id)).sort();

describe("any layout", () => {
	it("comes apart cut by cut, into all its parts, with no more settings than sheet by sheet", () => {
		fc.assert(
			fc.property(
				fc.integer(),
				fc.integer({ min: 1, max: 4 }),
				fc.integer({ min: 1, max: 5 }),
				fc.constantFrom("sheets", "boards", "veneer", "lengths"),
				(seed, sheets, depth, kind) => {
					const layout = randomLayout(seed, { sheets, depth, kind });
					const plan = sawingPlan(layout, []);
					const { faults, parts } = sawnUp(plan);
					expect(faults).toEqual([]);
					expect(parts.sort()).toEqual(idsIn(layout));
					expect(plan.changes).toBeLessThanOrEqual(plan.changesInTreeOrder);
				},
			),
			{ numRuns: 400 },
		);
	});

	it("keeps pieces that belong together in their order, and all of a sheet with a defect", () => {
		fc.assert(
			fc.property(fc.integer(), (seed) => {
				const layout = randomLayout(seed);
				const plan = sawingPlan(layout, []);
				layout.sheets.forEach((sheet, index) => {
					const sawn = plan.sheets[index];
					if (sheet.defects.length > 0)
						expect(partPlaces(sawn?.root)).toEqual(partPlaces(sheet.root));
					expect(matchedIn(sawn?.root)).toEqual(matchedIn(sheet.root));
				});
			}),
			{ numRuns: 100 },
		);
	});

	it("is the same, sawn twice", () => {
		const texts = [1, 2].map(() => sawingText(sawingPlan(randomLayout(7), [])));
		expect(texts[0]).toBe(texts[1]);
	});
});

type Root = MaterialLayout["sheets"][number]["root"];

function partPlaces(region: Root | undefined): string[] {
	if (region?.kind === "cut") return region.pieces.flatMap(partPlaces);
	return region?.kind === "part" ? [key(region)] : [];
}

/** The sizes of pieces that belong together, in their order; the groups in any. */
function matchedIn(region: Root | undefined): string[] {
	if (region?.kind !== "cut") return [];
	return [
		...(region.matched
			? [
					region.pieces
						.map(({ length, width }) => `${length}x${width}`)
						.join(" "),
				]
			: []),
		...region.pieces.flatMap(matchedIn),
	].sort();
}

describe("two sheets that share their strips", () => {
	// Strips of 12 and 8 in on both, each crosscut to 40 and 30: by hand 12, 8, 40, 30 once each = 4 settings.
	const strip = (size: number, a: string, b: string) => ({
		size: size * inch,
		pieces: [
			{ part: a, size: 40 * inch },
			{ part: b, size: 30 * inch },
			{ rest: 90 * inch - 70 * inch - 2 * kerf, keep: true },
		],
	});
	const frame = { x: 0, y: 0, length: 90 * inch, width: 23 * inch };
	const sheet = () =>
		laidSheet(
			placed(
				{
					size: 0,
					pieces: [
						strip(8, "C", "D"),
						strip(12, "A", "B"),
						{ rest: 3 * inch - 2 * kerf },
					],
				},
				frame,
				"y",
				kerf,
			),
		);
	const plan = sawingPlan(laidOut([sheet(), sheet()]), []);

	it("sets the fence once for each size", () => {
		expect(plan.changes).toBe(4);
		// 12, 8, 40, 30, 40, 30 in each sheet: 6 and 6.
		expect(plan.changesInTreeOrder).toBe(12);
	});

	it("tells it in words", () => {
		expect(sawingText(plan)).toMatchInlineSnapshot(`
			"AT THE SAW
			  Fence at 12
			   1  sheet 1  rip 90 long       12 x 90 for A, B
			   2  sheet 2  rip 90 long       12 x 90 for A, B
			  Fence at 8
			   3  sheet 1  rip 90 long       8 x 90 for C, D   leaves waste
			   4  sheet 2  rip 90 long       8 x 90 for C, D   leaves waste
			  Stop at 40
			   5  sheet 1  crosscut 12 long  A
			   6  sheet 1  crosscut 8 long   C
			   7  sheet 2  crosscut 12 long  A
			   8  sheet 2  crosscut 8 long   C
			  Stop at 30
			   9  sheet 1  crosscut 12 long  B                 leaves offcut 19 3/4 x 12, keep it
			  10  sheet 1  crosscut 8 long   D                 leaves offcut 19 3/4 x 8, keep it
			  11  sheet 2  crosscut 12 long  B                 leaves offcut 19 3/4 x 12, keep it
			  12  sheet 2  crosscut 8 long   D                 leaves offcut 19 3/4 x 8, keep it

			4 settings for 12 cuts; piece by piece it would be 12.
			"
		`);
	});
});

describe("what is heeded", () => {
	const cautionsOf = (layout: MaterialLayout): string[] =>
		sawingPlan(layout, []).settings.flatMap(({ cautions }) => cautions);
	const strip = (width: number, length = 40): MaterialLayout =>
		laidOut([
			laidSheet(
				placed(
					{
						size: 0,
						pieces: [{ part: "A", size: width * inch }, { rest: 10 * inch }],
					},
					{
						x: 0,
						y: 0,
						length: length * inch,
						width: (width + 10) * inch + kerf,
					},
					"y",
					kerf,
				),
			),
		]);

	it("narrow, thin and short pieces at the fence", () => {
		expect(cautionsOf(strip(4))).toEqual([]);
		expect(cautionsOf(strip(2))).toEqual(["narrow"]);
		expect(cautionsOf(strip(0.5))).toEqual(["thin"]);
		expect(cautionsOf(strip(4, 11))).toEqual(["short"]);
	});

	it("a whole sheet", () => {
		expect(cautionsOf(strip(30, 96))).toEqual(["large"]);
	});

	it("a pair of cleats from one bevelled rip", () => {
		const [upper, lower] = [4 * inch, 3 * inch];
		const layout = laidOut([
			laidSheet({
				x: 0,
				y: 0,
				length: 40 * inch,
				width: upper + lower,
				kind: "pair",
				of: [laidPart("A", 40 * inch, upper), laidPart("B", 40 * inch, upper)],
				turned: false,
				bevel: 45,
				upper,
				lower,
			}),
		]);
		const plan = sawingPlan(layout, []);
		expect(plan.settings).toHaveLength(1);
		const text = sawingText(plan);
		expect(text).toContain("Fence at 4, blade at 45°");
		expect(text).toContain("bevelled:");
		expect(text).toMatch(/1 {2}sheet 1 {2}rip 40 long {2}A {2}leaves B/);
	});
});

describe("boards and lengths", () => {
	it("nothing on an empty layout", () => {
		expect(sawingText(sawingPlan(laidOut([]), []))).toBe("");
	});

	it("lengths are cut at a stop, trimmed at both ends", () => {
		const trim = inch;
		const layout = laidOut(
			[
				laidSheet(
					placed(
						{
							size: 0,
							pieces: [
								{ part: "A", size: 20 * inch },
								{ part: "A", size: 20 * inch },
								{ rest: 5 * inch },
							],
						},
						{ x: trim, y: 0, length: 45 * inch + 2 * kerf, width: inch },
						"x",
						kerf,
					),
					{ trim, width: inch },
				),
			],
			{ kind: "lengths" },
		);
		const text = sawingText(sawingPlan(layout, []));
		expect(text).toContain("1 off both ends");
		expect(text).toContain("Stop at 20\n");
		expect(text).toMatch(
			/3-4 {2}length 1 {2}crosscut 1 long {2}A {2}leaves waste/,
		);
	});
});

describe("much to saw", () => {
	it("5,000 parts are put in order, too", () => {
		const layout = randomLayout(3, { sheets: 70, depth: 6, most: 6 });
		expect(idsIn(layout).length).toBeGreaterThan(5_000);
		const plan = sawingPlan(layout, []);
		expect(sawnUp(plan).faults).toEqual([]);
	});
});
