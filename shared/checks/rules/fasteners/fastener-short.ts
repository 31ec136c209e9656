// A fastener that is counted on, and bites too little in the part that it should hold.

import { numberOf } from "../../../model/size.ts";
import type { FastenerRun, Piece } from "../../../model/types.ts";
import { defineCheck, type Found } from "../../check.ts";
import {
	drivenIn,
	fastenerLines,
	type WayIn,
	type WoodAlong,
} from "../../driven.ts";
import { lengthFix, usualBetween } from "../../fastener-words.ts";
import { listed, nameOf, show } from "../../words.ts";

export const fastenerShort = defineCheck({
	id: "fastener-short",
	group: "fasteners",
	severity: "warning",
	summary: "A fastener that is counted on bites too little in the second part",
	explanation: `
What holds is the length in the second part, not the length on the box:

    bite = countersink + length - thickness of the first part along the axis

It should be so many diameters of the fastener, or, where the second part is too thin for that, most of its thickness. Half
a dowel is held to the same in each of its parts. A \`tack\` only holds until the glue does, and is exempt; a biscuit places
and is exempt too.`,
	source:
		"nails: at least 6 diameters, NDS (read in a course on it); dowels: 2 diameters, common practice, no source; screws: common practice for furniture, no source (the NDS asks 6 diameters of a screw that carries a structure)",
	figures: {
		"screw-bite": {
			value: 2.5,
			unit: "diameters",
			help: "Least bite of a screw",
			source: "common practice, no source",
		},
		"nail-bite": {
			value: 6,
			unit: "diameters",
			help: "Least bite of a brad, pin or nail",
			source: "NDS, lateral load of nails",
		},
		"dowel-bite": {
			value: 2,
			unit: "diameters",
			help: "Least depth of a dowel in each part",
			source: "common practice, no source",
		},
		"thin-part": {
			value: 0.65,
			unit: "ratio",
			help: "Share of a thin part's thickness that is enough",
			source: "common practice, no source: 12 mm of a dowel in an 18 mm face",
		},
	},
	fires: `
piece rack {
  box case {
    outside 30 x 20 x 10
    panels top, bottom, left, right of ply.three-quarter
  }
  part rail {
    of oak.four-quarter
    size 20 x 2
    left at 4 right from case.left
    top at case.top.inside
    back at case.back
  }
  join rail to case.top { screw #8 x 1 every 6 { from below } }
}`,
	silent: `
piece rack {
  box case {
    outside 30 x 20 x 10
    panels top, bottom, left, right of ply.three-quarter
  }
  part rail {
    of oak.four-quarter
    size 20 x 2
    left at 4 right from case.left
    top at case.top.inside
    back at case.back
  }
  join rail to case.top { screw #8 x 1 1/4 every 6 { from below } }
}`,
	find: (piece, { design, figures }) =>
		fastenerLines(piece).flatMap((line) => {
			const names = new Set<string>();
			let worst: Short | undefined;
			for (const run of line) {
				const { kind, diameter } = run.size;
				if (!run.counted || kind === "biscuit") continue;
				const wanted =
					diameter *
					(kind === "screw"
						? figures["screw-bite"]
						: kind === "dowel"
							? figures["dowel-bite"]
							: figures["nail-bite"]);
				for (const { way, wood } of drivenIn(run)) {
					const bite = Math.max(0, Math.min(way.tip, wood.to) - wood.from);
					const reached = wood.to > wood.from;
					const enough = reached
						? Math.min(wanted, figures["thin-part"] * (wood.to - wood.from))
						: wanted;
					if (bite >= enough - grain) continue;
					names.add(nameOf(way.holds));
					if (!worst || bite < worst.bite - grain)
						worst = { run, way, wood, bite, enough };
				}
			}
			return worst ? [tell(piece, design.uri, worst, listed([...names]))] : [];
		}),
});

/** Floating dust, mm. */
const grain = 1e-6;

interface Short {
	readonly run: FastenerRun;
	readonly way: WayIn;
	readonly wood: WoodAlong;
	readonly bite: number;
	readonly enough: number;
}

function tell(
	piece: Piece,
	uri: string,
	{ run, way, wood, bite, enough }: Short,
	names: string,
): Found {
	const { display } = piece;
	const { kind, label, length } = run.size;
	const dowel = kind === "dowel";
	const state =
		bite > 0
			? `bites only ${show(display, toTenth(bite))} in ${names}`
			: `does not reach ${names}`;
	const least = numberOf(length) + (enough - bite) * (dowel ? 2 : 1);
	const usual =
		wood.to > wood.from
			? usualBetween(kind, display, least, wood.to - way.sunk - 0.5)
			: undefined;
	const mend = usual
		? `${show(display, usual)} would hold`
		: dowel
			? `it wants ${show(display, toTenth(enough))} in each part`
			: "no usual length both holds and stays inside: use thicker wood or another fastening";
	const by =
		dowel || bite === 0 ? "" : ` (it wants ${show(display, toTenth(enough))})`;
	return {
		origin: run.origin,
		message: `The ${kind} ${label} ${state}${by}: ${mend}`,
		related: [
			{
				origin: way.holds.declaration.origin,
				message: `${nameOf(way.holds)} is declared here`,
			},
		],
		fixes: usual ? lengthFix(run, display, uri, usual) : [],
	};
}

/** To a tenth of a millimetre: a bite is no size for the tape. */
function toTenth(mm: number): number {
	return Math.round(mm * 10) / 10;
}
