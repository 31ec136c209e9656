// The space that a fastener takes up in the wood.

import { type Envelope, roundEnvelope } from "../geometry/cover.ts";
import type { Axis, Vec3 } from "../geometry/solid.ts";
import { biscuits } from "../model/fastener-sizes.ts";
import type { FastenerRun } from "../model/types.ts";
import { waysIn } from "./driven.ts";
import { blankOf } from "./neighbours.ts";

/** The space of one fastener: a round one its shank, a biscuit a flat box that lies along the joint. */
export function envelopeAt(run: FastenerRun, point: Vec3): Envelope {
	const { size } = run;
	const biscuit =
		size.kind === "biscuit" && size.number !== undefined
			? biscuits[size.number]
			: undefined;
	if (biscuit) {
		const along = axisVector(alongJoint(run));
		return {
			centre: point,
			axes: [run.direction, along, crossProduct(run.direction, along)],
			half: [biscuit.width / 2, biscuit.length / 2, biscuit.thick / 2],
			radius: 0,
		};
	}
	const [first = point, second = point] = waysIn(run, point).map(
		({ start, direction, tip }): Vec3 => [
			start[0] + direction[0] * tip,
			start[1] + direction[1] * tip,
			start[2] + direction[2] * tip,
		],
	);
	return roundEnvelope(second, first, size.diameter / 2);
}

/** The axis that a fastener is driven along. */
export function axisDriven(run: FastenerRun): Axis {
	const size = run.direction.map(Math.abs);
	return size.indexOf(Math.max(...size)) as Axis;
}

/** The longer way of the face on which the two parts meet. */
function alongJoint(run: FastenerRun): Axis {
	const driven = axisDriven(run);
	const a = blankOf(run.through);
	const b = blankOf(run.into);
	const shared = (axis: Axis): number =>
		Math.min(a.max[axis], b.max[axis]) - Math.max(a.min[axis], b.min[axis]);
	const [one, other] = ([0, 1, 2] as const).filter(
		(axis) => axis !== driven,
	) as [Axis, Axis];
	return shared(one) >= shared(other) ? one : other;
}

function axisVector(axis: Axis): Vec3 {
	return [axis === 0 ? 1 : 0, axis === 1 ? 1 : 0, axis === 2 ? 1 : 0];
}

function crossProduct(a: Vec3, b: Vec3): Vec3 {
	return [
		a[1] * b[2] - a[2] * b[1],
		a[2] * b[0] - a[0] * b[2],
		a[0] * b[1] - a[1] * b[0],
	];
}
