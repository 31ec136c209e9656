// What is offered at a cursor, and the text after it is taken.

import { describe, expect, test } from "vitest";
import { contexts, fill, parse } from "../../grammar/index.ts";
import { snap } from "../../tests/harness/snapshot.ts";
import { resolveRelative } from "../sources/sources.ts";
import { completion } from "./completion.ts";
import type { FolderEntry } from "./support/use-offers.ts";

function offered(source: string): string[] {
	const { snapshot, offset } = snap(source);
	return completion(snapshot, offset)
		.toSorted((a, b) => a.rank - b.rank)
		.map((item) => item.label);
}

/** The text after the item with this label is taken. */
function taken(source: string, label: string): string {
	const { snapshot, offset } = snap(source);
	const item = completion(snapshot, offset).find((one) => one.label === label);
	if (!item) throw new Error(`${label} is not offered`);
	const { text } = snapshot;
	return (
		text.slice(0, item.replace.start) +
		(item.snippet ?? item.insert) +
		text.slice(item.replace.end)
	);
}

const stock = `
//- stock.rod
sheet ply {
  species "birch plywood"
  size 96 x 48
  variant half { sold-as 1/2; thick 15/32 }
  variant quarter { sold-as 1/4; thick 15/64 }
}
board oak { species "white oak"; variant four-quarter { rough 1; planed 3/4 } }
veneer skins { variant ash { thick 1/42; size 96 x 24 } }
coating shellac { kind ground }
fastener fixings { variant eight { screw #8 x 1 1/4; pack 100 } }
`;

const inPiece = (line: string) => `//- main.rod
use ply, oak, skins, shellac, fixings from "./stock.rod"
piece bench {
  given width = 54 from 40 to 66
  box case {
    outside width x 20 x 16
    panels top, bottom, left, right of ply.half
    divider middle of ply.half centred
  }
${line}
}
${stock}`;

describe("heads", () => {
	test("of the file", () => {
		expect(offered("<|>")).toEqual(contexts.file.map((row) => row.head));
	});

	test("of a block, without those that are there and do not repeat", () => {
		const labels = offered(
			"piece a {\n  room {\n    humidity 25 % to 55 %\n    <|>\n  }\n}",
		);
		expect(labels).toEqual(["temperature"]);
	});

	test("required ones first, half typed", () => {
		const labels = offered("piece a {\n  trim lip {\n    o<|>\n  }\n}");
		expect(labels.slice(0, 3)).toEqual(["on", "of", "thick"]);
	});

	test("in a block on one line, behind a `;`, and where the brace is missing", () => {
		expect(offered("piece a { join b { glue; <|> } }")).toContain("screw");
		expect(offered("piece a {\n  box b {\n    <|>")).toContain("panels");
	});

	test("do not pop up while a line is being indented", () => {
		const { snapshot, offset } = snap("piece a {\n  <|>\n}");
		expect(completion(snapshot, offset, { afterBlank: true })).toEqual([]);
		const of = snap(inPiece("  part b { of <|> }"));
		expect(
			completion(of.snapshot, of.offset, { afterBlank: true }),
		).not.toEqual([]);
	});

	test("the snippet has the words of the form and the values of the example", () => {
		expect(
			taken("piece a {\n  box b {\n    cap<|>\n  }\n}", "caps"),
		).toMatchInlineSnapshot(`
			"piece a {
			  box b {
			    caps \${1:top, bottom, left, right}
			  }
			}"
		`);
		expect(taken("piece a {\n  ro<|>\n}", "room")).toBe(
			"piece a {\n  room {\n  $0\n}\n}",
		);
		expect(taken("piece a {\n  mou<|>\n}", "mount")).toMatchInlineSnapshot(`
			"piece a {
			  mount \${1:hook} {
			  $0
			}
			}"
		`);
	});

	test("every snippet, its places filled, is a line that fits its row", () => {
		const { snapshot } = snap("");
		for (const item of completion(snapshot, 0)) {
			const line = (item.snippet ?? "")
				.replace(/\$\{\d+\|([^,|]*)[^}]*\}/g, "$1")
				.replace(/\$\{\d+:([^}]*)\}/g, "$1")
				.replace("$0", "");
			const [statement] = parse(line).tree.statements;
			const row = contexts.file.find((one) => one.head === item.label);
			expect(row && statement && fill(statement, row).ok, line).toBe(true);
		}
	});

	test("none behind a block on its line, in comments, texts and numbers", () => {
		expect(offered("piece a { } <|>")).toEqual([]);
		expect(offered("// pie<|>")).toEqual([]);
		expect(offered('use oak from "./<|>')).toEqual([]);
		expect(offered("precision 0.<|>")).toEqual([]);
		expect(offered("precision 1<|>")).toEqual([]);
	});
});

describe("behind a head", () => {
	test("words and choices", () => {
		expect(offered("unit <|>")).toEqual(["in", "mm"]);
		expect(offered(inPiece("  finish clear { faces o<|> }"))).toEqual([
			"outside",
			"inside",
			"all",
		]);
	});

	test("what is left out and what is there already", () => {
		const labels = offered(
			inPiece("  box b { shelf one of ply.half equal <|> }"),
		);
		expect(labels).toContain("clearance");
		expect(labels).toContain("bay");
		expect(labels).not.toContain("equal");
	});

	test("a list goes on behind its comma, also on the next line", () => {
		expect(offered(inPiece("  box b { panels top, <|> }"))).toEqual([
			"bottom",
			"left",
			"right",
		]);
		expect(
			offered(inPiece("  box b {\n    caps top,\n        <|>\n  }")),
		).toEqual(["bottom", "left", "right"]);
	});

	test("materials behind `of`, by what the row is made from", () => {
		expect(offered(inPiece("  part seat { of <|> }"))).toEqual([
			"ply.half",
			"ply.quarter",
			"oak.four-quarter",
		]);
		expect(offered(inPiece("  veneer skin { of sk<|> }"))).toEqual([
			"skins.ash",
		]);
		expect(offered(inPiece("  box b { panels top of ply.<|> }"))).toEqual([
			"half",
			"quarter",
		]);
	});

	test("names: parts of the block first, then of the piece", () => {
		expect(
			offered(inPiece("  box b { shelf one of ply.half; join <|> }")).slice(
				0,
				6,
			),
		).toEqual(["top", "bottom", "left", "right", "back", "one"]);
		expect(offered(inPiece("  trim lip { on <|> }"))).toEqual(["case"]);
		expect(offered(inPiece("  finish a { coats 2 of <|> }"))).toEqual([
			"shellac",
		]);
	});

	test("members behind a dot", () => {
		expect(offered(inPiece("  trim lip { on case.<|> }"))).toEqual([
			"top",
			"bottom",
			"left",
			"right",
			"back",
			"middle",
			"front",
			"width",
			"height",
			"depth",
			"inside",
		]);
		expect(offered(inPiece("  trim lip { on case.front.e<|> }"))).toEqual([
			"edges",
		]);
		expect(offered(inPiece("  mark a = case.middle.<|>"))).toContain("length");
		expect(offered(inPiece("  mark a = case.inside.<|>"))).toContain("depth");
		expect(offered(inPiece("  mark a = ply.half.<|>"))).toEqual([
			"thick",
			"sold-as",
		]);
		expect(offered(inPiece("  mark a = nothing.<|>"))).toEqual([]);
	});

	test("sizes where a size is wanted", () => {
		expect(offered(inPiece("  mark a = <|>"))[0]).toBe("width");
		expect(offered(inPiece("  box b { outside width x <|> }"))[0]).toBe(
			"width",
		);
		expect(offered(inPiece("  must width + <|>"))[0]).toBe("width");
		expect(offered(inPiece("  mark a = max(1, <|>"))[0]).toBe("width");
	});

	test("positions word by word", () => {
		const at = (typed: string) =>
			offered(inPiece(`  part b { top at ${typed}<|> }`));
		expect(at("")).toContain("floor");
		expect(at("")).toContain("up");
		expect(at("2 ")).toEqual([
			"up",
			"down",
			"right",
			"left",
			"forward",
			"back",
			"from",
			"above",
			"below",
		]);
		expect(at("2 up ")).toEqual(["from"]);
		expect(at("up 2 ")).toEqual(["from"]);
		expect(at("2 up from ")).toEqual(["case", "floor"]);
		expect(at("2 above ")).toContain("case");
	});

	test("fasteners of the stock by their sizes", () => {
		expect(offered(inPiece("  join case { screw <|> }"))).toContain(
			"#8 x 1 1/4",
		);
	});

	test("the givens of the component that is made", () => {
		expect(
			offered(`component base {
  given length = 30
  given height = 4
}
piece a {
  make plinth from base { set <|> }
}`),
		).toEqual(["length", "height"]);
	});

	test("nothing behind a head that the table does not know", () => {
		expect(offered("foo <|>")).toEqual([]);
	});

	test("what is typed of the word is replaced", () => {
		expect(taken("unit m<|>", "mm")).toBe("unit mm");
		expect(taken(inPiece("  part seat { of ply.h<|> }"), "half")).toContain(
			"of ply.half }",
		);
	});
});

describe("a `use` line", () => {
	const shop: Readonly<Record<string, readonly FolderEntry[]>> = {
		"./": [
			{ name: "my stock.rod", isFolder: false },
			{ name: "parts", isFolder: true },
			{ name: "stock.rod", isFolder: false },
		],
		"./parts/": [{ name: "base.rod", isFolder: false }],
		"../": [{ name: "shop", isFolder: true }],
	};

	function items(source: string, onlyPaths = false) {
		const { snapshot, offset, fixture } = snap(source);
		return {
			snapshot,
			items: completion(snapshot, offset, {
				onlyPaths,
				beside: {
					list: (folder) => shop[folder],
					tree: (path) => {
						const text = fixture.texts.get(
							resolveRelative(snapshot.uri, path) ?? "",
						);
						return text === undefined ? undefined : parse(text).tree;
					},
				},
			}),
		};
	}

	const results = (source: string, onlyPaths?: boolean): string[] => {
		const { snapshot, items: all } = items(source, onlyPaths);
		return all
			.toSorted((a, b) => a.rank - b.rank)
			.map(
				({ replace, insert }) =>
					snapshot.text.slice(0, replace.start) +
					insert +
					snapshot.text.slice(replace.end).split("\n")[0],
			);
	};

	test("offers files beside, folders, and what is in them", () => {
		const beside = [
			'use ply from "./my stock.rod"',
			'use ply from "./stock.rod"',
			'use ply from "./parts/"',
			'use ply from "../"',
		];
		expect(results('use ply from "<|>"')).toEqual(beside);
		expect(results('use ply from "<|>"', true)).toEqual(beside);
		expect(results('use ply from "st<|>"')).toEqual(beside);
		expect(results('use ply from "./st<|>"')).toEqual(beside.slice(0, 3));
		expect(results('use ply from "./parts/<|>"')).toEqual([
			'use ply from "./parts/base.rod"',
		]);
		expect(results('use ply from "../<|>"')).toEqual([
			'use ply from "../shop/"',
			'use ply from "../../"',
		]);
		expect(results('use ply,\n  oak from "<|>')).toHaveLength(4);
		expect(results('use ply from "./none/<|>"')).toEqual([]);
		expect(results('use ply from "woods/<|>"')).toEqual([]);
	});

	test("offers the names that its file has and the line has not", () => {
		const names = (line: string): string[] =>
			items(`//- main.rod\n${line}\npiece a { }\n${stock}`).items.map(
				({ label }) => label,
			);
		const all = ["ply", "oak", "skins", "shellac", "fixings"];
		expect(names('use <|> from "./stock.rod"')).toEqual(all);
		expect(names('use p<|> from "./stock.rod"')).toEqual(all);
		expect(names('use ply, <|> from "./stock.rod"')).toEqual(all.slice(1));
		expect(names('use <|>, oak from "./stock.rod"')).not.toContain("oak");
		expect(names('use ply,\n  <|> from "./stock.rod"')).toEqual(all.slice(1));
		expect(names('use <|> from "./none.rod"')).toEqual([]);
	});

	test("quotes and slashes elsewhere bring nothing", () => {
		for (const line of [
			'step a { do "<|>" }',
			"mark a = 3/<|>",
			'outside 15"<|>',
			'// use ply from "<|>"',
		]) {
			expect(items(`piece a {\n  ${line}\n}`, true).items).toEqual([]);
		}
	});
});

test("at no place of a text does it throw, and it never replaces what is not before the cursor", () => {
	const { snapshot } = snap(inPiece("  trim lip { on case."));
	for (let offset = 0; offset <= snapshot.text.length; offset++) {
		for (const { replace } of completion(snapshot, offset)) {
			expect(replace.end).toBe(offset);
			expect(replace.start).toBeLessThanOrEqual(offset);
		}
	}
});
