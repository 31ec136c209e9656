// A kick at the foot of a leg that only a few screws hold at its top.

import { duration } from "../../../mechanics/fastener-values.ts";
import { kickPulls } from "../../../mechanics/legs.ts";
import { numberOf } from "../../../model/size.ts";
import type {
	FastenerRun,
	LegInfo,
	Part,
	Piece,
} from "../../../model/types.ts";
import { defineCheck } from "../../check.ts";
import { caution, showForce } from "../../force-words.ts";
import { type Hold, holdOf } from "../../holding.ts";
import { showAbout } from "../../rounded.ts";
import { listed } from "../../words.ts";

export const legKnock = defineCheck({
	id: "leg-knock",
	group: "strength",
	severity: "warning",
	summary: "A kick at the foot pries a leg off the screws at its top",
	explanation: `
Load case: a kick at the foot, level, for a moment (10 minutes in the tables). A leg that laps a side turns about the lower edge of the side when it
is kicked inward, about the top of the lap when it is kicked outward; a leg screwed up into a seat turns about the edge of its own top.

    T = kick x arm x d / sum d^2     pull on the screw at distance d from that edge

Held against the withdrawal of the screw, 2850 G^2 D for each inch of thread (nothing in end grain), and the pull of its head through the part
under it. Only legs that nothing but screws or nails holds are looked at: glue, tenons, dowels take the kick in another way. What the weight
on the leg does against it is left out.

${caution}`,
	source:
		"statics; NDS 2018 chapter 12, 12.2-2 and 12.2-6; the kick is common practice, no source",
	figures: {
		kick: {
			value: 200,
			unit: "N",
			help: "A kick at the foot, or a knock with a vacuum cleaner",
			source: "common practice, no source: about 20 kg",
		},
	},
	fires: `
piece stand {
  box case {
    outside 30 x 12 x 14
    top at 30 from floor
    panels top, bottom, left, right of ply.three-quarter
  }
  leg front-left, front-right handed {
    against outside case.left
    set-back 1 from case.front
    layer only of oak.four-quarter 2 wide from floor up to 4 above case.bottom
    join only to case.left { screw #8 x 1 1/4 { from inside; at 1 1/2, 2 1/2 up from case.bottom; pilot; countersink } }
  }
}`,
	silent: `
piece stand {
  box case {
    outside 30 x 12 x 14
    top at 30 from floor
    panels top, bottom, left, right of ply.three-quarter
  }
  leg front-left, front-right handed {
    against outside case.left
    set-back 1 from case.front
    layer only of oak.four-quarter 2 wide from floor up to 4 above case.bottom
    join only to case.left { glue; screw #8 x 1 1/4 { from inside; at 1 1/2, 2 1/2 up from case.bottom; pilot; countersink } }
  }
}`,
	find: (piece, { figures }) => {
		const told = new Map<string, { names: string[]; weak: Weak }>();
		for (const leg of piece.legs) {
			const weak = weakOf(piece, leg, figures.kick);
			if (!weak) continue;
			const { uri, span } = weak.run.origin;
			const key = `${uri} ${span.start}`;
			const known = told.get(key);
			if (!known) told.set(key, { names: [leg.path], weak });
			else {
				known.names.push(leg.path);
				if (weak.use > known.weak.use) known.weak = weak;
			}
		}
		return [...told.values()].map(({ names, weak }) => {
			const { display } = piece;
			const legs = listed(names.map((name) => `\`${name}\``));
			const start = `A kick of ${showForce(display, figures.kick)} at the foot pulls a ${weak.run.size.kind} at the top of ${legs}`;
			return {
				origin: weak.run.origin,
				message: `${start} ${whyWeak(display, weak)}`,
			};
		});
	},
});

/** What is wrong, by how much, and what would mend it. */
function whyWeak(display: Piece["display"], weak: Weak): string {
	const { hold, pull, holds, more, count } = weak;
	if (hold.endGrain)
		return "along the grain, where it holds nothing that counts: glue and dowel the leg, or drive it across the grain";
	if (!(holds > 0))
		return "and it does not reach into the wood that is to hold it: use a longer one, or glue the leg as well";
	if (!Number.isFinite(pull))
		return "and none of them stands where it holds against it: set screws apart from the edge, or glue it as well";
	return `with ${showForce(display, pull)}, and ${showForce(display, holds)} is what it holds ${showAbout(display, hold.bite)} deep: ${more} screws where there are ${count} would hold, or glue it as well`;
}

interface Weak {
	readonly run: FastenerRun;
	readonly hold: Hold;
	readonly pull: number;
	readonly holds: number;
	readonly use: number;
	readonly count: number;
	readonly more: number;
}

function weakOf(piece: Piece, leg: LegInfo, kick: number): Weak | undefined {
	const inLeg = (part: Part): boolean => leg.layers.includes(part);
	const joints = piece.joints.filter(
		({ host, member }) => inLeg(host) !== inLeg(member),
	);
	const screwed = joints.filter(({ fasteners }) =>
		fasteners.some(({ counted }) => counted),
	);
	const otherwise = joints.some(
		({ glue, kind, fasteners }) =>
			glue ||
			kind === "tenon" ||
			kind === "dado" ||
			fasteners.some(({ size }) => size.kind === "dowel"),
	);
	if (otherwise || screwed.length === 0) return undefined;
	let worst: Weak | undefined;
	for (const joint of screwed) {
		const other = inLeg(joint.host) ? joint.member : joint.host;
		for (const run of joint.fasteners) {
			if (!run.counted) continue;
			const hold = holdOf(run);
			if (!hold) continue;
			for (const { arm, distances } of turns(leg, other, run)) {
				const pull = Math.max(...kickPulls(kick, arm, distances));
				const holds = hold.pull * duration.short;
				const use = pull / holds;
				if (!(use > 1) || (worst && worst.use >= use)) continue;
				const count = run.points.length;
				worst = {
					run,
					hold,
					pull,
					holds,
					use,
					count,
					more: Math.ceil(use * count - 1e-9),
				};
			}
		}
	}
	return worst;
}

/** Each way of turning: arm of the kick about an edge, distances of the screws from it. */
function turns(
	leg: LegInfo,
	other: Part,
	run: FastenerRun,
): readonly { readonly arm: number; readonly distances: readonly number[] }[] {
	const { min, max } = leg.blank;
	const foot = min[1];
	if (Math.abs(run.direction[1]) > 0.7) {
		const arm = max[1] - foot;
		return ([0, 2] as const).flatMap((axis) => [
			{ arm, distances: run.points.map((at) => at[axis] - min[axis]) },
			{ arm, distances: run.points.map((at) => max[axis] - at[axis]) },
		]);
	}
	const low = Math.max(min[1], numberOf(other.min[1]));
	const high = Math.min(max[1], numberOf(other.max[1]));
	return [
		{ arm: low - foot, distances: run.points.map((at) => at[1] - low) },
		{ arm: high - foot, distances: run.points.map((at) => high - at[1]) },
	];
}
