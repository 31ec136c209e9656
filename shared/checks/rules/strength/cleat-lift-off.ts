// A hook that can come off its cleat: legs that take the weight from it, a shallow bevel, nothing that locks it.

import { spanBehind } from "../../../../grammar/index.ts";
import { numberOf } from "../../../model/size.ts";
import type { Fix, MountInfo, Piece } from "../../../model/types.ts";
import { defineCheck, type Found } from "../../check.ts";
import { usualAtMost } from "../../fastener-words.ts";
import { caution, showForce } from "../../force-words.ts";
import { type Hanging, hangingOf, standsOnFloor } from "../../hanging.ts";
import { showAbout, showAtLeast } from "../../rounded.ts";
import { bare, show, showLimit } from "../../words.ts";

export const cleatLiftOff = defineCheck({
	id: "cleat-lift-off",
	group: "strength",
	severity: "hint",
	summary: "A piece can be knocked off its cleat: nothing locks the hook",
	explanation: `
A hook holds by its depth and by the weight on it. Front legs take their share of that weight:

    F = W (a - e) / (b - e)   on the legs;   V = W - F   on the hook

with a the weight, b the legs, e the bevel from the wall. Legs a little long, or a floor that rises, take more of it: a piece that stands on
legs is told once that a screw through the back into the wall strip keeps it there. Legs behind the weight (b < a) turn the piece over
them and off the cleat: that is a warning. Without legs, a hook that is shallower than a limit is told.

A screw that joins a part of the piece to the wall strip, in a \`join\` line, locks it.

${caution}`,
	source: "statics; the limits are common practice, no source",
	figures: {
		hook: {
			value: 8,
			unit: "mm",
			help: "A hook that is less deep than this wants a lock even without legs",
			source: "common practice, no source",
		},
		floor: {
			value: 3,
			unit: "mm",
			help: "How far a floor may rise or legs be long without being seen",
			source: "common practice, no source",
		},
	},
	fires: `
piece sideboard {
  box case {
    outside 36 x 14 x 13
    top at 32 from floor
    panels top, bottom, left, right of ply.three-quarter
    caps left, right
    back of ply.half inset 3/4
    join back to left, right, top, bottom { glue }
  }
  leg left-leg, right-leg handed {
    against outside case.left
    set-back 1 from case.front
    layer only of oak.eight-quarter 2 1/2 wide from floor up to 6 above case.bottom
  }
  mount hook {
    on case.back
    of ply.three-quarter
    height 3
    down 1 1/2 from case.top
    wall { studs every 16; drywall 1/2; screw #10 x 3 each 2 }
  }
  load 30 lb on case.bottom
}`,
	silent: `
piece sideboard {
  box case {
    outside 36 x 14 x 13
    top at 32 from floor
    panels top, bottom, left, right of ply.three-quarter
    caps left, right
    back of ply.half inset 3/4
    join back to left, right, top, bottom { glue }
  }
  leg left-leg, right-leg handed {
    against outside case.left
    set-back 1 from case.front
    layer only of oak.eight-quarter 2 1/2 wide from floor up to 6 above case.bottom
  }
  mount hook {
    on case.back
    of ply.three-quarter
    height 3
    down 1 1/2 from case.top
    wall { studs every 16; drywall 1/2; screw #10 x 3 each 2 }
  }
  join case.back to hook.wall-strip { screw #8 x 1 { from front; pilot 7/64; countersink } }
  load 30 lb on case.bottom
}`,
	find: (piece, { figures }) => {
		const found: Found[] = [];
		let asked = false;
		for (const mount of piece.mounts) {
			if (mount.kind !== "cleat" || !mount.wallStrip) continue;
			const hanging = hangingOf(piece, mount, { lean: 0 });
			const over = hanging && turnsOver(piece, hanging);
			if (over) {
				found.push(over);
				continue;
			}
			if (asked || isLocked(piece, mount) || standsOnFloor(piece)) continue;
			const hint = asksForLock(piece, mount, hanging, figures);
			if (!hint) continue;
			asked = true;
			found.push(hint);
		}
		return found;
	},
});

function isLocked(piece: Piece, { wallStrip }: MountInfo): boolean {
	return piece.joints.some(
		({ host, member, fasteners }) =>
			(host === wallStrip || member === wallStrip) && fasteners.length > 0,
	);
}

function turnsOver(
	piece: Piece,
	{ mount, legsAt, cases }: Hanging,
): Found | undefined {
	const lifting = cases.find(({ onLegs }) => onLegs?.lifts)?.onLegs;
	if (!lifting || legsAt === undefined) return undefined;
	const { display } = piece;
	return {
		severity: "warning",
		origin: mount.origin,
		message: `The legs stand ${showAbout(display, legsAt)} off the wall and the weight ${showAbout(display, lifting.fromWall)}: it turns over the legs and lifts off \`${mount.path}\`; set the legs ${showAtLeast(display, lifting.fromWall - legsAt)} forward or more`,
	};
}

function asksForLock(
	piece: Piece,
	mount: MountInfo,
	hanging: Hanging | undefined,
	figures: { readonly hook: number; readonly floor: number },
): Found | undefined {
	const { display } = piece;
	const stored = hanging?.cases[0];
	const lock = `a screw from the inside through \`${mount.on.path}\` into \`${mount.wallStrip?.path}\` keeps it`;
	const fixes = lockScrew(piece, mount);
	const hook = numberOf(mount.lift);
	if (stored?.onLegs)
		return {
			origin: mount.origin,
			message: `The legs take ${showForce(display, stored.onLegs.legs)} of ${showForce(display, stored.onLegs.weight)}, and all but nothing stays on \`${mount.path}\` where they are ${showLimit(display, figures.floor)} too long: its hook is ${show(display, tenth(hook))} deep and a knock from below lifts it off; ${lock}`,
			fixes,
		};
	if (hook >= figures.hook - 1e-6) return undefined;
	return {
		origin: mount.origin,
		message: `The hook of \`${mount.path}\` is only ${show(display, tenth(hook))} deep: a knock from below lifts it off; ${lock}, or take thicker strips`,
		fixes,
	};
}

/** A line below the mount that screws the back to the wall strip. */
function lockScrew(piece: Piece, mount: MountInfo): readonly Fix[] {
	const { declaration, on, wallStrip, thick } = mount;
	const most = numberOf(on.thick) + numberOf(thick) - 3;
	const length = usualAtMost("screw", piece.display, most);
	if (!length || !wallStrip || length.toNumber() < numberOf(on.thick) + 8)
		return [];
	return [
		{
			title: "Lock the hook with a screw from the inside",
			edits: [
				{
					span: spanBehind(declaration.origin.span),
					text: `\n  join ${on.path} to ${wallStrip.path} { screw #8 x ${bare(piece.display, length)} { from front; pilot; countersink } }`,
				},
			],
		},
	];
}

function tenth(mm: number): number {
	return Math.round(mm * 10) / 10;
}
