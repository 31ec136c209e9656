// What the yield-limit equations need of screws, and the specific gravity that wood and panels are reckoned to hold with.

/** A wood screw by its number; mm and MPa. */
export interface ScrewRow {
	readonly number: number;
	/** Diameter at the root of the thread. */
	readonly root: number;
	/** Diameter of a flat head. */
	readonly head: number;
}

const inch = 25.4;

/**
 * Root diameters: NDS Appendix L, from memory (#4 varies by maker). Heads: ASME B18.6.1, flat head, from memory.
 * Numbers between two rows are read off the straight line.
 */
export const screwRows: readonly ScrewRow[] = (
	[
		[4, 0.086, 0.225],
		[6, 0.113, 0.279],
		[8, 0.131, 0.332],
		[10, 0.152, 0.385],
		[12, 0.171, 0.438],
		[14, 0.196, 0.507],
	] as const
).map(([number, root, head]) => ({
	number,
	root: root * inch,
	head: head * inch,
}));

/** mm; below the first and above the last row the shares of the shank stay as they are there. */
export function screwFigures(
	number: number | undefined,
	diameter: number,
): { readonly root: number; readonly head: number } {
	const first = screwRows[0] as ScrewRow;
	const last = screwRows.at(-1) as ScrewRow;
	if (number === undefined || number < first.number || number > last.number) {
		const share = number !== undefined && number > last.number ? 0.81 : 0.77;
		return { root: share * diameter, head: 2 * diameter };
	}
	const above = screwRows.findIndex((row) => row.number >= number);
	const high = screwRows[above] as ScrewRow;
	const low = screwRows[Math.max(0, above - 1)] as ScrewRow;
	if (high.number === low.number) return high;
	const share = (number - low.number) / (high.number - low.number);
	const between = (a: number, b: number): number => a + (b - a) * share;
	return {
		root: between(low.root, high.root),
		head: between(low.head, high.head),
	};
}

/** Framing timber of unknown kind, by the softest that is sold in quantity: spruce-pine-fir, NDS Table 12.3.3A. */
export const studGravity = 0.42;

/**
 * Specific gravity that panels hold with. Plywood: NDS Table 12.3.3B, from memory: 0.50 for the best grade, 0.42 for all others.
 * All-birch plywood is heavier (0.60 to 0.63 by its weight); 0.50 is on the safe side. Boards of fibre and chips have no row
 * there: the 0.42 is common practice, no source.
 */
export const panelGravity: Readonly<Record<string, number>> = {
	"birch plywood": 0.5,
	"softwood plywood": 0.42,
	"hardwood plywood": 0.42,
	mdf: 0.42,
	particleboard: 0.42,
};
