// Things made from components: their givens, their place, what they may not do.

import { describe, expect, test } from "vitest";
import { built, inInches } from "../../../tests/harness/built.ts";

const t = 45 / 64;
const base = `component empty { }
component base {
  given length = 30 from 10 to 60
  given rise = 4
  part front { of ply.three-quarter; size length x rise; lies across facing front; bottom at floor; front at 10 forward from ends.back }
  part ends { of ply.three-quarter; size 10 x rise; lies deep facing side; bottom at floor }
}
`;

describe("an instance", () => {
	test("has the component's parts under its name, with its givens set", () => {
		const { part, ids } = built(`${base} piece cabinet {
      make plinth from base { set length = 40; set rise = 3 1/2 }
    }`);
		expect(ids).toEqual([]);
		expect(part("plinth.front").id).toBe("cabinet.plinth.front");
		expect(inInches(part("plinth.front").length)).toBe(40);
		expect(inInches(part("plinth.front").width)).toBe(3 + 1 / 2);
	});

	test("keeps the givens that are not set, and does not lend them to the piece", () => {
		const { part, piece } = built(`${base} piece cabinet {
      given depth = 12
      make plinth from base { }
    }`);
		expect(inInches(part("plinth.front").length)).toBe(30);
		expect(piece.givens.map(({ declaration }) => declaration.name)).toEqual([
			"depth",
		]);
	});

	test("bare numbers are in the unit of whoever writes them", () => {
		const { part } = built(`${base} piece cabinet {
      unit mm
      make plinth from base { set length = 600 }
    }`);
		expect(part("plinth.front").length.value.toNumber()).toBe(600);
		expect(inInches(part("plinth.front").width)).toBe(4);
	});

	test("stands where its faces are held, its own floor with it", () => {
		const { corners, ids } = built(`${base} piece cabinet {
      part top { of ply.three-quarter; size 60 x 20; bottom at 29 up from floor }
      make plinth from base {
        set length = 40
        right at 5 left from top.right
        top at top
        front at 2 back from top.front
      }
    }`);
		expect(ids).toEqual([]);
		// It is 40 wide, 4 high; its front stands 10 before the back of its ends.
		expect(corners("plinth.front")).toEqual([
			[60 - 5 - 40, 29 - 4, 20 - 2 - t],
			[60 - 5, 29, 20 - 2],
		]);
		expect(corners("plinth.ends")[0]).toEqual([
			60 - 5 - 40,
			29 - 4,
			20 - 2 - 10,
		]);
	});

	test("is centred by what it measures", () => {
		const { corners } = built(`${base} piece cabinet {
      part top { of ply.three-quarter; size 60 x 20 }
      make plinth from base { set length = 40; centred across on top }
    }`);
		expect(corners("plinth.front")[0][0]).toBe((60 - 40) / 2);
	});

	test("its parts and sizes can be named, and joined", () => {
		const { piece, ids, corners } = built(`${base} piece cabinet {
      make plinth from base { }
      part top { of ply.three-quarter; size 30 x 10; bottom at plinth }
      mark tall = plinth.height + plinth.front.thick
      join plinth.front to top { glue }
    }`);
		expect(ids).toEqual([]);
		expect(corners("top")[0][1]).toBe(4);
		const tall = piece.sizes.get("tall");
		expect(tall && inInches(tall)).toBe(4 + t);
		expect(piece.joints.find(({ named }) => named)?.glue).toBe(true);
	});

	test("two of a kind stand apart and tell a fault once", () => {
		const { ids, piece } = built(`component post {
        part one { of oak.four-quarter; size 20 x 2; lies up facing side }
        part two { of oak.five-quarter; size 20 x 2 }
      }
      piece frame {
        make left-post from post { }
        make right-post from post { left at 40 right from left-post.one.right }
      }`);
		expect(ids).toEqual(["unknown-name"]);
		expect([...piece.partByPath.keys()]).toEqual([
			"left-post.one",
			"right-post.one",
		]);
	});

	test("its names are declared once, in the component's own text", () => {
		const { design } = built(`${base} piece cabinet {
      make one from base { }
      make two from base { }
      mark tall = two.front.length
    }`);
		const fronts = design.declarations.filter(({ name }) => name === "front");
		expect(fronts.map(({ path }) => path)).toEqual(["base.front"]);
		const uses = design.references.filter(
			({ declaration }) => declaration === fronts[0],
		);
		expect(uses).toHaveLength(1);
	});

	test("a box and legs in a component move with it", () => {
		const { corners, ids } = built(`component stand {
        box crate { outside 20 x 10 x 12; bottom at 6 up from floor; panels top, bottom, left, right of ply.three-quarter }
        leg a, b handed {
          against outside crate.left
          set-back 1 from crate.front
          layer one of oak.four-quarter 2 wide from floor up to crate.bottom
        }
      }
      piece hall {
        make low from stand { left at 100 right from floor-mark.left; bottom at 3 up from floor }
        part floor-mark { of ply.quarter; size 2 x 2 }
      }`);
		expect(ids).toEqual([]);
		expect(corners("low.crate.left")[0]).toEqual([100, 3 + 6, 0]);
		expect(corners("low.a.one")[0]).toEqual([100, 3, 12 - 1 - 2]);
		expect(corners("low.b.one")[1]).toEqual([100 + 20, 3 + 6, 12 - 1]);
	});

	test("a reading of a sheet holds in what is made for the piece", () => {
		const { part } = built(`${base} piece cabinet {
      measured ply.three-quarter.thick 0.71
      make plinth from base { }
    }`);
		expect(inInches(part("plinth.front").thick)).toBe(71 / 100);
	});

	test("a finish of a component is on that alone", () => {
		const { piece } = built(`component shelf {
        part board { of oak.four-quarter; size 20 x 8 }
        finish clear { coats 2 of hard-oil }
      }
      piece wall { make one from shelf { } }`);
		expect(piece.finishes.map(({ name, on }) => [name, on])).toEqual([
			["one.clear", ["one"]],
		]);
	});
});

describe("components in components", () => {
	test("parts carry the whole path", () => {
		const { part, corners } = built(
			`
      component peg { part stick { of oak.four-quarter; size 3 x 1 } }
      component row { make a from peg { }  make b from peg { left at 2 right from a.stick.right } }
      piece rail { make hooks from row { left at 10 right from rail-mark.left } part rail-mark { of ply.quarter; size 1 x 1 } }
    `.replaceAll("}  make", "}\n make"),
		);
		expect(part("hooks.b.stick").id).toBe("rail.hooks.b.stick");
		expect(corners("hooks.b.stick")[0][0]).toBe(10 + 3 + 2);
	});

	test("a component in itself is told, also by way of others", () => {
		const own = built(
			`component loop { make again from loop { } part p { of ply.quarter; size 1 x 1 } }
      piece x1 { make one from loop { } }`.replaceAll("} part", "}\n part"),
		);
		expect(own.ids).toEqual(["circle"]);
		const two = built(`component a { make next from b { } }
      component b { make next from a { } }
      piece x1 { make one from a { } }`);
		expect(new Set(two.ids)).toEqual(new Set(["circle"]));
	});

	test("a long chain is worked out, one beyond the limit is refused", () => {
		const chain = (count: number): string =>
			`${Array.from(
				{ length: count },
				(_, index) =>
					`component c${index} { ${index + 1 < count ? `make in from c${index + 1} { }` : "part p { of ply.quarter; size 1 x 1 }"} }`,
			).join("\n")}\npiece x1 { make one from c0 { } }`.replaceAll(
				"make in ",
				"make inner ",
			);
		expect(built(chain(20)).ids).toEqual([]);
		expect(built(chain(22)).ids).toContain("too-deep");
	});

	test("what doubles in each of many components is refused in good time", () => {
		const text = `${Array.from(
			{ length: 18 },
			(_, index) =>
				`component c${index} { make p from c${index + 1} { }\n make q from c${index + 1} { } }`,
		).join(
			"\n",
		)}\ncomponent c18 { part p { of ply.quarter; size 1 x 1 } }\npiece x1 { make one from c0 { } }`;
		expect(built(text).ids).toContain("too-deep");
	});
});

describe("what is wrong with a line", () => {
	test.each([
		[
			"a given that it has not",
			"make p from base { set lenght = 3 }",
			["unknown-name"],
		],
		[
			"a given set twice",
			"make p from base { set rise = 3; set rise = 4 }",
			["said-twice"],
		],
		[
			"a given out of its range",
			"make p from base { set length = 90 }",
			["out-of-range"],
		],
		["no component", "make p from ply { }", ["not-a-component"]],
		["nothing of that name", "make p from bace { }", ["unknown-name"]],
		[
			"a place from nowhere",
			"make p from base { left at 3 }",
			["datum-unclear"],
		],
		[
			"a size that hangs on itself",
			"make p from base { set length = p.width }",
			["circle"],
		],
	])("%s", (_, line, ids) => {
		expect(built(`${base} piece cabinet { ${line} }`).ids).toEqual(ids);
	});

	test("the nearest given is offered", () => {
		const { findings } = built(
			`${base} piece cabinet { make p from base { set lenght = 3 } }`,
		);
		expect(findings[0]?.fixes[0]?.edits[0]?.text).toBe("length");
	});
});
