// Tells which parts are cut alike: the same wood taken out in the same places, or in mirrored ones.

import { handedness, solidToLocal } from "../geometry/place.ts";
import { commonBox, isEmpty, planeOf, type Vec3 } from "../geometry/solid.ts";
import { sameValue } from "../model/size.ts";
import type { Part } from "../model/types.ts";

export interface Likeness {
	/** Equal for parts that are the same, or mirror images of each other. */
	readonly shape: string;
	/** Of two mirror images one has 1 and the other -1; 0 = it is its own mirror image. */
	readonly hand: 1 | -1 | 0;
}

/** One way of turning a board over: which of its axes are turned round, and whether width and thickness change places. */
interface Turn {
	readonly flips: readonly [boolean, boolean, boolean];
	readonly swapped: boolean;
}

/**
 * What is taken out of a part, seen in its own axes, told so that it does not depend on how the part lies: of all ways to
 * turn a board over, the one whose description comes first in the alphabet. To about a micrometre. Mirror images differ only
 * in `hand`. The size of the board is not in it.
 */
export function likenessOf(part: Part): Likeness {
	const { solid } = part;
	if (solid.cuts.length === 0 && solid.outlines.length === 0) {
		return { shape: "", hand: 0 };
	}
	const turned = firstOf(part, 0);
	const mirrored = firstOf(part, 1);
	// A mirrored placement shows the part as its own mirror image.
	const [own, other] =
		handedness(part.place.axes) === -1
			? [mirrored, turned]
			: [turned, mirrored];
	return own === other
		? { shape: own, hand: 0 }
		: own < other
			? { shape: own, hand: 1 }
			: { shape: other, hand: -1 };
}

function firstOf(part: Part, parity: 0 | 1): string {
	const square = sameValue(part.width, part.thick);
	let first: string | undefined;
	for (let bits = 0; bits < (square ? 16 : 8); bits += 1) {
		const turn: Turn = {
			flips: [(bits & 1) !== 0, (bits & 2) !== 0, (bits & 4) !== 0],
			swapped: (bits & 8) !== 0,
		};
		if (parityOf(turn) !== parity) continue;
		const text = describe(part, turn);
		if (first === undefined || text < first) first = text;
	}
	return first ?? "";
}

function parityOf({ flips, swapped }: Turn): number {
	return (flips.filter(Boolean).length + (swapped ? 1 : 0)) % 2;
}

function describe(part: Part, turn: Turn): string {
	const { box, cuts, outlines } = solidToLocal(part.place, part.solid);
	const place = (point: Vec3): Vec3 => {
		const at = ([0, 1, 2] as const).map((axis) =>
			stepsOf(
				turn.flips[axis]
					? box.max[axis] - point[axis]
					: point[axis] - box.min[axis],
			),
		) as [number, number, number];
		return turn.swapped ? [at[0], at[2], at[1]] : at;
	};
	const taken = cuts
		.map((cut) => commonBox(cut, box))
		.filter((cut) => !isEmpty(cut))
		.map((cut) => {
			const a = place(cut.min);
			const b = place(cut.max);
			return [0, 1, 2]
				.map((axis) => {
					const [from, to] = [a[axis] as number, b[axis] as number];
					return `${Math.min(from, to)}:${Math.max(from, to)}`;
				})
				.join(" ");
		});
	const shaped = outlines.map(({ plane, points }) => {
		const [u, v] = plane === "xy" ? [0, 1] : plane === "yz" ? [1, 2] : [0, 2];
		const spread = points.map((point): Vec3 => {
			const at: [number, number, number] = [...box.min];
			at[u as 0 | 1 | 2] = point[0];
			at[v as 0 | 1 | 2] = point[1];
			return place(at);
		});
		const axis = (which: number): 0 | 1 | 2 =>
			(turn.swapped && which > 0 ? 3 - which : which) as 0 | 1 | 2;
		const [a, b] = [axis(u as number), axis(v as number)].sort();
		const name = planeOf(a as 0 | 1 | 2, b as 0 | 1 | 2);
		return `${name} ${loop(spread.map((at) => [at[a as number] as number, at[b as number] as number]))}`;
	});
	return [...taken.sort(), ...shaped.sort()].join("; ");
}

/** A closed line, from its first corner on and in one sense, however it was given. */
function loop(points: readonly (readonly [number, number])[]): string {
	let twiceArea = 0;
	points.forEach(([u, v], index) => {
		const next = points[(index + 1) % points.length] as readonly [
			number,
			number,
		];
		twiceArea += u * next[1] - next[0] * v;
	});
	const ordered = twiceArea < 0 ? points.toReversed() : [...points];
	let start = 0;
	ordered.forEach(([u, v], index) => {
		const [bestU, bestV] = ordered[start] as readonly [number, number];
		if (u < bestU || (u === bestU && v < bestV)) start = index;
	});
	return [...ordered.slice(start), ...ordered.slice(0, start)]
		.map(([u, v]) => `${u},${v}`)
		.join(" ");
}

/**
 * Steps of 1/1024 mm. Binary fractions of an inch and tenths of a millimetre never lie half-way between two of them, where
 * floating noise would tell equal parts apart.
 */
function stepsOf(mm: number): number {
	// Adding zero turns -0 into 0.
	return Math.round(mm * 1_024) + 0;
}
