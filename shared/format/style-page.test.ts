// The page of the style says what the formatter does: its examples are laid out already, its spellings are those that are written.

import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { parse } from "../../grammar/index.ts";
import { format } from "./format.ts";

const page = readFileSync(
	new URL("../../grammar/STYLE.md", import.meta.url),
	"utf8",
);
const examples = [...page.matchAll(/```storyrod\n([\s\S]*?)```/g)].map(
	([, text = ""]) => text,
);
const spellings = [...page.matchAll(/^\| `([^`]+)` \| `([^`]+)` \|$/gm)].map(
	([, typed = "", written = ""]) => [typed, written] as const,
);

test("there is something to try", () => {
	expect(examples.length).toBeGreaterThanOrEqual(2);
	expect(spellings.length).toBeGreaterThanOrEqual(8);
});

test.each(examples)("the example is laid out: %s", (text) => {
	expect(parse(text).faults).toEqual([]);
	expect(format(text).text).toBe(text);
});

test.each(spellings)("%s is written %s", (typed, written) => {
	expect(format(`${typed}\n`).text).toBe(`${written}\n`);
});
