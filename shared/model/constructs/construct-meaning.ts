// How a construct of the table gets its meaning: names first, then sizes when needed, then what needs all parts.

import type { PieceContext } from "../piece-context.ts";
import type { Row } from "../rows.ts";

export interface ConstructMeaning {
	/** Brings its names into the scope; nothing is worked out yet, so order has no meaning. */
	readonly declare?: (context: PieceContext, row: Row) => void;
	/** Runs when all parts stand: joins, fits, loads, cuts. Lower `phase` first, then the order of the text. */
	readonly settle?: (context: PieceContext, row: Row) => void;
	readonly phase?: number;
}
