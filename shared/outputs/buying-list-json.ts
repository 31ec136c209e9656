// The buying list for other programs, as `schema/buy.json` describes it.

import type { Part } from "../model/types.ts";
import { formatMoney } from "../units/format.ts";
import type { SheetLine } from "./buy-sheets.ts";
import type { BuyingList, Priced } from "./buying-list.ts";
import { type ExportedSize, exportedSize } from "./exported-size.ts";

/** Grows when a field changes its meaning or goes; new fields leave it. */
export const buyingListVersion = 1;

export interface BuyingListJson {
	readonly schemaVersion: typeof buyingListVersion;
	readonly pieces: readonly BuyingListPiece[];
}

interface Price {
	/** Two decimals. */
	readonly price: string | null;
	readonly currency: string | null;
}

interface SheetJson extends Price {
	readonly material: string;
	readonly parts: readonly string[];
	readonly areaM2: number;
	readonly kerfMm: number;
	readonly size: {
		readonly length: ExportedSize;
		readonly width: ExportedSize;
	} | null;
	/** By area and by parts that cannot share a sheet; a layout may need more. */
	readonly atLeast: number | null;
	readonly tooLarge: readonly string[];
}

interface BuyingListPiece {
	readonly file: string;
	readonly piece: string;
	readonly unit: "in" | "mm";
	readonly sheets: readonly SheetJson[];
	readonly boards: readonly (Price & {
		readonly material: string;
		readonly parts: readonly string[];
		readonly roughMm: number;
		readonly roughGuessed: boolean;
		readonly roughSizesBoardFeet: number;
		readonly waste: number;
		readonly boardFeet: number;
		readonly tooLarge: readonly string[];
	})[];
	readonly trim: readonly {
		readonly material: string;
		readonly parts: readonly string[];
		readonly thickness: ExportedSize;
		readonly width: ExportedSize;
		readonly runningMm: number;
	}[];
	readonly veneer: readonly SheetJson[];
	readonly fasteners: readonly (Price & {
		readonly label: string;
		readonly kind: string;
		readonly count: number;
		readonly tacks: number;
		readonly filled: number;
		readonly wall: boolean;
		readonly material: string | null;
		readonly packs: number | null;
	})[];
	readonly coatings: readonly (Price & {
		readonly kind: string;
		readonly name: string;
		readonly areaM2: number;
		readonly coversM2PerLitre: number | null;
		readonly coversFrom: string;
		readonly litres: number | null;
		readonly tins: number | null;
	})[];
	readonly cost: {
		readonly totals: readonly {
			readonly currency: string | null;
			readonly amount: string;
		}[];
		readonly atLeast: boolean;
		readonly unpriced: readonly string[];
	};
	readonly weight: {
		readonly kg: number;
		readonly onWallKg: number;
		readonly centre: {
			readonly fromLeftMm: number;
			readonly fromFloorMm: number;
			readonly fromBackMm: number;
		} | null;
		readonly parts: readonly { readonly part: string; readonly kg: number }[];
		readonly unknown: readonly string[];
	};
}

/** One document for any number of pieces; `file` is how the caller names the file of a piece. */
export function buyingListJson(
	lists: readonly { readonly file: string; readonly list: BuyingList }[],
): BuyingListJson {
	return {
		schemaVersion: buyingListVersion,
		pieces: lists.map(({ file, list }) => pieceOf(file, list)),
	};
}

function pieceOf(file: string, list: BuyingList): BuyingListPiece {
	const { weight, cost } = list;
	return {
		file,
		piece: list.piece,
		unit: list.display.unit,
		sheets: list.sheets.map(sheetOf),
		boards: list.boards.map((one) => ({
			material: one.line.stock.id,
			parts: names(one.line.parts),
			roughMm: one.line.rough,
			roughGuessed: one.line.roughGuessed,
			roughSizesBoardFeet: rounded(one.line.net, 6),
			waste: one.line.waste,
			boardFeet: rounded(one.line.total, 6),
			tooLarge: names(one.line.tooLarge),
			...price(one),
		})),
		trim: list.trim.map((line) => ({
			material: line.stock.id,
			parts: names(line.parts),
			thickness: exportedSize(line.thick),
			width: exportedSize(line.width),
			runningMm: rounded(line.running, 6),
		})),
		veneer: list.veneer.map(sheetOf),
		fasteners: list.fasteners.map((one) => ({
			label: one.line.size.label,
			kind: one.line.size.kind,
			count: one.line.count,
			tacks: one.line.tacks,
			filled: one.line.filled,
			wall: one.line.wall,
			material: one.line.stock?.id ?? null,
			packs: one.line.packs ?? null,
			...price(one),
		})),
		coatings: list.coatings.map((one) => ({
			kind: one.line.kind,
			name: one.line.name,
			areaM2: rounded(one.line.area / 1e6, 6),
			coversM2PerLitre:
				one.line.covers === undefined ? null : rounded(one.line.covers, 6),
			coversFrom: one.line.coversFrom,
			litres:
				one.line.litres === undefined ? null : rounded(one.line.litres, 6),
			tins: one.line.tins ?? null,
			...price(one),
		})),
		cost: {
			totals: cost.totals.map(({ currency, amount }) => ({
				currency: currency ?? null,
				amount: formatMoney(amount),
			})),
			atLeast: cost.atLeast,
			unpriced: cost.unpriced,
		},
		weight: {
			kg: rounded(weight.total, 6),
			onWallKg: rounded(weight.onWall, 6),
			centre: weight.centre
				? {
						fromLeftMm: rounded(weight.centre.fromLeft, 3),
						fromFloorMm: rounded(weight.centre.fromFloor, 3),
						fromBackMm: rounded(weight.centre.fromBack, 3),
					}
				: null,
			parts: weight.parts.map(({ part, kg }) => ({
				part: part.path,
				kg: rounded(kg, 6),
			})),
			unknown: names(weight.unknown),
		},
	};
}

function sheetOf(one: Priced<SheetLine>): SheetJson {
	const { stock, parts, area, kerf, size, least, tooLarge } = one.line;
	return {
		material: stock.id,
		parts: names(parts),
		areaM2: rounded(area / 1e6, 6),
		kerfMm: kerf,
		size: size
			? { length: exportedSize(size.length), width: exportedSize(size.width) }
			: null,
		atLeast: least ?? null,
		tooLarge: names(tooLarge),
		...price(one),
	};
}

function price({ price, currency }: Priced<unknown>): Price {
	return {
		price: price === undefined ? null : formatMoney(price),
		currency: price === undefined ? null : (currency ?? null),
	};
}

function names(parts: readonly Part[]): readonly string[] {
	return parts.map((part) => part.path);
}

/** Sums of floating numbers end where they stop meaning anything. */
function rounded(value: number, digits: number): number {
	return Number(value.toFixed(digits));
}
