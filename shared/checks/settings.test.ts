// Settings as makers write them, right and wrong.

import fc from "fast-check";
import { expect, test } from "vitest";
import { checks } from "./index.ts";
import {
	figureKey,
	mergeOptions,
	readSettings,
	readSettingsText,
} from "./settings.ts";

test("both objects are read", () => {
	expect(
		readSettingsText(
			'\ufeff{ "$schema": "x", "severity": { "fit-gap": "off" }, "figures": { "fit-mitre.opening": 0.2, "fit-mitre.closing": 2 } }',
		),
	).toEqual({
		options: {
			severity: { "fit-gap": "off" },
			figures: { "fit-mitre": { opening: 0.2, closing: 2 } },
		},
		faults: [],
	});
	expect(readSettings(undefined)).toEqual({ options: {}, faults: [] });
	expect(readSettings({ severity: null, figures: null }).faults).toEqual([]);
});

test("every severity and every figure can be set to its own default", () => {
	const reading = readSettings({
		severity: Object.fromEntries(
			checks.map(({ id, severity }) => [id, severity]),
		),
		figures: Object.fromEntries(
			checks.flatMap(({ id, figures }) =>
				Object.entries(figures).map(([name, { value }]) => [
					figureKey(id, name),
					value,
				]),
			),
		),
	});
	expect(reading.faults).toEqual([]);
	for (const { id, severity, figures } of checks) {
		expect(reading.options.severity?.[id]).toBe(severity);
		for (const [name, { value }] of Object.entries(figures)) {
			expect(reading.options.figures?.[id]?.[name]).toBe(value);
		}
	}
});

test.each([
	[
		{ severity: { "fit-gpa": "off" } },
		"There is no check `fit-gpa`: did you mean `fit-gap`?",
	],
	[
		{ severity: { veneer: "off" } },
		"There is no check `veneer`: did you mean `veneer-overhang`?",
	],
	[
		{ severity: { "fit-gap": "of" } },
		'The severity of `fit-gap` cannot be `"of"`: did you mean `off`?',
	],
	[
		{ severity: { "fit-gap": 2 } },
		"The severity of `fit-gap` cannot be `2`: it is error, warning, information, hint, off",
	],
	[
		{ figures: { "fit-mitre.openning": 1 } },
		"There is no figure `fit-mitre.openning`: did you mean `fit-mitre.opening`?",
	],
	[
		{ figures: { "fit-mitre.zzzzzzzz": 1 } },
		"There is no figure `fit-mitre.zzzzzzzz`: there is `fit-mitre.saw-angle`, `fit-mitre.opening`, `fit-mitre.closing`",
	],
	[
		{ figures: { opening: 1 } },
		"There is no figure `opening`: did you mean `fit-mitre.opening`?",
	],
	[
		{ figures: { "fit-mitre.opening": "0.2" } },
		'The figure `fit-mitre.opening` cannot be `"0.2"`: it is a number, 0 or more',
	],
	[
		{ figures: { "fit-mitre.opening": -1 } },
		"The figure `fit-mitre.opening` cannot be `-1`: it is a number, 0 or more",
	],
	[
		{ severity: ["fit-gap"] },
		'`severity` is an object, not a list: `{ "fit-gap": "warning" }`',
	],
	[{ figures: true }, /^`figures` is an object, not `true`: /],
	[
		{ severities: {} },
		"There is no setting `severities`: there is `severity` and `figures`",
	],
	[[], "Settings are an object, not a list"],
	["off", "Settings are an object, not a text"],
])("what is wrong in %j is told, the rest holds", (value, fault) => {
	const { faults } = readSettings(value);
	expect(faults).toEqual([
		typeof fault === "string" ? fault : expect.stringMatching(fault),
	]);
	if (Array.isArray(value) || typeof value === "string") return;
	const more = { severity: { ...Object(value).severity, flush: "off" } };
	if (!Array.isArray(Object(value).severity)) {
		expect(readSettings({ ...value, ...more }).options.severity?.flush).toBe(
			"off",
		);
	}
});

test("a broken file is told, and a flood of faults is cut short", () => {
	expect(readSettingsText("{ severity: }").faults).toEqual([
		expect.stringMatching(/^It is no JSON: \S.*$/),
	]);
	const many = Object.fromEntries(
		Array.from({ length: 500 }, (_, i) => [`no-${i}`, "off"]),
	);
	const { faults } = readSettings({ severity: many });
	expect(faults.length).toBe(21);
	expect(faults.at(-1)).toBe("And 480 more of the like");
});

test("any JSON is read without a throw, into lines of their own", () => {
	fc.assert(
		fc.property(
			fc.oneof(
				fc.jsonValue(),
				fc.record({ severity: fc.jsonValue(), figures: fc.jsonValue() }),
			),
			(value) => {
				const text = JSON.stringify(value);
				for (const fault of readSettingsText(text).faults) {
					expect(fault).toMatch(/^\S[^\n\r]*[^.\s]$/);
				}
			},
		),
		{ numRuns: 300 },
	);
});

test("the stronger settings win, one by one", () => {
	const under = readSettings({
		severity: { flush: "off", gap: "hint" },
		figures: { "fit-mitre.opening": 1, "fit-mitre.closing": 2 },
	}).options;
	const over = readSettings({
		severity: { gap: "error" },
		figures: { "fit-mitre.opening": 3 },
	}).options;
	expect(mergeOptions(under, over)).toEqual({
		severity: { flush: "off", gap: "error" },
		figures: { "fit-mitre": { opening: 3, closing: 2 } },
	});
});
