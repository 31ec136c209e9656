// What a check is: one object with its page, its examples, its figures and the search itself.

import type { Design, Finding, Piece, Severity } from "../model/types.ts";

export type CheckGroup =
	| "fit"
	| "fasteners"
	| "shape"
	| "wood"
	| "strength"
	| "change";

/** How the groups are headed on the page, in its order. */
export const checkGroups: Readonly<Record<CheckGroup, string>> = {
	fit: "Fit and tolerance",
	fasteners: "Fasteners",
	shape: "Sheet, trim, veneer, shape",
	wood: "Wood that moves",
	strength: "Strength and safety",
	change: "Change",
};

/** A number that a check works with: a default that a workspace may replace. */
export interface Figure {
	readonly value: number;
	readonly unit:
		| "mm"
		| "deg"
		| "diameters"
		| "times"
		| "ratio"
		| "MPa"
		| "N"
		| "m"
		| "kg/m";
	/** What it is, in a few words without a stop. */
	readonly help: string;
	/** A published source, or that there is none. */
	readonly source: string;
}

export type Figures = Readonly<Record<string, Figure>>;

/** What a search answers with; the engine adds the id. */
export interface Found {
	/** Where it differs from the severity of the check. */
	readonly severity?: Severity;
	readonly origin: Finding["origin"];
	readonly message: string;
	readonly related?: Finding["related"];
	readonly fixes?: Finding["fixes"];
}

export interface CheckContext<F extends Figures = Figures> {
	readonly design: Design;
	/** The figures of this check, as the options have them. */
	readonly figures: { readonly [Name in keyof F]: number };
}

export interface Check {
	/** Kebab-case; names what is flagged; never used for anything else. */
	readonly id: string;
	readonly group: CheckGroup;
	readonly severity: Severity;
	/** One line. */
	readonly summary: string;
	/** Markdown paragraphs, with the formula. */
	readonly explanation: string;
	readonly source: string;
	readonly figures: Figures;
	/** A whole design that brings exactly one finding of this check. */
	readonly fires: string;
	/** A whole design, near the other one, that brings none. */
	readonly silent: string;
	/** The evaluation itself reports it; there is nothing to search for afterwards. */
	readonly reportedByEvaluation: boolean;
	readonly find: (piece: Piece, context: CheckContext) => readonly Found[];
	/** What belongs to no piece: materials. */
	readonly findInFile: (context: CheckContext) => readonly Found[];
}

/** The fields of a check; the searches are typed by its own figures. */
export interface CheckSpec<F extends Figures>
	extends Omit<
		Check,
		"figures" | "find" | "findInFile" | "reportedByEvaluation"
	> {
	readonly figures: F;
	readonly reportedByEvaluation?: true;
	readonly find?: (piece: Piece, context: CheckContext<F>) => readonly Found[];
	readonly findInFile?: (context: CheckContext<F>) => readonly Found[];
}

const nothing = (): readonly Found[] => [];

export function defineCheck<const F extends Figures>(
	spec: CheckSpec<F>,
): Check {
	return {
		...spec,
		reportedByEvaluation: spec.reportedByEvaluation ?? false,
		// The engine makes the context from `figures`, so every name of F is in it.
		find: (spec.find ?? nothing) as Check["find"],
		findInFile: (spec.findInFile ?? nothing) as Check["findInFile"],
	};
}
