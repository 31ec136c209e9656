// Which names fit what was typed, the best first.

import { expect, test } from "vitest";
import { fuzzyDistance } from "./fuzzy.ts";

const names = [
	"front-left",
	"front-right",
	"flush-lip",
	"lip",
	"left",
	"record-bench",
	"shelf",
];

function found(query: string): string[] {
	return names
		.flatMap((name) => {
			const distance = fuzzyDistance(query, name);
			return distance === undefined ? [] : [{ name, distance }];
		})
		.sort((a, b) => a.distance - b.distance)
		.map(({ name }) => name);
}

test("the name itself, then names that begin so, then words in them, then letters", () => {
	expect(found("lip")).toEqual(["lip", "flush-lip"]);
	expect(found("l")).toEqual([
		"lip",
		"left",
		"front-left",
		"flush-lip",
		"shelf",
	]);
	expect(found("fl")).toEqual(["flush-lip", "front-left"]);
	expect(found("FR")).toEqual(["front-left", "front-right"]);
	expect(found("re be")).toEqual(["record-bench"]);
	expect(found("xyz")).toEqual([]);
	expect(found("")).toHaveLength(names.length);
});
