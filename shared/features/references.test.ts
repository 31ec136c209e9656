// Where things are mentioned: each place is marked in the text, with what it does to the thing.

import { expect, test } from "vitest";
import { readFixture } from "../../tests/harness/fixture.ts";
import { nameWorld } from "../../tests/harness/name-world.ts";
import { references } from "./references.ts";

/** The places that are found must be the ones that carets mark, in all files. */
function check(source: string): void {
	const fixture = readFixture(source);
	const { file, offset } = fixture.cursor;
	const found = references(
		nameWorld(fixture.texts),
		file.uri,
		offset,
		fixture.texts.keys(),
	);
	const shown = (uri: string, start: number, end: number, label: string) =>
		`${uri}:${fixture.texts.get(uri)?.slice(0, start).split("\n").length} ${start}-${end} ${label}`;
	expect(
		found?.map(({ uri, span, kind }) => shown(uri, span.start, span.end, kind)),
	).toEqual(
		fixture.files.flatMap(({ uri, marks }) =>
			marks.map(({ span, label }) => shown(uri, span.start, span.end, label)),
		),
	);
}

test("a size in its piece, not one of the same name in another", () => {
	check(`piece a {
  given wi<|>dth = 54 from 40 to 66
  //    ^^^^^ declaration
  mark half = width / 2
  //          ^^^^^ read
  part top { of ply.half; size width - 2 * (width) x 3 }
  //                           ^^^^^ read
  //                                        ^^^^^ read
}
piece b {
  given width = 3
}
`);
});

test("a given of a component, set by another file", () => {
	check(`//- main.rod
use base from "./base.rod"
piece a {
  make foot from base { set width = 30 }
  //                        ^^^^^ write
  part lid { of ply.half; size foot.wi<|>dth x 3 }
  //                                ^^^^^ read
}
//- base.rod
component base { given width = 20 }
//                     ^^^^^ declaration
`);
});

test("a material over files, the names that bring it among them", () => {
	check(`//- main.rod
use p<|>ly from "./stock.rod"
//  ^^^ read
piece a {
  part lid { of ply.half; size 4 * ply.half.thick x 3 }
  //            ^^^ read
  //                               ^^^ read
}
//- other.rod
use ply from "./main.rod"
//  ^^^ read
//- stock.rod
sheet ply { variant half { thick 15/32 } }
//    ^^^ declaration
`);
});

test("a measured size of a part", () => {
	check(`piece a {
  box case {
    divider mid<|>dle of ply.half centred
    //      ^^^^^^ declaration
    grain up on middle
    //          ^^^^^^ read
  }
  measured case.middle.length 12
  //            ^^^^^^ read
}
`);
});

test("a panel that nobody named", () => {
	check(`piece a {
  box case {
    panels top, bottom, left, right of ply.half
    //                  ^^^^ read
    join top, bottom to le<|>ft, right { glue }
    //                  ^^^^ read
  }
  leg foot { against outside case.left }
  //                              ^^^^ read
  box other { panels left of ply.half }
}
`);
});

test("both legs of a pair, and a layer of both", () => {
	check(`piece a {
  leg one, two handed {
    layer in<|>ner of oak.thick 2 wide
    //    ^^^^^ declaration
    join inner to case.left { glue }
    //   ^^^^^ read
  }
  fit one.inner after two.inner
  //      ^^^^^ read
  //                      ^^^^^ read
}
`);
});

test("nothing on words, numbers and names that mean nothing", () => {
	for (const source of [
		"pie<|>ce a { }\n",
		"piece a { given b = 5<|>4 }\n",
		"piece a { part b { of no<|>thing.here } }\n",
	]) {
		const { cursor, texts } = readFixture(source);
		const world = nameWorld(texts);
		expect(
			references(world, cursor.file.uri, cursor.offset, texts.keys()),
		).toBeUndefined();
	}
});
