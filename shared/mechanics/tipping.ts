// When a free-standing piece tips about the line through its front feet.

export interface Standing {
	/** N. */
	readonly weight: number;
	/** Its middle behind the line of the feet, mm. */
	readonly behind: number;
	/** Forces down in front of that line: open drawers, somebody who leans; N and mm. */
	readonly outside: readonly {
		readonly force: number;
		readonly before: number;
	}[];
}

/** What holds it, less what tips it, N mm; below 0 it tips by itself. */
export function reserve({ weight, behind, outside }: Standing): number {
	return outside.reduce(
		(left, { force, before }) => left - force * before,
		weight * behind,
	);
}

/** Horizontal pull at `height` mm that tips it, N: F = (W x - sum W_out x_out) / h; 0 if it tips by itself. */
export function tippingPull(standing: Standing, height: number): number {
	return height > 0 ? Math.max(0, reserve(standing)) / height : Infinity;
}

/** What holds it over what tips it; below 1 it tips. */
export function tippingRatio(
	standing: Standing,
	pull: number,
	height: number,
): number {
	const tips = standing.outside.reduce(
		(sum, { force, before }) => sum + force * before,
		pull * height,
	);
	return tips > 0 ? (standing.weight * standing.behind) / tips : Infinity;
}
