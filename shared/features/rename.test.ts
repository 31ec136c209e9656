// New names: which places change, and what is told where a name cannot be.

import { expect, test } from "vitest";
import { readFixture } from "../../tests/harness/fixture.ts";
import { nameWorld } from "../../tests/harness/name-world.ts";
import { applyEdits } from "../text/edits.ts";
import { renamable, rename } from "./rename.ts";

/** Renames what the cursor is on: the lines that change in all files, or what is told. */
function renamed(source: string, name: string, locked: string[] = []): unknown {
	const fixture = readFixture(source);
	const { file, offset } = fixture.cursor;
	const world = nameWorld(fixture.texts);
	const answer = rename(world, file.uri, offset, name, {
		uris: [...fixture.texts.keys()],
		locked: (uri) =>
			locked.some((one) => uri.endsWith(one)) ? "it is locked" : undefined,
	});
	if (!answer || "refused" in answer) {
		const prepared = renamable(world, file.uri, offset);
		if (prepared && "refused" in prepared) expect(prepared).toEqual(answer);
		return answer?.refused;
	}
	return [...answer.edits].flatMap(([uri, edits]) => {
		const text = fixture.texts.get(uri) ?? "";
		const now = applyEdits(
			text,
			edits.map(({ span, text: put }) => ({
				start: span.start,
				end: span.end,
				text: put,
			})),
		);
		const old = text.split("\n");
		return now
			.split("\n")
			.filter((line, at) => line !== old[at])
			.map((line) => line.trim());
	});
}

const design = (
	cursor: (text: string) => string,
) => `use ply, oak from "./stock.rod"

piece rack {
  given width = ${cursor("36")}
  mark half = width / 2
  box case {
    outside width x 12 x 9
    panels top, bottom, left, right of ply.half
    divider middle of ply.half centred dado half / 50
    shelf one, two of ply.half equal bay 1
    fit middle after top, bottom
    join middle to top, bottom { glue }
  }
  trim lip { on case.front.edges; of oak.four-quarter; thick half / 40 }
  finish clear { on lip, case; coats 2 of hard-oil }
  measured case.middle.length 11
  must lip.thick + half < width "fits"
}
`;

const stock = `//- stock.rod
/// Plywood.
sheet ply { species "birch plywood"; variant half { sold-as 1/2; thick 15/32 } }
board oak { species "white oak"; variant four-quarter { planed 3/4; thickness } }
`;

function at(needle: string, count = 1): string {
	const text = `//- main.rod\n${design((value) => value)}${stock}`;
	let place = -1;
	for (let left = count; left > 0; left--)
		place = text.indexOf(needle, place + 1);
	return `${text.slice(0, place)}<|>${text.slice(place)}`;
}

test("a size, from its declaration and from any place that means it", () => {
	const lines = [
		"given span = 36",
		"mark half = span / 2",
		"outside span x 12 x 9",
		'must lip.thick + half < span "fits"',
	];
	expect(renamed(at("width"), "span")).toEqual(lines);
	expect(renamed(at("width x"), "span")).toEqual(lines);
	expect(renamed(at('width "fits"'), "span")).toEqual(lines);
});

test("each name of a path renames what it names", () => {
	expect(renamed(at("case.middle"), "body")).toEqual([
		"box body {",
		"trim lip { on body.front.edges; of oak.four-quarter; thick half / 40 }",
		"finish clear { on lip, body; coats 2 of hard-oil }",
		"measured body.middle.length 11",
	]);
	expect(renamed(at("middle.length"), "wall")).toEqual([
		"divider wall of ply.half centred dado half / 50",
		"fit wall after top, bottom",
		"join wall to top, bottom { glue }",
		"measured case.wall.length 11",
	]);
});

test("a material and its variant in all files that use them", () => {
	expect(renamed(at("ply.half"), "birch")).toEqual([
		'use birch, oak from "./stock.rod"',
		"panels top, bottom, left, right of birch.half",
		"divider middle of birch.half centred dado half / 50",
		"shelf one, two of birch.half equal bay 1",
		'sheet birch { species "birch plywood"; variant half { sold-as 1/2; thick 15/32 } }',
	]);
	expect(
		renamed(
			at("variant half", 1).replace("<|>variant ", "variant <|>"),
			"thin",
		),
	).toEqual([
		"panels top, bottom, left, right of ply.thin",
		"divider middle of ply.thin centred dado half / 50",
		"shelf one, two of ply.thin equal bay 1",
		'sheet ply { species "birch plywood"; variant thin { sold-as 1/2; thick 15/32 } }',
	]);
});

test("a given of a component, where it is set; a part of it, behind what is made from it; a name taken on", () => {
	const files = (text: string) => `//- main.rod
use base from "./on.rod"
piece chest {
  make foot from base { set height = 4 }
  part lid { of ply.half; size 9 x 9; bottom at foot.rail.top }
}
//- on.rod
use base from "./base.rod"
//- base.rod
component base { given ${text} = 3; part rail { of ply.half; size 9 x height } }
`;
	expect(renamed(files("he<|>ight"), "tall")).toEqual([
		"make foot from base { set tall = 4 }",
		"component base { given tall = 3; part rail { of ply.half; size 9 x tall } }",
	]);
	const plain = files("height");
	expect(renamed(plain.replace("set h", "set <|>h"), "tall")).toEqual(
		renamed(files("he<|>ight"), "tall"),
	);
	expect(renamed(plain.replace("foot.rail", "foot.r<|>ail"), "bar")).toEqual([
		"part lid { of ply.half; size 9 x 9; bottom at foot.bar.top }",
		"component base { given height = 3; part bar { of ply.half; size 9 x height } }",
	]);
	expect(renamed(plain.replace("from base", "from b<|>ase"), "plinth")).toEqual(
		[
			'use plinth from "./on.rod"',
			"make foot from plinth { set height = 4 }",
			'use plinth from "./base.rod"',
			"component plinth { given height = 3; part rail { of ply.half; size 9 x height } }",
		],
	);
});

test("names made from the name of a part", () => {
	const text = `piece table {
  part to<|>p { of ply.half; size 9 x 9 }
  veneer face { on top; faces both; of skins.oak; order top }
  must face.top-inside.length > face.top.width
}
`;
	expect(renamed(text, "lid")).toEqual([
		"part lid { of ply.half; size 9 x 9 }",
		"veneer face { on lid; faces both; of skins.oak; order lid }",
		"must face.lid-inside.length > face.lid.width",
	]);
	expect(
		renamed(
			text.replace("to<|>p", "top").replace("face.top-", "face.to<|>p-"),
			"lid",
		),
	).toBe(
		"`top-inside` is named after `top`, that it lies on: rename the part at line 2 of main.rod",
	);
});

test("a name that is there already, with its place", () => {
	expect(renamed(at("half ="), "lip")).toBe(
		"`lip` is already the trim at line 14 of main.rod: choose another name",
	);
	expect(renamed(at("ply, oak"), "oak")).toBe(
		"`oak` is already the board at line 3 of stock.rod: choose another name",
	);
	expect(renamed(at("ply, oak"), "rack")).toBe(
		"`rack` is already the piece at line 3 of main.rod: choose another name",
	);
});

test("a name that would hide another, or be hidden", () => {
	expect(renamed(at("middle"), "half")).toBe(
		"`half` would hide the mark at line 5 of main.rod: choose another name",
	);
	expect(renamed(at("lip {"), "oak")).toBe(
		"`oak` would hide the board at line 3 of stock.rod: choose another name",
	);
	// `half` is used inside the box, where the divider has that name.
	expect(renamed(at("half ="), "middle")).toBe(
		"`middle` at line 9 of main.rod would mean the divider at line 9 of main.rod instead of the mark at line 5 of main.rod: choose another name",
	);
	expect(renamed(at("half ="), "top")).toBe(
		"`top` at line 9 of main.rod would mean the `top` of `case` instead of the mark at line 5 of main.rod: choose another name",
	);
	// The width is not used inside.
	expect(renamed(at("width"), "one")).toHaveLength(4);
});

test("a name that a line misses would come to mean it", () => {
	expect(renamed(at("lip {"), "hard-oil")).toBe(
		"`hard-oil` at line 15 of main.rod is a name that nothing has yet: it would come to mean the trim at line 14 of main.rod; choose another name",
	);
});

test("words that can be no names, or would be read as words of the language", () => {
	expect(renamed(at("lip {"), "above")).toMatch(
		/^`above` is a word of the language: `of`, .* and `floor` can be no names$/,
	);
	for (const name of ["2nd", "a b", "a.b", "a-", "x{", "//"])
		expect(renamed(at("lip {"), name), name).toBe(
			`\`${name}\` is no name: a name begins with a letter and goes on with letters, digits and single hyphens, as in \`front-left\``,
		);
	expect(renamed(at("lip {"), " ")).toBe("A name wants at least one letter");
	expect(renamed(at("middle"), "width")).toBe(
		"`width` is what every box calls a side or a size of its own: choose another name for the divider in `case`",
	);
});

test("names that nobody chose", () => {
	expect(renamed(at("top, bottom { glue }"), "lid")).toBe(
		"`top` is what every box calls that side of it: rename the box at line 6 of main.rod instead",
	);
	expect(renamed(at("left, right of"), "lid")).toBe(
		"`left` is what every box calls that side of it: rename the box at line 6 of main.rod instead",
	);
	expect(renamed(at("thick + half"), "deep")).toBe(
		"`thick` is named after what this trim lies on, nobody chose it: rename the trim at line 14 of main.rod instead",
	);
	expect(renamed(at("length 11"), "long")).toBe(
		"`length` is a size or a face that comes with `middle`, nobody chose its name: rename the divider at line 9 of main.rod instead",
	);
	expect(renamed(at("hard-oil"), "wax")).toBe(
		"Nothing here is called `hard-oil`: declare it or mend the name first",
	);
	expect(renamed(at("36"), "wax")).toBeUndefined();
	expect(renamed(at("panels"), "wax")).toBeUndefined();
});

test("names that say more than who they are", () => {
	const pair = `component frame { part left { of ply.half; size 9 x 3 }; part right { of ply.half; size 9 x 3 } }
piece stool {
  make foot from frame
  leg a, b handed { against under seat; join only to foot.le<|>ft { glue } }
}
`;
	expect(renamed(pair, "port")).toBe(
		"At line 4 of main.rod the right one of a handed pair reads `left` for `right`: with another name it would not; write the two legs on lines of their own first",
	);
	const counted = `piece a {
  part se<|>at { of ply.half; size 9 x 3 }
  make foot from stool
  veneer face { on seat, foot.seat; of skins.oak }
  must face.seat-2.length > 3
}
component stool { part seat { of ply.half; size 9 x 3 } }
`;
	expect(renamed(counted, "lid")).toBe(
		"`seat-2` at line 5 of main.rod counts the parts that are called `seat`: name that part in another way first",
	);
	const caps = `piece a {
  part le<|>ft { of ply.half; size 9 x 3 }
  trim lip { on left.front, top.front; of oak.thick; thick 1/4; caps left }
}
`;
	expect(renamed(caps, "stile")).toBe(
		"The `caps` line of the trim at line 3 of main.rod goes by the names of what the strips lie on: with another name for `left` other strips could run over; take the line away first",
	);
	expect(renamed(caps.replace("; caps left", ""), "stile")).toEqual([
		"part stile { of ply.half; size 9 x 3 }",
		"trim lip { on stile.front, top.front; of oak.thick; thick 1/4 }",
	]);
});

test("all places or none: a file that cannot be changed", () => {
	expect(renamed(at("ply.half"), "birch", ["stock.rod"])).toBe(
		"`ply` is mentioned at line 2 of stock.rod, and it is locked: nothing was renamed",
	);
});

test("in a text with faults elsewhere, also in lines that do not fit", () => {
	const broken = at("half =")
		.replace("outside width x 12 x 9", "outside width x half x 9 9")
		.replace("must lip", "mist lip")
		.replace("finish clear {", "finish clear { } {");
	expect(renamed(broken, "middle-of-it")).toEqual([
		"mark middle-of-it = width / 2",
		"outside width x middle-of-it x 9 9",
		"divider middle of ply.half centred dado middle-of-it / 50",
		"trim lip { on case.front.edges; of oak.four-quarter; thick middle-of-it / 40 }",
		'mist lip.thick + middle-of-it < width "fits"',
	]);
});

test("what is named twice can be told apart", () => {
	expect(
		renamed("piece a {\n  mark b = 1\n  mark b<|> = 2\n  mark c = b\n}\n", "d"),
	).toEqual(["mark d = 2"]);
});
