// Writes the page of the checks, shared/checks/CHECKS.md, from the checks. With --check it writes nothing and tells if the page is stale.

import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { examplePreamble } from "../../shared/checks/example.ts";
import {
	allFindings,
	type Case,
	checks,
	checksPage,
} from "../../shared/checks/index.ts";
import { designAt, type Fault, faults } from "../harness/catalogue.ts";

export const checksPagePath = fileURLToPath(
	new URL("../../shared/checks/CHECKS.md", import.meta.url),
);

export function wantedChecksPage(): string {
	const cases = new Map<string, Case[]>();
	for (const fault of faults) {
		for (const [id, messages] of messagesOf(fault)) {
			const one: Case = {
				title: titleOf(fault),
				design: fault.body,
				messages,
				mended: {
					out: linesOnlyIn(fault.body, fault.near.body),
					in: linesOnlyIn(fault.near.body, fault.body),
				},
			};
			cases.set(id, [...(cases.get(id) ?? []), one]);
		}
	}
	return checksPage(checks, examplePreamble, cases);
}

/** What the expected checks say, by their ids in the order of the file. */
function messagesOf({
	uri,
	expects,
}: Fault): ReadonlyMap<string, readonly string[]> {
	const found = allFindings(designAt(uri));
	return new Map(
		[...new Set(expects.map(({ id }) => id))].map((id) => [
			id,
			[
				...new Set(
					found
						.filter((finding) => finding.id === id)
						.map(({ message }) => message),
				),
			],
		]),
	);
}

/** The doc of the piece in one line; the name of the file where it has none. */
function titleOf({ name, body }: Fault): string {
	const lines = body.split("\n");
	const piece = lines.findIndex((line) => line.startsWith("piece "));
	const docs: string[] = [];
	for (let at = piece - 1; lines[at]?.startsWith("///"); at--)
		docs.unshift((lines[at] as string).slice("///".length).trim());
	return docs.length > 0 ? docs.join(" ") : name;
}

function linesOnlyIn(text: string, other: string): readonly string[] {
	const known = new Set(other.split("\n").map((line) => line.trim()));
	return text
		.split("\n")
		.map((line) => line.trim())
		.filter((line) => line !== "" && !known.has(line));
}

function onDisk(): string {
	try {
		return readFileSync(checksPagePath, "utf8");
	} catch {
		return "";
	}
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
	const wanted = wantedChecksPage();
	if (!process.argv.includes("--check")) writeFileSync(checksPagePath, wanted);
	else if (onDisk() !== wanted) {
		process.stderr.write(
			"shared/checks/CHECKS.md is stale: run `node tests/generate/checks-page.ts`\n",
		);
		process.exitCode = 1;
	}
}
