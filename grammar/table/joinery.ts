/** Rows of the table: how parts meet and what holds them. */
import type { Construct } from "./construct.ts";

const driven = (
	head: "screw" | "brad" | "pin" | "nail",
	example: string,
): Construct => ({
	head,
	help: `A ${head} by size; counted as holding`,
	forms: ["<size:fastener> [every <every:length>]"],
	block: "fastener-place",
	blockOptional: true,
	repeats: true,
	example,
});

const fastenings: readonly Construct[] = [
	{
		head: "glue",
		help: "Glued, with the glue named if the stock file has it",
		forms: ["[with <glue:ref>]"],
		example: "glue",
	},
	driven("screw", "screw #10 x 1 1/4 every 6"),
	driven("brad", "brad 18ga x 1 1/4 every 6"),
	driven("pin", "pin 23ga x 1 1/8 every 8"),
	driven("nail", "nail 15ga x 2 every 8"),
	{
		head: "dowel",
		help: "Dowels, half in each part: diameter x length",
		forms: ["<size:fastener> [every <every:length>]"],
		block: "fastener-place",
		blockOptional: true,
		repeats: true,
		example: "dowel 5/16 x 1 3/8 every 5",
	},
	{
		head: "biscuit",
		help: "Biscuits by number, half in each part; one at a place, or spread",
		forms: ["<size:size-number> [every <every:length>] [<at:positions>]"],
		block: "fastener-place",
		blockOptional: true,
		repeats: true,
		example: "biscuit #10 1 3/4 down from inner.top",
	},
	{
		head: "tack",
		help: "Holds while the glue sets; never counted as strength",
		forms: [
			"<kind:brad|pin|nail|screw> <size:fastener> [every <every:length>]",
		],
		block: "fastener-place",
		blockOptional: true,
		repeats: true,
		example: "tack brad 18ga x 7/8 every 7",
	},
	{
		head: "fill",
		help: "The heads are set and filled",
		forms: ["heads"],
		example: "fill heads",
	},
];

export const joineryContexts = {
	fasten: fastenings,
	join: [
		{
			head: "butt",
			help: "Face to edge or end, nothing cut in",
			forms: ["block", "[clearance <clearance:length>]"],
			defaults: "butt, if no other kind is named",
			example: "butt",
		},
		{
			head: "dado",
			help: "The second parts are housed across: depth of the housing; its width follows the member unless it is given",
			forms: ["<depth:length> [wide <wide:length>]"],
			aliases: ["housing"],
			example: "dado 1/4",
		},
		{
			head: "groove",
			help: "As a dado, but along the grain; the clearance is left at its bottom, for a board that must swell",
			forms: [
				"<depth:length> [wide <wide:length>] [clearance <clearance:length>]",
			],
			example: "groove 1/4",
		},
		{
			head: "rabbet",
			help: "A step cut in the edge: how far the member runs into it",
			forms: ["<depth:length> [wide <wide:length>]"],
			aliases: ["rebate"],
			example: "rabbet 3/8",
		},
		{
			head: "mitre",
			help: "Both cut at half the angle",
			forms: ["[<angle:angle>]"],
			aliases: ["miter"],
			example: "mitre",
		},
		{
			head: "tenon",
			help: "The first part's end enters the second: length x width x thickness of the tenon",
			forms: ["<size:sizes3>"],
			example: "tenon 1 x 2 x 3/8",
		},
		{
			head: "gap",
			help: "The gap that this joint may have; replaces the default range of its kind",
			forms: ["<low:length> to <high:length>"],
			example: "gap 0 to 0.008",
		},
		...fastenings,
	],
	"fastener-place": [
		{
			head: "from",
			help: "The side it is driven from",
			forms: ["<side:inside|outside|above|below|front|back>"],
			example: "from inside",
		},
		{
			head: "at",
			help: "Where along the joint: each with its datum",
			forms: ["<at:positions>"],
			repeats: true,
			example: "at 1 1/4, 3 3/4 up from case.bottom",
		},
		{
			head: "set-in",
			help: "How far from an edge",
			forms: ["<distance:length> from <edges:ref>"],
			repeats: true,
			example: "set-in 1 1/2 from outer.edges",
		},
		{
			head: "angled",
			help: "Driven at this angle from straight",
			forms: ["<angle:angle>"],
			example: "angled 15 deg",
		},
		{
			head: "pilot",
			help: "Pre-drilled, to this diameter if given",
			forms: ["[<diameter:length>]"],
			example: "pilot 7/64",
		},
		{
			head: "countersink",
			help: "The head is let in flush, or this deep",
			forms: ["[<depth:length>]"],
			example: "countersink",
		},
	],
} as const satisfies Record<string, readonly Construct[]>;

/** A join line, the same wherever it may stand. */
export const join: Construct = {
	head: "join",
	help: "How parts meet: each of the first with each of the second, or all that touch when there is no `to`",
	forms: ["<parts:refs> [to <others:refs>]"],
	block: "join",
	repeats: true,
	example: "join top, bottom to left, right { dado 1/4; glue }",
};

/** Lines that put a thing in its place, each face measured from a datum. */
export const placing: readonly Construct[] = (
	["left", "right", "bottom", "top", "front", "back"] as const
).map((side) => ({
	head: side,
	help: `Where its ${side} is`,
	forms: ["at <at:position>"],
	example:
		side === "left"
			? "left at 2 right from seat.left"
			: side === "right"
				? "right at 2 left from seat.right"
				: side === "bottom"
					? "bottom at 4 up from floor"
					: side === "top"
						? "top at 21 up from floor"
						: side === "front"
							? "front at 1 back from case.front"
							: "back at case.back",
}));

export const centring: Construct = {
	head: "centred",
	help: "Its middle on the middle of another thing, across (left to right), deep (back to front) or up",
	forms: ["<way:across|deep|up> on <on:ref>"],
	aliases: ["centered"],
	repeats: true,
	example: "centred across on seat",
};
