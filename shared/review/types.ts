// What a change does to a design, as data: the piece before and after, told by what a maker would see and saw.

import type { Vec3 } from "../geometry/solid.ts";
import type { Size } from "../model/size.ts";
import type {
	CutInfo,
	Finding,
	Given,
	Joint,
	Part,
	Piece,
} from "../model/types.ts";
import type { Rational } from "../units/rational.ts";

/** The same thing on both sides. */
export interface Both<Thing> {
	readonly before: Thing;
	readonly after: Thing;
}

/** A size that differs. Undefined on a side that does not have it (a stage that is new, a box that is gone). */
export interface SizeChange {
	/** `length`, `width`, `thick`; of a stage `rough length`. */
	readonly what: string;
	readonly before: Size | undefined;
	readonly after: Size | undefined;
}

/** Something else that differs, in words. Undefined where one side has none. */
export interface TextChange {
	/** `material`, `shape`, `edges`, `cut when` … */
	readonly what: string;
	readonly before: string | undefined;
	readonly after: string | undefined;
}

/** A part that is on both sides and is not cut alike. */
export interface PartChange extends Both<Part> {
	readonly sizes: readonly SizeChange[];
	readonly texts: readonly TextChange[];
}

/** Parts that are cut as before and stand elsewhere, all by the same way. */
export interface Move {
	readonly parts: readonly Both<Part>[];
	/** mm: right, up, forward. */
	readonly by: Vec3;
}

export interface JointChange extends Both<Joint> {
	readonly texts: readonly TextChange[];
}

/** A finding is on both sides if the same check tells it of the same thing. */
export interface FindingChanges {
	readonly fresh: readonly Finding[];
	readonly cured: readonly Finding[];
	/** Told before and after, with other words: the figure in it changed. */
	readonly changed: readonly Both<Finding>[];
}

/** What becomes of a part that is cut already. */
export type CutVerdict = "right" | "trim" | "too-small" | "not-used";

export interface CutChange {
	readonly cut: CutInfo;
	readonly before: CutVerdict;
	readonly after: CutVerdict;
	/** What must come off, or is missing, after the change. */
	readonly length: Rational | undefined;
	readonly width: Rational | undefined;
}

export interface PieceComparison {
	/** Of the piece afterwards; of one that is gone, what it was called. */
	readonly name: string;
	readonly before: Piece | undefined;
	readonly after: Piece | undefined;
	readonly gone: readonly Part[];
	readonly added: readonly Part[];
	readonly changed: readonly PartChange[];
	/** Parts with another path that are cut alike or nearly: taken for the same. They may be in `changed`, too. */
	readonly renamed: readonly Both<Part>[];
	readonly moved: readonly Move[];
	/** Parts that are neither changed nor moved. */
	readonly same: number;
	readonly joints: {
		readonly gone: readonly Joint[];
		readonly added: readonly Joint[];
		readonly changed: readonly JointChange[];
	};
	readonly givens: readonly {
		readonly name: string;
		readonly before: Given | undefined;
		readonly after: Given | undefined;
	}[];
	/** Over everything and over the case. */
	readonly overall: readonly SizeChange[];
	/** Editions that are new. */
	readonly editions: Piece["editions"];
	readonly findings: FindingChanges;
	readonly cuts: readonly CutChange[];
}

export interface Comparison {
	/** In the order of the text afterwards; pieces that are gone at the end. Pieces without any difference are left out. */
	readonly pieces: readonly PieceComparison[];
	/** Findings outside of pieces, in the order of the text. */
	readonly findings: FindingChanges;
}
