// The settings that the editor offers are those that the checks have, and mean the same in a settings file.

import { readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, test } from "vitest";
import { checks, figureKey, readSettings } from "../../shared/checks/index.ts";
import { staleFiles, wantedManifest, wantedSchema } from "./manifest.ts";

const manifestText = readFileSync(
	new URL("../../package.json", import.meta.url),
	"utf8",
);

test("the manifest and the schema are fresh (else run `node tests/generate/manifest.ts`)", () => {
	expect(staleFiles()).toEqual([]);
});

test("only the settings of the checks are written, anything else stays", () => {
	const manifest = JSON.parse(manifestText);
	const { properties } = manifest.contributes.configuration;
	const other = { ...properties["storyrod.trace.server"] };
	properties["storyrod.checks.severity"] = { type: "string" };
	delete properties["storyrod.checks.figures"];
	const again = wantedManifest(JSON.stringify(manifest));
	expect(JSON.parse(again)).toEqual(JSON.parse(manifestText));
	expect(
		JSON.parse(again).contributes.configuration.properties[
			"storyrod.trace.server"
		],
	).toEqual(other);
});

test("what the server colours by meaning looks like what the colouring grammar colours by form", () => {
	const { semanticTokenScopes } = JSON.parse(manifestText).contributes;
	const grammar = readFileSync(
		new URL(
			"../../grammar/generated/storyrod.tmLanguage.json",
			import.meta.url,
		),
		"utf8",
	);
	const used = [...grammar.matchAll(/"name": "([\w.-]+)\.storyrod"/g)].map(
		([, name]) => name as string,
	);
	const scopes = Object.entries(
		semanticTokenScopes[0].scopes as Record<string, string[]>,
	);
	expect(scopes.length).toBeGreaterThan(10);
	for (const [type, all] of scopes) {
		// A parameter is nothing that a line alone shows.
		const known = all.some((scope) =>
			used.some((one) => one === scope || one.startsWith(`${scope}.`)),
		);
		expect(known, type).toBe(true);
	}
});

test("the settings file has its schema in the editor", () => {
	const { jsonValidation } = JSON.parse(manifestText).contributes;
	expect(jsonValidation).toEqual([
		{
			fileMatch: [".storyrod.json"],
			url: "./shared/outputs/schema/settings.json",
		},
	]);
});

describe("the schema takes what the program takes", () => {
	const ajv = new Ajv2020({ strict: false });
	const takes = ajv.compile(JSON.parse(wantedSchema()));
	const all = {
		severity: Object.fromEntries(checks.map(({ id }) => [id, "off"])),
		figures: Object.fromEntries(
			checks.flatMap(({ id, figures }) =>
				Object.keys(figures).map((name) => [figureKey(id, name), 1]),
			),
		),
	};

	test.each([
		[all, true],
		[{}, true],
		[{ $schema: "./settings.json" }, true],
		[{ severity: { "fit-gap": "fatal" } }, false],
		[{ severity: { "fit-gpa": "off" } }, false],
		[{ figures: { "fit-mitre.opening": -1 } }, false],
		[{ figures: { "fit-mitre.opening": "1" } }, false],
		[{ figures: [] }, false],
		[{ checks: {} }, false],
		[[], false],
	])("%j", (settings, good) => {
		expect(takes(settings)).toBe(good);
		expect(readSettings(settings).faults.length === 0).toBe(good);
	});
});
