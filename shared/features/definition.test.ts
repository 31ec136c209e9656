// Where a name leads: shown as the text of the name in its file.

import { expect, test } from "vitest";
import { snap } from "../../tests/harness/snapshot.ts";
import { resolveRelative } from "../sources/sources.ts";
import { definition } from "./definition.ts";

function check(source: string): string | undefined {
	const { fixture, snapshot, offset } = snap(source);
	const target = definition(snapshot, offset, (path) =>
		resolveRelative(snapshot.uri, path),
	);
	if (!target) return undefined;
	const from = snapshot.text.slice(target.from.start, target.from.end);
	const file = fixture.texts.get(target.uri);
	const { start, end } = target.nameSpan;
	const line = file?.slice(0, start).split("\n").length;
	return `${from} -> ${target.uri.replace(/.*\//, "")}:${line} ${file?.slice(start, end)}`;
}

const stock = `
//- stock.rod
sheet ply {
  species "birch plywood"
  size 96 x 48
  variant half { sold-as 1/2; thick 15/32 }
}
`;

test("a size", () => {
	expect(
		check(`piece a {
  given width = 54
  mark half = wid<|>th / 2
}`),
	).toBe("width -> main.rod:2 width");
});

test("a material in another file, and its variant", () => {
	const text = (cursor: string) => `//- main.rod
use ply from "./stock.rod"
piece a {
  part b { of ${cursor}; size 10 x 5 }
}${stock}`;
	expect(check(text("p<|>ly.half"))).toBe("ply -> stock.rod:1 ply");
	expect(check(text("ply.ha<|>lf"))).toBe("half -> stock.rod:4 half");
});

test("an imported name, and the file itself", () => {
	expect(check(`//- main.rod\nuse p<|>ly from "./stock.rod"${stock}`)).toBe(
		"ply -> stock.rod:1 ply",
	);
	expect(check(`//- main.rod\nuse ply from "./st<|>ock.rod"${stock}`)).toBe(
		'"./stock.rod" -> stock.rod:1 ',
	);
});

test("the declaration itself", () => {
	expect(check("piece a {\n  given wid<|>th = 54\n}")).toBe(
		"width -> main.rod:2 width",
	);
});

test("nothing on a word of the language, on a number, past the end", () => {
	expect(check("pie<|>ce a {\n  given width = 54\n}")).toBeUndefined();
	expect(check("piece a {\n  given width = 5<|>4\n}")).toBeUndefined();
	expect(check("piece a { }\n\n<|>")).toBeUndefined();
});
