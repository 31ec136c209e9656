// Every example on a check's page is tried: the first brings exactly one finding of the check, the second none.

import { describe, expect, it } from "vitest";
import { compile } from "../model/compile.ts";
import type { Finding } from "../model/types.ts";
import { sourcesOf } from "../sources/sources.ts";
import { examplePreamble } from "./example.ts";
import { checks, runChecks } from "./index.ts";

function findingsIn(example: string): readonly Finding[] {
	const uri = "file:///example.rod";
	const text = `${examplePreamble}${example}\n`;
	const design = compile(sourcesOf(new Map([[uri, text]])), uri);
	return [...design.findings, ...runChecks(design)];
}

/** What a maker would see, for a failing test to show. */
function told(findings: readonly Finding[]): readonly string[] {
	return findings.map(
		({ id, severity, message }) => `${severity} ${id}: ${message}`,
	);
}

describe.each(checks)("$id", (check) => {
	it("fires once on the first example, and on nothing that is broken", () => {
		const findings = findingsIn(check.fires);
		expect(
			told(findings.filter(({ id }) => id === check.id)),
			told(findings).join("\n"),
		).toHaveLength(1);
	});

	it("is silent on the second, and so are all errors", () => {
		const findings = findingsIn(check.silent);
		expect(
			told(
				findings.filter(
					({ id, severity }) => id === check.id || severity === "error",
				),
			),
		).toEqual([]);
	});
});
