// What lies on the saw: every region of a layout that is parted by cuts, with its cuts, before their order is settled.

import type { LaidRegion, MaterialLayout } from "../../layouts/types.ts";

/** The pieces follow one another along it; the blade runs along the other. */
export type Axis = "x" | "y";

/**
 * How a cut is guided: a track or panel saw; the fence of a table saw, the edge that was cut last against it; a stop on a
 * sliding table or mitre gauge; a rule and a knife.
 */
export type Guide = "track" | "fence" | "stop" | "knife";

/** A region that is parted. A node of the tree of its sheet. */
export interface Blank {
	/** Index of its sheet in the layout. */
	readonly sheet: number;
	readonly region: LaidRegion;
	/** The blank that it is cut from, and which of its pieces it is; undefined for a whole sheet. */
	readonly from: Blank | undefined;
	readonly along: Axis;
	/** Thousandths of a millimetre across the cuts. */
	readonly extent: number;
	/** As long as each of its cuts. */
	readonly across: number;
	/** In the order in which they are cut off if nothing else decides; `rest`, if there is one, last. */
	readonly pieces: readonly Piece[];
	/** What the last cut leaves is a piece, too; else the blade runs off the edge there, and every piece is cut off. */
	readonly leavesPiece: boolean;
	/** The pieces must stay in their order: their grain runs on, or a defect lies between them. */
	readonly ordered: boolean;
	/** Degrees from the face. */
	readonly bevel: number | undefined;
}

export interface Piece {
	/** Undefined for one of a bevelled pair: `pair` then says which. */
	readonly region: LaidRegion;
	readonly pair: 0 | 1 | undefined;
	/** Along the axis of the blank's cuts. */
	readonly size: number;
	/** If it is parted itself. */
	readonly blank: Blank | undefined;
}

/** The blanks of all sheets, each behind the one that it is cut from, a sheet behind the other: the order of the tree. */
export function blanksOf(layout: MaterialLayout): readonly Blank[] {
	const all: Blank[] = [];
	layout.sheets.forEach(({ root, defects }, sheet) => {
		const fixed = defects.length > 0 || layout.kind === "veneer";
		addBlank({ sheet, region: root, from: undefined, fixed, all });
	});
	return all;
}

interface Adding {
	readonly sheet: number;
	readonly region: LaidRegion;
	readonly from: Blank | undefined;
	readonly fixed: boolean;
	readonly all: Blank[];
}

function addBlank(adding: Adding): Blank | undefined {
	const { sheet, region, from, fixed, all } = adding;
	if (region.kind === "part" || region.kind === "remnant") return undefined;
	if (region.kind === "pair") {
		// Across the strip: the pair lies side by side.
		const along = region.turned ? "x" : "y";
		const blank: Blank = {
			sheet,
			region,
			from,
			along,
			extent: extentAlong(region, along),
			across: extentAlong(region, otherAxis(along)),
			pieces: [
				{ region, pair: 0, size: region.upper, blank: undefined },
				{ region, pair: 1, size: region.lower, blank: undefined },
			],
			leavesPiece: true,
			ordered: true,
			bevel: region.bevel,
		};
		all.push(blank);
		return blank;
	}
	const { along } = region;
	const extent = extentAlong(region, along);
	const solid = region.pieces.filter(
		(piece) =>
			extentAlong(piece, along) > 0 && extentAlong(piece, otherAxis(along)) > 0,
	);
	const last = solid.at(-1);
	const start = along === "x" ? region.x : region.y;
	const end =
		last === undefined
			? start
			: (along === "x" ? last.x : last.y) + extentAlong(last, along);
	const leavesPiece = end >= start + extent;
	if (solid.length === 0 || (solid.length === 1 && leavesPiece))
		return last && addBlank({ ...adding, region: last });
	const ordered = fixed || region.matched === true;
	const pieces: Piece[] = [];
	const blank: Blank = {
		sheet,
		region,
		from,
		along,
		extent,
		across: extentAlong(region, otherAxis(along)),
		pieces,
		leavesPiece,
		ordered,
		bevel: undefined,
	};
	all.push(blank);
	for (const piece of ordered
		? solid
		: inCuttingOrder(solid, along, leavesPiece)) {
		pieces.push({
			region: piece,
			pair: undefined,
			size: extentAlong(piece, along),
			blank: addBlank({ ...adding, region: piece, from: blank }),
		});
	}
	return blank;
}

/** Large pieces first, equal ones together; what is no part, or else the one whose size occurs least, is what is left. */
function inCuttingOrder(
	pieces: readonly LaidRegion[],
	along: Axis,
	leavesPiece: boolean,
): readonly LaidRegion[] {
	const size = (piece: LaidRegion): number => extentAlong(piece, along);
	const sorted = pieces
		.map((piece, index) => ({ piece, index }))
		.sort((a, b) => size(b.piece) - size(a.piece) || a.index - b.index)
		.map(({ piece }) => piece);
	if (!leavesPiece) return sorted;
	const counts = new Map<number, number>();
	for (const piece of sorted)
		counts.set(size(piece), (counts.get(size(piece)) ?? 0) + 1);
	const left =
		sorted.find(({ kind }) => kind === "remnant") ??
		sorted.reduce((best, piece) =>
			(counts.get(size(piece)) ?? 0) < (counts.get(size(best)) ?? 0)
				? piece
				: best,
		);
	return [...sorted.filter((piece) => piece !== left), left];
}

export function otherAxis(axis: Axis): Axis {
	return axis === "x" ? "y" : "x";
}

export function extentAlong(
	region: { readonly length: number; readonly width: number },
	axis: Axis,
): number {
	return axis === "x" ? region.length : region.width;
}
