// Files that travel with the package. Sources and bundle stand equally deep below its root.

import { readFileSync } from "node:fs";

const root = new URL("../../", import.meta.url);

/** Of the package, as its manifest has it. */
export function version(): string {
	const manifest = JSON.parse(
		readFileSync(new URL("package.json", root), "utf8"),
	) as { version: string };
	return manifest.version;
}

/** A design to begin with, `hung-case`; `stock` is the stock file of all of them. */
export function starter(name: string): string {
	return readFileSync(
		new URL(`shared/library/starters/${name}.rod`, root),
		"utf8",
	);
}
