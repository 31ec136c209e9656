// Writes the page of the checks, shared/checks/CHECKS.md, from the checks. With --check it writes nothing and tells if the page is stale.

import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { examplePreamble } from "../../shared/checks/example.ts";
import { checks, checksPage } from "../../shared/checks/index.ts";

export const checksPagePath = fileURLToPath(
	new URL("../../shared/checks/CHECKS.md", import.meta.url),
);

export function wantedChecksPage(): string {
	return checksPage(checks, examplePreamble);
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
