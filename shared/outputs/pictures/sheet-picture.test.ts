// The pictures of sheets: well-formed, everything on the page, words in their places, the same bytes each time.

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
import type {
	LaidPart,
	LaidRegion,
	MaterialLayout,
} from "../../layouts/types.ts";
import { sawingPlan } from "../sawing/sawing-plan.ts";
import { partsIn as partsOf } from "../sawing/sawing-words.ts";
import { drawSheet } from "./sheet-drawing.ts";
import { type Area, frameOf } from "./sheet-frame.ts";
import { placeNumber } from "./sheet-numbers.ts";
import { layoutGlance, sheetPicture } from "./sheet-picture.ts";
import { meet, placeWords } from "./sheet-words.ts";
import { textWidth, wrapToWidth } from "./svg.ts";

const kerf = inch / 8;

function picturesOf(layout: MaterialLayout): string[] {
	const plan = sawingPlan(layout, []);
	return [
		...layout.sheets.map((_, index) => sheetPicture(plan, index)),
		layoutGlance(plan),
	].filter((svg) => svg !== "");
}

/** Opening and closing tags in pairs, attributes in quotes, no bare ampersand, no figure that is none. */
function faultsOfXml(svg: string): string[] {
	const faults: string[] = [];
	const open: string[] = [];
	const rest = svg.replace(
		/<(\/?)([a-z]+)((?: [a-z-]+(?::[a-z]+)?="[^"<]*"|viewBox="[^"<]*"| viewBox="[^"<]*")*)(\/?)>/g,
		(_, close: string, name: string, __, alone: string) => {
			if (close === "/") {
				if (open.pop() !== name) faults.push(`</${name}> closes nothing`);
			} else if (alone === "") open.push(name);
			return "";
		},
	);
	if (open.length > 0) faults.push(`open: ${open}`);
	if (rest.includes("<")) faults.push(`not read: ${rest.slice(0, 60)}`);
	if (/&(?!amp;|lt;|gt;|quot;)/.test(svg)) faults.push("a bare ampersand");
	if (/NaN|undefined|Infinity|null/.test(svg)) faults.push("no figure");
	return faults;
}

/** Rectangles and words that reach beyond the page. */
function beyondPage(svg: string): string[] {
	const [, width = 0, height = 0] = (
		/viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg) ?? []
	).map(Number);
	const number = (tag: string, name: string): number =>
		Number(new RegExp(` ${name}="(-?[\\d.]+)"`).exec(tag)?.[1] ?? 0);
	const down = Number(/translate\(0 ([\d.]+)\)/.exec(svg)?.[1] ?? 0);
	const rects = [...svg.matchAll(/<rect [^>]*>/g)]
		.map(([tag]) => tag)
		.filter((tag) => {
			const x = number(tag, "x");
			const y = number(tag, "y");
			return (
				x < -0.2 ||
				x + number(tag, "width") > width + 0.2 ||
				y + number(tag, "height") > height + 0.2 - (x > 0 ? down : 0) + 0.2
			);
		});
	const texts = [...svg.matchAll(/<text ([^>]*)>(.*?)<\/text>/g)]
		.filter(([, attributes = "", words = ""]) => {
			if (attributes.includes("rotate")) return false;
			const size = number(` ${attributes}`, "font-size");
			const wide = textWidth(words.replace(/<[^>]*>/g, ""), size);
			const x = number(` ${attributes}`, "x");
			const middle = attributes.includes('"middle"');
			const end = attributes.includes('"end"');
			const start = middle ? x - wide / 2 : end ? x - wide : x;
			return start < -0.5 || start + wide > width + 0.5;
		})
		.map(([text]) => text);
	return [...rects, ...texts];
}

describe("any layout", () => {
	it("is drawn well-formed and on its page", () => {
		fc.assert(
			fc.property(
				fc.integer(),
				fc.integer({ min: 1, max: 5 }),
				fc.constantFrom("sheets", "boards", "lengths", "veneer"),
				(seed, depth, kind) => {
					const layout = randomLayout(seed, { sheets: 1, depth, kind });
					for (const svg of picturesOf(layout)) {
						expect(faultsOfXml(svg)).toEqual([]);
						expect(beyondPage(svg)).toEqual([]);
					}
				},
			),
			{ numRuns: 60 },
		);
	});

	it("has every label: on its part, at a pointer, or named as left out; and every number of a cut", () => {
		fc.assert(
			fc.property(fc.integer(), (seed) => {
				const layout = randomLayout(seed, { sheets: 2, depth: 4 });
				const plan = sawingPlan(layout, []);
				layout.sheets.forEach((_, index) => {
					const svg = sheetPicture(plan, index);
					const words = svg.replaceAll(/<[^>]*>/g, " ");
					for (const { label } of partsIn(plan.sheets[index]?.root))
						expect(words).toMatch(new RegExp(`\\b${label}\\b`));
					const told = numbersIn(svg);
					for (const { cuts } of plan.settings)
						for (const cut of cuts) {
							if (cut.sheet !== index) continue;
							expect(told(cut.number)).toBe(true);
						}
				});
			}),
			{ numRuns: 40 },
		);
	});

	it("is the same each time", () => {
		expect(picturesOf(randomLayout(5))).toEqual(picturesOf(randomLayout(5)));
	});
});

/** What stands in a rounded frame, by itself or in a range, or is named at the foot. */
function numbersIn(svg: string): (wanted: number) => boolean {
	const framed = [...svg.matchAll(/ rx="[^>]*\/><text[^>]*>([^<]*)</g)].map(
		([, text]) => text,
	);
	const named = /No room for the numbers (.*?) of cuts:/.exec(
		svg.replaceAll(/<\/text><text[^>]*>/g, " "),
	)?.[1];
	const ranges = [...framed, ...(named?.split(", ") ?? [])].map((text) =>
		(text ?? "").split("–").map(Number),
	);
	return (wanted) =>
		ranges.some(
			([from = Number.NaN, to = from]) => from <= wanted && wanted <= to,
		);
}

function partsIn(root: LaidRegion | undefined): readonly LaidPart[] {
	return root ? partsOf(root) : [];
}

describe("words on parts", () => {
	const area = fc.record({
		x: fc.integer({ min: 0, max: 300 }),
		y: fc.integer({ min: 0, max: 300 }),
		width: fc.integer({ min: 1, max: 200 }),
		height: fc.integer({ min: 1, max: 200 }),
	});

	it("never reach beyond their part", () => {
		fc.assert(
			fc.property(
				area,
				fc.string({ minLength: 1, maxLength: 8 }),
				fc.option(fc.string({ maxLength: 20 }), { nil: undefined }),
				(area, label, more) => {
					const words = placeWords({ label, more }, area);
					if (!words) return;
					expect(inside(words.area, area)).toBe(true);
					const wide = Math.max(
						...words.lines.map(
							({ bold, plain }) =>
								textWidth(bold, words.size, true) +
								textWidth(plain, words.size),
						),
					);
					expect(wide).toBeLessThanOrEqual(
						(words.turned ? area.height : area.width) + 1e-9,
					);
				},
			),
			{ numRuns: 500 },
		);
	});

	it("lie where there is room, stand in narrow parts, shrink, and give up", () => {
		const words = (width: number, height: number) =>
			placeWords(
				{ label: "A", more: "15 3/4 x 52" },
				{ x: 0, y: 0, width, height },
			);
		expect(words(200, 60)).toMatchObject({ turned: false, size: 13 });
		expect(words(200, 60)?.lines).toHaveLength(2);
		expect(words(200, 16)?.lines).toHaveLength(1);
		expect(words(16, 200)).toMatchObject({ turned: true });
		expect(words(14, 14)?.lines).toEqual([{ bold: "A", plain: "" }]);
		expect(words(6, 6)).toBeUndefined();
	});

	it("and numbers of cuts do not cover one another", () => {
		const layout = randomLayout(11, { sheets: 1, depth: 5 });
		const plan = sawingPlan(layout, []);
		const sheet = plan.sheets[0];
		if (!sheet) throw new Error("No sheet");
		const frame = frameOf(sheet, { left: 0, top: 0, width: 900 });
		const { svg } = drawSheet(plan, 0, frame, { numbers: true, sizes: true });
		const marks = [
			...svg.matchAll(
				/<rect x="([\d.]+)" y="(-?[\d.]+)" width="([\d.]+)" height="([\d.]+)" rx/g,
			),
		].map(
			([, x, y, width, height]): Area => ({
				x: Number(x),
				y: Number(y),
				// Rounded to a tenth.
				width: Number(width) - 0.2,
				height: Number(height) - 0.2,
			}),
		);
		expect(marks.length).toBeGreaterThan(10);
		for (const [at, one] of marks.entries())
			for (const other of marks.slice(at + 1))
				expect(meet(one, other)).toBe(false);
	});

	it("a number finds its place beside what is there, or none", () => {
		const line = { x: 0, y: 20, width: 60, height: 1 };
		const first = placeNumber("1", line, []);
		expect(first).toBeDefined();
		const second = placeNumber("2", line, [first as Area]);
		expect(second && meet(first as Area, second)).toBe(false);
		const all = { x: 0, y: 0, width: 60, height: 40 };
		expect(placeNumber("3", line, [all])).toBeUndefined();
	});
});

function inside(one: Area, other: Area): boolean {
	const hair = 1e-9;
	return (
		one.x >= other.x - hair &&
		one.y >= other.y - hair &&
		one.x + one.width <= other.x + other.width + hair &&
		one.y + one.height <= other.y + other.height + hair
	);
}

describe("the page of a sheet", () => {
	const root = placed(
		{
			size: 0,
			pieces: [
				{ part: "A", size: 12 * inch },
				{ rest: 12 * inch - kerf, keep: true },
			],
		},
		{ x: 0, y: 0, length: 96 * inch, width: 24 * inch },
		"y",
		kerf,
	);

	it("escapes what a stock file says", () => {
		const plan = sawingPlan(
			laidOut([laidSheet(root, { name: '<b>"96" & 24\u0007\ud800' })]),
			[],
		);
		for (const svg of [sheetPicture(plan, 0), layoutGlance(plan)]) {
			expect(faultsOfXml(svg)).toEqual([]);
			expect(svg).toContain("&lt;b&gt;&quot;96&quot; &amp; 24");
		}
	});

	it("hatches what is kept, and says so; draws parts to scale", () => {
		const svg = sheetPicture(sawingPlan(laidOut([laidSheet(root)]), []), 0);
		expect(svg).toContain("Hatched: offcuts worth keeping.");
		// 396 px for 96 in: 12 in are 49.5 px.
		expect(svg).toContain('<rect x="12" y="0" width="396" height="49.5"');
	});

	it("draws a narrow board wider than it is, and says how much", () => {
		const strip = placed(
			{
				size: 0,
				pieces: [{ part: "A", size: inch }, { rest: 5 * inch - kerf }],
			},
			{ x: 0, y: 0, length: 96 * inch, width: 6 * inch },
			"y",
			kerf,
		);
		const svg = sheetPicture(
			sawingPlan(laidOut([laidSheet(strip)], { kind: "boards" }), []),
			0,
		);
		// 1 in is drawn 15 px wide, 1 in along is 396 / 96 = 4.125 px: 3.6 times.
		expect(svg).toContain("Drawn 3.6 times as wide as it is.");
	});

	it("points to parts that are too small for words", () => {
		const tiny = placed(
			{
				size: 0,
				pieces: [
					...Array.from({ length: 3 }, () => ({
						part: "TINY",
						size: inch / 4,
					})),
					{ rest: 96 * inch - 3 * (inch / 4 + kerf) },
				],
			},
			{ x: 0, y: 0, length: 96 * inch, width: inch / 4 },
			"x",
			0,
		);
		const layout = laidOut(
			[laidSheet({ ...tiny, width: inch / 4 }, { width: 48 * inch })],
			{ kerf: 0 },
		);
		const svg = sheetPicture(sawingPlan(layout, []), 0);
		expect(svg).toContain(">3 x TINY</text>");
	});

	it("tells a bevelled pair apart", () => {
		const [upper, lower] = [4 * inch, 3 * inch];
		const plan = sawingPlan(
			laidOut([
				laidSheet({
					x: 0,
					y: 0,
					length: 40 * inch,
					width: upper + lower,
					kind: "pair",
					of: [
						laidPart("A", 40 * inch, upper),
						laidPart("B", 40 * inch, upper),
					],
					turned: false,
					bevel: 45,
					upper,
					lower,
				}),
			]),
			[],
		);
		const svg = sheetPicture(plan, 0);
		expect(svg).toContain("from one strip 7 x 40: A");
		expect(svg).toContain("stroke-dasharray");
	});

	it("shows equal sheets once at a glance, and tells how many more there are", () => {
		const same = laidOut([laidSheet(root), laidSheet(root)]);
		const glance = layoutGlance(sawingPlan(same, []));
		expect(glance).toContain("2 x 96 x 48");
		const many = randomLayout(3, { sheets: 6 });
		expect(layoutGlance(sawingPlan(many, []))).toContain("and 3 more layouts");
		expect(layoutGlance(sawingPlan(laidOut([]), []))).toBe("");
	});
});

describe("what the pictures are written with", () => {
	it("breaks lines at blanks, and words that are too wide", () => {
		expect(wrapToWidth("aa bb", textWidth("aa bb", 10), 10)).toEqual(["aa bb"]);
		expect(wrapToWidth("aa bb", textWidth("aa b", 10), 10)).toEqual([
			"aa",
			"bb",
		]);
		expect(wrapToWidth("aaaa", textWidth("aa", 10), 10)).toEqual(["aa", "aa"]);
		expect(wrapToWidth("", 10, 10)).toEqual([]);
	});

	it("has a contrast of 7 to 1 and more for words, on light and on dark paper", () => {
		// WCAG 2.1: relative luminance.
		const luminance = (colour: string): number => {
			const full =
				colour.length === 4
					? [...colour.slice(1)].map((c) => c + c).join("")
					: colour.slice(1);
			const [r, g, b] = [0, 2, 4].map((at) => {
				const c = Number.parseInt(full.slice(at, at + 2), 16) / 255;
				return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
			}) as [number, number, number];
			return 0.2126 * r + 0.7152 * g + 0.0722 * b;
		};
		const contrast = (a: string, b: string): number => {
			const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y);
			return ((high ?? 0) + 0.05) / ((low ?? 0) + 0.05);
		};
		const svg = sheetPicture(sawingPlan(randomLayout(1), []), 0);
		const sets = [...svg.matchAll(/\.(\w+)\{(?:fill|stroke):(#\w+)\}/g)].map(
			([, name = "", colour = ""]) => [name, colour] as const,
		);
		expect(sets).toHaveLength(10);
		for (const colours of [sets.slice(0, 5), sets.slice(5)].map(
			(set) => new Map(set),
		)) {
			const of = (name: string): string => colours.get(name) ?? "";
			expect(contrast(of("ink"), of("paper"))).toBeGreaterThan(7);
			expect(contrast(of("ink"), of("wood"))).toBeGreaterThan(7);
			expect(contrast(of("line"), of("wood"))).toBeGreaterThan(7);
			expect(contrast(of("faint"), of("paper"))).toBeGreaterThan(3);
		}
	});
});
