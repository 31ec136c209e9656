import { describe, expect, test } from "vitest";
import { boughtFor, boughtPlainly } from "../../tests/harness/bought.ts";
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
import { bench, ply, quarterOak } from "../../tests/harness/pieces.ts";
import { numberOf } from "../model/size.ts";
import type { Part, Piece, Stock } from "../model/types.ts";
import { Rational } from "../units/rational.ts";
import { coatingLines } from "./buy-coatings.ts";
import { fastenerLines } from "./buy-fasteners.ts";
import type { BoardFeet } from "./buy-material.ts";
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

describe("a case on a pair of legs", () => {
	// Stacked one above the other: five panels of 15 3/4 wide go three to a sheet of 48, so two sheets; two layers of 3 1/4
	// go two to a board of 6 1/2 but for the kerf, so two boards of 2 x 6 1/2 x 120 / 144 = 10.83 board feet, at 11: 238.33.
	// Rough sizes: 2 x (7 3/8 x 3 1/4 x 2) / 144 = 0.67; the lip ripped 3/8 off the edge: 55 x 3/8 x 1 / 144 = 0.14.
	// A sheet weighs 2.4384 x 1.2192 x 0.01786 m3 x 680 kg/m3 = 36.1 kg = 79.6 lb.
	const list = boughtPlainly(bench(), stocks);

	test("as text", () => {
		expect(buyingListText(list)).toMatchInlineSnapshot(`
			"Buying list: record-bench

			SHEETS
			  ply.three-quarter   96 x 48        2 sheets                         EUR 184.00
			      5 parts, 16.2 ft2 as sawn, kerf 1/8
			      a better layout may exist: 1 sheet at the least

			BOARDS
			  oak.eight-quarter   120 x 6 1/2    2 boards (21.67 bd ft)           EUR 238.33
			      2 parts, 0.67 bd ft in rough sizes of 21.67 bd ft, 20.57 bd ft worth keeping, 2 % lost, kerf
			        1/8
			      2 thick, rough
			      a better layout may exist: 1 board at the least
			      planned with boards 6 1/2 wide, 72 or 120 long: put yours in with \`on-hand\`
			  oak.four-quarter    96 x 6         1 board (4.00 bd ft)              EUR 38.00
			      1 part, 0.14 bd ft in rough sizes of 4.00 bd ft, 3.67 bd ft worth keeping, 5 % lost, kerf
			        1/8
			      1 thick, rough
			      planned with boards 6 wide, 96 long, as the stock file does not say what there is: put yours
			        in with \`on-hand\`

			TRIM, RIPPED FROM THE BOARDS
			  oak.four-quarter    3/8 x ~3/4     4.5 ft
			      1 strip: lip.top

			VENEER
			  skins.oak           96 x 24        1 sheet                           EUR 58.00
			      1 sheet to cut, 6.2 ft2 with what hangs over

			FASTENERS
			  dowel 5/16 x 1 3/8  fixings.dowel  12 (2 packs of 10)                EUR 12.00

			GLUE AND FINISH
			  wood-glue           glue           0.2 fl oz (1 tin of 16.9 fl oz)    EUR 9.00
			      0.3 ft2, spread on one side; 249 ft2 to the gallon (common practice)

			COST
			  EUR 539.33

			LEFT IN THE SHOP, TO STAND IN THE STOCK FILE
			  ply.three-quarter
			    on-hand 96 in x 16 1/4 in
			    on-hand 82 1/32 in x 15 3/4 in
			    on-hand 81 1/4 in x 15 3/4 in count 2
			    on-hand 43 9/32 in x 15 3/4 in count 2
			  oak.eight-quarter
			    on-hand 120 in x 3 1/8 in count 2
			    on-hand 112 1/2 in x 3 1/4 in count 2
			  oak.four-quarter
			    on-hand 96 in x 5 1/2 in
			  skins.oak
			    on-hand 96 in x 7 9/16 in
			    on-hand 41 3/8 in x 16 7/16 in

			TO CARRY HOME
			  260.9 lb of sheets and boards, the heaviest 79.6 lb
			  not weighed, density not known: skins.oak

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
		expect(buyingListText(boughtPlainly(piece, stocks))).toMatchInlineSnapshot(`
			"Buying list: record-bench

			SHEETS
			  ply.three-quarter   2438.4 x 1219.2  2 sheets                           EUR 184.00
			      5 parts, 1.51 m2 as sawn, kerf 3.175
			      a better layout may exist: 1 sheet at the least

			BOARDS
			  oak.eight-quarter   3048 x 165.1     2 boards (0.0511 m3, 21.67 bd ft)  EUR 238.33
			      2 parts, 0.67 bd ft in rough sizes of 21.67 bd ft, 20.57 bd ft worth keeping, 2 % lost, kerf
			        3.175
			      50.8 thick, rough
			      a better layout may exist: 1 board at the least
			      planned with boards 165.1 wide, 1828.8 or 3048 long: put yours in with \`on-hand\`
			  oak.four-quarter    2400 x 150       1 board (0.0091 m3, 3.88 bd ft)     EUR 36.81
			      1 part, 0.14 bd ft in rough sizes of 3.88 bd ft, 3.55 bd ft worth keeping, 5 % lost, kerf
			        3.175
			      25.4 thick, rough
			      planned with boards 150 wide, 2400 long, as the stock file does not say what there is: put
			        yours in with \`on-hand\`

			TRIM, RIPPED FROM THE BOARDS
			  oak.four-quarter    ~9.5 x ~18.5     1.37 m
			      1 strip: lip.top

			VENEER
			  skins.oak           2438.4 x 609.6   1 sheet                             EUR 58.00
			      1 sheet to cut, 0.58 m2 with what hangs over

			FASTENERS
			  dowel 5/16 x 1 3/8  fixings.dowel    12 (2 packs of 10)                  EUR 12.00

			GLUE AND FINISH
			  wood-glue           glue             5 ml (1 tin of 500 ml)               EUR 9.00
			      0.03 m2, spread on one side; 6.1 m2 to the litre (common practice)

			COST
			  EUR 538.15

			LEFT IN THE SHOP, TO STAND IN THE STOCK FILE
			  ply.three-quarter
			    on-hand 2438 mm x 412.5 mm
			    on-hand 2083.5 mm x 400 mm
			    on-hand 2063.5 mm x 400 mm count 2
			    on-hand 1099 mm x 400 mm count 2
			  oak.eight-quarter
			    on-hand 3048 mm x 79 mm count 2
			    on-hand 2857.5 mm x 82.5 mm count 2
			  oak.four-quarter
			    on-hand 2400 mm x 137 mm
			  skins.oak
			    on-hand 2438 mm x 192 mm
			    on-hand 1050.5 mm x 417.5 mm

			TO CARRY HOME
			  118.1 kg of sheets and boards, the heaviest 36.1 kg
			  not weighed, density not known: skins.oak

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
			| \`ply.three-quarter\` | 96 x 48 | 2 sheets | EUR 184\\.00 | 5 parts, 16\\.2 ft2 as sawn, kerf 1/8<br>a better layout may exist\\: 1 sheet at the least |

			### Boards

			| Item | Size | Buy | Price | Note |
			| --- | --- | --- | --- | --- |
			| \`oak.eight-quarter\` | 120 x 6 1/2 | 2 boards \\(21\\.67 bd ft\\) | EUR 238\\.33 | 2 parts, 0\\.67 bd ft in rough sizes of 21\\.67 bd ft, 20\\.57 bd ft worth keeping, 2 % lost, kerf 1/8<br>2 thick, rough<br>a better layout may exist\\: 1 board at the least<br>planned with boards 6 1/2 wide, 72 or 120 long\\: put yours in with \\\`on\\-hand\\\` |
			| \`oak.four-quarter\` | 96 x 6 | 1 board \\(4\\.00 bd ft\\) | EUR 38\\.00 | 1 part, 0\\.14 bd ft in rough sizes of 4\\.00 bd ft, 3\\.67 bd ft worth keeping, 5 % lost, kerf 1/8<br>1 thick, rough<br>planned with boards 6 wide, 96 long, as the stock file does not say what there is\\: put yours in with \\\`on\\-hand\\\` |

			### Trim, ripped from the boards

			| Item | Size | Buy | Price | Note |
			| --- | --- | --- | --- | --- |
			| \`oak.four-quarter\` | 3/8 x \\~3/4 | 4\\.5 ft |  | 1 strip\\: lip\\.top |

			### Veneer

			| Item | Size | Buy | Price | Note |
			| --- | --- | --- | --- | --- |
			| \`skins.oak\` | 96 x 24 | 1 sheet | EUR 58\\.00 | 1 sheet to cut, 6\\.2 ft2 with what hangs over |

			### Fasteners

			| Item | Size | Buy | Price | Note |
			| --- | --- | --- | --- | --- |
			| \`dowel 5/16 x 1 3/8\` | fixings\\.dowel | 12 \\(2 packs of 10\\) | EUR 12\\.00 |  |

			### Glue and finish

			| Item | Size | Buy | Price | Note |
			| --- | --- | --- | --- | --- |
			| \`wood-glue\` | glue | 0\\.2 fl oz \\(1 tin of 16\\.9 fl oz\\) | EUR 9\\.00 | 0\\.3 ft2, spread on one side; 249 ft2 to the gallon \\(common practice\\) |

			### Cost

			- EUR 539\\.33

			### Left in the shop, to stand in the stock file

			\`\`\`
			ply.three-quarter
			  on-hand 96 in x 16 1/4 in
			  on-hand 82 1/32 in x 15 3/4 in
			  on-hand 81 1/4 in x 15 3/4 in count 2
			  on-hand 43 9/32 in x 15 3/4 in count 2
			oak.eight-quarter
			  on-hand 120 in x 3 1/8 in count 2
			  on-hand 112 1/2 in x 3 1/4 in count 2
			oak.four-quarter
			  on-hand 96 in x 5 1/2 in
			skins.oak
			  on-hand 96 in x 7 9/16 in
			  on-hand 41 3/8 in x 16 7/16 in
			\`\`\`

			### To carry home

			- 260\\.9 lb of sheets and boards, the heaviest 79\\.6 lb
			- not weighed, density not known\\: skins\\.oak

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
			"pieces,section,item,size,quantity,unit,on_hand,at_least,packs,board_feet,area_m2,price,currency
			record-bench,sheets,ply.three-quarter,96 x 48,2,sheet,no,no,,,1.5067,184.00,EUR
			record-bench,boards,oak.eight-quarter,120 x 6 1/2,2,board,no,no,,21.67,0.0309,238.33,EUR
			record-bench,boards,oak.four-quarter,96 x 6,1,board,no,no,,4,0.0133,38.00,EUR
			record-bench,trim,oak.four-quarter,,1.372,m,no,no,,,,,
			record-bench,veneer,skins.oak,96 x 24,1,sheet,no,no,,,0.5793,58.00,EUR
			record-bench,fasteners,dowel 5/16 x 1 3/8,,12,piece,no,no,2,,,12.00,EUR
			record-bench,glue,wood-glue,,0.005,litre,no,no,1,,0.0281,9.00,EUR
			"
		`);
	});
});

function feetOf(stock: Stock, part: Part, unit: "in" | "mm" = "in"): BoardFeet {
	const piece = pieceOf("board", [{ ...part, stock }], {
		display: { unit, precision: Rational.of(1, 32) },
	});
	const [line] = boughtFor(piece, new Map()).boards;
	if (!line?.line.feet) throw new Error("No boards");
	return line.line.feet;
}

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
		expect(feetOf(stock, part).net).toBeCloseTo(feet, 4);
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
		expect(feetOf(stock, part).net).toBeCloseTo(1.5, 4);
		// Four strips: each jointed, 5 3/4 + 4 x 1/4 = 6 3/4; 6 3/4 x 36 / 144
		const glued = { ...part, strips: 4 };
		expect(feetOf(stock, glued).net).toBeCloseTo(1.6875, 4);
		// In millimetres in round figures: (35 + 25 / 25.4) x (5 3/4 + 6 / 25.4) x 1 / 144 = 1.4959
		expect(feetOf(stock, part, "mm").net).toBeCloseTo(1.4959, 4);
	});

	test("bought, used and lost are those of the boards", () => {
		// A board of 72 x 6, 1 thick: 3 board feet. Out of it come 36 x 6 and a kerf of 1/8; 35 7/8 x 6 is left and worth keeping:
		// 36 x 6 / 144 = 1.5, 35 7/8 x 6 / 144 = 1.4948, lost 1/8 x 6 / 144 = 0.0052 of 3.
		const stock = stockOf("board", "wood", {
			soldAs: inches("1"),
			widths: { low: inches("6"), high: inches("6") },
			lengths: { low: inches("72"), high: inches("72") },
		});
		const part = partOf("board", {
			stock,
			length: inches("35"),
			width: inches("5 3/4"),
			thick: inches("3/4"),
		});
		const feet = feetOf(stock, part);
		expect(feet.bought).toBeCloseTo(3, 4);
		expect(feet.used).toBeCloseTo(3, 4);
		expect(feet.kept).toBeCloseTo(1.4948, 3);
		expect(feet.lost).toBeCloseTo(0.0052 / 3, 4);
	});

	test("a rough thickness that the stock file does not say is told to be guessed", () => {
		const stock = stockOf("board", "wood", { thick: inches("3/4") });
		const part = partOf("board", {
			stock,
			length: inches("35"),
			width: inches("5 3/4"),
			thick: inches("3/4"),
		});
		const feet = feetOf(stock, part);
		expect(feet.roughGuessed).toBe(true);
		// 3/4 + 1/4
		expect(numberOf(feet.rough)).toBeCloseTo(25.4, 9);
	});
});

describe("fasteners", () => {
	test("are counted by their places and packed by the stock file", () => {
		const [line] = fastenerLines([{ piece: bench(), stocks }]);
		// Four corners, three each; packs of ten.
		expect(line?.count).toBe(12);
		expect(line?.packs).toBe(2);
		expect(boughtFor(bench(), stocks).fasteners[0]?.price?.toString()).toBe(
			"12",
		);
	});

	test("spare ones count for the packs", () => {
		// 12 and 10 % of them, up to the next whole one: 14, two packs of ten; 12 and 75 %: 21, three packs.
		const lines = (spare: number) =>
			fastenerLines([{ piece: { ...bench(), spare }, stocks }])[0];
		expect(lines(0.1)).toMatchObject({ count: 12, spare: 2, packs: 2 });
		expect(lines(0.75)).toMatchObject({ count: 12, spare: 9, packs: 3 });
	});

	test("two pieces share a pack", () => {
		// 12 and 12 are 24: three packs of ten, where each alone would need two.
		const piece = bench();
		const [line] = fastenerLines([
			{ piece, stocks },
			{ piece, stocks },
		]);
		expect(line).toMatchObject({ count: 24, packs: 3, shares: [12, 12] });
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
		expect(fastenerLines([{ piece, stocks: new Map() }])[0]).toMatchObject({
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
		const [line] = coatingLines([{ piece, stocks: new Map() }]);
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
		expect(coatingLines([{ piece, stocks: new Map() }])[0]?.area).toBeCloseTo(
			3_800,
			6,
		);
	});

	test("strips are glued along their seams", () => {
		const top = { ...flat("top", "0"), strips: 4 };
		const [line] = coatingLines([
			{ piece: pieceOf("top", [top]), stocks: new Map() },
		]);
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
		const [line] = coatingLines([{ piece, stocks: new Map() }]);
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
			buyingListText(boughtFor(pieceOf("back", [part]), new Map())),
		).toContain("not weighed, density not known: back");
	});
});
