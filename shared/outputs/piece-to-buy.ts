// A piece that is bought for, and how materials of several files are told apart.

import type { Piece, Stock } from "../model/types.ts";

export interface PieceToBuy {
	readonly piece: Piece;
	/** The materials that the design's file knows: fasteners and glue are found there by their size and kind. */
	readonly stocks: ReadonlyMap<string, Stock>;
	/** As its file is called in what is written; empty where nobody asks. */
	readonly file?: string;
}

/** Equal for one material that several designs use. */
export function stockKey(stock: Stock | undefined): string {
	return stock ? `${stock.declaration.origin.uri} ${stock.id}` : "";
}
