// Every example on a check's page is tried: the first brings exactly one finding of the check, the second none; and every mend mends.

import { describe, expect, it } from "vitest";
import { compile } from "../model/compile.ts";
import type { Finding } from "../model/types.ts";
import { sourcesOf } from "../sources/sources.ts";
import { applyEdits } from "../text/edits.ts";
import { examplePreamble } from "./example.ts";
import { checks, runChecks } from "./index.ts";

function findingsIn(text: string): readonly Finding[] {
	const uri = "file:///example.rod";
	const design = compile(sourcesOf(new Map([[uri, text]])), uri);
	return [...design.findings, ...runChecks(design)];
}

function whole(example: string): string {
	return `${examplePreamble}${example}\n`;
}

/** What a maker would see, for a failing test to show. */
function told(findings: readonly Finding[]): readonly string[] {
	return findings.map(
		({ id, severity, message }) => `${severity} ${id}: ${message}`,
	);
}

function errors(findings: readonly Finding[]): readonly Finding[] {
	return findings.filter(({ severity }) => severity === "error");
}

describe.each(checks)("$id", (check) => {
	const own = (findings: readonly Finding[]): readonly Finding[] =>
		findings.filter(({ id }) => id === check.id);

	it("fires once on the first example", () => {
		const findings = findingsIn(whole(check.fires));
		expect(told(own(findings)), told(findings).join("\n")).toHaveLength(1);
	});

	it("is silent on the second, and so are all errors", () => {
		const findings = findingsIn(whole(check.silent));
		expect(told([...own(findings), ...errors(findings)])).toEqual([]);
	});

	it("says it in one line, capital first, no full stop, at a place in the text", () => {
		const text = whole(check.fires);
		for (const { message, origin, related } of own(findingsIn(text))) {
			for (const line of [message, ...related.map((one) => one.message)])
				expect(line).toMatch(/^[A-Z`0-9][^\n]*[^.\n]$/);
			expect(origin.span.end).toBeGreaterThan(origin.span.start);
			expect(origin.span.start).toBeGreaterThanOrEqual(examplePreamble.length);
			expect(origin.span.end).toBeLessThanOrEqual(text.length);
		}
	});

	it("has mends that cure it and break nothing", () => {
		const text = whole(check.fires);
		const before = findingsIn(text);
		for (const { fixes } of own(before)) {
			for (const { title, edits } of fixes) {
				const mended = applyEdits(
					text,
					edits.map(({ span, text: insert }) => ({ ...span, text: insert })),
				);
				const after = findingsIn(mended);
				expect(told(own(after)), title).toEqual([]);
				const known = new Set(told(errors(before)));
				expect(
					told(errors(after)).filter((line) => !known.has(line)),
					title,
				).toEqual([]);
			}
		}
	});
});

/** Checks whose first example can be mended by changing what is written in one place. */
it.each([
	"fit-gap",
	"fit-nominal",
	"datum-unclear",
	"fastener-through",
	"fastener-short",
	"trim-width",
	"veneer-overhang",
	"unit-slip",
	"edge-split",
	"biscuit-size",
	"veneer-order",
	"veneer-one-side",
	"veneer-ground",
])("offers a mend for %s", (id) => {
	const check = checks.find((one) => one.id === id);
	const findings = findingsIn(whole(check?.fires ?? ""));
	const found = findings.find((one) => one.id === id);
	expect(found?.fixes.length).toBeGreaterThan(0);
});
