/** Rows of the table: what stands in a file, a piece and a component. */
import type { Construct } from "./construct.ts";
import { centring, join, placing } from "./joinery.ts";

const unit: Construct = {
	head: "unit",
	help: "The unit of bare numbers, and of what is shown",
	forms: ["<unit:in|mm>"],
	defaults: "in",
	example: "unit mm",
};
const precision: Construct = {
	head: "precision",
	help: "What sizes are rounded to when they are shown and cut",
	forms: ["<precision:length>"],
	defaults: "1/32 in, or 0.5 mm",
	example: "precision 1/32",
};
const given: Construct = {
	head: "given",
	help: "A size that the maker or a follower may set, with the range it works in",
	forms: ["<name:new-name> = <value:value> [from <low:value> to <high:value>]"],
	repeats: true,
	declares: "size",
	example: "given width = 54 from 40 to 66",
};
const mark: Construct = {
	head: "mark",
	help: "A size worked out from others, by a name of its own; one face less another is the length from the second to the first",
	forms: ["<name:new-name> = <value:value>"],
	repeats: true,
	declares: "size",
	example: "mark bay = (width - 4 * ply.three-quarter.thick) / 3",
};
const must: Construct = {
	head: "must",
	help: "A condition of the maker's own, checked like any rule",
	forms: ["<condition:condition> [<reason:text>]"],
	repeats: true,
	example: 'must depth <= 17 "the radiator pipe is 17 from the wall"',
};

const block = (
	head: string,
	declares: Construct["declares"],
	context: Construct["block"],
	help: string,
	example: string,
	forms: readonly string[] = ["<name:new-name>"],
): Construct =>
	({
		head,
		help,
		forms,
		block: context,
		repeats: true,
		declares,
		example,
	}) as Construct;

const things: readonly Construct[] = [
	given,
	mark,
	block(
		"box",
		"box",
		"box",
		"A case of four panels, a back, dividers and shelves, from an outside or inside size",
		"box case { outside 54 x 14 x 16; panels top, bottom, left, right of ply.three-quarter }",
	),
	block(
		"part",
		"part",
		"part",
		"One board or panel in its place",
		"part seat { of oak.six-quarter; size 60 x 14 }",
	),
	block(
		"leg",
		"leg",
		"leg",
		"A leg, of one board or glued up from layers; `handed` makes a left and a right",
		"leg front-left, front-right handed { against outside case.left }",
		["<names:new-names> [handed]"],
	),
	block(
		"trim",
		"trim",
		"trim",
		"Solid edging on panel edges",
		"trim lip { on case.front.edges; of oak.four-quarter; thick 3/8 }",
	),
	block(
		"veneer",
		"veneer",
		"veneer",
		"Veneer on the faces of panels",
		"veneer skin { on case.top; of skins.oak }",
	),
	block(
		"mount",
		"mount",
		"mount",
		"What hangs the piece on a wall: a bevelled cleat pair, a rail, or brackets",
		"mount hook { on rack.back; of ply.eighteen; height 70; down 30 from rack.top }",
	),
	join,
	block(
		"make",
		"group",
		"make",
		"A thing made from a component",
		"make plinth from base { set width = case.width }",
		["<name:new-name> from <component:ref>"],
	),
	{
		head: "fit",
		help: "Parts that are cut only when the assembly of others has been measured",
		forms: ["<parts:refs> after <after:refs>"],
		repeats: true,
		example: "fit stretcher after front-left, front-right",
	},
	{
		head: "match",
		help: "Parts that are sawn one after another from one strip, so that the figure runs on from one into the next: in this order along the grain, or side by side across it",
		forms: ["<parts:refs> [<way:along|across>]"],
		repeats: true,
		defaults: "along",
		example: "match case.left, case.top, case.right",
	},
	block(
		"finish",
		"finish",
		"finish",
		"Coats on faces",
		"finish clear { faces outside; coats 4 of hard-oil; sand 320 between }",
	),
	must,
	block(
		"step",
		"step",
		"step",
		"A step that the maker wants in the build",
		'step dry-fit { do "clamp up without glue"; with case.left; before middle }',
	),
	block(
		"aid",
		"aid",
		"aid",
		"A spacer, shim, pattern, stop or caul made from offcuts",
		"aid gauge { kind spacer; size 6 x 3; of ply.half }",
	),
];

const use: Construct = {
	head: "use",
	help: "Takes materials and components from a file beside",
	forms: ["<names:new-names> from <path:text>"],
	repeats: true,
	declares: "import",
	example: 'use oak, ply from "./stock.rod"',
};

export const pieceContexts = {
	file: [
		use,
		unit,
		precision,
		{
			head: "currency",
			help: "The currency of the prices in this file",
			forms: ["<currency:text>"],
			example: 'currency "EUR"',
		},
		block(
			"sheet",
			"material",
			"sheet",
			"Sheet goods: plywood, fibreboard, particle board",
			'sheet ply { species "birch plywood"; size 96 x 48 }',
		),
		block(
			"board",
			"material",
			"board",
			"Solid wood by the board",
			'board oak { species "white oak" }',
		),
		block(
			"veneer",
			"material",
			"veneer-stock",
			"Veneer by the sheet",
			"veneer skins { variant oak { thick 1/42; size 96 x 24 } }",
		),
		block(
			"fastener",
			"material",
			"fastener",
			"Screws, brads, dowels and biscuits by the box",
			"fastener fixings { variant eight { screw #8 x 1 1/4; pack 100 } }",
		),
		block(
			"coating",
			"material",
			"coating",
			"Finish, ground, glue or filler by volume",
			"coating hard-oil { covers 400 ft2 per gallon }",
		),
		block(
			"component",
			"component",
			"component",
			"A group of parts with givens of its own, made by name in any piece",
			"component base { given width = 30 }",
		),
		block(
			"piece",
			"piece",
			"piece",
			"One piece of furniture",
			"piece record-bench { unit in }",
		),
	],
	piece: [
		{
			head: "edition",
			help: "The number of this edition, and what builders of an earlier one recut",
			forms: ["<number:count> [<note:text>]"],
			repeats: true,
			example: 'edition 2 "depth 15 3/4; recut top and bottom"',
		},
		unit,
		precision,
		...things,
		{
			head: "spare",
			help: "How much more than is counted is bought of fasteners, glue and coatings",
			forms: ["<share:percent>"],
			defaults: "nothing",
			example: "spare 10 %",
		},
		{
			head: "load",
			help: "What stands on it, where",
			forms: ["<amount:mass> [per <unit:ft|m>] on <where:ref>"],
			repeats: true,
			example: "load 35 lb per ft on case.bottom",
		},
		{
			head: "room",
			help: "Where the piece lives",
			forms: ["block"],
			block: "room",
			example: "room { humidity 25 % to 55 %; temperature 70 F }",
		},
		{
			head: "shop",
			help: "Where it is made, and how true the shop cuts",
			forms: ["block"],
			block: "shop",
			example: "shop { temperature 62 F; saw kerf 3/32; crosscut within 1/64 }",
		},
		{
			head: "measured",
			help: "A reading from the shop: replaces that one size, and everything that follows from it",
			forms: ["<what:ref> <reading:length> [<note:text>]"],
			repeats: true,
			defaults:
				"where something is measured, parts may miss each other by what `mark within` of the shop says",
			example: "measured ply.three-quarter.thick 0.71",
		},
		{
			head: "cut",
			help: "Parts that are cut already: length x width, and the stage that they are at",
			forms: [
				"<parts:refs> <size:sizes2> [stage <stage:rough|heavy|trimmed|final>]",
			],
			repeats: true,
			example: "cut case.left, case.right 14 5/8 x 15 3/4",
		},
	],
	component: [unit, ...things],
	make: [
		{
			head: "set",
			help: "Sets one of the component's givens",
			forms: ["<name:new-name> = <value:value>"],
			repeats: true,
			example: "set width = case.width",
		},
		...placing,
		centring,
	],
	finish: [
		{
			head: "faces",
			help: "Which faces are finished",
			forms: ["<faces:outside|inside|all>"],
			defaults: "all",
			example: "faces outside",
		},
		{
			head: "on",
			help: "Which things are finished",
			forms: ["<things:refs>"],
			defaults: "the whole piece",
			example: "on seat, front-left",
		},
		{
			head: "coats",
			help: "How many coats of what",
			forms: ["<coats:count> of <coating:ref>"],
			repeats: true,
			example: "coats 4 of hard-oil",
		},
		{
			head: "sand",
			help: "Grit, and when",
			forms: ["<grit:count> <when:before|between|after>"],
			repeats: true,
			example: "sand 320 between",
		},
	],
	room: [
		{
			head: "humidity",
			help: "The driest and the dampest that the air gets over the year",
			forms: ["<low:percent> to <high:percent>"],
			example: "humidity 25 % to 55 %",
		},
		{
			head: "temperature",
			help: "Its usual temperature",
			forms: ["<temperature:temperature>"],
			example: "temperature 70 F",
		},
	],
	shop: [
		{
			head: "temperature",
			help: "Its temperature when things are glued",
			forms: ["<temperature:temperature>"],
			example: "temperature 62 F",
		},
		{
			head: "humidity",
			help: "Its humidity when things are made",
			forms: ["<humidity:percent>"],
			example: "humidity 45 %",
		},
		{
			head: "saw",
			help: "The width that the saw takes",
			forms: ["kerf <kerf:length>"],
			defaults: "1/8 in, common practice",
			example: "saw kerf 3/32",
		},
		{
			head: "least-strip",
			help: "The narrowest strip that can be held while it is sawn off",
			forms: ["<width:length>"],
			defaults: "any",
			example: "least-strip 3/4",
		},
		{
			head: "first-cut",
			help: "The longest first cut through a whole sheet that the shop can handle: the length of the track, or what goes through the door",
			forms: ["<length:length>"],
			defaults: "any",
			example: "first-cut 50",
		},
		{
			head: "stages",
			help: "How often at the most the sheets are cut the other way: 1 for strips, 2 for strips that are cut to length, 3 for trimming these",
			forms: ["<stages:count>"],
			defaults: "any number",
			example: "stages 3",
		},
		...(
			[
				["crosscut", "length cut to a stop", "1/64 in"],
				["rip", "width cut to the fence", "1/64 in"],
				["router", "width and depth of a dado, groove or rabbet", "0.1 mm"],
				["mark", "a size set out by tape", "1/32 in"],
				["drill", "the place of a hole", "0.5 mm"],
			] as const
		).map(
			([head, what, usual]): Construct => ({
				head,
				help: `How true the shop holds a ${what}, either way`,
				forms: ["within <tolerance:length>"],
				defaults: `${usual}, common practice`,
				example: `${head} within 1/64`,
			}),
		),
	],
	step: [
		{
			head: "do",
			help: "What is done, in words",
			forms: ["<what:text>"],
			required: true,
			example: 'do "clamp up without glue"',
		},
		{
			head: "with",
			help: "The parts that it is done to",
			forms: ["<parts:refs>"],
			example: "with case.left, case.right",
		},
		{
			head: "after",
			help: "What must be done before it: parts or steps",
			forms: ["<things:refs>"],
			example: "after dry-fit",
		},
		{
			head: "before",
			help: "What must wait for it: parts or steps",
			forms: ["<things:refs>"],
			example: "before skin",
		},
		{
			head: "wait",
			help: "How long it rests after",
			forms: ["<time:number> <unit:minutes|hours|days>"],
			example: "wait 12 hours",
		},
	],
	aid: [
		{
			head: "kind",
			help: "What it is",
			forms: ["<kind:spacer|shim|pattern|stop|caul>"],
			required: true,
			example: "kind spacer",
		},
		{
			head: "size",
			help: "Length x width, and thickness if it matters",
			forms: ["<size:sizes2-3>"],
			required: true,
			example: "size 6 x 3",
		},
		{
			head: "of",
			help: "What it is cut from",
			forms: ["<material:material>"],
			example: "of ply.half",
		},
		{
			head: "for",
			help: "What it serves",
			forms: ["<parts:refs>"],
			example: "for case.middle",
		},
	],
} as const satisfies Record<string, readonly Construct[]>;
