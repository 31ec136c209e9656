// A shelf, top, bottom, seat or rail that sags more under its load than the eye forgives.

import { creepFactors } from "../../../mechanics/creep.ts";
import type { Design, Fix, Part, Piece, Stock } from "../../../model/types.ts";
import { defineCheck, type Found } from "../../check.ts";
import { mendsOf, mendText } from "../../sagging/mends.ts";
import {
	bentAs,
	designOf,
	loadsOn,
	type SagFigures,
	type Sagging,
	sagOf,
	standingOn,
} from "../../sagging/sag.ts";
import { stuffOf } from "../../sagging/stiffness.ts";
import {
	perLengthText,
	sagText,
	spanOf,
	standingText,
} from "../../sagging/words.ts";
import { nameOf, show, showFine } from "../../words.ts";

export const sag = defineCheck({
	id: "sag",
	group: "strength",
	severity: "warning",
	summary: "A shelf, top, seat or rail sags more than its limit under its load",
	explanation: `
Each part with a \`load\` on it is bent as a beam on what holds it up, under the load and its own weight:

    one span, ends free to turn:  sag = 5 w L^4 / (384 E I),  I = b h^3 / 12

and over several supports (a bottom over dividers and legs, a top that overhangs its legs) as one beam over all of them. Sag at
first is held against span/600 (0.02 in per ft), sag over the years, more by the creep of the wood, against span/384 (1/32 in per
ft, where the eye begins to notice). An overhang counts as half of a span twice as long.

What is assumed:

- a load \`per ft\` or \`per m\` stands all along the part; one without is spread over all of it (a single weight in the middle of
  a span bends it 8/5 as much); it stays there for years, and half of it stands on each half of the depth;
- a shelf in dadoes is free to turn at its ends like one on pins: glue that holds it straighter is not counted on;
- the span is clear between what holds the ends, and from middle to middle of supports between them, which do not give;
- dividers hold top and bottom together where the case has a back; without one they are not counted;
- strips glued to an edge, and rails glued under the part, bend as one section with it (each by its own wood, about a common
  neutral axis); a rail that is not glued to it bends beside it;
- stiffness is the mean of the wood or sort of sheet, along or across its grain; what is across, and has no figure in print, is a
  share of the stiffness along;
- shear, and holes and dadoes in the part, are left out.

Where a piece has shelves and no load at all, it says so once, as a hint, if books would make one of them sag too much. The
check is about looks, not about strength.`,
	source:
		"beam formulas: Wood Handbook FPL-GTR-190, Eq. 9-2; stiffness: its Table 5-3b for woods, the sheet's standard for panels; limits: a woodworking magazine's span tables (0.02 in per ft at first, 1/32 in per ft to the eye); creep as given below",
	figures: {
		first: {
			value: 600,
			unit: "ratio",
			help: "Span over the sag allowed at first",
			source: "0.02 in per ft of span, a woodworking magazine's shelf tables",
		},
		years: {
			value: 384,
			unit: "ratio",
			help: "Span over the sag allowed over the years",
			source: "1/32 in per ft of span: where the eye notices it, the same",
		},
		creepSolid: {
			value: creepFactors.solid.factor,
			unit: "times",
			help: "Sag over the years against sag at first, solid wood",
			source: creepFactors.solid.source,
		},
		creepPlywood: {
			value: creepFactors.plywood.factor,
			unit: "times",
			help: "Sag over the years against sag at first, plywood",
			source: creepFactors.plywood.source,
		},
		creepBoard: {
			value: creepFactors.board.factor,
			unit: "times",
			help: "Sag over the years against sag at first, MDF and particleboard",
			source: creepFactors.board.source,
		},
		acrossWood: {
			value: 0.08,
			unit: "ratio",
			help: "Stiffness of solid wood across its grain, as a share of that along it",
			source:
				"Wood Handbook Table 5-1, E_T/E_L of hardwoods about 0.04 to 0.1, from memory",
		},
		acrossPlywood: {
			value: 0.5,
			unit: "ratio",
			help: "Stiffness of plywood across its face grain, as a share of that along it, where no figure is in print",
			source: "common practice, no source: seven plies and more",
		},
		books: {
			value: 37.2,
			unit: "kg/m",
			help: "What is asked about where nothing is said to stand on the shelves",
			source: "25 lb per ft, large books, from memory (20 is average)",
		},
	},
	fires: `
piece shelves {
  box case {
    outside 37 1/2 x 30 x 11
    panels top, bottom, left, right of ply.three-quarter
    back of ply.quarter rabbet 3/8
    shelf one of ply.three-quarter 14 above bottom on pins clearance 1/16
  }
  load 25 lb per ft on case.one
}`,
	silent: `
piece shelves {
  box case {
    outside 37 1/2 x 30 x 11
    panels top, bottom, left, right of ply.three-quarter
    back of ply.quarter rabbet 3/8
    divider middle of ply.three-quarter centred dado 1/4
    shelf one of ply.three-quarter 14 above bottom bay 1 on pins clearance 1/16
  }
  load 25 lb per ft on case.one
}`,
	find: (piece, context) => {
		const loaded = new Set<Part>();
		for (const { part } of piece.loads) if (part) loaded.add(part);
		return [
			...[...loaded].flatMap((part) => sags(piece, part, context)),
			...unknownStuff(piece, loaded, context.figures),
			...nothingSaid(piece, context),
		];
	},
});

interface Context {
	readonly design: Design;
	readonly figures: SagFigures;
}

function sags(
	piece: Piece,
	part: Part,
	{ design, figures }: Context,
): readonly Found[] {
	const beam = designOf(piece, part, standingOn(piece, part), figures);
	const sagging = beam && bentAs(beam, figures);
	const [load] = loadsOn(piece, part);
	if (!beam || !sagging || !load || sagging.used <= 1) return [];
	const mends = mendsOf(design, piece, beam, sagging, figures);
	return [
		{
			origin: load.origin,
			message: `${nameOf(part)} ${sagWords(piece, part, sagging)}; ${mendText(piece, beam, mends)}`,
			related: [
				{
					origin: {
						uri: part.declaration.origin.uri,
						span: part.declaration.nameSpan,
					},
					message: `${nameOf(part)} is made here, ${show(piece.display, part.thick)} thick`,
				},
			],
			fixes: thickerStock(design, part, load.origin.uri, mends.thick?.stock),
		},
	];
}

/** Takes the thicker material where the part's own line names the thin one. */
function thickerStock(
	design: Design,
	part: Part,
	uri: string,
	stock: Stock | undefined,
): readonly Fix[] {
	const { declaration } = part;
	// Panels share a line; a shelf and a board have their own.
	if (!stock || (part.role !== "shelf" && part.role !== "board")) return [];
	const whole = declaration.origin;
	const named = design.references.filter(
		({ origin, declaration: meant }) =>
			meant === part.stock.declaration &&
			origin.uri === whole.uri &&
			origin.span.start >= whole.span.start &&
			origin.span.end <= whole.span.end,
	);
	const [only, ...others] = named;
	if (!only || others.length > 0 || only.origin.uri !== uri) return [];
	const text = stock.id.slice(stock.id.lastIndexOf(".") + 1);
	return [
		{
			title: `Make ${nameOf(part)} of \`${stock.id}\``,
			edits: [{ span: only.origin.span, text }],
		},
	];
}

/** "sags 0.071 in at first (span/506) under 25 lb per ft ...": how far, under what, against what. */
function sagWords(piece: Piece, part: Part, sagging: Sagging): string {
	const { display } = piece;
	const { worst, creep } = sagging;
	const span = spanOf(worst);
	const where = worst.overhang
		? `where it runs ${show(display, worst.to - worst.from)} past its support`
		: `over a span of ${show(display, worst.to - worst.from)}`;
	const limits = [
		...(worst.sag > worst.limit
			? [`${showFine(display, worst.limit)} at first`]
			: []),
		...(worst.sag * creep > worst.limitYears
			? [`${showFine(display, worst.limitYears)} over the years`]
			: []),
	];
	return `sags ${sagText(display, worst.sag, span)} ${where} under ${standingText(piece, part, sagging.mass)} and its own weight, and ${showFine(display, worst.sag * creep)} over the years: more than ${limits.join(" and ")}`;
}

/** Asked for once: a species, without which nothing can be worked out. */
function unknownStuff(
	piece: Piece,
	loaded: ReadonlySet<Part>,
	figures: SagFigures,
): readonly Found[] {
	const across = { wood: figures.acrossWood, plywood: figures.acrossPlywood };
	for (const part of loaded) {
		const [load] = loadsOn(piece, part);
		if (!load || stuffOf(part, 0, across)) continue;
		return [
			{
				severity: "hint",
				origin: load.origin,
				message: `Nothing says how stiff ${nameOf(part)} is: a \`species\` that the tables know, or a \`stiffness\` line, at \`${part.stock.id}\`, lets its sag be worked out`,
			},
		];
	}
	return [];
}

/** Asked for once: what stands on the shelves, where books would be too much for one. */
function nothingSaid(piece: Piece, { figures }: Context): readonly Found[] {
	if (piece.kind !== "piece" || piece.loads.length > 0) return [];
	let worst: Sagging | undefined;
	for (const shelf of piece.boxes.flatMap(({ shelves }) => shelves)) {
		const sagging = sagOf(
			piece,
			shelf,
			[{ mass: figures.books, perLength: true }],
			figures,
		);
		if (sagging && sagging.used > (worst?.used ?? 1)) worst = sagging;
	}
	if (!worst) return [];
	const { display } = piece;
	const { part, creep } = worst;
	const books = perLengthText(display, figures.books);
	const { uri, span } =
		piece.declaration.origin.uri === part.declaration.origin.uri
			? { uri: part.declaration.origin.uri, span: part.declaration.nameSpan }
			: { uri: piece.declaration.origin.uri, span: piece.declaration.nameSpan };
	return [
		{
			severity: "hint",
			origin: { uri, span },
			message: `Nothing says what stands on the shelves of \`${piece.name}\`: books (${books}) would make ${nameOf(part)} sag ${showFine(display, worst.worst.sag)}, and ${showFine(display, worst.worst.sag * creep)} over the years; say what it will be with a line such as \`load ${books} on ${part.path}\``,
		},
	];
}
