// The rectangles that the parts of some pieces want of each material: a part, a strip of one, or several from one blank.

import type { Rectangle } from "../cutting/index.ts";
import { lacking } from "../model/already-cut.ts";
import { cleatPair } from "../model/constructs/cleat-pair.ts";
import type { Size } from "../model/size.ts";
import { isSoldInSection } from "../model/stock-sizes.ts";
import type {
	AidInfo,
	Display,
	MountInfo,
	Part,
	Piece,
	Stock,
} from "../model/types.ts";
import { compositeOf } from "./matched.ts";
import {
	firstSawn,
	type PlanSize,
	roughStrip,
	trimStrip,
	withAllowance,
} from "./rough-size.ts";
import { leavesOf } from "./seams.ts";
import { stepsOf } from "./steps.ts";
import type { LaidPart, LaidRegion, PieceToCut } from "./types.ts";

/** A rectangle to be cut out, and what it is for. */
export interface Blank {
	readonly length: number;
	readonly width: number;
	/** All that it gives, in order. */
	readonly parts: readonly LaidPart[];
	/** What stands in its place in the plan. */
	readonly lay: (place: Rectangle, turned: boolean) => LaidRegion;
	/** Of matched parts: what is laid if they do not go into one sheet. */
	readonly apart?: readonly Blank[];
}

/** What is wanted of one material. */
export interface Demand {
	readonly stock: Stock;
	/** Of the first piece that wants it. */
	readonly display: Display;
	readonly blanks: readonly Blank[];
	/** Names of the pieces that want it. */
	readonly pieces: readonly string[];
	/** The shops that it is cut in. */
	readonly shops: readonly Piece["shop"][];
	readonly kerf: number;
	/** Things that were settled on the way, a line each. */
	readonly notes: readonly string[];
}

/** By material, in the order in which the pieces first use them. */
export function demandsOf(pieces: readonly PieceToCut[]): readonly Demand[] {
	const groups = new Map<string, { stock: Stock; uses: Use[] }>();
	pieces.forEach((one, at) => {
		const number = pieces.length > 1 ? String(at + 1) : "";
		const uses = usesOf(one, at, number);
		for (const [stock, use] of uses) {
			const key = `${stock.declaration.origin.uri} ${stock.id}`;
			const known = groups.get(key);
			if (known) known.uses.push(use);
			else groups.set(key, { stock, uses: [use] });
		}
	});
	return [...groups.values()].map(({ stock, uses }) => demandOf(stock, uses));
}

/** What one piece wants of one material. */
interface Use {
	readonly from: PieceToCut;
	readonly at: number;
	/** Before its labels. */
	readonly number: string;
	readonly parts: Part[];
	readonly aids: AidInfo[];
}

function usesOf(
	from: PieceToCut,
	at: number,
	number: string,
): ReadonlyMap<Stock, Use> {
	const { piece } = from;
	const uses = new Map<Stock, Use>();
	const use = (stock: Stock): Use => {
		const known = uses.get(stock);
		if (known) return known;
		const made: Use = { from, at, number, parts: [], aids: [] };
		uses.set(stock, made);
		return made;
	};
	const standing = cutAlready(piece);
	for (const part of piece.parts) {
		if (part.role === "aid" || standing.has(part)) continue;
		use(part.stock).parts.push(part);
	}
	for (const aid of piece.aids) {
		if (aid.stock) use(aid.stock).aids.push(aid);
	}
	return uses;
}

/** Parts that exist and are large enough: they need no wood. */
function cutAlready(piece: Piece): ReadonlySet<Part> {
	return new Set(
		piece.cuts
			.filter((cut) => {
				const { length, width } = lacking(piece, cut);
				return !length && !width;
			})
			.map(({ part }) => part),
	);
}

function demandOf(stock: Stock, uses: readonly Use[]): Demand {
	const kerfs = uses.map(({ from }) => stepsOf(from.piece.shop.kerf));
	const kerf = stock.kind === "veneer" ? 0 : Math.max(...kerfs);
	const notes: string[] = [];
	const blanks = uses.flatMap((use) => {
		const once = blanksOf(stock, use, kerf, notes);
		const copies = Math.max(0, Math.floor(use.from.count ?? 1));
		return Array.from({ length: copies }, () => once).flat();
	});
	const [first] = uses as [Use];
	return {
		stock,
		display: first.from.piece.display,
		blanks,
		pieces: [...new Set(uses.map(({ from }) => from.piece.name))],
		shops: [...new Set(uses.map(({ from }) => from.piece.shop))],
		kerf,
		notes,
	};
}

function blanksOf(
	stock: Stock,
	use: Use,
	kerf: number,
	notes: string[],
): readonly Blank[] {
	const { piece } = use.from;
	const blanks: Blank[] = [];
	const done = new Set<Part>();
	const singles = (part: Part): readonly Blank[] =>
		sawnOf(stock, part, piece, notes).map(({ size, share }) =>
			single(laidPart(use, part, size, share)),
		);
	const paired = new Map<Part, MountInfo>(
		piece.mounts.flatMap((mount) =>
			mount.kind === "cleat" ? [[mount.strip, mount] as const] : [],
		),
	);
	const matched = new Map<Part, Piece["matches"][number]>(
		piece.matches.flatMap((match) =>
			match.parts.map((part) => [part, match] as const),
		),
	);
	for (const part of use.parts) {
		if (done.has(part)) continue;
		const match = matched.get(part);
		const mount = paired.get(part);
		const wallStrip = mount?.wallStrip;
		if (match) {
			// What is cut already stands out of the row.
			const parts = match.parts.filter((one) => use.parts.includes(one));
			for (const one of parts) done.add(one);
			const apart = parts.flatMap(singles);
			const whole = apart.length === parts.length && apart.length > 1;
			if (!whole && apart.length > parts.length)
				notes.push(
					`${named(parts)} are not matched: one of them is wider than a sheet and has seams of its own`,
				);
			blanks.push(...(whole ? [compositeOf(apart, match.way, kerf)] : apart));
		} else if (mount && wallStrip && use.parts.includes(wallStrip)) {
			done.add(wallStrip);
			blanks.push(pairOf(stock, use, mount, part, wallStrip));
		} else blanks.push(...singles(part));
		done.add(part);
	}
	for (const aid of use.aids) {
		const size = isRipped(stock)
			? withAllowance(aid, piece.display.unit, 1, true)
			: aid;
		blanks.push(single(laidAid(use, aid, size)));
	}
	return blanks;
}

function named(parts: readonly Part[]): string {
	return parts.map(({ path }) => `\`${path}\``).join(", ");
}

/** Rough boards, which are jointed and trimmed. */
function isRipped(stock: Stock): boolean {
	return stock.kind === "board" && !isSoldInSection(stock);
}

/** The rectangles of one part: most have one; a panel of strips and a leaf with seams have several. */
function sawnOf(
	stock: Stock,
	part: Part,
	piece: Piece,
	notes: string[],
): readonly { readonly size: PlanSize; readonly share?: string }[] {
	const { display } = piece;
	if (part.role === "trim") return [{ size: trimStrip(part, display) }];
	if (stock.kind === "veneer") return leavesOf(part, stock, display, notes);
	if (!isRipped(stock)) return [{ size: firstSawn(part) }];
	const size = roughStrip(part, display);
	const strips = Math.max(1, part.strips ?? 1);
	return strips === 1
		? [{ size }]
		: Array.from({ length: strips }, (_, at) => ({
				size,
				share: `strip ${at + 1} of ${strips}`,
			}));
}

function laidPart(
	{ from, at, number }: Use,
	part: Part,
	size: PlanSize,
	share: string | undefined,
): LaidPart {
	return {
		label: `${number}${from.labels.get(part.id) ?? part.path}`,
		id: part.id,
		path: part.path,
		piece: from.piece.name,
		pieceAt: at,
		part,
		aid: undefined,
		share,
		length: stepsOf(size.length),
		width: stepsOf(size.width),
	};
}

function laidAid(
	{ from, at, number }: Use,
	aid: AidInfo,
	size: PlanSize,
): LaidPart {
	return {
		label: `${number}${aid.name}`,
		id: `${from.piece.name}.${aid.name}`,
		path: aid.name,
		piece: from.piece.name,
		pieceAt: at,
		part: undefined,
		aid,
		share: undefined,
		length: stepsOf(size.length),
		width: stepsOf(size.width),
	};
}

function single(of: LaidPart): Blank {
	const { length, width } = of;
	return {
		length,
		width,
		parts: [of],
		lay: (place, turned) => ({ ...place, kind: "part", of, turned }),
	};
}

/**
 * Two strips from one blank. On the upper face the saw comes in at the height of the first one, on the lower face it goes
 * out at its short side; there the second one has its full height.
 */
function pairOf(
	stock: Stock,
	use: Use,
	mount: MountInfo,
	first: Part,
	second: Part,
): Blank {
	const { piece } = use.from;
	const pair = cleatPair(
		mount.thick,
		mount.height,
		mount.bevel,
		piece.shop.kerf,
	);
	const sawn = (length: Size, width: Size): PlanSize =>
		isRipped(stock)
			? withAllowance({ length, width }, piece.display.unit, 1, true)
			: { length, width };
	const blank = sawn(first.length, pair.blank);
	const of = [first, second].map((part) =>
		laidPart(
			use,
			part,
			{ length: blank.length, width: mount.height },
			undefined,
		),
	) as [LaidPart, LaidPart];
	return {
		length: stepsOf(blank.length),
		width: stepsOf(blank.width),
		parts: of,
		lay: (place, turned) => ({
			...place,
			kind: "pair",
			of,
			turned,
			bevel: mount.bevel,
			upper: stepsOf(mount.height),
			lower: stepsOf(pair.short),
		}),
	};
}
