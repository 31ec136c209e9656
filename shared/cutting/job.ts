// What is asked of the saw and what it answers: stock in, parts out, every cut edge to edge. Plain data, for any program.

/**
 * All lengths are whole numbers of one unit of the caller's choice (the layouts of designs use thousandths of a
 * millimetre), so that parts and saw cuts add up exactly. "Length" runs along the grain, "width" across it.
 */
export interface SheetStock {
	/** The caller's name for it; the optimiser does not look at it. */
	readonly id: string;
	readonly length: number;
	readonly width: number;
	/** Of one; 0 for what is there already. */
	readonly price: number;
	/** How many are to be had; `Infinity` = as many as wanted. */
	readonly count: number;
	/** In the shop already: used up before any is bought. */
	readonly onHand?: boolean;
	/** Cut off each of the four edges before anything else; 0 if left out. */
	readonly trim?: number;
	/** Places that no part may lie on (knots, splits), in the sheet's own coordinates. */
	readonly defects?: readonly Rectangle[];
}

/** x along the length, y along the width, from one corner of the whole sheet. */
export interface Rectangle {
	readonly x: number;
	readonly y: number;
	readonly length: number;
	readonly width: number;
}

export interface SheetPart {
	readonly id: string;
	readonly length: number;
	readonly width: number;
	readonly count: number;
	/** May be turned by 90 degrees: it has no grain to follow. */
	readonly turns: boolean;
}

export interface SheetJob {
	readonly stocks: readonly SheetStock[];
	readonly parts: readonly SheetPart[];
	/** What the blade takes. */
	readonly kerf: number;
	/**
	 * No remnant that a cut takes off is narrower than this along the axis of that cut, because it could not be held;
	 * 0 if left out. Parts may be narrower.
	 */
	readonly leastStrip?: number;
	/** The longest first cut that the shop can handle, through the whole trimmed sheet; no limit if left out. */
	readonly longestFirstCut?: number;
	/** At most so many stages of cuts (1 = strips only, 2 = strips and crosscuts …); no limit if left out. Trimming to size counts as one. */
	readonly stages?: number;
	/** A remnant that is at least this large both ways is worth keeping; 0 if left out. */
	readonly worthKeeping?: {
		readonly length: number;
		readonly width: number;
	};
}

/** A rectangle of a sheet: a part, a remnant, or cut on into pieces. */
export type Region = Rectangle &
	(
		| { readonly kind: "part"; readonly part: number; readonly turned: boolean }
		| { readonly kind: "remnant" }
		| {
				readonly kind: "cut";
				/**
				 * The pieces follow one another along x (the blade runs along y) or along y, exactly one kerf apart, from the
				 * low edge on. What is left at the high edge is a remnant among the pieces; but where it is no more than a kerf,
				 * the last cut runs off the edge and nothing is left, so then the pieces end up to one kerf before it (there
				 * may be only one piece). No piece is cut along the same axis once more.
				 */
				readonly along: "x" | "y";
				readonly pieces: readonly Region[];
		  }
	);

export interface CutSheet {
	/** Index into the job's stocks. */
	readonly stock: number;
	/** What is left of the sheet once its edges are trimmed, and how it is cut. */
	readonly root: Region;
}

export interface SheetPlan {
	readonly sheets: readonly CutSheet[];
	/** Parts that could not be had: index and how many; because none is large enough, or because the stock ran out. */
	readonly missing: readonly {
		readonly part: number;
		readonly count: number;
		readonly why: "too-large" | "no-stock-left";
	}[];
	/** Of all sheets that are used. */
	readonly price: number;
	/** No plan for all that can be had is cheaper: proven. */
	readonly leastPrice: number;
	/** No plan uses fewer sheets, among the cheapest kinds or not: proven. */
	readonly leastSheets: number;
}

export interface BoardStock {
	readonly id: string;
	readonly length: number;
	readonly price: number;
	readonly count: number;
	readonly onHand?: boolean;
	/** Cut off each end first; 0 if left out. */
	readonly trim?: number;
}

export interface BoardPart {
	readonly id: string;
	readonly length: number;
	readonly count: number;
}

/** Lengths from lengths: mouldings, battens, strips of one section. */
export interface BoardJob {
	readonly stocks: readonly BoardStock[];
	readonly parts: readonly BoardPart[];
	readonly kerf: number;
}

export interface BoardPlan {
	readonly boards: readonly {
		readonly stock: number;
		/** Indices of the parts, in the order in which they are cut off. */
		readonly parts: readonly number[];
		/** What is left at the end. */
		readonly left: number;
	}[];
	readonly missing: SheetPlan["missing"];
	readonly price: number;
	readonly leastPrice: number;
	readonly leastBoards: number;
}

/**
 * How long to look, in steps that are counted and not in time, so that the same job gives the same plan everywhere:
 * `quick` some 50 ms, `usual` some 500 ms, `thorough` some 2 s on a common machine.
 */
export type Effort = "quick" | "usual" | "thorough";

/** Where a search stands: it is handed out after every bit of work, so that a caller may stop, or show what there is. */
export interface Progress<Plan> {
	/** The best so far. */
	readonly plan: Plan;
	/** 0 to 1: the share of the steps that are used up. */
	readonly done: number;
	/** Nothing better exists, by the objective's first two terms. */
	readonly proven: boolean;
}
