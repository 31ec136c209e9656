// Boards that swell across the grain and have no room for it.

import { numberOf } from "../../../model/size.ts";
import type { Fix, Piece } from "../../../model/types.ts";
import type { Rational } from "../../../units/rational.ts";
import { defineCheck, type Found } from "../../check.ts";
import { type HeldBoard, heldBoards } from "../../held.ts";
import { marked, roundedUp } from "../../marked.ts";
import { changeOf, cutText } from "../../moving.ts";
import {
	moistureRange,
	roomLine,
	type Season,
	seasonOf,
	usualSeason,
} from "../../season.ts";
import { nameOf, show, writtenLike } from "../../words.ts";

const room = {
	value: 0.5,
	unit: "mm",
	help: "So much a joint gives way before it opens or the board buckles",
	source: "common practice, no source",
} as const;

export const trappedPanel = defineCheck({
	id: "trapped-panel",
	group: "wood",
	severity: "warning",
	summary:
		"A board is wider across the grain than its housing lets it swell, or glued where it must move",
	explanation: `
Wood grows across its grain with the dampness of the air and hardly at all along it. A board whose two edges stand in grooves,
rabbets or dadoes, or between two parts that other parts keep apart, needs room for that.

    M = moisture by Hailwood-Horrobin from temperature and humidity: of the shop when it is made, of the room in its dampest time
    swelling = D x C x (M wet - M made), less what the parts that keep the holders apart grow themselves
    room >= swelling

D is the width, C the coefficient of change: along the rings (C_T) for flat-sawn boards, along the rays (C_R) for quarter-sawn
ones, half-way for rift. Below 6 and above 14 % the shrinkage takes its place. A board is taken as flat-sawn unless its stock
says \`sawn\`; where the shop does not tell its air, the piece is taken as made half-way through the year. A board glued at both
edges has no room at all, and may not shrink either. Where the room's humidity is not given, it is asked for once, and only
where an ordinary heated house (5.5 to 10.5 %) would be too much.`,
	source:
		"USDA Wood Handbook FPL-GTR-190, chapter 13 (equations 13-1 and 13-2, Table 13-5) and chapter 4 (Table 4-2); what a joint gives: common practice, no source",
	figures: { give: room },
	fires: `
piece door {
  mark reach = 3/8
  part left-stile {
    of oak.four-quarter
    size 26 x 2 1/2
    lies up facing front
  }
  part right-stile {
    of oak.four-quarter
    size 26 x 2 1/2
    lies up facing front
    left at 14 right from left-stile.right
  }
  part bottom-rail {
    of oak.four-quarter
    size 16 x 2 1/2
    lies across facing front
    left at 1 left from left-stile.right
  }
  part panel {
    of oak.four-quarter
    size 20 x 14 + 2 * reach x 1/2
    strips 2
    lies up facing front
    left at reach left from left-stile.right
    bottom at 1/4 down from bottom-rail.top
    centred deep on left-stile
  }
  join bottom-rail to left-stile, right-stile { tenon 1 x 1 1/2 x 1/4; glue }
  join panel to bottom-rail { groove 1/4 }
  join panel to left-stile, right-stile { groove 3/8 }
  room { humidity 30 % to 60 %; temperature 68 F }
}`,
	silent: `
piece door {
  mark reach = 1/4
  part left-stile {
    of oak.four-quarter
    size 26 x 2 1/2
    lies up facing front
  }
  part right-stile {
    of oak.four-quarter
    size 26 x 2 1/2
    lies up facing front
    left at 14 right from left-stile.right
  }
  part bottom-rail {
    of oak.four-quarter
    size 16 x 2 1/2
    lies across facing front
    left at 1 left from left-stile.right
  }
  part panel {
    of oak.four-quarter
    size 20 x 14 + 2 * reach x 1/2
    strips 2
    lies up facing front
    left at reach left from left-stile.right
    bottom at 1/4 down from bottom-rail.top
    centred deep on left-stile
  }
  join bottom-rail to left-stile, right-stile { tenon 1 x 1 1/2 x 1/4; glue }
  join panel to bottom-rail { groove 1/4 }
  join panel to left-stile, right-stile { groove 3/8 clearance 1/8 }
  room { humidity 30 % to 60 %; temperature 68 F }
}`,
	find: (piece, { figures }) => {
		const season = seasonOf(piece);
		const found = heldBoards(piece).flatMap((held) => {
			const told = trapped(piece, held, season ?? usualSeason, figures.give);
			return told ? [{ held, told }] : [];
		});
		if (season) return found.map(({ told }) => told);
		const [first] = found;
		return first ? [askForRoom(first.held)] : [];
	},
});

function trapped(
	piece: Piece,
	held: HeldBoard,
	season: Season,
	give: number,
): Found | undefined {
	const { display } = piece;
	const { part, axis, low, high, tie } = held;
	const width = numberOf(part.width);
	const moves = (to: number): number =>
		width *
		((changeOf(part, axis, season.made, to) ?? 0) -
			(changeOf(tie, axis, season.made, to) ?? 0));
	const swelling = Math.max(moves(season.wet), 0);
	const shrinking = Math.max(-moves(season.dry), 0);
	const free = low.room + high.room;
	const glued = low.joint.glue && high.joint.glue;
	const between = `between ${nameOf(low.part)} and ${nameOf(high.part)}`;
	const what = `${show(display, width)} of ${cutText(part)}`;
	if (glued && Math.max(swelling, shrinking) > give)
		return {
			origin: part.declaration.origin,
			message: `${nameOf(part)} is glued ${between} and cannot move: ${what} would swell by ${marked(display, swelling)} and shrink by ${marked(display, shrinking)} (${moistureRange(season.dry, season.wet)}, made at ${season.made.toFixed(1)}); leave the glue out and give it ${show(display, roundedUp(display, swelling))} of room, or make it of plywood`,
			related: [{ origin: high.joint.origin, message: "Glued here" }],
		};
	if (swelling <= free + give) return undefined;
	const wanted = roundedUp(display, swelling);
	return {
		origin: part.declaration.origin,
		message: `${nameOf(part)} swells by ${marked(display, swelling)} and has ${free > 0.01 ? `only ${show(display, free)} of` : "no"} room ${between}: ${what} (${moistureRange(season.made, season.wet)}); leave ${show(display, wanted)} of room in all, half of it at each edge`,
		related: [
			{
				origin: tie.declaration.origin,
				message: `${nameOf(tie)} keeps the two apart`,
			},
		],
		fixes: clearanceFix(piece, held, wanted),
	};
}

/** The clearance of a back, where it is written and its housing is deep enough for more. */
function clearanceFix(
	{ display }: Piece,
	{ part, low }: HeldBoard,
	wanted: Rational,
): readonly Fix[] {
	if (part.role !== "back") return [];
	const fit = low.joint.fits.find(({ written }) => written !== undefined);
	if (!fit?.written || wanted.cmp(fit.high) > 0) return [];
	return [
		{
			title: `Leave ${show(display, wanted)} of clearance`,
			edits: [
				{
					span: fit.written.span,
					text: writtenLike(display, fit.written.size, wanted),
				},
			],
		},
	];
}

function askForRoom({ part, low, high }: HeldBoard): Found {
	return {
		severity: "hint",
		origin: part.declaration.origin,
		message: `${nameOf(part)} is solid wood held between ${nameOf(low.part)} and ${nameOf(high.part)}: whether it has room to swell depends on how damp the room gets, so add ${roomLine}`,
	};
}
