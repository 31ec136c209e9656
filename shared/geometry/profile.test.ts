// Faces of a blank: curves that do not overshoot, points that stay near them, outlines that close.

import { describe, expect, test } from "vitest";
import { sourceOf } from "../../tests/harness/random-solids.ts";
import { volumeOf } from "./measure.ts";
import {
	type Blank,
	type CurveEnds,
	curveTolerance,
	cutInAt,
	faceThrough,
	type Station,
	shapeBlank,
} from "./profile.ts";
import type { Outline } from "./solid.ts";

const runsOn: CurveEnds = { start: "runs-on", end: "runs-on" };
const free: CurveEnds = { start: "free", end: "free" };

function outlineOf(blank: Blank): Outline {
	const shaped = shapeBlank(blank);
	if ("problem" in shaped) throw new Error(shaped.problem.kind);
	return shaped.outline;
}

function area(outline: Outline, length: number, width: number): number {
	const max =
		outline.plane === "xy"
			? ([length, width, 1] as const)
			: ([length, 1, width] as const);
	return volumeOf({
		box: { min: [0, 0, 0], max },
		outlines: [outline],
		cuts: [],
	});
}

describe("A curve through stations", () => {
	test("between level ends is the cubic 3 t^2 - 2 t^3", () => {
		const stations: Station[] = [
			{ height: 0, cutIn: 16 },
			{ height: 200, cutIn: 0 },
		];
		for (const t of [0.1, 0.25, 0.5, 0.9]) {
			const expected = 16 * (1 - (3 * t * t - 2 * t * t * t));
			expect(cutInAt(stations, "curve", runsOn, 200 * t)).toBeCloseTo(
				expected,
				12,
			);
		}
	});

	test("from a free end to a face that runs on is a parabola", () => {
		const stations: Station[] = [
			{ height: 0, cutIn: 16 },
			{ height: 200, cutIn: 0 },
		];
		for (const t of [0.1, 0.5, 0.9]) {
			expect(
				cutInAt(stations, "curve", { start: "free", end: "runs-on" }, 200 * t),
			).toBeCloseTo(16 * (1 - t) ** 2, 12);
		}
	});

	test("through stations in one line is that line", () => {
		const stations = [0, 1, 3, 7].map(
			(k): Station => ({ height: 10 * k, cutIn: 2 * k }),
		);
		for (const height of [3, 15, 44, 69]) {
			expect(cutInAt(stations, "curve", free, height)).toBeCloseTo(
				height / 5,
				12,
			);
		}
	});

	test("never goes past its stations, meets each, and is the same read from the other end", () => {
		for (let seed = 0; seed < 200; seed++) {
			const source = sourceOf(seed);
			const stations: Station[] = [];
			let height = 0;
			for (let k = source.whole(2, 7); k > 0; k--) {
				stations.push({
					height,
					cutIn: source.whole(0, 3) === 0 ? 5 : source.real(0, 20),
				});
				height += source.real(1, 120);
			}
			const ends: CurveEnds = {
				start: source.whole(0, 1) === 0 ? "free" : "runs-on",
				end: source.whole(0, 1) === 0 ? "free" : "runs-on",
			};
			const back = stations
				.map((s): Station => ({ height: -s.height, cutIn: s.cutIn }))
				.reverse();
			for (let k = 1; k < stations.length; k++) {
				const [a, b] = [stations[k - 1] as Station, stations[k] as Station];
				expect(cutInAt(stations, "curve", ends, b.height)).toBeCloseTo(
					b.cutIn,
					9,
				);
				let previous = a.cutIn;
				for (let i = 1; i <= 50; i++) {
					const at = a.height + ((b.height - a.height) * i) / 50;
					const cutIn = cutInAt(stations, "curve", ends, at);
					const rise = Math.sign(b.cutIn - a.cutIn) * (cutIn - previous);
					expect(rise, `seed ${seed}`).toBeGreaterThan(-1e-9);
					const mirrored = cutInAt(
						back,
						"curve",
						{ start: ends.end, end: ends.start },
						-at,
					);
					expect(mirrored).toBeCloseTo(cutIn, 9);
					previous = cutIn;
				}
			}
		}
	});

	test("is drawn within the tolerance and with few points", () => {
		for (let seed = 0; seed < 100; seed++) {
			const source = sourceOf(seed);
			const stations: Station[] = [];
			for (let k = 0; k < 4; k++)
				stations.push({
					height: 150 * k + source.real(0, 100),
					cutIn: source.real(0, 25),
				});
			const line = faceThrough(stations, "curve", runsOn);
			expect(line.length).toBeLessThan(120);
			for (let k = 1; k < line.length; k++) {
				const [a, b] = [line[k - 1] as Station, line[k] as Station];
				for (const t of [0.25, 0.5, 0.75]) {
					const chord = a.cutIn + (b.cutIn - a.cutIn) * t;
					const curve = cutInAt(
						stations,
						"curve",
						runsOn,
						a.height + (b.height - a.height) * t,
					);
					expect(Math.abs(chord - curve)).toBeLessThanOrEqual(
						curveTolerance + 1e-12,
					);
				}
			}
		}
	});
});

describe("A shaped blank", () => {
	test("with nothing to do is its rectangle", () => {
		expect(outlineOf({ plane: "xy", length: 600, width: 60 }).points).toEqual([
			[0, 0],
			[600, 0],
			[600, 60],
			[0, 60],
		]);
	});

	test("with a straight taper on one face and a curve on the other", () => {
		const outline = outlineOf({
			plane: "xz",
			length: 400,
			width: 70,
			low: {
				kind: "straight",
				stations: [
					{ height: 300, cutIn: 0 },
					{ height: 0, cutIn: 20 },
				],
			},
			high: {
				kind: "curve",
				stations: [
					{ height: 0, cutIn: 15 },
					{ height: 240, cutIn: 0 },
				],
			},
		});
		expect(outline.plane).toBe("xz");
		// 400 x 70, less a triangle 300 x 20 / 2, less a parabola 15 (1 - t)^2 over 240: a third of 15 x 240.
		const exact = 400 * 70 - (300 * 20) / 2 - (15 * 240) / 3;
		// The points may stand off by the tolerance over the curve's length.
		expect(Math.abs(area(outline, 400, 70) - exact)).toBeLessThan(0.02 * 240);
	});

	test("past its last station a face keeps its cut-in", () => {
		const outline = outlineOf({
			plane: "xy",
			length: 100,
			width: 50,
			low: { kind: "straight", stations: [{ height: 40, cutIn: 10 }] },
		});
		expect(area(outline, 100, 50)).toBeCloseTo(100 * 40, 9);
	});

	test("with both ends angled: the long point keeps the length", () => {
		const angle = (12 * Math.PI) / 180;
		const outline = outlineOf({
			plane: "xy",
			length: 500,
			width: 60,
			start: { angle, longPoint: "low" },
			end: { angle: Math.PI / 4, longPoint: "high" },
		});
		// Each end takes a triangle: width squared times the tangent, over two.
		expect(area(outline, 500, 60)).toBeCloseTo(
			500 * 60 - (60 * 60 * Math.tan(angle)) / 2 - (60 * 60) / 2,
			6,
		);
		expect(outline.points.some(([u, v]) => u === 0 && v === 0)).toBe(true);
		expect(outline.points.some(([u, v]) => u === 500 && v === 60)).toBe(true);
	});

	test("refuses what leaves no wood, and says where", () => {
		const blank: Blank = { plane: "xy", length: 300, width: 40 };
		const station = (height: number, cutIn: number): Station => ({
			height,
			cutIn,
		});
		const face = (...stations: Station[]): Blank["low"] & object => ({
			kind: "straight",
			stations,
		});
		const problem = (change: Partial<Blank>): unknown => {
			const shaped = shapeBlank({ ...blank, ...change });
			return "problem" in shaped ? shaped.problem : undefined;
		};
		expect(
			problem({
				low: face(station(0, 25)),
				high: face(station(0, 0), station(300, 20)),
			}),
		).toEqual({
			kind: "cut-through",
			height: 300,
			left: -5,
		});
		expect(problem({ low: face() })).toEqual({
			kind: "no-stations",
			side: "low",
		});
		expect(problem({ low: face(station(10, 1), station(10, 2)) })).toEqual({
			kind: "two-stations-at-one-height",
			side: "low",
			height: 10,
		});
		expect(problem({ high: face(station(301, 1)) })).toEqual({
			kind: "outside-the-blank",
			side: "high",
			height: 301,
			cutIn: 1,
		});
		expect(problem({ high: face(station(Number.NaN, 1)) })).toEqual({
			kind: "not-a-number",
			side: "high",
		});
		expect(problem({ length: 0 })).toEqual({ kind: "no-blank" });
		expect(problem({ end: { angle: Math.PI / 2, longPoint: "low" } })).toEqual({
			kind: "bad-angle",
			angle: Math.PI / 2,
		});
		expect(
			problem({
				length: 30,
				start: { angle: 1.5, longPoint: "low" },
				end: { angle: 1.5, longPoint: "high" },
			}),
		).toEqual({ kind: "ends-meet" });
	});
});
