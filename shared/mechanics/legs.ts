// What the floor pushes under each foot, and what a kick at a foot asks of the screws at its top.

import { solveLinear } from "./linear.ts";

/** Seen from above, mm. */
export interface Foot {
	readonly x: number;
	readonly z: number;
}

/**
 * N under each foot of a stiff piece on a floor that gives alike everywhere: reactions a + b x + c z that balance the weight
 * at `at`. With three feet that is statics alone; with two (x differs, z alike) the lever rule. Below 0: the foot lifts.
 * Undefined where the feet stand on one point.
 */
export function footReactions(
	feet: readonly Foot[],
	weight: number,
	at: Foot,
): readonly number[] | undefined {
	if (feet.length === 0) return undefined;
	const n = feet.length;
	// About the middle of the feet, so that the numbers are of one size.
	const mx = feet.reduce((sum, { x }) => sum + x, 0) / n;
	const mz = feet.reduce((sum, { z }) => sum + z, 0) / n;
	const sum = (of: (x: number, z: number) => number): number =>
		feet.reduce((all, { x, z }) => all + of(x - mx, z - mz), 0);
	const xx = sum((x) => x * x);
	const zz = sum((_, z) => z * z);
	const xz = sum((x, z) => x * z);
	const mean = weight / n;
	const px = weight * (at.x - mx);
	const pz = weight * (at.z - mz);
	const tiny = 1e-9 * (xx + zz);
	let slopes: readonly number[] | undefined;
	if (zz <= tiny || xx <= tiny || xx * zz - xz * xz <= tiny * (xx + zz)) {
		// In a row: only along it can they balance.
		if (!(xx + zz > 0)) return n === 1 ? [weight] : undefined;
		const [ux, uz] =
			xx >= zz
				? [1, xz / xx].map((one) => one / Math.hypot(1, xz / xx))
				: [xz / zz, 1].map((one) => one / Math.hypot(1, xz / zz));
		const along = (px * (ux as number) + pz * (uz as number)) / (xx + zz);
		slopes = [along * (ux as number), along * (uz as number)];
	} else {
		slopes = solveLinear(
			[
				[xx, xz],
				[xz, zz],
			],
			[px, pz],
		);
	}
	if (!slopes) return undefined;
	const [b, c] = slopes as readonly [number, number];
	return feet.map(({ x, z }) => mean + b * (x - mx) + c * (z - mz));
}

/**
 * The pull on each screw, N, when a leg that laps a side is kicked at its foot: it turns about an edge, and the screws share
 * the moment by their distance from that edge, T_i = M d_i / sum d^2. `arm` is from the kick to the edge, `distances` from the
 * edge to the screws, mm; a screw at the edge or behind it holds nothing.
 */
export function kickPulls(
	force: number,
	arm: number,
	distances: readonly number[],
): readonly number[] {
	const arms = distances.map((distance) => Math.max(0, distance));
	const squares = arms.reduce((sum, one) => sum + one * one, 0);
	return arms.map((one) =>
		squares > 0 ? (force * arm * one) / squares : Infinity,
	);
}
