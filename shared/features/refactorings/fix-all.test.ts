// All mends of a file at once.

import { expect, test } from "vitest";
import { tried } from "../../../tests/harness/refactoring.ts";

const faulty = "pice a { }\npiece b {\n  prat c { }\n}\n";

test("mends what a machine can mend, when the whole file is asked for", () => {
	const { offers, after } = tried(faulty, { wholeFile: true });
	expect(offers.map(({ kind }) => kind)).toContain("source.fixAll.storyrod");
	expect(after("fix-all")).toMatchObject({
		text: "piece a { }\npiece b {\n  part c { }\n}\n",
	});
});

test("is refused where lines cannot be read", () => {
	expect(
		tried("pice a { }\npiece b {\n  mark d = 1+2\n}\n", { wholeFile: true })
			.titles,
	).toContain(
		"Mend all that can be mended by machine -- Some lines cannot be read: mend these first, one by one",
	);
});

test("is not offered at a place, nor where nothing can be mended", () => {
	const all = (source: string, wholeFile: boolean): string[] =>
		tried(source, { wholeFile }).offers.flatMap(({ id }) =>
			id === "fix-all" ? [id] : [],
		);
	expect(all(faulty, false)).toEqual([]);
	expect(all("piece a { }\n", true)).toEqual([]);
});
