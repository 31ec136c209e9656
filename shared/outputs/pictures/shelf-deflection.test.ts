// The drawing of a sagging shelf: well-formed, readable on any ground, the same for the same shelf.

import { describe, expect, it } from "vitest";
import {
	exaggeration,
	type ShelfPicture,
	shelfDeflection,
} from "./shelf-deflection.ts";

/** A shelf of 900 mm, 2 mm down in the middle. */
const shelf: ShelfPicture = {
	length: 900,
	supports: [0, 900],
	deflectionAt: (x) => 2 * Math.sin((Math.PI * x) / 900),
	creep: 1.8,
	worst: { at: 450, label: "2 mm < 5 & falling" },
	span: { from: 0, to: 900, label: "900 mm" },
	load: '40 kg "books"',
	tooMuch: true,
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

describe("the picture", () => {
	const svg = shelfDeflection(shelf);

	it("escapes what is written on it and closes every tag", () => {
		expect(svg).toContain("2 mm &lt; 5 &amp; falling");
		expect(svg).toContain("40 kg &quot;books&quot;");
		const opened = svg.match(/<[a-z]+(?=[ >])[^>]*[^/]>/g)?.length;
		expect(opened).toBe(svg.match(/<\/[a-z]+>/g)?.length);
		expect(svg).not.toMatch(/NaN|undefined|Infinity/);
	});

	it("is drawn in colours of 3 to 1 against white and against a dark editor, bad or good", () => {
		const both = svg + shelfDeflection({ ...shelf, tooMuch: false });
		const colours = new Set(both.match(/#[0-9a-f]{6}/g));
		expect(colours.size).toBe(5);
		for (const colour of colours) {
			expect(contrast(colour, "#ffffff"), colour).toBeGreaterThanOrEqual(3);
			expect(contrast(colour, "#1e1e1e"), colour).toBeGreaterThanOrEqual(3);
		}
	});

	it("draws the years 34 px deep and says by how much that is too much", () => {
		// 332 px for 900 mm along; 34 px for 3.6 mm down: 9.44 / 0.3689 = 25.6 times, told in fives.
		expect(exaggeration(shelf)).toBe(25);
		expect(svg).toContain(" 190.0,86.0 ");
	});

	it("draws what does not bend as level", () => {
		const flat = shelfDeflection({ ...shelf, deflectionAt: () => 0 });
		expect(flat).not.toMatch(/NaN|Infinity/);
		expect(flat).toContain(" 190.0,52.0 ");
	});
});
