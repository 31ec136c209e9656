// The catalogue of faults: every fault brings what its first lines expect and nothing else, every near miss brings none of
// it, and designs of sound practice stay silent.

import { describe, expect, it } from "vitest";
import { allFindings } from "../../shared/checks/index.ts";
import type { Finding } from "../../shared/model/types.ts";
import {
	type CatalogueFile,
	designAt,
	faults,
	soundDesigns,
} from "../harness/catalogue.ts";

function findingsOf(file: CatalogueFile): readonly Finding[] {
	return allFindings(designAt(file.uri));
}

/** What is listed as coming along, and does not. */
function unfound(file: CatalogueFile, found: readonly Finding[]): string[] {
	return file.also.filter((also) => found.every(({ id }) => id !== also));
}

/** What a maker would see, for a failing test to show. */
function told({ id, severity, message }: Finding): string {
	return `${severity} ${id}: ${message}`;
}

describe.each(faults)("$name", (fault) => {
	it("brings what it expects, and nothing else", () => {
		const found = findingsOf(fault);
		expect(fault.expects).not.toEqual([]);
		for (const { id, part } of fault.expects)
			expect(
				found.filter((one) => one.id === id && one.message.includes(part))
					.length,
				`${id}: ${part}\n${found.map(told).join("\n")}`,
			).toBeGreaterThan(0);
		const known = [...fault.expects.map(({ id }) => id), ...fault.also];
		expect(found.filter(({ id }) => !known.includes(id)).map(told)).toEqual([]);
		expect(unfound(fault, found)).toEqual([]);
	});

	it("has a near miss that brings none of it, and no error", () => {
		const { near } = fault;
		const ids = fault.expects.map(({ id }) => id);
		const found = findingsOf(near);
		expect(near.expects).toEqual([]);
		expect(
			found
				.filter(({ id, severity }) => ids.includes(id) || severity === "error")
				.map(told),
		).toEqual([]);
	});

	it("differs from its near miss by no more than a maker would change", () => {
		const lines = (text: string): readonly string[] =>
			text.split("\n").map((line) => line.trim());
		const wrong = lines(fault.body);
		const right = lines(fault.near.body);
		const only = (one: readonly string[], other: readonly string[]): number =>
			one.filter((line) => !other.includes(line)).length;
		expect(only(wrong, right)).toBeLessThanOrEqual(4);
		expect(only(right, wrong)).toBeLessThanOrEqual(4);
		expect(only(wrong, right) + only(right, wrong)).toBeGreaterThan(0);
	});
});

it("has sixty faults or more, each with its near miss", () => {
	expect(faults.length).toBeGreaterThanOrEqual(60);
});

describe.each(soundDesigns)("sound: $name", (file) => {
	it("brings no error and no warning; other words only where they are listed", () => {
		const found = findingsOf(file);
		expect(
			found
				.filter(
					({ id, severity }) =>
						severity === "error" ||
						severity === "warning" ||
						!file.also.includes(id),
				)
				.map(told),
		).toEqual([]);
		expect(unfound(file, found)).toEqual([]);
	});
});

it("has twenty designs of sound practice or more", () => {
	expect(soundDesigns.length).toBeGreaterThanOrEqual(20);
});
