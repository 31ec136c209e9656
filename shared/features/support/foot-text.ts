// What the floor pushes under a leg: of the wood alone, and with the loads that the design gives.

import { showForce } from "../../checks/force-words.ts";
import { type PlacedWeight, weightsOf } from "../../checks/standing-weights.ts";
import { type Foot, footReactions } from "../../mechanics/legs.ts";
import { numberOf } from "../../model/size.ts";
import type { LegInfo, Piece } from "../../model/types.ts";

/** Feet nearer to one level than this stand on one floor, mm. */
const level = 1;

/**
 * Undefined where the legs do not carry the piece alone: it hangs on a mount, stands on something else as well, or has fewer
 * than three feet on the floor.
 */
export function footText(piece: Piece, leg: LegInfo): string | undefined {
	const { own, loads } = weightsOf(piece);
	if (!own || piece.mounts.length > 0 || piece.legs.length < 3)
		return undefined;
	const floor = Math.min(...piece.legs.map(({ foot }) => numberOf(foot)));
	const standing = piece.legs.filter(
		({ foot }) => numberOf(foot) < floor + level,
	);
	const layers = new Set(piece.legs.flatMap((one) => one.layers));
	const others = piece.parts.some(
		(part) =>
			part.role !== "aid" &&
			!layers.has(part) &&
			numberOf(part.min[1]) < floor + level,
	);
	const index = standing.indexOf(leg);
	if (others || index < 0 || standing.length < 3) return undefined;
	const feet = standing.map(footOf);
	const empty = under(feet, [own], index);
	const loaded = loads.length > 0 ? under(feet, [own, ...loads], index) : empty;
	if (empty === undefined || loaded === undefined) return undefined;
	const { display } = piece;
	const full =
		loads.length === 0
			? ""
			: loaded < 0
				? `, and lifts off with its loads: ${showForce(display, -loaded)} are missing to hold it down`
				: `, ${showForce(display, loaded)} with its loads`;
	return `The floor pushes ${showForce(display, empty)} under its foot${full} (a stiff piece on a level floor)`;
}

function footOf({ blank: { min, max } }: LegInfo): Foot {
	return { x: (min[0] + max[0]) / 2, z: (min[2] + max[2]) / 2 };
}

/** N under one of the feet; undefined where they stand on one point. */
function under(
	feet: readonly Foot[],
	weights: readonly PlacedWeight[],
	index: number,
): number | undefined {
	let sum = 0;
	for (const { force, at } of weights) {
		const reactions = footReactions(feet, force, { x: at[0], z: at[2] });
		const one = reactions?.[index];
		if (one === undefined) return undefined;
		sum += one;
	}
	return sum;
}
