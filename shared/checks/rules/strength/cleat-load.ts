// What a cleat or rail and its wall screws are asked to carry, against what they hold.

import { spanBehind } from "../../../../grammar/index.ts";
import type { Fix, MountInfo, Piece } from "../../../model/types.ts";
import { defineCheck, type Found } from "../../check.ts";
import { caution, showForce } from "../../force-words.ts";
import {
	type Hanging,
	hangingOf,
	type WallHold,
	wallHold,
	worstUse,
} from "../../hanging.ts";
import { showAbout, showAtLeast } from "../../rounded.ts";

/** More screws than this in one stud under one strip split it. */
const mostAtAStud = 4;

export const cleatLoad = defineCheck({
	id: "cleat-load",
	group: "strength",
	severity: "warning",
	summary:
		"The wall screws of a cleat or rail are asked for more than they hold",
	explanation: `
Load cases: the wood of the piece with the loads that the design gives (ten years); the same with somebody who leans on the front
edge (ten minutes), unless a load of the design stands at a front edge already. Where legs share the load, it is worked out with the
legs on the floor and with the legs clear of it, and the worse is taken.

    V = W                            on the hook, down
    R = W (a - e) / H                at the lower bearing line, and at the hook, level
    Q from R to W tan(phi)           thrust of the bevel off the wall; the upper end is a wedge without friction
    F = W (a - e) / (b - e)          legs together, where they stand; then V = W - F
    T = (Q y + V e) / d              pull on the wall screws
    use = V cos(t) / Z + T sin(t) / W'    for one screw, t = angle of its load from the wall

a, b, e: the weight, the legs, the middle of the bevel from the wall; H: the bevel over the lower edge of the piece, which leans on the
wall there; y, d: the bevel and the screws over the lower edge of the wall strip. The screws are taken to sit at half the strip's height.
The upper end of Q is used.

Wood studs: W' = 2850 G^2 D for each inch of thread, Z by the yield-limit equations of single shear with the plasterboard as a layer
that bears nothing, the studs of the softest timber sold (G 0.42). Metal studs: pull-out and tilting of the screw in thin steel. Counted are
only screws that are sure of a stud however the strip falls. These reference values stand at about a fifth of what breaks on average,
the safety factor here comes on top of it. Masonry, plasterboard alone and a wall that is not given bring no figure.

${caution}`,
	source:
		"statics; NDS 2018 chapter 12 and AWC Technical Report 12; AISI S100 for thin steel (from memory)",
	figures: {
		lean: {
			value: 200,
			unit: "N",
			help: "Somebody who leans on the front edge",
			source: "common practice, no source: an arm and a shoulder, about 20 kg",
		},
		safety: {
			value: 1,
			unit: "times",
			help: "Safety factor on top of the one in the reference values",
			source: "common practice, no source",
		},
		friction: {
			value: 0.2,
			unit: "ratio",
			help: "Friction in the bevel that keeps the piece from climbing out",
			source: "common practice, no source: planed or painted wood",
		},
		steel: {
			value: 0.455,
			unit: "mm",
			help: "Thickness of the sheet of metal studs",
			source: "the lightest in common use, 25 gauge, from memory",
		},
		"steel-strength": {
			value: 310,
			unit: "MPa",
			help: "Tensile strength of that sheet",
			source: "45 ksi, from memory",
		},
	},
	fires: `
piece hall-shelf {
  box case {
    outside 36 x 10 x 14
    bottom at 50 from floor
    panels top, bottom, left, right of ply.three-quarter
    back of ply.half inset 3/4
    join back to left, right, top, bottom { glue }
  }
  mount hook {
    on case.back
    of ply.three-quarter
    height 2 1/2
    down 1 from case.top
    wall { studs every 16; drywall 1/2; screw #8 x 2 1/2 }
  }
  load 40 lb per ft on case.bottom
}`,
	silent: `
piece hall-shelf {
  box case {
    outside 36 x 10 x 14
    bottom at 50 from floor
    panels top, bottom, left, right of ply.three-quarter
    back of ply.half inset 3/4
    join back to left, right, top, bottom { glue }
  }
  mount hook {
    on case.back
    of ply.three-quarter
    height 2 1/2
    down 1 from case.top
    wall { studs every 16; drywall 1/2; screw #10 x 3 each 3 }
  }
  load 40 lb per ft on case.bottom
}`,
	find: (piece, { figures }) => {
		const found = piece.mounts.flatMap((mount): readonly Found[] => {
			const hanging = hangingOf(piece, mount, figures);
			if (!hanging) return [];
			const climbs = climbsOut(piece, hanging, figures.friction);
			const hold = wallHold(mount, {
				steel: figures.steel,
				steelStrength: figures["steel-strength"],
			});
			return [
				...climbs,
				...(hold ? tooMuch(piece, hanging, hold, figures.safety) : []),
			];
		});
		return [...found, ...asksForLoad(piece, figures.lean)];
	},
});

function tooMuch(
	piece: Piece,
	hanging: Hanging,
	hold: WallHold,
	safety: number,
): readonly Found[] {
	const { mount } = hanging;
	const { display } = piece;
	const worst = worstUse(hanging, hold, hold.least);
	const use = worst.use * safety;
	// No height to hang by, or a screw that holds nothing, is another check's to tell.
	if (!(use > 1 + 1e-9) || !Number.isFinite(use) || !mount.wall) return [];
	const { forces } = worst;
	const each = (force: number): string =>
		showForce(display, force / hold.least);
	const [studs] = hold.studs;
	const wanted = Math.ceil(use * hold.least - 1e-9);
	const perStud = Math.ceil(wanted / studs);
	const enough = perStud <= mostAtAStud;
	const mend = enough
		? `${perStud} at each stud would hold`
		: `it would take ${wanted}: set the cleat higher, make the piece shallower, or give it legs`;
	const how = [
		worst.load.name === "leaning" ? "with somebody who leans on the front" : "",
		worst.legsOff ? "with the legs clear of the floor" : "",
	]
		.filter((part) => part !== "")
		.join(" and ");
	const screws =
		hold.least === 1
			? `The one screw of \`${mount.path}\` that is sure of a stud is`
			: `The ${hold.least} screws of \`${mount.path}\` that are sure of a stud are`;
	const holds = hold.least === 1 ? "what it holds" : "what they hold";
	return [
		{
			origin: mount.wall.origin,
			message: `${screws} asked for ${percentUse(use)} of ${holds}${how ? `, ${how}` : ""}: ${each(forces.pull[1])} out of the wall and ${each(forces.down)} down${hold.least === 1 ? "" : " each"}; ${mend}`,
			fixes: enough ? moreScrews(mount, perStud) : [],
		},
	];
}

function percentUse(use: number): string {
	return use > 10 ? "more than ten times" : `${Math.round(use * 100)} %`;
}

function moreScrews(mount: MountInfo, each: number): readonly Fix[] {
	const { wall, declaration } = mount;
	const title = `Drive ${each} screws into each stud`;
	const uri = declaration.origin.uri;
	if (!wall || wall.origin.uri !== uri) return [];
	if (wall.eachSpan)
		return [{ title, edits: [{ span: wall.eachSpan, text: `${each}` }] }];
	const behind = wall.screw?.lengthSpan;
	return behind
		? [
				{
					title,
					edits: [{ span: spanBehind(behind), text: ` each ${each}` }],
				},
			]
		: [];
}

/** (a - e) / H against tan(phi + rho). */
function climbsOut(
	piece: Piece,
	{ mount, geometry, legsAt, cases }: Hanging,
	friction: number,
): readonly Found[] {
	if (mount.kind !== "cleat" || legsAt !== undefined) return [];
	const { contact, rise, slope } = geometry;
	const limit = Math.tan(Math.atan(slope) + Math.atan(friction));
	const worst = Math.max(...cases.map(({ hung }) => hung.fromWall - contact));
	if (limit < 0 || worst <= limit * rise) return [];
	const { display } = piece;
	return [
		{
			origin: mount.origin,
			message: `\`${mount.path}\` sits ${rise > 0 ? `${showAbout(display, rise)} above` : "no higher than"} the lower edge of the piece and the weight stands ${showAbout(display, worst + contact)} off the wall: it turns forward out of the hook; set the cleat ${showAtLeast(display, worst / limit - rise)} higher`,
		},
	];
}

/** Once for a piece that hangs on a known wall and says nothing of what it carries. */
function asksForLoad(piece: Piece, lean: number): readonly Found[] {
	if (piece.loads.length > 0) return [];
	const mount = piece.mounts.find(
		(one) => one.wall && hangingOf(piece, one, { lean }),
	);
	if (!mount) return [];
	const first = piece.boxes.find(({ panels }) => panels.back === mount.on);
	const where = first?.shelves[0]?.path ?? first?.panels.bottom?.path;
	return [
		{
			severity: "hint",
			origin: mount.origin,
			message: `Nothing says what \`${piece.name}\` is to carry, so \`${mount.path}\` is reckoned with its own wood alone: add a line such as \`load ${piece.display.unit === "in" ? "20 lb" : "10 kg"}${where ? ` on ${where}` : ""}\``,
		},
	];
}
