// What is sawn out of what: the sheets and boards of a material with the names of the parts on them. Plain data.

import type { Rectangle } from "../cutting/index.ts";
import type { AidInfo, Display, Part, Piece, Stock } from "../model/types.ts";
import type { Rational } from "../units/rational.ts";

/*
 * Lengths are whole thousandths of a millimetre (`stepsPerMm`), as the optimisers count, cut off: what is less than a
 * thousandth is not counted. "Length" and x run along the grain of the sheet or board, "width" and y across it.
 */

/** Of a millimetre. */
export const stepsPerMm = 1_000;

/**
 * `sheets`: sheet goods; `boards`: boards that are ripped and crosscut; `lengths`: battens and mouldings that are only cut to
 * length; `veneer`: cut with a knife, which takes nothing.
 */
export type LayoutKind = "sheets" | "boards" | "lengths" | "veneer";

/** A piece whose parts are laid out, and what the cut list calls them. */
export interface PieceToCut {
	readonly piece: Piece;
	/** By the id of the part: `A`, `B` … Parts that are cut alike share one. */
	readonly labels: ReadonlyMap<string, string>;
	/** How many of the piece are made; 1 if left out. */
	readonly count?: number;
}

/** What a rectangle is cut for. */
export interface LaidPart {
	/** Of the cut list: `A`; with several pieces the number of the piece stands before it: `2A`. An aid has its name. */
	readonly label: string;
	/** Of the part, `record-bench.case.left`; of an aid its name behind that of the piece. */
	readonly id: string;
	/** Within its piece: `case.left`. */
	readonly path: string;
	readonly piece: string;
	/** The place of that piece among those that were given: names may be equal. */
	readonly pieceAt: number;
	readonly part: Part | undefined;
	readonly aid: AidInfo | undefined;
	/** Where the rectangle is not the whole part: `strip 2 of 4`, `leaf 1 of 2`. */
	readonly share: string | undefined;
	/** As it is sawn first. The rectangle of a part that is matched with longer or wider ones may be larger. */
	readonly length: number;
	readonly width: number;
}

/** A rectangle of a sheet or board, in its coordinates: the first corner of the whole sheet is 0, 0. */
export type LaidRegion = Rectangle &
	(
		| {
				readonly kind: "part";
				readonly of: LaidPart;
				/** The part's length runs along y. */
				readonly turned: boolean;
		  }
		| {
				/**
				 * Two strips from one blank by one bevelled rip (a cleat pair): the first lies at the low y, its broad face up and
				 * `upper` wide there, `lower` wide on the face below.
				 */
				readonly kind: "pair";
				readonly of: readonly [LaidPart, LaidPart];
				readonly turned: boolean;
				/** Degrees from the face. */
				readonly bevel: number;
				readonly upper: number;
				readonly lower: number;
		  }
		| {
				readonly kind: "remnant";
				/** Large enough to be kept. */
				readonly keep: boolean;
		  }
		| {
				readonly kind: "cut";
				/** The pieces follow one another along x (the blade runs along y) or along y, exactly one kerf apart. */
				readonly along: "x" | "y";
				readonly pieces: readonly LaidRegion[];
				/** The pieces belong together: their grain runs on from one into the next. */
				readonly matched?: boolean;
		  }
	);

/** One sheet, board, length or leaf of veneer, and how it is cut. */
export interface LaidSheet {
	/** The size as it is sold or lies in the shop: `96 x 48`, in the unit of the layout. */
	readonly name: string;
	readonly length: number;
	readonly width: number;
	/** In the shop already: nothing is paid for it. */
	readonly onHand: boolean;
	/** Undefined if the stock file does not say it. */
	readonly price: Rational | undefined;
	/** Cut off all four edges first. */
	readonly trim: number;
	/** Places that no part lies on. */
	readonly defects: readonly Rectangle[];
	/** What is left once the edges are trimmed, and how it is cut. */
	readonly root: LaidRegion;
}

export interface MissingPart {
	readonly of: LaidPart;
	readonly count: number;
	readonly why: "too-large" | "no-stock-left" | "no-size";
	/** One line: what is wrong, and what would mend it. */
	readonly message: string;
}

/** Sheets of one size and price, to buy or on hand. */
export interface SheetsOfSize {
	readonly name: string;
	readonly length: number;
	readonly width: number;
	readonly onHand: boolean;
	readonly count: number;
	/** Of one. */
	readonly price: Rational | undefined;
}

export interface MaterialLayout {
	readonly stock: Stock;
	readonly kind: LayoutKind;
	/** Of the first piece that wants the material. */
	readonly display: Display;
	/** In the order in which they were given. */
	readonly pieces: readonly string[];
	readonly kerf: number;
	/** On hand first, then as the optimiser gave them. */
	readonly sheets: readonly LaidSheet[];
	/** The same, counted. */
	readonly sizes: readonly SheetsOfSize[];
	readonly missing: readonly MissingPart[];
	/** Of what is bought; undefined if a price is not known. */
	readonly price: Rational | undefined;
	/** No plan is cheaper: proven. Undefined if a price is not known. */
	readonly leastPrice: Rational | undefined;
	/** No plan uses fewer sheets: proven. */
	readonly leastSheets: number;
	/** Nothing cheaper exists, and nothing with fewer sheets at that price. */
	readonly proven: boolean;
	/** Remnants that are worth keeping, largest first. */
	readonly offcuts: readonly {
		readonly length: number;
		readonly width: number;
	}[];
	/** One line each: what was taken for granted, `planned with boards 6 1/2 x 120: put yours in with on-hand`. */
	readonly assumptions: readonly string[];
}

/** Where a search over all materials of some pieces stands. */
export interface LayoutProgress {
	readonly layouts: readonly MaterialLayout[];
	/** 0 to 1. */
	readonly done: number;
}
