import { describe, expect, test } from "vitest";
import { inches, jointOf, partOf, pieceOf } from "../../tests/harness/piece.ts";
import { bench, ply } from "../../tests/harness/pieces.ts";
import { compile } from "../model/compile.ts";
import { minus } from "../model/size.ts";
import { sourcesOf } from "../sources/sources.ts";
import { Rational } from "../units/rational.ts";
import { cutList, partCount } from "./cut-list.ts";
import { cutListCsv } from "./cut-list-csv.ts";
import { cutListJson } from "./cut-list-json.ts";
import { cutListMarkdown } from "./cut-list-markdown.ts";
import { cutListText } from "./cut-list-text.ts";

describe("a case on a pair of legs", () => {
	const list = cutList(bench());

	test("as text", () => {
		expect(cutListText(list)).toMatchInlineSnapshot(`
			"Cut list: record-bench
			Thickness x width x length in inches to the nearest 1/32; the grain runs along the length.

			CUT NOW
			  Qty   Thick    Width     Length Material           Part
			A   2   45/64 x 15 3/4 x   14 5/8 ply.three-quarter  case.left, case.right
			    rabbet 1/4 wide, 3/8 deep, at the back edge, for case.back
			B   2   45/64 x 15 3/4 x 52 19/32 ply.three-quarter  case.top, case.bottom
			    dado ~0.707 wide, 5/16 deep, ~25 15/16 from the left end, for case.middle
			C   2   1 3/4 x  2 3/4 x    6 3/8 oak.eight-quarter  front-left.inner, front-right.inner
			    first rough 2 x 3 1/4 x 7 3/8, then sawn heavy 1 3/4 x 2 15/16 x 6 9/16, then as above
			    top end angled 12°, falls outward
			    left and right alike until end top angled; then left front-left.inner; right front-right.inner
			    carries the load
			D   1     3/8 x    3/4 x       54 oak.four-quarter   lip.top
			    both ends 45° mitre

			CUT TO FIT, WHEN THE ASSEMBLY HAS BEEN MEASURED
			  Qty   Thick    Width     Length Material           Part
			E   1   45/64 x 15 3/4 x 13 27/32 ply.three-quarter  case.middle
			    after case.top, case.bottom: measure from dado to dado

			CUT LAST
			  Qty   Thick    Width     Length Material           Part
			F   1 ~0.0238 x 16 1/8 x       54 skins.oak          skin.top
			    after lip.top
			    first sawn heavy ~0.0238 x 16 7/16 x 54 5/8, then as above

			AIDS, FROM OFFCUTS
			  gauge  spacer  3 x 6  any offcut  for case.middle
			"
		`);
	});

	test("as text on a narrow page", () => {
		const text = cutListText(list, { columns: 60 });
		expect(text).toMatchInlineSnapshot(`
			"Cut list: record-bench
			Thickness x width x length in inches to the nearest 1/32;
			the grain runs along the length.

			CUT NOW
			  Qty   Thick    Width     Length Material
			A   2   45/64 x 15 3/4 x   14 5/8 ply.three-quarter
			    case.left, case.right
			    rabbet 1/4 wide, 3/8 deep, at the back edge, for
			      case.back
			B   2   45/64 x 15 3/4 x 52 19/32 ply.three-quarter
			    case.top, case.bottom
			    dado ~0.707 wide, 5/16 deep, ~25 15/16 from the left
			      end, for case.middle
			C   2   1 3/4 x  2 3/4 x    6 3/8 oak.eight-quarter
			    front-left.inner, front-right.inner
			    first rough 2 x 3 1/4 x 7 3/8, then sawn heavy 1 3/4 x
			      2 15/16 x 6 9/16, then as above
			    top end angled 12°, falls outward
			    left and right alike until end top angled; then left
			      front-left.inner; right front-right.inner
			    carries the load
			D   1     3/8 x    3/4 x       54 oak.four-quarter
			    lip.top
			    both ends 45° mitre

			CUT TO FIT, WHEN THE ASSEMBLY HAS BEEN MEASURED
			  Qty   Thick    Width     Length Material
			E   1   45/64 x 15 3/4 x 13 27/32 ply.three-quarter
			    case.middle
			    after case.top, case.bottom: measure from dado to dado

			CUT LAST
			  Qty   Thick    Width     Length Material
			F   1 ~0.0238 x 16 1/8 x       54 skins.oak
			    skin.top
			    after lip.top
			    first sawn heavy ~0.0238 x 16 7/16 x 54 5/8, then as
			      above

			AIDS, FROM OFFCUTS
			  gauge  spacer  3 x 6  any offcut  for case.middle
			"
		`);
		for (const line of text.split("\n")) expect(line.length).toBeLessThan(73);
	});

	test("as Markdown", () => {
		expect(cutListMarkdown(list)).toMatchInlineSnapshot(`
			"## Cut list: record\\-bench

			Thickness x width x length in inches to the nearest 1/32; the grain runs along the length.

			### Cut now

			|  | Qty | Thick x width x length | Material | Part | Work |
			| --- | --- | --- | --- | --- | --- |
			| A | 2 | 45/64 x 15 3/4 x 14 5/8 | \`ply.three-quarter\` | \`case.left\`, \`case.right\` | rabbet 1/4 wide, 3/8 deep, at the back edge, for case\\.back |
			| B | 2 | 45/64 x 15 3/4 x 52 19/32 | \`ply.three-quarter\` | \`case.top\`, \`case.bottom\` | dado \\~0\\.707 wide, 5/16 deep, \\~25 15/16 from the left end, for case\\.middle |
			| C | 2 (1 left, 1 right) | 1 3/4 x 2 3/4 x 6 3/8 | \`oak.eight-quarter\` | \`front-left.inner\`, \`front-right.inner\` | first rough 2 x 3 1/4 x 7 3/8, then sawn heavy 1 3/4 x 2 15/16 x 6 9/16<br>top end angled 12°, falls outward<br>left and right alike until end top angled; then left front\\-left\\.inner; right front\\-right\\.inner<br>carries the load |
			| D | 1 | 3/8 x 3/4 x 54 | \`oak.four-quarter\` | \`lip.top\` | both ends 45° mitre |

			### Cut to fit, when the assembly has been measured

			|  | Qty | Thick x width x length | Material | Part | Work |
			| --- | --- | --- | --- | --- | --- |
			| E | 1 | 45/64 x 15 3/4 x 13 27/32 | \`ply.three-quarter\` | \`case.middle\` | after case\\.top, case\\.bottom\\: measure from dado to dado |

			### Cut last

			|  | Qty | Thick x width x length | Material | Part | Work |
			| --- | --- | --- | --- | --- | --- |
			| F | 1 | ~0.0238 x 16 1/8 x 54 | \`skins.oak\` | \`skin.top\` | after lip\\.top<br>first sawn heavy \\~0\\.0238 x 16 7/16 x 54 5/8 |

			### Aids, from offcuts

			| Aid | Kind | Size | Material | For |
			| --- | --- | --- | --- | --- |
			| \`gauge\` | spacer | 3 x 6 |  | \`case.middle\` |
			"
		`);
	});

	test("as CSV", () => {
		expect(cutListCsv([list]).replaceAll("\r\n", "\n")).toMatchInlineSnapshot(`
			"piece,label,cut,quantity,left_or_first,right_or_mirrored,parts,material,unit,thickness,width,length,thickness_decimal,width_decimal,length_decimal,thickness_mm,width_mm,length_mm,rough,heavy,trimmed,strips,edges_and_ends,housings,after,reading,note
			record-bench,A,now,2,,,case.left; case.right,ply.three-quarter,in,45/64,15 3/4,14 5/8,0.703125,15.75,14.625,17.859375,400.05,371.475,,,,,,"rabbet 1/4 wide, 3/8 deep, at the back edge, for case.back",,,
			record-bench,B,now,2,,,case.top; case.bottom,ply.three-quarter,in,45/64,15 3/4,52 19/32,0.703125,15.75,52.59375,17.859375,400.05,1335.88125,,,,,,"dado ~0.707 wide, 5/16 deep, ~25 15/16 from the left end, for case.middle",,,
			record-bench,C,now,2,1,1,front-left.inner; front-right.inner,oak.eight-quarter,in,1 3/4,2 3/4,6 3/8,1.75,2.75,6.375,44.45,69.85,161.925,2 x 3 1/4 x 7 3/8,1 3/4 x 2 15/16 x 6 9/16,,,"top end angled 12°, falls outward",,,,left and right alike until end top angled; then left front-left.inner; right front-right.inner; carries the load
			record-bench,D,now,1,,,lip.top,oak.four-quarter,in,3/8,3/4,54,0.375,0.75,54,9.525,18.653125,1371.6,,,,,both ends 45° mitre,,,,
			record-bench,E,to fit,1,,,case.middle,ply.three-quarter,in,45/64,15 3/4,13 27/32,0.703125,15.75,13.84375,17.859375,400.05,351.63125,,,,,,,case.top; case.bottom,from dado to dado,
			record-bench,F,last,1,,,skin.top,skins.oak,in,~0.0238,16 1/8,54,0.02381,16.125,54,0.604762,409.575,1371.6,,~0.0238 x 16 7/16 x 54 5/8,,,,,lip.top,,
			"
		`);
	});

	test("for other programs", () => {
		const { pieces } = cutListJson([{ file: "bench.rod", list }]);
		const row = pieces[0]?.rows.find((one) => one.parts.includes("case.top"));
		expect(row?.length).toEqual({
			// 52 19/32 in x 25.4 = 1335.88125 mm
			mm: 1335.88125,
			fraction: "213741/160",
			exact: true,
			text: "52 19/32",
			cutMm: 1335.88125,
		});
		expect(row?.hands).toEqual(null);
	});

	test("every part stands in it once", () => {
		expect(partCount(list)).toBe(bench().parts.length);
		const paths = list.sections.flatMap(({ rows }) =>
			rows.flatMap((row) => row.parts.map((part) => part.path)),
		);
		expect(new Set(paths).size).toBe(paths.length);
	});
});

describe("a design in words", () => {
	/** A case 20 wide, 10 high, 8 deep between its sides; sheets of 45/64 in. */
	const textOf = (lines: string, unit = "in"): string => {
		const uri = "file:///case.rod";
		const text = `sheet ply { species "birch plywood"; size 96 in x 48 in; variant three-quarter { sold-as 3/4 in; thick 45/64 in } }
piece rack {
  unit ${unit}
  ${lines}
  box case {
    outside 20 in x 10 in x 8 in
    panels top, bottom, left, right of ply.three-quarter
    caps left, right
    divider middle of ply.three-quarter centred
    join middle to top { dado 3/16 in; glue }
    join middle to bottom { dado 3/16 in wide 0.71 in; glue }
  }
}
`;
		const design = compile(sourcesOf(new Map([[uri, text]])), uri);
		expect(design.findings).toEqual([]);
		const [piece] = design.pieces;
		if (!piece) throw new Error("No piece");
		const list = cutList(piece);
		const [row] = cutListJson([{ file: uri, list }]).pieces[0]?.rows ?? [];
		expect(row?.parts).toContain("case.top");
		// 45/64 in = 17.859375 mm = 11430/640
		expect(row?.housings[0]?.fits?.mm).toBe(17.859375);
		return cutListText(list, { columns: 120 });
	};

	test("a housing whose width is not written is cut to what goes in", () => {
		const text = textOf("");
		expect(text).toContain("dado to fit ~45/64, 3/16 deep, ");
		expect(text).toContain("dado 0.71 wide, 3/16 deep, ");
	});

	// Top and bottom are 20 - 2 x 45/64 = 18 19/32 long, 8 wide; left and right 10 long, 8 wide.
	test.each([
		["cut case.top 18 19/32 x 8", "    cut already: still right"],
		// Half a step of 1/32 in and the saw's own error are nothing.
		["cut case.top 18 39/64 x 8", "    cut already: still right"],
		[
			"cut case.top 18 23/32 x 8",
			"    cut already: trim 1/8 in off the length",
		],
		[
			"cut case.top 18 23/32 x 8 1/4",
			"    cut already: trim 1/8 in off the length and 1/4 in off the width",
		],
		[
			"cut case.top 18 19/32 x 7 3/4",
			"    cut already: too small, cut anew (missing 1/4 in in width)",
		],
		[
			"cut case.top 18 7/32 x 8 1/4",
			"    cut already: too small, cut anew (missing 3/8 in in length)",
		],
		["cut case.left, case.right 10 x 8", "    cut already: still right"],
		["cut case.left 10 x 8", "    case.left: cut already: still right"],
		[
			"cut case.left 11 x 9 stage rough",
			"    case.left: cut already, rough: trim 1 in off the length and 1 in off the width",
		],
	])("%s: %s", (line, note) => {
		expect(textOf(line)).toContain(`${note}\n`);
	});
});

describe("what is one row", () => {
	const board = (path: string, length: string) =>
		partOf(path, {
			stock: ply,
			length: inches(length),
			width: inches("12"),
			thick: inches("45/64"),
		});

	test("parts that differ by less than the rule shows stay apart", () => {
		const list = cutList(
			pieceOf("shelves", [board("a", "30"), board("b", "30 1/256")]),
		);
		expect(list.sections[0]?.rows.map((row) => row.parts.length)).toEqual([
			1, 1,
		]);
	});

	/** A side with a rabbet along its back and a housing for a shelf: turned over, it is no longer the same. */
	const side = (name: "left" | "right", shelfAt: number) =>
		partOf(`case.${name}`, {
			stock: ply,
			length: inches("30"),
			width: inches("12"),
			thick: inches("3/4"),
			axes: ["+y", "+z", "+x"],
			solid: (solid) => {
				const [low, high] = name === "left" ? [10, 19.05] : [0, 9.05];
				return {
					...solid,
					cuts: [
						{ min: [low, 0, 0], max: [high, 762, 6] },
						{
							min: [low, shelfAt, 0],
							max: [high, shelfAt + 18, 304.8],
						},
					],
				};
			},
			housings: [
				{
					kind: "rabbet",
					width: inches("1/4"),
					depth: inches("3/8"),
					datum: "from the back edge",
					at: inches("0"),
					takes: "case.back",
					box: { min: [0, 0, 0], max: [0, 0, 0] },
				},
			],
		});

	test("mirrored housings are one row on the saw, and told apart from there on", () => {
		const list = cutList(
			pieceOf("case", [side("left", 200), side("right", 200)]),
		);
		const [row] = list.sections[0]?.rows ?? [];
		expect(row?.parts.length).toBe(2);
		expect(row?.hands?.second.map((part) => part.path)).toEqual(["case.right"]);
		expect(cutListText(list)).toContain(
			"mirrored from the rabbet on: case.right",
		);
	});

	test("housings at other places make another part", () => {
		const list = cutList(
			pieceOf("case", [side("left", 200), side("right", 210)]),
		);
		expect(list.sections[0]?.rows.length).toBe(2);
	});

	test("a board turned end for end is the same board", () => {
		// 762 - 200 - 18 = 544: the same housing counted from the other end, the rabbet on the same side.
		const list = cutList(
			pieceOf("case", [side("left", 200), side("right", 544)]),
		);
		const [row] = list.sections[0]?.rows ?? [];
		expect(row?.parts.length).toBe(2);
		expect(row?.hands).toBeUndefined();
	});

	test("labels go on behind Z", () => {
		const parts = Array.from({ length: 54 }, (_, i) =>
			board(`p${i}`, String(i + 1)),
		);
		const labels = cutList(pieceOf("many", parts)).sections[0]?.rows.map(
			(row) => row.label,
		);
		expect(labels?.slice(24, 29)).toEqual(["Y", "Z", "AA", "AB", "AC"]);
		expect(labels?.slice(51)).toEqual(["AZ", "BA", "BB"]);
	});

	test("nothing to cut", () => {
		const list = cutList(pieceOf("empty", []));
		expect(cutListText(list)).toContain("Nothing to cut.");
		expect(cutListMarkdown(list)).toContain("Nothing to cut.");
		expect(cutListCsv([list]).split("\r\n").length).toBe(2);
	});
});

describe("a member that must enter an opening", () => {
	// 30 1/64 + a hair lies nearer to 30 1/32 than to 30.
	const length = inches("30 17/1024");
	const member = partOf("shelf", {
		stock: ply,
		length,
		width: inches("12"),
		thick: inches("45/64"),
	});
	const host = partOf("side", {
		stock: ply,
		length: inches("40"),
		width: inches("12"),
		thick: inches("45/64"),
	});
	const fitted = (opening: string, low: Rational) => {
		const size = inches(opening);
		const joint = jointOf(host, member, {
			fits: [
				{
					what: "length between the sides",
					opening: size,
					member: length,
					gap: minus(size, length),
					low,
					high: Rational.of(1),
					rangeFrom: "common practice",
					measure: "",
					origin: host.declaration.origin,
					written: undefined,
				},
			],
		});
		const list = cutList(pieceOf("case", [host, member], { joints: [joint] }));
		return list.sections[0]?.rows.find((row) => row.parts.includes(member))?.cut
			.length.text;
	};

	test("is rounded to the nearest step where there is room", () => {
		expect(fitted("30 1/16", Rational.ZERO)).toBe("30 1/32");
	});

	test("is rounded down where the nearest step would be too long", () => {
		// Opening 30 18/1024; 30 1/32 would be 14/1024 too long, 30 leaves 18/1024.
		expect(fitted("30 9/512", Rational.ZERO)).toBe("30");
	});

	test("is not rounded down to cover up a joint that is wrong as designed", () => {
		expect(fitted("30 1/64", Rational.ZERO)).toBe("30 1/32");
	});
});
