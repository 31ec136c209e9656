// The page about layouts from other programs: each program on it runs and prints what stands below it.

import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { describe, expect, test, vi } from "vitest";
import { programs } from "../harness/layouts-page.ts";

const source = new URL("../../shared/cutting/index.ts", import.meta.url).href;

describe("the page", () => {
	test("has programs, each with what it prints", () => {
		expect(programs().length).toBe(2);
	});

	test.each(programs())(
		"program $number prints what it says",
		async ({ text, prints }) => {
			const folder = mkdtempSync(join(tmpdir(), "storyrod-page-"));
			const lines: string[] = [];
			const log = vi
				.spyOn(console, "log")
				.mockImplementation((...words) => lines.push(words.join(" ")));
			try {
				const file = join(folder, "program.ts");
				writeFileSync(file, text.replace('"storyrod/layouts"', `"${source}"`));
				await import(pathToFileURL(file).href);
			} finally {
				log.mockRestore();
				rmSync(folder, { recursive: true, force: true });
			}
			expect(`${lines.join("\n")}\n`).toBe(prints);
		},
	);
});

test("the README names the page", () => {
	const readme = readFileSync(
		new URL("../../README.md", import.meta.url),
		"utf8",
	);
	expect(readme).toContain("(shared/cutting/README.md)");
});
