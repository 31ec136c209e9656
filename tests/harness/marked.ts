// Holds findings against the marks of a fixture: each finding must be marked, each mark met.

import { expect } from "vitest";
import type { Finding } from "../../shared/model/types.ts";
import type { FixtureFile } from "./fixture.ts";

/** A mark reads `severity id` or `severity id: part of the message`. */
export function expectMarked(
	file: FixtureFile,
	findings: readonly Finding[],
): void {
	const left = findings.filter(({ origin }) => origin.uri === file.uri);
	for (const { span, label } of file.marks) {
		const [, severity, id, part = ""] =
			/^(\S+) ([\w-]+)(?:: ?(.*))?$/.exec(label) ?? [];
		const at = left.findIndex(
			(finding) =>
				finding.severity === severity &&
				finding.id === id &&
				finding.message.includes(part) &&
				finding.origin.span.start === span.start &&
				finding.origin.span.end === span.end,
		);
		expect(at, `Not found: ${label}, among\n${shown(file, left)}`).not.toBe(-1);
		left.splice(at, 1);
	}
	expect(left, `Not marked:\n${shown(file, left)}`).toEqual([]);
}

function shown(file: FixtureFile, findings: readonly Finding[]): string {
	return findings
		.map(
			({ severity, id, message, origin: { span } }) =>
				`[${file.text.slice(span.start, span.end)}] ${severity} ${id}: ${message}`,
		)
		.join("\n");
}
