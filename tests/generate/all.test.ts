// `npm run generate` knows every writer.

import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { writers } from "./all.ts";

test("every writer has a test that tells when its page is stale, and is run", () => {
	const names = writers();
	expect(names).toContain("manifest.ts");
	expect(names).not.toContain("all.ts");
	const tests = readdirSync(import.meta.dirname);
	for (const name of names) {
		expect(tests).toContain(name.replace(/\.ts$/, ".test.ts"));
		const text = readFileSync(`${import.meta.dirname}/${name}`, "utf8");
		expect(text).toContain('"--check"');
	}
});

test("it is a script of the manifest", () => {
	const { scripts } = JSON.parse(
		readFileSync(new URL("../../package.json", import.meta.url), "utf8"),
	) as { scripts: Record<string, string> };
	expect(scripts.generate).toBe("node tests/generate/all.ts");
});
