// What a run of fasteners holds, along its axis and across it, by the reference values: for checks of what carries a pull.

import {
	bendingYield,
	dowelBearing,
	headPullThrough,
	lateralValue,
	nailWithdrawal,
	screwWithdrawal,
} from "../mechanics/fastener-values.ts";
import type { FastenerRun, Part } from "../model/types.ts";
import { screwFigures } from "../tables/fixings.ts";
import { drivenIn } from "./driven.ts";
import { holdingGravity } from "./standing-weights.ts";

export interface Hold {
	/** N for each fastener; 0 where nothing is counted (end grain, nothing reached). */
	readonly pull: number;
	readonly shear: number;
	/** Driven along the grain of the part that holds it. */
	readonly endGrain: boolean;
	/** mm in the part that holds it, at the shallowest. */
	readonly bite: number;
}

/** NDS: lateral value in end grain (C_eg, from memory). */
const endGrainShear = 0.67;

/** Undefined where what it holds in is not known, and for dowels and biscuits. */
export function holdOf(run: FastenerRun): Hold | undefined {
	const { size, into, through, direction } = run;
	if (size.kind === "dowel" || size.kind === "biscuit") return undefined;
	const inside = holdingGravity(into.stock);
	const outside = holdingGravity(through.stock);
	if (inside === undefined || outside === undefined) return undefined;
	let bite = Number.POSITIVE_INFINITY;
	let passed = Number.POSITIVE_INFINITY;
	for (const { way, wood } of drivenIn(run)) {
		bite = Math.min(bite, Math.min(way.tip, wood.to) - wood.from);
		passed = Math.min(passed, wood.passed - way.sunk);
	}
	if (!Number.isFinite(bite)) return undefined;
	bite = Math.max(0, bite);
	const along = isEndGrain(into, direction);
	const screw = size.kind === "screw";
	const figures = screw
		? screwFigures(size.number, size.diameter)
		: { root: size.diameter, head: 2 * size.diameter };
	const thread = screw
		? Math.min(bite, (2 / 3) * size.length.value.toNumber())
		: bite;
	const drawn = screw
		? screwWithdrawal(inside, size.diameter)
		: nailWithdrawal(inside, size.diameter);
	const lateral = lateralValue({
		diameter: figures.root,
		bendingYield: bendingYield(size.diameter),
		main: { length: bite, bearing: dowelBearing(inside, figures.root) },
		side: {
			length: Math.max(0, passed),
			bearing: dowelBearing(outside, figures.root),
		},
	});
	return {
		pull: along
			? 0
			: Math.min(
					drawn * thread,
					headPullThrough(outside, figures.head, Math.max(0, passed)),
				),
		shear: (lateral?.value ?? 0) * (along ? endGrainShear : 1),
		endGrain: along,
		bite,
	};
}

/** Solid wood along its length; the edge of a sheet is taken for side grain of a weaker kind elsewhere. */
function isEndGrain(part: Part, direction: readonly number[]): boolean {
	if (part.stock.kind !== "board") return false;
	const axis = part.place.axes[0];
	const index = axis.endsWith("x") ? 0 : axis.endsWith("y") ? 1 : 2;
	return Math.abs(direction[index] ?? 0) > 0.7;
}
