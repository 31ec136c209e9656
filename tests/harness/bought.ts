// The buying list of one piece, by layouts of the optimiser or by plain ones that no better optimiser changes.

import type { Effort } from "../../shared/cutting/index.ts";
import { demandsOf } from "../../shared/layouts/blanks.ts";
import {
	type LaidRegion,
	type LaidSheet,
	layoutsOf,
	searchLayouts,
} from "../../shared/layouts/index.ts";
import { keepOf, least } from "../../shared/layouts/kept.ts";
import { layoutOf } from "../../shared/layouts/layouts.ts";
import {
	type StockToCut,
	supplyOf,
} from "../../shared/layouts/stock-to-cut.ts";
import type { Piece, Stock } from "../../shared/model/types.ts";
import {
	type BuyingList,
	buyingList,
} from "../../shared/outputs/buying-list.ts";
import { pieceToCut } from "../../shared/outputs/piece-layouts.ts";

export function boughtFor(
	piece: Piece,
	stocks: ReadonlyMap<string, Stock>,
	effort: Effort = "quick",
): BuyingList {
	return buyingList(
		[{ piece, stocks }],
		layoutsOf([pieceToCut(piece)], { effort }),
	);
}

/**
 * One part above the other, from the first size that is sold, kerf by kerf: for tests of how a list is written, which a
 * better layout must not change. All parts must be shorter than the sheet.
 */
export function boughtPlainly(
	piece: Piece,
	stocks: ReadonlyMap<string, Stock>,
): BuyingList {
	const { display } = piece;
	const layouts = demandsOf([pieceToCut(piece)]).map((demand) => {
		const supply = supplyOf(demand.stock, demand.blanks, display);
		const [sold] = supply.stocks as [StockToCut];
		const keep = keepOf(demand.stock, supply.kind, display);
		const sheets: LaidSheet[] = [];
		let pieces: LaidRegion[] = [];
		let at = 0;
		const close = (): void => {
			if (pieces.length === 0) return;
			const { length, width } = sold;
			const rest = { x: 0, y: at, length, width: width - at };
			if (rest.width > 0)
				pieces.push({ ...rest, kind: "remnant", keep: least(rest, keep) });
			const root = { x: 0, y: 0, length, width, kind: "cut" as const };
			sheets.push({ ...sold, root: { ...root, along: "y", pieces } });
			pieces = [];
			at = 0;
		};
		for (const blank of demand.blanks) {
			if (at + blank.width > sold.width) close();
			const place = { x: 0, y: at, length: blank.length, width: blank.width };
			const behind = {
				x: blank.length + demand.kerf,
				y: at,
				length: sold.length - blank.length - demand.kerf,
				width: blank.width,
			};
			pieces.push({
				...place,
				length: sold.length,
				kind: "cut",
				along: "x",
				pieces: [
					blank.lay(place, false),
					{ ...behind, kind: "remnant", keep: least(behind, keep) },
				],
			});
			at += blank.width + demand.kerf;
		}
		close();
		return layoutOf(
			demand,
			supply,
			{
				sheets,
				missing: [],
				leastPrice: 0,
				leastSheets: 1,
				proven: sheets.length === 1,
				done: 1,
			},
			display,
		);
	});
	return buyingList([{ piece, stocks }], layouts);
}

/** By the first layouts that the search comes up with: for tests that try very many pieces. */
export function boughtAtOnce(
	piece: Piece,
	stocks: ReadonlyMap<string, Stock>,
): BuyingList {
	const first = searchLayouts([pieceToCut(piece)], { effort: "quick" }).next();
	return buyingList(
		[{ piece, stocks }],
		first.done === true ? first.value : first.value.layouts,
	);
}
