// The README shows what the commands print, and its commands exist.

import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { commands } from "../../server/cli/commands/index.ts";
import { readmePath, wantedReadme } from "./readme.ts";

const text = readFileSync(readmePath, "utf8");

it("shows what the commands print (else run `node tests/generate/readme.ts`)", async () => {
	expect(text).toBe(await wantedReadme(text));
});

it("shows three outputs, none of them empty", () => {
	const fences = [...text.matchAll(/```text\n([\s\S]*?)```/g)];
	expect(fences).toHaveLength(3);
	for (const fence of fences) expect(fence[1]?.length).toBeGreaterThan(50);
});

it("names every command", () => {
	for (const { name } of commands) expect(text).toContain(`storyrod ${name}`);
});
