// A fastener in a thin edge that a small wander brings out of the face.

import type { FastenerRun, Fix, Part, Piece } from "../../../model/types.ts";
import { defineCheck, type Found } from "../../check.ts";
import { drivenIn, fastenerLines, type WoodAlong } from "../../driven.ts";
import {
	isDriven,
	lengthFix,
	pilotFix,
	usualAtMost,
} from "../../fastener-words.ts";
import { drivenInEdge, fromSides, thicknessAxis } from "../../grain-axes.ts";
import { nameOf, show } from "../../words.ts";

export const edgeBlowout = defineCheck({
	id: "edge-blowout",
	group: "fasteners",
	severity: "warning",
	summary:
		"A fastener in a thin edge has so little wood beside it that it comes out",
	explanation: `
A brad follows the grain and a screw the hole, and neither stays quite in line. In an edge, the wood on the thinner side must
hold half the fastener, what it is set out wrong, what it wanders on its way, and some cover:

    beside it >= D / 2 + set-out + depth x tan(wander) + cover

The set-out is the shop's own (\`mark within\`); the depth is the length in that part. A pilot hole keeps it in line. A \`tack\`
blows out as anything else does.`,
	source:
		"geometry; how far a fastener wanders and the cover it needs are common practice, no source",
	figures: {
		wander: {
			value: 3,
			unit: "deg",
			help: "How far it is driven out of line",
			source: "common practice, no source",
		},
		"pilot-wander": {
			value: 1,
			unit: "deg",
			help: "The same, pre-drilled",
			source: "common practice, no source",
		},
		cover: {
			value: 1,
			unit: "mm",
			help: "Least wood over a brad, pin or nail",
			source: "common practice, no source",
		},
		"screw-cover": {
			value: 0.5,
			unit: "diameters",
			help: "Least wood over a screw, which presses it apart",
			source:
				"common practice, no source: #8 or less in an 18 mm edge, half as thick pre-drilled",
		},
	},
	fires: `
piece tray {
  box case {
    outside 20 x 4 x 12
    panels left, right, bottom of ply.three-quarter
    caps bottom
    back of ply.quarter inset 0
  }
  join case.left to case.back { glue; brad 18ga x 1 1/2 every 2 }
}`,
	silent: `
piece tray {
  box case {
    outside 20 x 4 x 12
    panels left, right, bottom of ply.three-quarter
    caps bottom
    back of ply.half inset 0
  }
  join case.left to case.back { glue; brad 18ga x 1 1/2 every 2 }
}`,
	find: (piece, { design, figures }) =>
		fastenerLines(piece).flatMap((line) => {
			let worst: Thin | undefined;
			for (const run of line) {
				if (!isDriven(run)) continue;
				for (const { way, wood } of drivenIn(run)) {
					for (const part of [run.into, run.through]) {
						if (!drivenInEdge(run, part)) continue;
						const axis = thicknessAxis(part);
						const beside = fromSides(part, way.start[axis], axis);
						if (beside <= grain) continue;
						const depth =
							part === run.into
								? Math.min(way.tip, wood.to) - wood.from
								: Math.min(way.tip, wood.passed);
						if (depth <= grain) continue;
						const wanted = wantedBeside(run, depth, piece, figures);
						if (beside >= wanted - grain) continue;
						const lacks = wanted - beside;
						if (!worst || lacks > worst.lacks + grain)
							worst = { run, part, wood, beside, wanted, lacks };
					}
				}
			}
			return worst ? [tell(piece, design.uri, worst, figures)] : [];
		}),
});

/** Floating dust, mm. */
const grain = 1e-6;

interface Limits {
	readonly wander: number;
	readonly "pilot-wander": number;
	readonly cover: number;
	readonly "screw-cover": number;
}

interface Thin {
	readonly run: FastenerRun;
	readonly part: Part;
	readonly wood: WoodAlong;
	readonly beside: number;
	readonly wanted: number;
	readonly lacks: number;
}

/** What must be beside the axis of a fastener that is so deep in an edge, mm. */
function wantedBeside(
	run: FastenerRun,
	depth: number,
	piece: Piece,
	figures: Limits,
): number {
	return fixedBeside(run, piece, figures) + depth * tangent(run, figures);
}

function fixedBeside(run: FastenerRun, piece: Piece, figures: Limits): number {
	const { diameter, kind } = run.size;
	const cover =
		kind === "screw" ? figures["screw-cover"] * diameter : figures.cover;
	return diameter / 2 + piece.shop.mark + cover;
}

function tangent(run: FastenerRun, figures: Limits): number {
	const degrees =
		run.pilot === undefined ? figures.wander : figures["pilot-wander"];
	return Math.tan((degrees * Math.PI) / 180);
}

function tell(piece: Piece, uri: string, thin: Thin, figures: Limits): Found {
	const { run, part, beside, wanted } = thin;
	const { display } = piece;
	const { mend, fixes } = mendOf(piece, uri, thin, figures);
	return {
		origin: run.origin,
		message: `The ${run.size.kind} ${run.size.label} has ${show(display, toTenth(beside))} of wood beside it in the edge of ${nameOf(part)}, and could come out of the face: it wants ${show(display, toTenth(wanted))}; ${mend}`,
		related: [
			{
				origin: part.declaration.origin,
				message: `${nameOf(part)} is declared here`,
			},
		],
		fixes,
	};
}

function mendOf(
	piece: Piece,
	uri: string,
	{ run, part, wood, beside, wanted }: Thin,
	figures: Limits,
): { readonly mend: string; readonly fixes: readonly Fix[] } {
	const { display } = piece;
	const { kind, diameter } = run.size;
	const predrilled = { ...run, pilot: 0 };
	const depth =
		(wanted - fixedBeside(run, piece, figures)) / tangent(run, figures);
	if (
		run.pilot === undefined &&
		(kind === "screw" || kind === "nail") &&
		wantedBeside(predrilled, depth, piece, figures) <= beside
	)
		return { mend: "pre-drill it", fixes: pilotFix(run, uri) };
	const most =
		(beside - fixedBeside(run, piece, figures)) / tangent(run, figures);
	const sunk = run.countersink ?? 0;
	const usual =
		part === run.into && most > 0
			? usualAtMost(kind, display, wood.passed - sunk + most)
			: undefined;
	const bite = usual ? usual.toNumber() + sunk - wood.passed : 0;
	const holds = kind === "screw" ? 2.5 * diameter : 6 * diameter;
	if (usual && bite >= holds)
		return {
			mend: `one ${show(display, usual)} long would stay inside`,
			fixes: lengthFix(run, display, uri, usual),
		};
	const axis = thicknessAxis(part);
	const { min, max } = part.solid.box;
	if ((max[axis] - min[axis]) / 2 >= wanted)
		return { mend: "drive it into the middle of the edge", fixes: [] };
	return { mend: "use a thinner one, thicker wood, or glue alone", fixes: [] };
}

/** To a tenth of a millimetre. */
function toTenth(mm: number): number {
	return Math.round(mm * 10) / 10;
}
