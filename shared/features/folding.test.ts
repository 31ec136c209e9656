// What folds, shown by its first and last line.

import { expect, test } from "vitest";
import { parse } from "../../grammar/index.ts";
import { folding } from "./folding.ts";

function show(text: string): string[] {
	const line = (offset: number): number =>
		text.slice(0, offset).split("\n").length;
	return folding(text, parse(text).tree).map(
		({ span, kind }) => `${line(span.start)}-${line(span.end)} ${kind}`,
	);
}

test("blocks, comments, imports", () => {
	const text = `// one
// two
use oak from "./a.rod"
use ply from "./b.rod"

piece bench {
  join a to b { glue }
  box case {
    // alone
    caps left
  } // behind
  // three

  // four
}
`;
	expect(show(text)).toEqual([
		"1-2 comment",
		"3-4 imports",
		"6-15 block",
		"8-11 block",
	]);
});

test("a block that is never closed folds to where it is taken to end", () => {
	expect(show("piece a {\n  box b {\n    caps left\n")).toHaveLength(2);
});
