// Runs every writer in this folder, `npm run generate`: a new one is found by itself. With --check nothing is written, and
// what is stale is told.

import { spawnSync } from "node:child_process";
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const folder = fileURLToPath(new URL(".", import.meta.url));

/** File names of the writers, in order. */
export function writers(): readonly string[] {
	return readdirSync(folder)
		.filter((name) => name.endsWith(".ts") && !name.endsWith(".test.ts"))
		.filter((name) => name !== "all.ts")
		.sort();
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
	const args = process.argv.slice(2);
	for (const name of writers()) {
		const { status } = spawnSync(
			process.execPath,
			[join(folder, name), ...args],
			{ stdio: "inherit" },
		);
		// The writer has told why.
		if (status !== 0) process.exitCode = 1;
	}
}
