// A cleat that does not fit the space behind the back, or that cannot be hung.

import { numberOf } from "../../../model/size.ts";
import type { MountInfo, Piece } from "../../../model/types.ts";
import { defineCheck, type Found } from "../../check.ts";
import { show } from "../../words.ts";

export const cleatFit = defineCheck({
	id: "cleat-fit",
	group: "strength",
	severity: "error",
	summary:
		"A cleat does not fit the space behind the back, or cannot be lifted on",
	explanation: `
The strip on the piece stands in the space behind the back, and the strip on the wall stands in it too.

    thicker than the space:  the piece stands off the wall by the difference
    thinner than the space:  the strips overlap by 2 x thickness - space, and the piece tips against the wall

To hang it, the piece is raised by the depth of the hook and let down: below the wall strip that much must be free. The strip must
also lie within the space, not run into a panel over it. That nothing on the wall is in the way above the piece is for
the maker to see.`,
	source:
		"geometry; how much thinner a strip may be is common practice, no source",
	figures: {
		proud: {
			value: 0.5,
			unit: "mm",
			help: "A strip no more than this thicker than the space is level with it",
			source: "common practice, no source",
		},
		slack: {
			value: 3.2,
			unit: "mm",
			help: "A strip may be so much thinner than the space",
			source: "common practice, no source: 1/8 in",
		},
	},
	fires: `
piece rack {
  box case {
    outside 36 x 18 x 10
    panels top, bottom, left, right of ply.three-quarter
    back of ply.quarter inset 1/2
  }
  mount hook {
    on case.back
    of ply.three-quarter
    height 3
    down 1 1/2 from case.top
  }
}`,
	silent: `
piece rack {
  box case {
    outside 36 x 18 x 10
    panels top, bottom, left, right of ply.three-quarter
    back of ply.quarter inset 3/4
  }
  mount hook {
    on case.back
    of ply.three-quarter
    height 3
    down 1 1/2 from case.top
  }
}`,
	find: (piece, { figures }) =>
		piece.mounts
			.filter(({ kind }) => kind === "cleat")
			.flatMap((mount) => [
				...thickness(piece, mount, figures.proud, figures.slack),
				...room(piece, mount),
			]),
});

function thickness(
	piece: Piece,
	mount: MountInfo,
	proud: number,
	slack: number,
): readonly Found[] {
	const { display } = piece;
	const over = numberOf(mount.thick) - numberOf(mount.gap);
	const strip = `The strip of \`${mount.path}\` is ${show(display, mount.thick)} thick, the space behind the back ${show(display, mount.gap)}`;
	if (over > proud + grain)
		return [
			{
				origin: mount.origin,
				message: `${strip}: the piece would stand ${show(display, over)} off the wall; set the back in that much more, or use a thinner strip`,
			},
		];
	if (-over <= slack + grain) return [];
	const hold = 2 * numberOf(mount.thick) - numberOf(mount.gap);
	return [
		{
			severity: hold > 0 ? "warning" : "error",
			origin: mount.origin,
			message: `${strip}: ${hold > 0 ? `the hook holds by ${show(display, hold)} only, and` : "the hook misses the strip on the wall,"} the piece hangs off the wall; use a strip ${show(display, -over)} thicker, or pack it out`,
		},
	];
}

function room(piece: Piece, mount: MountInfo): readonly Found[] {
	const { display } = piece;
	const found: Found[] = [];
	const above = numberOf(mount.above);
	if (above < -grain)
		found.push({
			origin: mount.origin,
			message: `The strip of \`${mount.path}\` runs ${show(display, -above)} above the space behind the back: set it down by that much`,
		});
	const lacks = numberOf(mount.lift) - numberOf(mount.below);
	if (mount.wallStrip && lacks > grain)
		found.push({
			origin: mount.origin,
			message: `\`${mount.path}\` cannot be hung: it must be lifted ${show(display, mount.lift)}, and below the wall strip only ${show(display, Math.max(0, numberOf(mount.below)))} is free; set the cleat ${show(display, lacks)} higher, or make the strips lower`,
		});
	return found;
}

/** Floating dust, mm. */
const grain = 1e-6;
