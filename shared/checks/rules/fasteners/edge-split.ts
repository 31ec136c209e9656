// A fastener so near an edge, an end or its neighbour that the wood splits.

import type { Axis } from "../../../geometry/solid.ts";
import type { FastenerRun, Part, Piece } from "../../../model/types.ts";
import { defineCheck, type Found } from "../../check.ts";
import { fastenerLines } from "../../driven.ts";
import { axisDriven } from "../../envelopes.ts";
import { isDriven, pilotFix } from "../../fastener-words.ts";
import {
	drivenInEdge,
	fromSides,
	lengthAxis,
	thicknessAxis,
} from "../../grain-axes.ts";
import { nameOf, show } from "../../words.ts";

export const edgeSplit = defineCheck({
	id: "edge-split",
	group: "fasteners",
	severity: "warning",
	summary: "A fastener is so near an edge or end that the wood splits",
	explanation: `
A fastener wedges the fibres apart; near an end, or in a row along the grain, the split runs out. What is left beside it is held
against its diameter:

    distance >= figure x diameter

In solid wood the distance from an end counts along the grain, from an edge across it, and from the next fastener along the
grain. A sheet has plies across each other and is told only nearer its edges; a screw in the edge of a sheet must stay
away from the corner. A pilot hole takes most of the wedging away. A \`tack\` splits as anything else does. The cover beside a fastener in a thin edge
is \`edge-blowout\`.`,
	source:
		"NDS Commentary C12.1.5.7 for nails and screws in a structure (edge 2.5 D, unloaded end 10 D, from memory); pre-drilled furniture and gauge brads bear less, common practice, no source",
	figures: {
		end: {
			value: 10,
			unit: "diameters",
			help: "Least distance of a nail or screw from an end of solid wood",
			source: "NDS Commentary C12.1.5.7, unloaded end, from memory",
		},
		"brad-end": {
			value: 5,
			unit: "diameters",
			help: "Least distance of a brad or pin from an end of solid wood",
			source: "common practice, no source",
		},
		"pilot-end": {
			value: 2,
			unit: "diameters",
			help: "Least distance from an end of solid wood, pre-drilled",
			source:
				"common practice, no source: a #8 screw in the middle of a 3/4 in neighbour",
		},
		edge: {
			value: 2.5,
			unit: "diameters",
			help: "Least distance from an edge of solid wood",
			source: "NDS Commentary C12.1.5.7, from memory",
		},
		"pilot-edge": {
			value: 1.25,
			unit: "diameters",
			help: "Least distance from an edge, pre-drilled",
			source: "common practice, no source: a #8 screw over half-inch ply",
		},
		"sheet-edge": {
			value: 2,
			unit: "diameters",
			help: "Least distance from an edge of a sheet",
			source: "common practice, no source",
		},
		"sheet-corner": {
			value: 25,
			unit: "mm",
			help: "Least distance from the corner of a screw in the edge of a sheet",
			source: "common practice, no source: 25 to 30 mm",
		},
		"pilot-corner": {
			value: 12,
			unit: "mm",
			help: "The same, pre-drilled",
			source: "common practice, no source",
		},
		spacing: {
			value: 10,
			unit: "diameters",
			help: "Least distance to the next one along the grain",
			source:
				"common practice, no source: the NDS asks 15 D of a structure, from memory",
		},
		"pilot-spacing": {
			value: 4,
			unit: "diameters",
			help: "The same, pre-drilled",
			source:
				"common practice, no source: the NDS asks 10 D of a structure, from memory",
		},
	},
	fires: `
piece step {
  part board {
    of oak.four-quarter
    size 24 x 8
    bottom at 6 from floor
  }
  part foot {
    of oak.eight-quarter
    size 7 x 4
    lies deep facing up
    top at board.bottom
    left at board.left
  }
  join board to foot { screw #8 x 1 3/4 every 3 { from above; at 1/2 right from board.left } }
}`,
	silent: `
piece step {
  part board {
    of oak.four-quarter
    size 24 x 8
    bottom at 6 from floor
  }
  part foot {
    of oak.eight-quarter
    size 7 x 4
    lies deep facing up
    top at board.bottom
    left at board.left
  }
  join board to foot { screw #8 x 1 3/4 every 3 { from above; at 1/2 right from board.left; pilot } }
}`,
	find: (piece, { design, figures }) =>
		fastenerLines(piece).flatMap((line) => {
			let worst: Near | undefined;
			for (const run of line) {
				if (!isDriven(run)) continue;
				for (const part of [run.through, run.into])
					for (const near of nearest(run, part, figures))
						if (!worst || near.lacks > worst.lacks + grain) worst = near;
			}
			if (!worst) return [];
			const enough = line.every((run) =>
				[run.through, run.into].every(
					(part) => nearest({ ...run, pilot: 0 }, part, figures).length === 0,
				),
			);
			return [tell(piece, design.uri, worst, enough)];
		}),
});

/** Floating dust, mm. */
const grain = 1e-6;

type Limits = {
	readonly [Name in
		| "end"
		| "brad-end"
		| "pilot-end"
		| "edge"
		| "pilot-edge"
		| "sheet-edge"
		| "sheet-corner"
		| "pilot-corner"
		| "spacing"
		| "pilot-spacing"]: number;
};

interface Near {
	readonly run: FastenerRun;
	readonly part: Part;
	readonly what: "the end of" | "the edge of" | "the corner of" | "the next";
	readonly distance: number;
	readonly wanted: number;
	readonly lacks: number;
}

/** Where a fastener of the run is nearer than it should be, the worst of each sort. */
function nearest(
	run: FastenerRun,
	part: Part,
	figures: Limits,
): readonly Near[] {
	const found: Near[] = [];
	const along = lengthAxis(part);
	const inEdge = drivenInEdge(run, part);
	const [u, v] = acrossOf(axisDriven(run));
	for (const axis of [u, v]) {
		// The cover in a thin edge is a check of its own.
		if (axis === thicknessAxis(part)) continue;
		const { what, wanted } = limitOf(
			run,
			part,
			axis === along,
			inEdge,
			figures,
		);
		let distance = Infinity;
		for (const point of run.points) {
			const left = fromSides(part, point[axis], axis);
			// Beside the part: told as not reaching it.
			if (left > grain) distance = Math.min(distance, left);
		}
		if (distance < wanted - grain)
			found.push({
				run,
				part,
				what,
				distance,
				wanted,
				lacks: wanted - distance,
			});
	}
	if (part.stock.kind === "board" && axisDriven(run) !== along) {
		const other = u === along ? v : u;
		const wanted =
			(run.pilot === undefined ? figures.spacing : figures["pilot-spacing"]) *
			run.size.diameter;
		const distance = closest(run, along, other);
		if (distance < wanted - grain)
			found.push({
				run,
				part,
				what: "the next",
				distance,
				wanted,
				lacks: wanted - distance,
			});
	}
	return found;
}

/** The two axes at right angles to the one that it is driven along. */
function acrossOf(driven: Axis): readonly [Axis, Axis] {
	return driven === 0 ? [1, 2] : driven === 1 ? [0, 2] : [0, 1];
}

function limitOf(
	run: FastenerRun,
	part: Part,
	isEnd: boolean,
	inEdge: boolean,
	figures: Limits,
): Pick<Near, "what" | "wanted"> {
	const { diameter, kind } = run.size;
	const pilot = run.pilot !== undefined;
	if (part.stock.kind !== "board") {
		if (inEdge && kind === "screw")
			return {
				what: "the corner of",
				wanted: figures[pilot ? "pilot-corner" : "sheet-corner"],
			};
		const factor = pilot ? figures["pilot-edge"] : figures["sheet-edge"];
		return { what: "the edge of", wanted: factor * diameter };
	}
	if (!isEnd) {
		const factor = pilot ? figures["pilot-edge"] : figures.edge;
		return { what: "the edge of", wanted: factor * diameter };
	}
	const slender = kind === "brad" || kind === "pin";
	const factor = pilot
		? figures["pilot-end"]
		: slender
			? figures["brad-end"]
			: figures.end;
	return { what: "the end of", wanted: factor * diameter };
}

/** The shortest way along the grain between two of the run that stand in one line of it. */
function closest(run: FastenerRun, along: Axis, other: Axis): number {
	const points = run.points.toSorted(
		(a, b) => a[other] - b[other] || a[along] - b[along],
	);
	let nearest = Infinity;
	for (let i = 1; i < points.length; i++) {
		const one = points[i - 1];
		const next = points[i];
		if (!one || !next || next[other] - one[other] > run.size.diameter) continue;
		nearest = Math.min(nearest, Math.abs(next[along] - one[along]));
	}
	return nearest;
}

function tell(
	piece: Piece,
	uri: string,
	{ run, part, what, distance, wanted }: Near,
	pilotMends: boolean,
): Found {
	const { display } = piece;
	const { kind, label } = run.size;
	const by = show(display, toTenth(distance));
	const least = show(display, Math.ceil(wanted * 10 - grain) / 10);
	const pilot =
		pilotMends &&
		run.pilot === undefined &&
		(kind === "screw" || kind === "nail");
	const state =
		what === "the next"
			? `The ${kind} ${label} stands ${by} from ${what} along the grain of ${nameOf(part)}, which splits`
			: `The ${kind} ${label} is ${by} from ${what} ${nameOf(part)}, which splits there`;
	return {
		origin: run.origin,
		message: `${state}: keep ${least}${pilot ? ", or pre-drill it" : ""}`,
		related: [
			{
				origin: part.declaration.origin,
				message: `${nameOf(part)} is declared here`,
			},
		],
		fixes: pilot ? pilotFix(run, uri) : [],
	};
}

/** To a tenth of a millimetre. */
function toTenth(mm: number): number {
	return Math.round(mm * 10) / 10;
}
