// Things by a part of their name: where they stand, and in which order they come.

import { expect, test } from "vitest";
import { parse } from "../../grammar/index.ts";
import { fileNames } from "./support/names/name-world.ts";
import { findThings, thingsIn } from "./workspace-symbols.ts";

const file = fileNames(
	"file:///shop/bench.rod",
	parse(`use ply from "./stock.rod"
component base { given width = 3; part rail { of ply.half; size 9 x width } }
piece bench {
  given width = 54
  box case { outside width x 9 x 9; divider middle of ply.half centred }
  leg front-left, front-right handed { layer inner of ply.half 2 wide }
  trim lip { on case.front.edges }
}
`).tree,
);

function found(query: string): string[] {
	return findThings(query, thingsIn(file)).map(
		({ name, kind, container }) =>
			`${kind} ${container === "" ? "" : `${container}.`}${name}`,
	);
}

test("things with what they stand in", () => {
	expect(found("mid")).toEqual(["part bench.case.middle"]);
	expect(found("inner")).toEqual(["layer bench.front-left.inner"]);
	expect(found("fr")).toEqual([
		"leg bench.front-left",
		"leg bench.front-right",
	]);
	expect(found("WIDTH")).toEqual(["size base.width", "size bench.width"]);
});

test("told by what they stand in", () => {
	expect(found("base width")).toEqual(["size base.width"]);
	expect(found("bench.case.mid")).toEqual(["part bench.case.middle"]);
	expect(found("base.lip")).toEqual([]);
});

test("without a query, what stands at the top", () => {
	expect(found("")).toEqual(["component base", "piece bench"]);
});
