// Where a name leads: shown as the text of the name in its file.

import { expect, test } from "vitest";
import { readFixture } from "../../tests/harness/fixture.ts";
import { nameWorld } from "../../tests/harness/name-world.ts";
import { definition } from "./definition.ts";

function check(source: string): string | undefined {
	const { cursor, texts } = readFixture(source);
	const { file, offset } = cursor;
	const target = definition(nameWorld(texts), file.uri, offset);
	if (!target) return undefined;
	const from = file.text.slice(target.from.start, target.from.end);
	const there = texts.get(target.uri);
	const { start, end } = target.nameSpan;
	const line = there?.slice(0, start).split("\n").length;
	return `${from} -> ${target.uri.replace(/.*\//, "")}:${line} ${there?.slice(start, end)}`;
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

test("a panel where the box says that it has it, a face where the box is", () => {
	const text = (cursor: string) => `piece a {
  box case {
    panels top, bottom,
      left, right of ply.half
    back of ply.quarter
  }
  leg foot { against outside ${cursor} }
}`;
	expect(check(text("case.l<|>eft"))).toBe("left -> main.rod:4 left");
	expect(check(text("case.l<|>eft.inside"))).toBe("left -> main.rod:4 left");
	expect(check(text("case.back.ins<|>ide"))).toBe("inside -> main.rod:5 back");
	expect(check(text("case.fr<|>ont"))).toBe("front -> main.rod:2 case");
});

test("a given where it is set, a part of what is made from a component", () => {
	const text = (set: string, part: string) => `component base {
  given width = 3
  part rail { of ply.half; size 9 x 3 }
}
piece a {
  make foot from base { set ${set} = 4 }
  fit lid after foot.${part}
}`;
	expect(check(text("wid<|>th", "rail"))).toBe("width -> main.rod:2 width");
	expect(check(text("width", "ra<|>il"))).toBe("rail -> main.rod:3 rail");
});

test("in lines that do not fit", () => {
	expect(check("piece a {\n  given width = 54\n  mist 2 wi<|>dth 3\n}")).toBe(
		"width -> main.rod:2 width",
	);
});
