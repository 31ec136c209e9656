import { expect, test } from "vitest";
import { compareStrings } from "./compare.ts";

test("orders by UTF-16 code units, whatever the locale", () => {
	const texts = ["é", "z", "Z", "a", "", "10", "9", "ä", "\uff21", "🪵"];
	// U+1FAB5 is written with surrogates from U+D83E, below U+FF21.
	expect(texts.toSorted(compareStrings)).toEqual([
		"",
		"10",
		"9",
		"Z",
		"a",
		"z",
		"ä",
		"é",
		"🪵",
		"\uff21",
	]);
	expect(compareStrings("a", "a")).toBe(0);
});
