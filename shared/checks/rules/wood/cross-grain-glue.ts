// Glue between two parts whose grains cross, over more than it can bear.

import type { Axis, Box } from "../../../geometry/solid.ts";
import type { Joint, Part, Piece } from "../../../model/types.ts";
import { defineCheck, type Found } from "../../check.ts";
import { alike } from "../../fits.ts";
import { heldBoards } from "../../held.ts";
import { marked, markedDown } from "../../marked.ts";
import { boardWood, changeOf, cutText } from "../../moving.ts";
import {
	moistureRange,
	roomLine,
	type Season,
	seasonOf,
	usualSeason,
} from "../../season.ts";
import { nameOf, show } from "../../words.ts";

export const crossGrainGlue = defineCheck({
	id: "cross-grain-glue",
	group: "wood",
	severity: "warning",
	summary: "Glue across the grain over too great a width",
	explanation: `
Two parts glued together must move together. Where the grain of one runs along the other's width, one moves with the season and
the other does not: the glue, or the wood beside it, is sheared by the difference. Plywood moves as little as wood along its
grain, so a wide board glued to plywood counts as crossing.

    difference = e x |c1 - c2| over the year

e is how far the glued surface runs along an axis, c1 and c2 what a unit of each part moves along it between the driest and the
dampest moisture that it sees (the room's, and the shop's when it is made). Boards are taken as flat-sawn unless their stock
says \`sawn\`. The surface is the housing or mortise where there is one, else where the two parts lie on each other. A tenon or a
rail of 4 in stays below the limit in a heated house; a table top on its frame does not. Parts glued in at both edges are told
by \`trapped-panel\`. Where the room's humidity is not given, it is asked for once, and only where an ordinary heated house
(5.5 to 10.5 %) would be too much.`,
	source:
		"movement: USDA Wood Handbook FPL-GTR-190, chapters 4 and 13; the limit: common practice, no source: glue holds across 4 in or so of hardwood",
	figures: {
		limit: {
			value: 2,
			unit: "mm",
			help: "So much difference a glue line bears over the year",
			source:
				"common practice, no source: what 4 3/8 in of flat-sawn white oak do over 5 % of moisture",
		},
	},
	fires: `
piece table {
  part top {
    of oak.four-quarter
    size 40 x 20
    strips 3
    bottom at 28 from floor
  }
  part batten {
    of oak.four-quarter
    size 18 x 2
    lies deep facing up
    top at top.bottom
    centred across on top
    centred deep on top
  }
  join batten to top { glue }
  room { humidity 30 % to 60 %; temperature 68 F }
}`,
	silent: `
piece table {
  part top {
    of oak.four-quarter
    size 40 x 20
    strips 3
    bottom at 28 from floor
  }
  part batten {
    of oak.four-quarter
    size 18 x 2
    lies deep facing up
    top at top.bottom
    centred across on top
    centred deep on top
  }
  join batten to top { screw #8 x 1 1/4 every 7 { from below; pilot 3/16 } }
  room { humidity 30 % to 60 %; temperature 68 F }
}`,
	find: (piece, { figures }) => {
		const season = seasonOf(piece);
		const worst = worstByLine(piece, season ?? usualSeason, figures.limit);
		if (season)
			return worst.map((one) => toldOf(piece, one, season, figures.limit));
		const [first] = worst;
		return first ? [askForRoom(first)] : [];
	},
});

/** A glued joint along the axis where its two parts differ most. */
interface Crossing {
	readonly joint: Joint;
	readonly axis: Axis;
	/** How far the glue runs along it, mm. */
	readonly extent: number;
	/** What a unit of it differs by over the year. */
	readonly share: number;
	/** The part that moves more, and the other. */
	readonly mover: Part;
	readonly other: Part;
}

interface Line {
	readonly worst: Crossing;
	readonly joints: Joint[];
}

function amount({ extent, share }: Crossing): number {
	return extent * share;
}

/** Crossings beyond the limit; those of one line of the text together, in its order. */
function worstByLine(
	piece: Piece,
	season: Season,
	limit: number,
): readonly Line[] {
	const held = new Map(heldBoards(piece).map((one) => [one.part, one.axis]));
	const lines = new Map<string, Line>();
	for (const joint of piece.joints) {
		if (!joint.glue || joint.kind === "veneer" || joint.kind === "pins")
			continue;
		const crossing = crossingOf(joint, season);
		if (!crossing || amount(crossing) <= limit) continue;
		if (held.get(crossing.mover) === crossing.axis) continue;
		const { uri, span } = joint.origin;
		const key = `${uri} ${span.start} ${span.end}`;
		const line = lines.get(key);
		const joints = line?.joints ?? [];
		joints.push(joint);
		if (!line || amount(crossing) > amount(line.worst) + 1e-6)
			lines.set(key, { worst: crossing, joints });
	}
	return [...lines.values()];
}

function crossingOf(joint: Joint, season: Season): Crossing | undefined {
	const { host, member } = joint;
	if (!boardWood(host) && !boardWood(member)) return undefined;
	const surface = gluedSurface(joint);
	if (!surface) return undefined;
	const moistures = [season.dry, season.wet, season.made];
	const from = Math.min(...moistures);
	const to = Math.max(...moistures);
	let worst: Crossing | undefined;
	for (const axis of [0, 1, 2] as const) {
		const a = changeOf(host, axis, from, to);
		const b = changeOf(member, axis, from, to);
		if (a === undefined || b === undefined) return undefined;
		const crossing: Crossing = {
			joint,
			axis,
			extent: surface.max[axis] - surface.min[axis],
			share: Math.abs(a - b),
			mover: a > b ? host : member,
			other: a > b ? member : host,
		};
		if (!worst || amount(crossing) > amount(worst)) worst = crossing;
	}
	return worst;
}

/** Parts no farther apart than this are glued to each other, mm. */
const touching = 1;

/** Where the glue is: the housing or mortise, else where the two boxes meet. */
function gluedSurface({ host, member }: Joint): Box | undefined {
	const housing =
		host.housings.find(({ takes }) => takes === member.path) ??
		member.housings.find(({ takes }) => takes === host.path);
	if (housing) return housing.box;
	const a = host.solid.box;
	const b = member.solid.box;
	const min: [number, number, number] = [0, 0, 0];
	const max: [number, number, number] = [0, 0, 0];
	for (const axis of [0, 1, 2] as const) {
		min[axis] = Math.max(a.min[axis], b.min[axis]);
		max[axis] = Math.min(a.max[axis], b.max[axis]);
		if (max[axis] - min[axis] < -touching) return undefined;
		if (max[axis] < min[axis]) max[axis] = min[axis];
	}
	return { min, max };
}

function toldOf(
	piece: Piece,
	{ worst, joints }: Line,
	season: Season,
	limit: number,
): Found {
	const { display } = piece;
	const { mover, other, extent, share } = worst;
	const most = markedDown(display, limit / share);
	const mend = most
		? `glue no more than ${most} of it, or let it slide: screws in slots, a dovetailed key, glue at the middle alone`
		: "let it slide: screws in slots, a dovetailed key";
	return {
		origin: worst.joint.origin,
		message: `${nameOf(mover)} is glued across its grain to ${nameOf(other)} over ${show(display, extent)}: ${cutText(mover)} moves ${marked(display, amount(worst))} more there over the year (${moistureRange(season.dry, season.wet)})${alike(joints)}; ${mend}`,
		related: [
			{
				origin: mover.declaration.origin,
				message: `${nameOf(mover)} is declared here`,
			},
		],
	};
}

function askForRoom({ worst: { mover, other, joint } }: Line): Found {
	return {
		severity: "hint",
		origin: joint.origin,
		message: `${nameOf(mover)} is glued across its grain to ${nameOf(other)}: whether that holds depends on how damp the room gets, so add ${roomLine}`,
	};
}
