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

export interface FastenerLine {
	readonly size: FastenerSize;
	readonly count: number;
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

export function fastenerLines(
	piece: Piece,
	stocks: ReadonlyMap<string, Stock>,
): readonly FastenerLine[] {
	// A mount's runs may stand among the joints, too.
	const runs = new Set<FastenerRun>([
		...piece.joints.flatMap((joint) => joint.fasteners),
		...piece.mounts.flatMap((mount) => mount.fasteners),
	]);
	const lines = new Map<string, Omit<FastenerLine, "stock" | "packs">>();
	const add = (
		size: FastenerSize,
		count: number,
		more: { tacks?: number; filled?: number; wall?: boolean },
	): void => {
		const wall = more.wall ?? false;
		const key = `${sizeKey(size)} ${wall}`;
		const known = lines.get(key);
		lines.set(key, {
			size: known?.size ?? size,
			count: (known?.count ?? 0) + count,
			tacks: (known?.tacks ?? 0) + (more.tacks ?? 0),
			filled: (known?.filled ?? 0) + (more.filled ?? 0),
			wall,
		});
	};
	for (const run of runs) {
		const count = run.points.length;
		if (count === 0) continue;
		add(run.size, count, {
			tacks: run.counted ? 0 : count,
			filled: run.filled ? count : 0,
		});
	}
	for (const mount of piece.mounts) {
		const { wall } = mount;
		const studs = studCount(mount);
		if (wall?.screw && studs !== undefined) {
			add(wall.screw, studs * wall.each, { wall: true });
		}
	}
	return [...lines.values()]
		.map((line) => withPacks(line, stocks))
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

function withPacks(
	line: Omit<FastenerLine, "stock" | "packs">,
	stocks: ReadonlyMap<string, Stock>,
): FastenerLine {
	const stock = [...stocks.values()].find(
		({ fastener }) => fastener && isSame(fastener.size, line.size),
	);
	const pack = stock?.fastener?.pack;
	return {
		...line,
		stock,
		packs: pack ? Math.ceil(line.count / pack) : undefined,
	};
}

function isSame(a: FastenerSize, b: FastenerSize): boolean {
	if (a.kind !== b.kind) return false;
	if (a.kind === "biscuit") return a.number === b.number;
	return (
		Math.abs(a.diameter - b.diameter) < 0.01 && sameValue(a.length, b.length)
	);
}
