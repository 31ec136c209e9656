/** Rows of the table: what a stock file declares. */
import type { Construct } from "./construct.ts";

const variant = (block: Construct["block"], example: string): Construct =>
	({
		head: "variant",
		help: "One thickness or kind of this material, used as `material.variant`",
		forms: ["<name:new-name>"],
		block,
		repeats: true,
		required: true,
		declares: "variant",
		example,
	}) as Construct;

const species: Construct = {
	head: "species",
	help: "The wood, or the sort of panel, by its common name: brings density and strength from the built-in tables",
	forms: ["<species:text>"],
	example: 'species "white oak"',
};
const density: Construct = {
	head: "density",
	help: "Weight by volume; replaces the built-in value of the species",
	forms: ["<mass:mass> per <volume:ft3|m3>"],
	defaults: "from the species",
	example: "density 680 kg per m3",
};
const tolerance: Construct = {
	head: "tolerance",
	help: "How far the thickness may be off, either way",
	forms: ["<tolerance:length>"],
	defaults: "by the standard of the species or panel",
	example: "tolerance 1/64",
};
const stiffness: Construct = {
	head: "stiffness",
	help: "How stiff it is in bending along its grain (modulus of elasticity), and across it; replaces the value of the species",
	forms: ["<along:number> <unit:GPa|Mpsi> [across <across:number>]"],
	defaults: "from the species",
	example: "stiffness 10 GPa across 6",
};
const shrinks: Construct = {
	head: "shrinks",
	help: "How much it shrinks from green to oven-dry, along the rings and along the rays; replaces the values of the species",
	forms: ["<tangential:percent> tangential <radial:percent> radial"],
	defaults: "from the species",
	example: "shrinks 8.6 % tangential 4 % radial",
};
const sawn: Construct = {
	head: "sawn",
	help: "How the boards are cut from the log: flat (the rings lie in the width), quarter (they stand upright in it) or rift (between); says how much they move across",
	forms: ["<cut:flat|quarter|rift>"],
	defaults: "flat",
	example: "sawn quarter",
};
const price = (per: string, example: string): Construct => ({
	head: "price",
	help: `What one ${per} costs, in the currency of the stock file`,
	forms: [`<price:number> [per ${per}]`],
	example,
});
const sheetSize: Construct = {
	head: "size",
	help: "A size it is sold in: length x width, the face grain along the first; several lines for several sizes",
	forms: ["<size:sizes2>"],
	repeats: true,
	example: "size 96 x 48",
};
const pricedSize: Construct = {
	...sheetSize,
	help: "A size it is sold in: length x width, the face grain along the first; what one of that size costs, and how many the dealer has, if no more can be had; several lines for several sizes",
	forms: ["<size:sizes2> [price <price:number>] [in-stock <count:count>]"],
	defaults: "the sizes of the material, at the `price` of the variant",
	example: "size 96 x 48 price 92 in-stock 3",
};
const onHand = (what: string, example: string): Construct => ({
	head: "on-hand",
	help: `${what} in the shop already: length x width, the grain along the first; used up before any is bought`,
	forms: ["<size:sizes2> [count <count:count>]"],
	block: "on-hand",
	blockOptional: true,
	repeats: true,
	example,
});
const trim: Construct = {
	head: "trim",
	help: "What is cut off each of the four factory edges before anything else",
	forms: ["<trim:length>"],
	defaults: "nothing",
	example: "trim 1/4",
};
const keep = (usual: string, example: string): Construct => ({
	head: "keep",
	help: "The smallest offcut that is worth keeping: length x width",
	forms: ["<size:sizes2>"],
	defaults: `${usual}, common practice`,
	example,
});

export const materialContexts = {
	sheet: [
		species,
		density,
		stiffness,
		tolerance,
		sheetSize,
		trim,
		keep("12 x 6 in, or 300 x 150 mm", "keep 12 x 6"),
		{
			head: "face-grain",
			help: "Whether the sheet shows a grain that parts must follow",
			forms: ["<grain:along|none>"],
			defaults: "along",
			example: "face-grain none",
		},
		variant(
			"sheet-variant",
			"variant three-quarter { sold-as 3/4; thick 45/64; price 92 }",
		),
	],
	"sheet-variant": [
		{
			head: "sold-as",
			help: "The thickness on its label",
			forms: ["<thick:length>"],
			example: "sold-as 3/4",
		},
		{
			head: "thick",
			help: "The thickness that it measures; parts are computed from this",
			forms: ["<thick:length>"],
			required: true,
			example: "thick 45/64",
		},
		tolerance,
		pricedSize,
		onHand("An offcut or a whole sheet", "on-hand 40 x 30 count 2"),
		trim,
		density,
		stiffness,
		price("sheet", "price 92 per sheet"),
	],
	board: [
		species,
		density,
		tolerance,
		sawn,
		stiffness,
		shrinks,
		keep("12 x 2 in, or 300 x 50 mm", "keep 16 x 3"),
		variant(
			"board-variant",
			"variant four-quarter { rough 1; planed 3/4; price 9.50 per board-foot }",
		),
	],
	"board-variant": [
		{
			head: "rough",
			help: "Thickness by quarters, as it is paid for",
			forms: ["<thick:length>"],
			example: "rough 1",
		},
		{
			head: "surfaced",
			help: "Thickness as bought, when it is sold planed on two faces",
			forms: ["<thick:length>"],
			example: "surfaced 13/16",
		},
		{
			head: "planed",
			help: "The thickness that the shop planes it to; parts are computed from this",
			forms: ["<thick:length>"],
			required: true,
			example: "planed 3/4",
		},
		tolerance,
		{
			head: "widths",
			help: "The narrowest and the widest board to be had",
			forms: ["<low:length> to <high:length>"],
			example: "widths 4 to 9",
		},
		{
			head: "lengths",
			help: "The shortest and the longest board to be had; or the lengths that a batten or moulding is sold in",
			forms: ["<low:length> to <high:length>", "<lengths:lengths>"],
			example: "lengths 72 to 120",
		},
		onHand(
			"A board, its ends and edges as they are,",
			"on-hand 84 x 6 3/4 { defect 30 to 34 }",
		),
		sawn,
		stiffness,
		shrinks,
		density,
		{
			head: "price",
			help: "What a board foot costs, in the currency of the stock file; of a batten or moulding, which comes in its section and is only cut to length, what a foot or metre of it costs",
			forms: ["<price:number> [per <per:board-foot|foot|metre>]"],
			example: "price 9.50 per board-foot",
		},
	],
	"veneer-stock": [
		species,
		density,
		sheetSize,
		keep("12 x 6 in, or 300 x 150 mm", "keep 18 x 4"),
		variant(
			"veneer-variant",
			"variant oak { thick 1/42; size 96 x 24; price 58 }",
		),
	],
	"veneer-variant": [
		species,
		{
			head: "thick",
			help: "Its thickness with any backing",
			forms: ["<thick:length>"],
			required: true,
			example: "thick 1/42",
		},
		{
			head: "adhesive-backed",
			help: "It brings its own adhesive, and the coldest shop that it bonds in",
			forms: ["[above <minimum:temperature>]"],
			example: "adhesive-backed above 60 F",
		},
		pricedSize,
		onHand("A sheet or a piece of one", "on-hand 40 x 24"),
		price("sheet", "price 58"),
	],
	"on-hand": [
		{
			head: "defect",
			help: "A knot, split or stain that no part may lie on: from where to where along the length, and across the width if it does not take all of that",
			forms: [
				"<from:length> to <to:length> [across <low:length> to <high:length>]",
			],
			repeats: true,
			example: "defect 30 to 34 across 0 to 2",
		},
	],
	fastener: [
		variant(
			"fastener-variant",
			"variant eight-45 { screw #8 x 45 mm; pack 200; price 14 }",
		),
	],
	"fastener-variant": [
		{
			head: "screw",
			help: "A wood screw of this size",
			forms: ["<size:fastener>"],
			example: "screw #8 x 1 1/4",
		},
		{
			head: "brad",
			help: "A brad of this size",
			forms: ["<size:fastener>"],
			example: "brad 18ga x 7/8",
		},
		{
			head: "pin",
			help: "A headless pin of this size",
			forms: ["<size:fastener>"],
			example: "pin 23ga x 1 1/8",
		},
		{
			head: "nail",
			help: "A nail of this size: diameter or gauge x length",
			forms: ["<size:fastener>"],
			example: "nail 15ga x 2",
		},
		{
			head: "dowel",
			help: "A dowel of this size: diameter x length",
			forms: ["<size:fastener>"],
			example: "dowel 5/16 x 1 3/8",
		},
		{
			head: "biscuit",
			help: "A biscuit of this number",
			forms: ["<size:size-number>"],
			example: "biscuit #10",
		},
		{
			head: "pack",
			help: "How many come in a box",
			forms: ["<pack:count>"],
			example: "pack 200",
		},
		price("pack", "price 14 per pack"),
	],
	coating: [
		{
			head: "kind",
			help: "What it is for",
			forms: ["<kind:finish|ground|glue|filler>"],
			defaults: "finish",
			example: "kind glue",
		},
		{
			head: "covers",
			help: "The area that one unit of volume covers in one coat",
			forms: [
				"<area:number> <area-unit:ft2|m2> per <volume-unit:gallon|quart|litre>",
			],
			example: "covers 400 ft2 per gallon",
		},
		{
			head: "tin",
			help: "The volume of one tin or bottle",
			forms: [
				"<volume:number> <volume-unit:gallon|quart|pint|litre|millilitre>",
			],
			example: "tin 1 quart",
		},
		price("tin", "price 24 per tin"),
	],
} as const satisfies Record<string, readonly Construct[]>;
