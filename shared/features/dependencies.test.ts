// What hangs on what, one step at a time.

import { expect, test } from "vitest";
import { readFixture } from "../../tests/harness/fixture.ts";
import { nameWorld } from "../../tests/harness/name-world.ts";
import { dependentAt, dependents, dependsOn } from "./dependencies.ts";
import { madeFrom, madeOf } from "./made-from.ts";
import type { Named } from "./support/names/named.ts";

const source = `//- main.rod
use ply, base from "./stock.rod"
piece rack {
  given width = 36
  mark half = width / 2
  make foot from base { set depth = half }
  box case {
    outside width x 12 x foot.depth
    panels top, bottom, left, right of ply.half
    divider middle of ply.half half right from left
    join middle to top, bottom { glue }
  }
  leg one, two handed { against outside case.left; layer only of ply.half 2 wide }
  must half > 2 * ply.half.thick "strong"
}
//- stock.rod
sheet ply { variant half { thick 15/32 } }
component base { given depth = 9; part rail { of ply.half; size 9 x depth } }
`;

function ask(needle: string) {
	const { main, texts } = readFixture(source);
	const world = nameWorld(texts);
	const offset = main.text.indexOf(needle) + needle.length - 1;
	return { world, texts, uri: main.uri, offset };
}

function shown(named: Named): string {
	return `${named.construct.head} ${named.name}`;
}

function hangs(needle: string) {
	const { world, texts, uri, offset } = ask(needle);
	const named = dependentAt(world, uri, offset);
	if (!named) return undefined;
	const text = texts.get(named.uri) ?? "";
	return {
		on: dependsOn(world, named).map(
			({ named: other, spans }) =>
				`${shown(other)}: ${spans.map(({ start, end }) => text.slice(start, end)).join(", ")}`,
		),
		by: dependents(world, named, texts.keys()).map(
			({ named: other, spans }) =>
				`${shown(other)}: ${spans.map(({ start, end }) => texts.get(other.uri)?.slice(start, end)).join(", ")}`,
		),
	};
}

test("a size", () => {
	expect(hangs("given width")).toEqual({
		on: [],
		by: ["mark half: width", "box case: width"],
	});
	expect(hangs("mark half")).toEqual({
		on: ["given width: width"],
		by: ["make foot: half", "divider middle: half", "piece rack: half"],
	});
});

test("a thing with what stands in it", () => {
	expect(hangs("box case")).toEqual({
		on: [
			"given width: width",
			"given depth: foot.depth",
			"variant half: ply.half, ply.half",
			"mark half: half",
		],
		by: ["leg one: case.left"],
	});
	expect(hangs("make foot")).toEqual({
		on: ["component base: base", "given depth: depth", "mark half: half"],
		by: ["box case: foot.depth"],
	});
});

test("of a face or size that comes with a thing, that thing", () => {
	expect(hangs("outside case.left")).toEqual(hangs("box case"));
	expect(hangs("36")).toBeUndefined();
});

test("what is made from what", () => {
	const { world, texts, uri, offset } = ask("make foot");
	expect(madeFrom(world, uri, offset)?.map(shown)).toEqual(["component base"]);
	const box = ask("box case");
	expect(madeFrom(world, uri, box.offset)?.map(shown)).toEqual([
		"variant half",
	]);
	const leg = ask("leg one, two");
	expect(madeFrom(world, uri, leg.offset)).toEqual([]);
	expect(
		madeOf(world, uri, ask("from base").offset, texts.keys())?.map(shown),
	).toEqual(["make foot"]);
	expect(
		madeOf(world, uri, ask("of ply.half").offset, texts.keys())?.map(shown),
	).toEqual(["box case", "divider middle", "layer only", "part rail"]);
	expect(madeOf(world, uri, offset, texts.keys())).toEqual([]);
	expect(madeFrom(world, uri, ask("36").offset)).toBeUndefined();
});
