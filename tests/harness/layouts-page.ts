// The programs on the page about layouts from other programs, for the tests that run them.

import { readFileSync } from "node:fs";

export interface Program {
	readonly number: number;
	readonly text: string;
	/** What it prints, as the page says. */
	readonly prints: string;
}

export function programs(): readonly Program[] {
	const page = readFileSync(
		new URL("../../shared/cutting/README.md", import.meta.url),
		"utf8",
	);
	const found = page.matchAll(
		/```ts\n([\s\S]*?)```\n\nprints\n\n```text\n([\s\S]*?)```/g,
	);
	return [...found].map(([, text = "", prints = ""], index) => ({
		number: index + 1,
		text,
		prints,
	}));
}
