// Screws, brads, dowels and the like by count and by the box.

import { numberOf, sameValue } from "../model/size.ts";
import type {
	FastenerRun,
	FastenerSize,
	MountInfo,
	Piece,
	Stock,
} from "../model/types.ts";
import { compareStrings } from "../text/compare.ts";
import { type PieceToBuy, stockKey } from "./piece-to-buy.ts";

export interface FastenerLine {
	readonly size: FastenerSize;
	/** That the designs need. */
	readonly count: number;
	/** How many more are bought, as `spare` says. */
	readonly spare: number;
	/** The count of each piece, by its place in the list. */
	readonly shares: readonly number[];
	/** Among them such as only hold while the glue sets. */
	readonly tacks: number;
	/** Heads that are set and filled. */
	readonly filled: number;
	/** Go into the wall: counted by the studs that the strip meets at the least. */
	readonly wall: boolean;
	/** From the stock file, if it sells this size. */
	readonly stock: Stock | undefined;
	readonly packs: number | undefined;
}

/** Those of all pieces together, so that a box is shared. */
export function fastenerLines(
	pieces: readonly PieceToBuy[],
): readonly FastenerLine[] {
	const lines = new Map<string, Counting>();
	pieces.forEach(({ piece, stocks }, at) => {
		for (const use of usesOf(piece)) {
			const stock = stockFor(use.size, stocks);
			const key = `${sizeKey(use.size)} ${use.wall} ${stockKey(stock)}`;
			const line = lines.get(key) ?? {
				size: use.size,
				wall: use.wall,
				stock,
				count: 0,
				tacks: 0,
				filled: 0,
				spare: 0,
				shares: pieces.map(() => 0),
			};
			line.count += use.count;
			line.tacks += use.tacks;
			line.filled += use.filled;
			line.spare += use.count * piece.spare;
			line.shares[at] = (line.shares[at] ?? 0) + use.count;
			lines.set(key, line);
		}
	});
	return [...lines.values()]
		.map((line): FastenerLine => {
			const spare = Math.ceil(line.spare - 1e-9);
			const pack = line.stock?.fastener?.pack;
			return {
				...line,
				spare,
				packs: pack ? Math.ceil((line.count + spare) / pack) : undefined,
			};
		})
		.sort(
			(a, b) =>
				compareStrings(a.size.kind, b.size.kind) ||
				a.size.diameter - b.size.diameter ||
				numberOf(a.size.length) - numberOf(b.size.length) ||
				Number(a.wall) - Number(b.wall),
		);
}

/** `screw #8 x 1 1/4`: the label says the kind only of some. */
export function fastenerName({ kind, label }: FastenerLine["size"]): string {
	return label.startsWith(kind) ? label : `${kind} ${label}`;
}

/** Studs that a strip on the wall meets wherever it hangs, one at the least; undefined where the design does not say how they stand. */
function studCount(mount: MountInfo): number | undefined {
	const strip = mount.wallStrip ?? mount.strip;
	const every = mount.wall?.studs ? numberOf(mount.wall.studs) : 0;
	const length = numberOf(strip.max[0]) - numberOf(strip.min[0]);
	return every > 0 ? Math.max(1, Math.floor(length / every)) : undefined;
}

function sizeKey(size: FastenerSize): string {
	return [
		size.kind,
		size.number ?? "",
		size.diameter,
		size.length.value.toString(),
	].join(" ");
}

interface Counting {
	readonly size: FastenerSize;
	readonly wall: boolean;
	readonly stock: Stock | undefined;
	count: number;
	tacks: number;
	filled: number;
	spare: number;
	readonly shares: number[];
}

interface Use {
	readonly size: FastenerSize;
	readonly count: number;
	readonly tacks: number;
	readonly filled: number;
	readonly wall: boolean;
}

function usesOf(piece: Piece): readonly Use[] {
	// A mount's runs may stand among the joints, too.
	const runs = new Set<FastenerRun>([
		...piece.joints.flatMap((joint) => joint.fasteners),
		...piece.mounts.flatMap((mount) => mount.fasteners),
	]);
	return [
		...[...runs].flatMap((run): Use[] => {
			const count = run.points.length;
			return count === 0
				? []
				: [
						{
							size: run.size,
							count,
							tacks: run.counted ? 0 : count,
							filled: run.filled ? count : 0,
							wall: false,
						},
					];
		}),
		...piece.mounts.flatMap((mount): Use[] => {
			const { wall } = mount;
			const studs = studCount(mount);
			return wall?.screw && studs !== undefined
				? [
						{
							size: wall.screw,
							count: studs * wall.each,
							tacks: 0,
							filled: 0,
							wall: true,
						},
					]
				: [];
		}),
	];
}

function stockFor(
	size: FastenerSize,
	stocks: ReadonlyMap<string, Stock>,
): Stock | undefined {
	return [...stocks.values()].find(
		({ fastener }) => fastener && isSame(fastener.size, size),
	);
}

function isSame(a: FastenerSize, b: FastenerSize): boolean {
	if (a.kind !== b.kind) return false;
	if (a.kind === "biscuit") return a.number === b.number;
	return (
		Math.abs(a.diameter - b.diameter) < 0.01 && sameValue(a.length, b.length)
	);
}
