import { describe, expect, test } from "vitest";
import {
	asItMeasures,
	declarationOf,
	fastenerSize,
	inches,
	jointOf,
	millimetres,
	nowhere,
	partOf,
	pieceOf,
	stockOf,
} from "../../tests/harness/piece.ts";
import { bench, oak, ply, quarterOak } from "../../tests/harness/pieces.ts";
import type { Part, Piece, Stock } from "../model/types.ts";
import { Rational } from "../units/rational.ts";
import { boardLine } from "./buy-boards.ts";
import { coatingLines } from "./buy-coatings.ts";
import { fastenerLines } from "./buy-fasteners.ts";
import { sheetLine } from "./buy-sheets.ts";
import { buyingList } from "./buying-list.ts";
import { buyingListCsv } from "./buying-list-csv.ts";
import { buyingListMarkdown } from "./buying-list-markdown.ts";
import { buyingListText } from "./buying-list-text.ts";
import { weightOf } from "./weight.ts";

const glue = stockOf("coating", "wood-glue", {
	price: Rational.of(9),
	per: "tin",
	currency: "EUR",
	coating: { kind: "glue", coversPerLitre: undefined, tin: 0.5 },
});
const dowels = stockOf("fastener", "fixings.dowel", {
	price: Rational.of(6),
	per: "pack",
	currency: "EUR",
	fastener: {
		size: fastenerSize("dowel", "dowel 5/16 x 1 3/8", 7.9375, inches("1 3/8")),
		pack: 10,
	},
});
const stocks = new Map<string, Stock>([
	[ply.id, ply],
	[glue.id, glue],
	[dowels.id, dowels],
]);

const inInches = { unit: "in" } as const;

describe("a case on a pair of legs", () => {
	const list = buyingList(bench(), stocks);

	test("as text", () => {
		expect(buyingListText(list)).toMatchInlineSnapshot(`
			"Buying list: record-bench

			SHEETS
			  ply.three-quarter   96 x 48        at least 1 sheet by area         EUR 92.00
			      5 parts, 16.2 ft2 as sawn, kerf 1/8 counted

			BOARDS
			  oak.eight-quarter   2 rough        0.87 bd ft                        EUR 9.52
			      2 parts, 0.67 bd ft in rough sizes and 30 % for waste (common practice)
			  oak.four-quarter    1 rough        0.49 bd ft                        EUR 4.64
			      1 part, 0.38 bd ft in rough sizes and 30 % for waste (common practice)

			TRIM, RIPPED FROM THE BOARDS
			  oak.four-quarter    3/8 x ~3/4     4.5 ft
			      1 strip: lip.top

			VENEER
			  skins.oak           96 x 24        at least 1 sheet by area         EUR 58.00
			      1 sheet to cut, 6.2 ft2 with what hangs over

			FASTENERS
			  dowel 5/16 x 1 3/8  fixings.dowel  12 (2 packs of 10)               EUR 12.00

			GLUE AND FINISH
			  wood-glue           glue           0.2 fl oz (1 tin of 16.9 fl oz)   EUR 9.00
			      0.3 ft2, spread on one side; 249 ft2 to the gallon (common practice)

			COST
			  at least EUR 185.16

			WEIGHT
			  42.2 lb of wood
			  centre of gravity 27 in from the left, ~13 11/32 in up from the floor, ~7 23/32 in from the back
			  not weighed, density not known: skin.top

			WEIGHT BY PART
			  case.left           3.9 lb
			  case.right          3.9 lb
			  case.top           14.2 lb
			  case.bottom        14.2 lb
			  case.middle         3.8 lb
			  front-left.inner   13.5 oz
			  front-right.inner  13.5 oz
			  lip.top             6.6 oz
			"
		`);
	});

	test("as text in millimetres", () => {
		const piece: Piece = {
			...bench(),
			display: { unit: "mm", precision: Rational.of(1, 2) },
		};
		expect(buyingListText(buyingList(piece, stocks))).toMatchInlineSnapshot(`
			"Buying list: record-bench

			SHEETS
			  ply.three-quarter   2438.4 x 1219.2  at least 1 sheet by area  EUR 92.00
			      5 parts, 1.51 m2 as sawn, kerf 3.175 counted

			BOARDS
			  oak.eight-quarter   50.8 rough       0.0020 m3 (0.87 bd ft)     EUR 9.52
			      2 parts, 0.67 bd ft in rough sizes and 30 % for waste (common practice)
			  oak.four-quarter    25.4 rough       0.0011 m3 (0.48 bd ft)     EUR 4.58
			      1 part, 0.37 bd ft in rough sizes and 30 % for waste (common practice)

			TRIM, RIPPED FROM THE BOARDS
			  oak.four-quarter    ~9.5 x ~18.5     1.37 m
			      1 strip: lip.top

			VENEER
			  skins.oak           2438.4 x 609.6   at least 1 sheet by area  EUR 58.00
			      1 sheet to cut, 0.58 m2 with what hangs over

			FASTENERS
			  dowel 5/16 x 1 3/8  fixings.dowel    12 (2 packs of 10)        EUR 12.00

			GLUE AND FINISH
			  wood-glue           glue             5 ml (1 tin of 500 ml)     EUR 9.00
			      0.03 m2, spread on one side; 6.1 m2 to the litre (common practice)

			COST
			  at least EUR 185.10

			WEIGHT
			  19.1 kg of wood
			  centre of gravity ~686 mm from the left, ~338.5 mm up from the floor, ~195.5 mm from the back
			  not weighed, density not known: skin.top

			WEIGHT BY PART
			  case.left          1.8 kg
			  case.right         1.8 kg
			  case.top           6.5 kg
			  case.bottom        6.5 kg
			  case.middle        1.7 kg
			  front-left.inner    383 g
			  front-right.inner   383 g
			  lip.top             186 g
			"
		`);
	});

	test("as Markdown", () => {
		expect(buyingListMarkdown(list)).toMatchInlineSnapshot(`
			"## Buying list: record\\-bench

			### Sheets

			| Item | Size | Buy | Price | Note |
			| --- | --- | --- | --- | --- |
			| \`ply.three-quarter\` | 96 x 48 | at least 1 sheet by area | EUR 92\\.00 | 5 parts, 16\\.2 ft2 as sawn, kerf 1/8 counted |

			### Boards

			| Item | Size | Buy | Price | Note |
			| --- | --- | --- | --- | --- |
			| \`oak.eight-quarter\` | 2 rough | 0\\.87 bd ft | EUR 9\\.52 | 2 parts, 0\\.67 bd ft in rough sizes and 30 % for waste \\(common practice\\) |
			| \`oak.four-quarter\` | 1 rough | 0\\.49 bd ft | EUR 4\\.64 | 1 part, 0\\.38 bd ft in rough sizes and 30 % for waste \\(common practice\\) |

			### Trim, ripped from the boards

			| Item | Size | Buy | Price | Note |
			| --- | --- | --- | --- | --- |
			| \`oak.four-quarter\` | 3/8 x \\~3/4 | 4\\.5 ft |  | 1 strip\\: lip\\.top |

			### Veneer

			| Item | Size | Buy | Price | Note |
			| --- | --- | --- | --- | --- |
			| \`skins.oak\` | 96 x 24 | at least 1 sheet by area | EUR 58\\.00 | 1 sheet to cut, 6\\.2 ft2 with what hangs over |

			### Fasteners

			| Item | Size | Buy | Price | Note |
			| --- | --- | --- | --- | --- |
			| \`dowel 5/16 x 1 3/8\` | fixings\\.dowel | 12 \\(2 packs of 10\\) | EUR 12\\.00 |  |

			### Glue and finish

			| Item | Size | Buy | Price | Note |
			| --- | --- | --- | --- | --- |
			| \`wood-glue\` | glue | 0\\.2 fl oz \\(1 tin of 16\\.9 fl oz\\) | EUR 9\\.00 | 0\\.3 ft2, spread on one side; 249 ft2 to the gallon \\(common practice\\) |

			### Cost

			- at least EUR 185\\.16

			### Weight

			- 42\\.2 lb of wood
			- centre of gravity 27 in from the left, \\~13 11/32 in up from the floor, \\~7 23/32 in from the back
			- not weighed, density not known\\: skin\\.top

			| Part | Weight |
			| --- | --- |
			| \`case.left\` | 3\\.9 lb |
			| \`case.right\` | 3\\.9 lb |
			| \`case.top\` | 14\\.2 lb |
			| \`case.bottom\` | 14\\.2 lb |
			| \`case.middle\` | 3\\.8 lb |
			| \`front-left.inner\` | 13\\.5 oz |
			| \`front-right.inner\` | 13\\.5 oz |
			| \`lip.top\` | 6\\.6 oz |
			"
		`);
	});

	test("as CSV", () => {
		expect(
			buyingListCsv([list]).replaceAll("\r\n", "\n"),
		).toMatchInlineSnapshot(`
			"piece,section,item,quantity,unit,at_least,packs,area_m2,price,currency
			record-bench,sheets,ply.three-quarter,1,sheet,yes,,1.5067,92.00,EUR
			record-bench,boards,oak.eight-quarter,0.87,board foot,no,,,9.52,EUR
			record-bench,boards,oak.four-quarter,0.49,board foot,no,,,4.64,EUR
			record-bench,trim,oak.four-quarter,1.372,m,no,,,,
			record-bench,veneer,skins.oak,1,sheet,yes,,0.5793,58.00,EUR
			record-bench,fasteners,dowel 5/16 x 1 3/8,12,piece,no,2,,12.00,EUR
			record-bench,glue,wood-glue,0.005,litre,no,1,0.0281,9.00,EUR
			"
		`);
	});
});

/** A board that has exactly this rough size. */
function roughBoard(
	rough: string,
	width: string,
	length: string,
): { stock: Stock; part: Part } {
	const stock = stockOf("board", "wood", { soldAs: inches(rough) });
	const part = partOf("board", {
		stock,
		length: inches("1"),
		width: inches("1"),
		thick: inches("1/2"),
		stages: [
			{
				stage: "rough",
				length: inches(length),
				width: inches(width),
				thick: inches(rough),
			},
		],
	});
	return { stock, part };
}

describe("board feet", () => {
	// Formula, and the rule under an inch: US Navy, Engineering Aid Basic, chapter 6. The first two are worked examples of a
	// woodworking magazine; the others by the formula: 1.25 x 7.5 x 10 / 12, 1 x 6 x 8 / 12, 2 x 9.25 x 6 / 12 (feet long).
	test.each([
		["1", "9", "96", 6],
		["1 1/2", "9", "96", 9],
		["1 1/4", "7 1/2", "120", 7.8125],
		["3/4", "6", "96", 4],
		["2", "9 1/4", "72", 9.25],
	])("%s x %s x %s in", (rough, width, length, feet) => {
		const { stock, part } = roughBoard(rough, width, length);
		const line = boardLine(stock, [part], inInches);
		expect(line.net).toBeCloseTo(feet, 6);
		expect(line.waste).toBe(0.3);
		expect(line.total).toBeCloseTo(feet * 1.3, 6);
	});

	test("a part without a rough stage gets the usual allowances", () => {
		const stock = stockOf("board", "wood", { soldAs: inches("1") });
		const part = partOf("board", {
			stock,
			length: inches("35"),
			width: inches("5 3/4"),
			thick: inches("3/4"),
		});
		// 1 x (5 3/4 + 1/4) x (35 + 1) / 144 = 216 / 144
		expect(boardLine(stock, [part], inInches).net).toBeCloseTo(1.5, 6);
		// Four strips: each jointed, 5 3/4 + 4 x 1/4 = 6 3/4; 6 3/4 x 36 / 144
		const glued = { ...part, strips: 4 };
		expect(boardLine(stock, [glued], inInches).net).toBeCloseTo(1.6875, 6);
		// In millimetres in round figures: (35 + 25 / 25.4) x (5 3/4 + 6 / 25.4) x 1 / 144 = 1.4959
		expect(boardLine(stock, [part], { unit: "mm" }).net).toBeCloseTo(1.4959, 6);
	});

	test("a rough thickness that the stock file does not say is told to be guessed", () => {
		const stock = stockOf("board", "wood", { thick: inches("3/4") });
		const part = partOf("board", {
			stock,
			length: inches("35"),
			width: inches("5 3/4"),
			thick: inches("3/4"),
		});
		const line = boardLine(stock, [part], inInches);
		expect(line.roughGuessed).toBe(true);
		// 3/4 + 1/4
		expect(line.rough).toBeCloseTo(25.4, 9);
	});

	test("parts beyond the largest board are told", () => {
		const wide = partOf("wide", {
			stock: oak,
			length: inches("30"),
			width: inches("12"),
			thick: inches("1 3/4"),
		});
		expect(boardLine(oak, [wide], inInches).tooLarge).toEqual([wide]);
		expect(boardLine(oak, [{ ...wide, strips: 2 }], inInches).tooLarge).toEqual(
			[],
		);
	});
});

describe("sheets", () => {
	const kerf = 3.175;
	const panel = (name: string, length: string, width: string, stock = ply) =>
		partOf(name, {
			stock,
			length: inches(length),
			width: inches(width),
			thick: inches("45/64"),
		});

	test("at least as many as the area and the saw take", () => {
		// Eight of 24 x 24 fill 96 x 48 without a kerf, and do not with one.
		const eight = Array.from({ length: 8 }, (_, i) =>
			panel(`p${i}`, "24", "24"),
		);
		expect(sheetLine(ply, eight, 0).least).toBe(1);
		expect(sheetLine(ply, eight, kerf).least).toBe(2);
		// With 1/8 in they fit when 3 x 1/8 and 1 x 1/8 are taken off them.
		const smaller = Array.from({ length: 8 }, (_, i) =>
			panel(`p${i}`, "23 29/32", "23 15/16"),
		);
		expect(sheetLine(ply, smaller, kerf).least).toBe(1);
	});

	test("parts of more than half a sheet each way never share one", () => {
		const three = ["a", "b", "c"].map((name) => panel(name, "50", "30"));
		expect(sheetLine(ply, three, kerf).least).toBe(3);
	});

	test("a part that no sheet is large enough for is told, and no number made up", () => {
		const long = panel("long", "97", "10");
		const line = sheetLine(ply, [long], kerf);
		expect(line.tooLarge).toEqual([long]);
		expect(line.least).toBeUndefined();
		// Across the grain it would fit, but the grain counts …
		const across = panel("across", "40", "90");
		expect(sheetLine(ply, [across], kerf).tooLarge).toEqual([across]);
		// … unless the sheet has none.
		const plain = { ...ply, grain: false };
		expect(sheetLine(plain, [across], kerf).least).toBe(1);
	});

	test("the first size that takes every part is counted with", () => {
		const several = {
			...ply,
			sizes: [
				{ length: inches("48"), width: inches("48") },
				{ length: inches("96"), width: inches("48") },
				{ length: inches("120"), width: inches("60") },
			],
		};
		const line = sheetLine(several, [panel("a", "60", "20")], kerf);
		expect(line.size).toBe(several.sizes[1]);
	});

	test("without a size only the area is told", () => {
		const line = sheetLine({ ...ply, sizes: [] }, [panel("a", "12", "12")], 0);
		expect(line.least).toBeUndefined();
		expect(line.area).toBeCloseTo(304.8 * 304.8, 6);
	});
});

describe("fasteners", () => {
	test("are counted by their places and packed by the stock file", () => {
		const [line] = fastenerLines(bench(), stocks);
		// Four corners, three each; packs of ten.
		expect(line?.count).toBe(12);
		expect(line?.packs).toBe(2);
		expect(buyingList(bench(), stocks).fasteners[0]?.price?.toString()).toBe(
			"12",
		);
	});

	test("screws into the wall are counted by the studs that are surely met", () => {
		const strip = partOf("hook.strip", {
			role: "cleat",
			stock: ply,
			length: millimetres("900"),
			width: millimetres("70"),
			thick: millimetres("18"),
		});
		const screw = fastenerSize("screw", "#10 x 75", 4.8, millimetres("75"), 10);
		const piece = pieceOf("rack", [strip], {
			mounts: [
				{
					path: "hook",
					declaration: declarationOf("hook", "mount"),
					origin: nowhere,
					kind: "cleat",
					on: strip,
					strip,
					wallStrip: undefined,
					bevel: 45,
					height: millimetres("70"),
					thick: millimetres("18"),
					gap: millimetres("20"),
					lift: millimetres("18"),
					above: millimetres("30"),
					below: millimetres("300"),
					play: millimetres("0"),
					fasteners: [],
					wall: {
						studs: millimetres("400"),
						studKind: "wood",
						drywall: undefined,
						masonry: false,
						plaster: undefined,
						screw,
						each: 2,
						origin: nowhere,
					},
					wallStripTop: millimetres("1500"),
				},
			],
		});
		// A strip of 900 meets two studs at 400 wherever it hangs (three only by luck): 2 x 2.
		expect(fastenerLines(piece, new Map())[0]).toMatchObject({
			count: 4,
			wall: true,
		});
	});
});

describe("glue and finish", () => {
	const flat = (name: string, at: string): Part =>
		partOf(name, {
			stock: ply,
			length: millimetres("1000"),
			width: millimetres("100"),
			thick: millimetres("20"),
			axes: ["+x", "+z", "-y"],
			at: [millimetres("0"), millimetres(at), millimetres("0")],
		});

	test("glue is counted on one side of what meets", () => {
		const [low, high] = [flat("low", "0"), flat("high", "20")];
		const piece = pieceOf("pack", [low, high], {
			joints: [jointOf(low, high, { glue: true })],
		});
		const [line] = coatingLines(piece, new Map());
		// 1 m x 0.1 m = 0.1 m2; 0.1 / 6.1 l
		expect(line?.area).toBeCloseTo(100_000, 3);
		expect(line?.litres).toBeCloseTo(0.1 / 6.1, 9);
		expect(line?.coversFrom).toBe("practice");
	});

	test("a dado is glued at its bottom and both cheeks", () => {
		const host = flat("host", "0");
		const member = flat("member", "100");
		const cut = {
			min: [500, 10, 0] as const,
			max: [518, 20, 100] as const,
		};
		const housed: Part = {
			...host,
			housings: [
				{
					kind: "dado",
					width: millimetres("18"),
					depth: millimetres("10"),
					datum: "from the left end",
					at: millimetres("500"),
					takes: "member",
					box: cut,
				},
			],
			solid: { ...host.solid, cuts: [cut] },
		};
		const piece = pieceOf("dado", [housed, member], {
			joints: [jointOf(housed, member, { kind: "dado", glue: true })],
		});
		// 18 x 100 at the bottom and twice 10 x 100 at the sides; it runs out at both ends.
		expect(coatingLines(piece, new Map())[0]?.area).toBeCloseTo(3_800, 6);
	});

	test("strips are glued along their seams", () => {
		const top = { ...flat("top", "0"), strips: 4 };
		const [line] = coatingLines(pieceOf("top", [top]), new Map());
		expect(line?.area).toBeCloseTo(3 * 1_000 * 20, 6);
	});

	test("finish covers what can be seen, coat by coat", () => {
		const [low, high] = [flat("low", "0"), flat("high", "20")];
		const oil = stockOf("coating", "hard-oil", {
			coating: { kind: "finish", coversPerLitre: 24, tin: 0.25 },
		});
		const piece = pieceOf("pack", [low, high], {
			finishes: [
				{
					name: "clear",
					declaration: declarationOf("clear", "finish"),
					faces: "all",
					on: [],
					coats: [
						{ coats: 2, coating: "hard-oil", stock: oil, origin: nowhere },
					],
					sanding: [],
				},
			],
		});
		const [line] = coatingLines(piece, new Map());
		// One block of 1000 x 100 x 40: 2 (1000 x 100 + 1000 x 40 + 100 x 40) = 288,000 mm2, twice.
		expect(line?.area).toBeCloseTo(576_000, 3);
		expect(line?.litres).toBeCloseTo(0.576 / 24, 9);
		expect(line?.tins).toBe(1);
	});
});

describe("weight", () => {
	test("a board foot of white oak", () => {
		const board = partOf("board", {
			stock: quarterOak,
			length: inches("12"),
			width: inches("12"),
			thick: inches("1"),
		});
		// Wood Handbook FPL-GTR-190, table 12-1: specific gravity of white oak 0.68 at 12 % moisture; 1000 x 0.68 x 1.12 = 762 kg/m3. A board foot is
		// 0.0023597 m3, so 1.798 kg.
		expect(weightOf(pieceOf("board", [board])).total).toBeCloseTo(1.798, 3);
	});

	test("the centre of gravity from the left, the floor and the back", () => {
		const heavy = stockOf("board", "heavy", { density: 800 });
		const light = stockOf("board", "light", { density: 400 });
		const block = (name: string, stock: Stock, x: string) =>
			partOf(name, {
				stock,
				length: millimetres("100"),
				width: millimetres("100"),
				thick: millimetres("100"),
				axes: ["+x", "+z", "-y"],
				at: [millimetres(x), millimetres("50"), millimetres("10")],
			});
		const piece = pieceOf("pair", [
			block("a", heavy, "-200"),
			block("b", light, "100"),
		]);
		const weight = weightOf(piece);
		expect(weight.total).toBeCloseTo(1.2, 12);
		// Middles at 50 and 350 from the left: (0.8 x 50 + 0.4 x 350) / 1.2 = 150.
		expect(weight.centre?.fromLeft).toBeCloseTo(150, 9);
		expect(weight.centre?.fromFloor).toBeCloseTo(100, 9);
		expect(weight.centre?.fromBack).toBeCloseTo(50, 9);
	});

	test("what has no density is told and left out", () => {
		const stock = stockOf("sheet", "board");
		const part = partOf("back", {
			stock,
			length: millimetres("100"),
			width: millimetres("100"),
			thick: asItMeasures("board", millimetres("6")),
		});
		const weight = weightOf(pieceOf("back", [part]));
		expect(weight.unknown).toEqual([part]);
		expect(weight.centre).toBeUndefined();
		expect(
			buyingListText(buyingList(pieceOf("back", [part]), new Map())),
		).toContain("not weighed, density not known: back");
	});
});
