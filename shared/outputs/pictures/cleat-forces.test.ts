// The sketch of forces: well-formed, readable on any ground, every figure on it.

import { describe, expect, it } from "vitest";
import { type CleatPicture, cleatForces } from "./cleat-forces.ts";

/** 40 kg, 160 mm off the wall, on two legs. */
const cabinet: CleatPicture = {
	depth: 300,
	height: 600,
	hook: { out: 9, up: 500 },
	strip: { height: 65, thick: 18 },
	slope: 1,
	weight: { out: 160, label: "392 N & more" },
	down: "174 N",
	level: "0 N to <174 N>",
	lean: undefined,
	legs: { out: 280, length: 400, label: "219 N" },
	pull: "45 N to 367 N",
};

/** Relative luminance and contrast: WCAG 2.1. */
function luminance(colour: string): number {
	const [r, g, b] = [1, 3, 5].map((at) => {
		const c = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
		return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
	}) as [number, number, number];
	return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(a: string, b: string): number {
	const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y) as [
		number,
		number,
	];
	return (high + 0.05) / (low + 0.05);
}

describe("the sketch", () => {
	const svg = cleatForces(cabinet);
	const hung = cleatForces({ ...cabinet, lean: "119 N", legs: undefined });

	it("has every figure, escaped, and closes every tag", () => {
		for (const one of [svg, hung]) {
			expect(one).toContain("392 N &amp; more");
			expect(one).toContain("0 N to &lt;174 N&gt;");
			expect(one).toContain("45 N to 367 N");
			const opened = one.match(/<[a-z]+(?=[ >])[^>]*[^/]>/g)?.length;
			expect(opened).toBe(one.match(/<\/[a-z]+>/g)?.length);
			expect(one).not.toMatch(/NaN|undefined|Infinity/);
		}
		expect(svg).toContain("219 N");
		expect(svg).not.toContain("119 N");
		expect(hung).toContain("119 N");
	});

	it("is drawn in colours of 3 to 1 against white and against a dark editor", () => {
		const colours = new Set(svg.match(/#[0-9a-f]{6}/g));
		expect(colours.size).toBe(4);
		for (const colour of colours) {
			expect(contrast(colour, "#ffffff"), colour).toBeGreaterThanOrEqual(3);
			expect(contrast(colour, "#1e1e1e"), colour).toBeGreaterThanOrEqual(3);
		}
	});

	it("keeps all that it draws of the piece within its frame, whatever its shape", () => {
		for (const depth of [40, 300, 900])
			for (const height of [100, 700, 2400]) {
				const one = cleatForces({
					...cabinet,
					depth,
					height,
					hook: { out: 9, up: height - 50 },
				});
				const [, x, y, w, h] = (
					/<rect x="([\d.]+)" y="([\d.]+)" width="([\d.]+)" height="([\d.]+)"/.exec(
						one,
					) ?? []
				).map(Number);
				expect((x ?? 0) + (w ?? 0)).toBeLessThanOrEqual(440);
				expect((y ?? 0) + (h ?? 0)).toBeLessThanOrEqual(240);
			}
	});
});
