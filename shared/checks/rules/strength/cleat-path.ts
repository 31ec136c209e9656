// How the pull of a cleat gets from the back into the case: by glue and counted fasteners, never by tacks.

import { numberOf } from "../../../model/size.ts";
import type { Joint, MountInfo, Part, Piece } from "../../../model/types.ts";
import { defineCheck, type Found } from "../../check.ts";
import { caution, showForce } from "../../force-words.ts";
import { type Hanging, hangingOf } from "../../hanging.ts";
import { type Hold, holdOf } from "../../holding.ts";

/** What one run of fasteners adds at the back. */
interface Run {
	readonly hold: Hold;
	readonly count: number;
	/** Driven toward or away from the wall: the thrust draws them. */
	readonly drawn: boolean;
}

export const cleatPath = defineCheck({
	id: "cleat-path",
	group: "strength",
	severity: "warning",
	summary: "The pull of a cleat has no way from the back into the case",
	explanation: `
The strip is fixed to the back, so the joints of the back carry all: the weight W down, and the thrust Q of the bevel, which draws the back
toward the wall (load cases and Q as in \`cleat-load\`). Against them are held

    glue:      glued length x thickness of the back x a stress
    fasteners: withdrawal where the thrust draws them, shear where they lie across it, by the reference values

A tack holds while the glue sets and is never counted. A back that stands in a groove on two sides or more cannot leave it and is passed.

${caution}`,
	source: "statics; NDS 2018 chapter 12; the stress of glue is common practice",
	figures: {
		glue: {
			value: 0.3,
			unit: "MPa",
			help: "What glue is trusted with, on edges of plywood too",
			source:
				"common practice, no source: a twentieth of what makers of wood glue print for side grain",
		},
		edge: {
			value: 0.67,
			unit: "ratio",
			help: "What is left of a fastener's value in the edge of a sheet",
			source: "common practice, 50 to 70 %, from memory",
		},
		lean: {
			value: 200,
			unit: "N",
			help: "Somebody who leans on the front edge",
			source: "common practice, no source: an arm and a shoulder, about 20 kg",
		},
	},
	fires: `
piece rack {
  box case {
    outside 30 x 18 x 10
    bottom at 50 from floor
    panels top, bottom, left, right of ply.three-quarter
    back of ply.half inset 3/4
    join back to left, right, top, bottom { tack brad 18ga x 1 1/4 every 5 }
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
piece rack {
  box case {
    outside 30 x 18 x 10
    bottom at 50 from floor
    panels top, bottom, left, right of ply.three-quarter
    back of ply.half inset 3/4
    join back to left, right, top, bottom { glue; tack brad 18ga x 1 1/4 every 5 }
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
		const seen = new Set<Part>();
		return piece.mounts.flatMap((mount): readonly Found[] => {
			if (seen.has(mount.on)) return [];
			seen.add(mount.on);
			const hanging = hangingOf(piece, mount, figures);
			return hanging ? pathOf(piece, mount, hanging, figures) : [];
		});
	},
});

function pathOf(
	piece: Piece,
	mount: MountInfo,
	{ cases }: Hanging,
	figures: { readonly glue: number; readonly edge: number },
): readonly Found[] {
	const back = mount.on;
	const joints = piece.joints.filter(
		({ host, member }) =>
			(host === back && member.role !== "cleat") ||
			(member === back && host.role !== "cleat"),
	);
	const housed = joints.filter(
		({ kind }) => kind === "groove" || kind === "dado",
	);
	if (housed.length >= 2) return [];
	const glued = joints
		.filter(({ glue }) => glue)
		.reduce((area, joint) => area + gluedArea(joint, back), 0);
	const runs = joints.flatMap((joint) => runsOf(joint, figures.edge));
	const tacks = joints
		.flatMap(({ fasteners }) => fasteners)
		.filter(({ counted }) => !counted);
	const { display } = piece;
	const origin = joints[0]?.origin ?? mount.origin;
	const stored = cases[0];
	// A hook without height over the lower edge cannot hold at all: another check tells.
	if (!stored || !Number.isFinite(stored.hung.lean)) return [];
	if (glued === 0 && runs.length === 0) {
		const holds =
			tacks.length > 0
				? `Only tacks hold \`${back.path}\` in the case, and they count for nothing`
				: `Nothing that counts holds \`${back.path}\` in the case`;
		return [
			{
				origin,
				message: `${holds}: \`${mount.path}\` pulls it toward the wall with up to ${showForce(display, stored.hung.thrust[1])} and down with ${showForce(display, stored.hung.down)}; glue it all round, or screw it`,
			},
		];
	}
	let worst = { use: 0, pull: 0, down: 0 };
	for (const { hung, duration } of cases) {
		const inGlue = glued * figures.glue;
		const fastened = (of: (run: Run) => number): number =>
			runs.reduce((sum, run) => sum + run.count * of(run), 0) * duration;
		const outward =
			inGlue + fastened(({ hold, drawn }) => (drawn ? hold.pull : hold.shear));
		const along = inGlue + fastened(({ hold }) => hold.shear);
		const use = Math.max(hung.thrust[1] / outward, hung.down / along);
		if (use > worst.use) worst = { use, pull: hung.thrust[1], down: hung.down };
	}
	if (!(worst.use > 1)) return [];
	const count = runs.reduce((sum, run) => sum + run.count, 0);
	const needed = Number.isFinite(worst.use)
		? `, or use ${Math.ceil(worst.use * count)} where there are ${count}`
		: "";
	return [
		{
			origin,
			message: `What holds \`${back.path}\` in the case is asked for ${Number.isFinite(worst.use) ? `${Math.round(worst.use * 100)} %` : "more than all"} of its value: \`${mount.path}\` pulls it toward the wall with up to ${showForce(display, worst.pull)} and down with ${showForce(display, worst.down)}; glue it all round${glued > 0 ? " and not in part" : ""}${count > 0 ? needed : ", or screw it"}`,
		},
	];
}

/** mm2: as long as both lie along each other, as wide as the back is thick. */
function gluedArea({ host, member }: Joint, back: Part): number {
	const shared = ([0, 1] as const).map(
		(axis) =>
			Math.min(numberOf(host.max[axis]), numberOf(member.max[axis])) -
			Math.max(numberOf(host.min[axis]), numberOf(member.min[axis])),
	);
	return Math.max(0, ...shared) * numberOf(back.thick);
}

function runsOf(joint: Joint, edge: number): readonly Run[] {
	return joint.fasteners.flatMap((run): readonly Run[] => {
		if (!run.counted) return [];
		const hold = holdOf(run);
		if (!hold || run.points.length === 0) return [];
		const inEdge = run.into.stock.kind === "sheet" && !facing(run.into, run);
		const share = inEdge ? edge : 1;
		return [
			{
				hold: {
					...hold,
					pull: hold.pull * share,
					shear: hold.shear * share,
				},
				count: run.points.length,
				drawn: Math.abs(run.direction[2]) > 0.7,
			},
		];
	});
}

/** Driven into the face of a sheet, not its edge. */
function facing(
	part: Part,
	{ direction }: { readonly direction: readonly number[] },
): boolean {
	const axis = part.place.axes[2];
	const index = axis.endsWith("x") ? 0 : axis.endsWith("y") ? 1 : 2;
	return Math.abs(direction[index] ?? 0) > 0.7;
}
