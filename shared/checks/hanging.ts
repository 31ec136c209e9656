// A piece on its wall: the forces at the hook, the legs and the wall screws, and what a screw holds there.

import {
	type CleatCase,
	type CleatForces,
	hungForces,
	legForces,
	railForces,
	type Weight,
} from "../mechanics/cleat-statics.ts";
import {
	bendingYield,
	combinedUse,
	dowelBearing,
	duration,
	lateralValue,
	screwWithdrawal,
	steelScrew,
} from "../mechanics/fastener-values.ts";
import { studsUnder, threadInWall } from "../mechanics/wall.ts";
import { numberOf } from "../model/size.ts";
import type { BoxInfo, LegInfo, MountInfo, Piece } from "../model/types.ts";
import { screwFigures, studGravity } from "../tables/fixings.ts";
import { holdingGravity, weightsOf } from "./standing-weights.ts";

/** The figures of `cleat-load` that the forces depend on. */
export interface HangingFigures {
	/** N, down at the front edge: somebody leans. */
	readonly lean: number;
	/** Sheet steel of metal studs: mm, MPa. */
	readonly steel: number;
	readonly steelStrength: number;
}

/** A load case: what is stored, or that and somebody who leans on the front. */
export interface LoadCase {
	readonly name: "stored" | "leaning";
	readonly duration: number;
	/** All on the hook. */
	readonly hung: CleatForces;
	/** Shared with the front legs. */
	readonly onLegs: CleatForces | undefined;
}

export interface Hanging {
	readonly mount: MountInfo;
	/** Wall face, mm along z. */
	readonly wallAt: number;
	readonly geometry: Omit<CleatCase, "weights">;
	/** Legs from the wall, mm; undefined: none carry the front. */
	readonly legsAt: number | undefined;
	/** The outer line of the front, from the wall, mm. */
	readonly front: number;
	/** How far above its lower bearing line the piece reaches, mm. */
	readonly height: number;
	readonly cases: readonly LoadCase[];
}

/** Undefined where nothing hangs: a rail that only ties a standing piece, or a piece whose weight is not known. */
export function hangingOf(
	piece: Piece,
	mount: MountInfo,
	figures: Pick<HangingFigures, "lean">,
): Hanging | undefined {
	// Where bought brackets hold is not known.
	if (mount.kind === "brackets") return undefined;
	const box = boxOf(piece, mount);
	if (!box) return undefined;
	const ties = mount.kind !== "cleat" && standsOnFloor(piece);
	if (ties) return undefined;
	const { own, loads, loadedInFront } = weightsOf(piece);
	if (!own) return undefined;
	const back = numberOf(mount.on.min[2]);
	const thick = numberOf(mount.thick);
	const wallAt = back - Math.max(numberOf(mount.gap), thick);
	const isCleat = mount.kind === "cleat" && mount.wallStrip !== undefined;
	const height = numberOf(mount.height);
	const stripBottom = numberOf(mount.strip.min[1]);
	const screwsAt = mount.wallStrip
		? numberOf(mount.wallStrip.min[1]) + height / 2
		: stripBottom + height / 2;
	const contactAt = isCleat ? stripBottom + numberOf(mount.lift) / 2 : screwsAt;
	const low = mount.wallStrip ? numberOf(mount.wallStrip.min[1]) : stripBottom;
	const geometry = {
		contact: back - thick / 2 - wallAt,
		rise: contactAt - numberOf(box.min[1]),
		slope: isCleat ? numberOf(mount.lift) / thick : 0,
		contactUp: contactAt - low,
		screwsUp: screwsAt - low,
	};
	const share = 1 / piece.mounts.length;
	const weights: readonly Weight[] = [own, ...loads].map(({ force, at }) => ({
		force: force * share,
		fromWall: at[2] - wallAt,
	}));
	const front = numberOf(box.max[2]) - wallAt;
	const legsAt = frontLegs(piece.legs, wallAt, front);
	const caseOf = (
		name: LoadCase["name"],
		lasts: number,
		all: readonly Weight[],
	): LoadCase => {
		const given = { ...geometry, weights: all };
		return {
			name,
			duration: lasts,
			hung: isCleat ? hungForces(given) : onRail(given),
			onLegs: legsAt === undefined ? undefined : legForces(given, legsAt),
		};
	};
	const cases = [caseOf("stored", duration.stored, weights)];
	if (figures.lean > 0 && !loadedInFront)
		cases.push(
			caseOf("leaning", duration.short, [
				...weights,
				{ force: figures.lean, fromWall: front },
			]),
		);
	return {
		mount,
		wallAt,
		geometry,
		legsAt,
		front,
		height: numberOf(box.max[1]) - numberOf(box.min[1]),
		cases,
	};
}

function boxOf(piece: Piece, mount: MountInfo): BoxInfo | undefined {
	return piece.boxes.find((box) => box.panels.back === mount.on);
}

/** Something that is no leg reaches the floor. */
export function standsOnFloor(piece: Piece): boolean {
	return piece.parts.some(
		(part) =>
			part.role !== "layer" &&
			part.role !== "aid" &&
			part.role !== "wall-strip" &&
			numberOf(part.min[1]) < 1,
	);
}

/** Where the foremost legs stand, from the wall; legs in the rear third stand beside the cleat and carry no front. */
function frontLegs(
	legs: readonly LegInfo[],
	wallAt: number,
	front: number,
): number | undefined {
	const middles = legs.map(
		({ blank }) => (blank.min[2] + blank.max[2]) / 2 - wallAt,
	);
	const foremost = Math.max(...middles);
	return foremost > front / 3 ? foremost : undefined;
}

function onRail(given: CleatCase): CleatForces {
	const { weight, pull } = railForces(given.weights, given.rise);
	return {
		weight,
		fromWall: weight > 0 ? (pull * given.rise) / weight : 0,
		down: weight,
		lean: pull,
		legs: 0,
		thrust: [pull, pull],
		pull: [pull, pull],
		climbs: false,
		lifts: false,
	};
}

/** What one screw holds in the wall, and how many are sure to find it. */
export interface WallHold {
	/** Screws that are sure of a stud, and that find one if the strip is set so. */
	readonly least: number;
	readonly most: number;
	readonly studs: readonly [number, number];
	/** How far each reaches into the stud, and how much of that is thread, mm. */
	readonly reach: number;
	readonly thread: number;
	/** N, for what is stored; long loads and short ones times their duration factor. */
	readonly withdrawal: number;
	readonly lateral: number;
	/** How it was worked out, in a few words. */
	readonly by: string;
}

/** Undefined where the wall, its screws or what they hold in is not known: no figure is guessed. */
export function wallHold(
	mount: MountInfo,
	figures: Omit<HangingFigures, "lean">,
): WallHold | undefined {
	const { wall } = mount;
	if (!wall?.screw || !wall.studs || wall.masonry) return undefined;
	const strip = mount.wallStrip ?? mount.strip;
	const studs = studsUnder(numberOf(strip.length), numberOf(wall.studs));
	// A rail is screwed through the back, too.
	const through =
		numberOf(mount.thick) + (mount.wallStrip ? 0 : numberOf(mount.on.thick));
	const cover = wall.drywall ? numberOf(wall.drywall) : 0;
	const { reach, thread } = threadInWall(
		numberOf(wall.screw.length),
		through,
		cover,
	);
	const { number, diameter } = wall.screw;
	const counts = {
		// There is always one stud to be found.
		least: Math.max(1, studs.least) * wall.each,
		most: studs.most * wall.each,
		studs: [Math.max(1, studs.least), studs.most] as const,
		reach,
		thread,
	};
	if (wall.studKind === "metal")
		return {
			...counts,
			...steelScrew(diameter, figures.steel, figures.steelStrength),
			by: `AISI S100 for ${figures.steel} mm of steel`,
		};
	const gravity = holdingGravity(strip.stock);
	if (gravity === undefined || reach <= 0) return undefined;
	const { root } = screwFigures(number, diameter);
	const lateral = lateralValue({
		diameter: root,
		bendingYield: bendingYield(diameter),
		main: { length: reach, bearing: dowelBearing(studGravity, root) },
		side: { length: through, bearing: dowelBearing(gravity, root) },
		gap: cover,
	});
	return (
		lateral && {
			...counts,
			withdrawal: screwWithdrawal(studGravity, diameter) * thread,
			lateral: lateral.value,
			by: `NDS 2018 for studs of specific gravity ${studGravity}`,
		}
	);
}

/** The load case and the way of standing that ask most of the wall, and how much of `screws` screws it uses: 1 = all. */
export interface WorstUse {
	readonly load: LoadCase;
	readonly forces: CleatForces;
	readonly legsOff: boolean;
	readonly use: number;
}

export function worstUse(
	hanging: Hanging,
	hold: WallHold,
	screws: number,
): WorstUse {
	let worst: WorstUse | undefined;
	for (const load of hanging.cases)
		for (const forces of [load.hung, load.onLegs]) {
			if (!forces) continue;
			const use =
				combinedUse(
					forces.pull[1] / screws,
					Math.max(0, forces.down) / screws,
					hold.withdrawal,
					hold.lateral,
				) / load.duration;
			if (!worst || use > worst.use)
				worst = {
					load,
					forces,
					legsOff: load.onLegs !== undefined && forces === load.hung,
					use,
				};
		}
	return worst as WorstUse;
}
