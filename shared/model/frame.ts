// Where an expression stands: its file, its unit, the names in force.

import type { Evaluation } from "./evaluation.ts";
import type { Scope } from "./meaning.ts";
import type { Size } from "./size.ts";

export interface Frame {
	readonly evaluation: Evaluation;
	readonly uri: string;
	/** What a bare number is in, where a length is wanted. */
	readonly unit: "in" | "mm";
	readonly scope: Scope;
	/** Where the floor is, world; at 0 if absent. */
	readonly floor?: Size;
}
