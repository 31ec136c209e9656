// What the wall screws of a cleat or rail find in the wall: studs, steel, masonry, plasterboard alone, or nothing that is known.

import { numberOf } from "../../../model/size.ts";
import type { Fix, MountInfo, Piece } from "../../../model/types.ts";
import { defineCheck, type Found } from "../../check.ts";
import { usualBetween } from "../../fastener-words.ts";
import { caution, showForce } from "../../force-words.ts";
import { hangingOf, wallHold } from "../../hanging.ts";
import { showAbout, showAtLeast } from "../../rounded.ts";
import { show, showLimit, writtenLike } from "../../words.ts";

export const cleatStuds = defineCheck({
	id: "cleat-studs",
	group: "strength",
	severity: "warning",
	summary: "The wall screws of a cleat or rail do not find enough to hold in",
	explanation: `
    studs under a strip: floor(length / spacing) for sure, one more if it is set so

Each kind of wall by its own rule. Wood studs: the screw must reach into the stud by 6 diameters; a piece that is heavier than a limit
wants two studs, and a strip shorter than their spacing never finds two. Metal studs: the same count; the thread must pass
the sheet, which is all that holds. Masonry: the plug sits in the brick by a least depth, plaster holds nothing; what it carries is told by
the maker of the plug. Plasterboard without studs is given no strength. Where no wall is given there is no figure at all, and that is asked for
once.

${caution}`,
	source:
		"NDS: penetration of screws, 6 D (from memory); number of studs: geometry; the rest is common practice, no source",
	figures: {
		bite: {
			value: 6,
			unit: "diameters",
			help: "Least reach of a screw into a wood stud",
			source: "NDS, lateral load of wood screws, from memory",
		},
		masonry: {
			value: 40,
			unit: "mm",
			help: "Least depth of a plug in brick, block or concrete",
			source: "common practice, no source",
		},
		light: {
			value: 120,
			unit: "N",
			help: "A piece no heavier than this may hang on one stud",
			source: "common practice, no source: about 12 kg with its load",
		},
	},
	fires: `
piece cupboard {
  box case {
    outside 15 x 30 x 10
    bottom at 50 from floor
    panels top, bottom, left, right of ply.three-quarter
    back of ply.half inset 3/4
    join back to left, right, top, bottom { glue }
  }
  mount hook {
    on case.back
    of ply.three-quarter
    height 3
    down 1 from case.top
    wall { studs every 16; drywall 1/2; screw #10 x 3 each 2 }
  }
  load 30 lb on case.bottom
}`,
	silent: `
piece cupboard {
  box case {
    outside 24 x 30 x 10
    bottom at 50 from floor
    panels top, bottom, left, right of ply.three-quarter
    back of ply.half inset 3/4
    join back to left, right, top, bottom { glue }
  }
  mount hook {
    on case.back
    of ply.three-quarter
    height 3
    down 1 from case.top
    wall { studs every 16; drywall 1/2; screw #10 x 3 each 2 }
  }
  load 30 lb on case.bottom
}`,
	find: (piece, { figures }) => {
		const found = piece.mounts.flatMap((mount) =>
			mount.wall ? inWall(piece, mount, figures) : [],
		);
		const without = piece.mounts.find(({ wall }) => !wall);
		if (!without) return found;
		return [
			...found,
			{
				severity: "hint",
				origin: without.origin,
				message: `Nothing says what wall \`${without.path}\` is fixed to, so there is no figure for what it carries: add a line such as \`${example[piece.display.unit]}\``,
			},
		];
	},
});

const example = {
	in: "wall { studs every 16; drywall 1/2; screw #10 x 3 }",
	mm: "wall { studs every 400; drywall 12.5; screw #10 x 75 }",
} as const;

function inWall(
	piece: Piece,
	mount: MountInfo,
	figures: {
		readonly bite: number;
		readonly masonry: number;
		readonly light: number;
	},
): readonly Found[] {
	const { display } = piece;
	const { wall } = mount;
	if (!wall) return [];
	const { origin } = wall;
	if (!wall.studs && !wall.masonry)
		return [
			wall.drywall
				? {
						origin,
						message: `Plasterboard alone carries nothing that counts, and \`${mount.path}\` has no studs behind it: give their spacing, or hang it where there are some`,
					}
				: {
						severity: "hint",
						origin,
						message: `Neither studs nor masonry is given for \`${mount.path}\`: there is no figure for what it carries`,
					},
		];
	if (!wall.screw)
		return [
			{
				severity: "hint",
				origin,
				message: `No screw into the wall is given for \`${mount.path}\`: add a line such as \`screw #10 x ${display.unit === "in" ? "3" : "75"}\``,
			},
		];
	// The screws of brackets pass a plate of metal, those of a rail the back as well.
	const through =
		mount.kind === "brackets"
			? 0
			: numberOf(mount.thick) +
				(mount.wallStrip ? 0 : numberOf(mount.on.thick));
	const cover = wall.masonry
		? wall.plaster
			? numberOf(wall.plaster)
			: 0
		: wall.drywall
			? numberOf(wall.drywall)
			: 0;
	const reach = numberOf(wall.screw.length) - through - cover;
	const least = wall.masonry
		? figures.masonry
		: wall.studKind === "metal"
			? 6
			: figures.bite * wall.screw.diameter;
	const into = wall.masonry ? "the masonry" : "a stud";
	const short: readonly Found[] =
		reach < least - 1e-6
			? [
					{
						origin,
						message: `The screw of \`${mount.path}\` reaches ${reach > 0 ? `${showAbout(display, reach)} into ${into}` : `no ${wall.masonry ? "masonry" : "stud"}`} behind ${showAbout(display, through + cover)} of ${whatCovers(mount, cover)}: at least ${showLimit(display, least)} holds, so take one ${show(display, roundUp(display.unit, through + cover + least))} long or more`,
						fixes: longerScrew(mount, display, through + cover + least),
					},
				]
			: [];
	return [...short, ...tooFew(piece, mount, figures.light)];
}

function tooFew(
	piece: Piece,
	mount: MountInfo,
	light: number,
): readonly Found[] {
	const { wall } = mount;
	const strip = mount.wallStrip ?? mount.strip;
	if (!wall?.studs || wall.masonry) return [];
	const hold = wallHold(mount, { steel: 0.455, steelStrength: 310 });
	const hanging = hangingOf(piece, mount, { lean: 0 });
	const weight = hanging?.cases[0]?.hung.weight ?? 0;
	const most =
		hold?.studs[1] ??
		Math.floor(numberOf(strip.length) / numberOf(wall.studs)) + 1;
	if (most >= 2 || weight <= light) return [];
	const { display } = piece;
	const lacks = numberOf(wall.studs) - numberOf(strip.length);
	return [
		{
			origin: wall.origin,
			message: `The strip of \`${mount.path}\` is ${showAbout(display, numberOf(strip.length))} long and never reaches two studs ${show(display, wall.studs)} apart, with ${showForce(display, weight)} on it: make it ${showAtLeast(display, lacks)} longer or more, or let a board that spans two studs into the wall`,
		},
	];
}

/** What the screw passes before it holds. */
function whatCovers({ kind, wall }: MountInfo, cover: number): string {
	const on = wall?.masonry ? "plaster" : "board";
	if (kind === "brackets") return on;
	return cover > 0 ? `strip and ${on}` : "strip";
}

/** The next usual length, where the screw is written in the same file. */
function longerScrew(
	{ wall, declaration }: MountInfo,
	display: Piece["display"],
	least: number,
): readonly Fix[] {
	const screw = wall?.screw;
	const span = screw?.lengthSpan;
	if (!screw || !span || wall.origin.uri !== declaration.origin.uri) return [];
	const length = usualBetween("screw", display, least, 2 * least);
	return length
		? [
				{
					title: `Use a screw ${show(display, length)} long`,
					edits: [{ span, text: writtenLike(display, screw.length, length) }],
				},
			]
		: [];
}

/** Up to the next 1/4 in or 5 mm. */
function roundUp(unit: "in" | "mm", mm: number): number {
	const step = unit === "in" ? 25.4 / 4 : 5;
	return Math.ceil(mm / step - 1e-9) * step;
}
