// The page of the checks agrees with the checks, and every check file is in the registry.

import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";
import { checkGroups, checks } from "../../shared/checks/index.ts";
import { checksPagePath, wantedChecksPage } from "./checks-page.ts";

const rules = fileURLToPath(
	new URL("../../shared/checks/rules/", import.meta.url),
);

it("is what the checks say (else run `node tests/generate/checks-page.ts`)", () => {
	expect(readFileSync(checksPagePath, "utf8")).toBe(wantedChecksPage());
});

it("has a file for every check, and a check for every file", () => {
	const files = readdirSync(rules, { recursive: true, encoding: "utf8" })
		.map((path) => path.replaceAll("\\", "/"))
		.filter((path) => path.endsWith(".ts"))
		.sort();
	const wanted = checks.map((check) => `${check.group}/${check.id}.ts`).sort();
	expect(files).toEqual(wanted);
});

it("names every check once, in kebab-case, with a summary of one line", () => {
	expect(new Set(checks.map(({ id }) => id)).size).toBe(checks.length);
	for (const check of checks) {
		expect(check.id).toMatch(/^[a-z]+(-[a-z]+)*$/);
		expect(check.summary).toMatch(/^[A-Z][^\n]{10,100}[^.\n]$/);
		expect(Object.keys(checkGroups)).toContain(check.group);
		expect(check.source.length).toBeGreaterThan(10);
		for (const figure of Object.values(check.figures)) {
			expect(Number.isFinite(figure.value)).toBe(true);
			expect(figure.source.length).toBeGreaterThan(10);
		}
	}
});
