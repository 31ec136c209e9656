// The buying list for other programs, as `schema/buy.json` describes it.

import { mmOf } from "../layouts/index.ts";
import { numberOf } from "../model/size.ts";
import type { Part } from "../model/types.ts";
import { formatMoney } from "../units/format.ts";
import type { MaterialLine } from "./buy-material.ts";
import type { BuyingList, Priced } from "./buying-list.ts";
import { type ExportedSize, exportedSize } from "./exported-size.ts";
import type { Weight } from "./weight.ts";

/** Grows when a field changes its meaning or goes; new fields leave it. */
export const buyingListVersion = 2;

export interface BuyingListJson {
	readonly schemaVersion: typeof buyingListVersion;
	readonly lists: readonly BuyingListDocument[];
}

interface Price {
	/** Two decimals. */
	readonly price: string | null;
	readonly currency: string | null;
}

interface Plain {
	readonly lengthMm: number;
	readonly widthMm: number;
}

interface MaterialJson extends Price {
	readonly material: string;
	readonly parts: readonly string[];
	readonly areaM2: number;
	readonly kerfMm: number;
	/** To buy, and from the shop. */
	readonly sizes: readonly (Price &
		Plain & {
			readonly name: string;
			readonly count: number;
			readonly onHand: boolean;
		})[];
	readonly proven: boolean;
	readonly leastPrice: string | null;
	readonly leastCount: number;
	readonly boardFeet: {
		readonly roughMm: number;
		readonly roughGuessed: boolean;
		readonly bought: number;
		readonly used: number;
		readonly roughSizes: number;
		readonly kept: number;
		readonly lost: number;
	} | null;
	readonly assumptions: readonly string[];
	readonly offcuts: readonly Plain[];
	readonly boughtKg: number | null;
}

interface WeightJson {
	readonly piece: string;
	readonly kg: number;
	readonly onWallKg: number;
	readonly centre: {
		readonly fromLeftMm: number;
		readonly fromFloorMm: number;
		readonly fromBackMm: number;
	} | null;
	readonly parts: readonly { readonly part: string; readonly kg: number }[];
	readonly unknown: readonly string[];
}

interface Money {
	readonly currency: string | null;
	readonly amount: string;
}

interface BuyingListDocument {
	readonly pieces: readonly {
		readonly file: string;
		readonly piece: string;
		/** What it has in the cost; of a single piece all of it. */
		readonly share: readonly Money[];
	}[];
	readonly unit: "in" | "mm";
	readonly sheets: readonly MaterialJson[];
	readonly boards: readonly MaterialJson[];
	readonly lengths: readonly MaterialJson[];
	readonly veneer: readonly MaterialJson[];
	readonly trim: readonly {
		readonly material: string;
		readonly parts: readonly string[];
		readonly thickness: ExportedSize;
		readonly width: ExportedSize;
		readonly runningMm: number;
	}[];
	readonly fasteners: readonly (Price & {
		readonly label: string;
		readonly kind: string;
		readonly count: number;
		readonly spare: number;
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
		readonly spareLitres: number | null;
		readonly tins: number | null;
	})[];
	readonly missing: readonly {
		readonly piece: string;
		readonly part: string;
		readonly count: number;
		readonly why: string;
		readonly message: string;
	}[];
	readonly cost: {
		readonly totals: readonly Money[];
		readonly atLeast: boolean;
		readonly unpriced: readonly string[];
	};
	readonly carry: {
		readonly kg: number;
		readonly heaviestKg: number;
		readonly unknown: readonly string[];
	};
	/** Lines for the stock file: they take the place of the `on-hand` lines of the material. */
	readonly onHand: readonly {
		readonly material: string;
		readonly lines: readonly string[];
	}[];
	readonly weights: readonly WeightJson[];
}

/** One document for any number of lists. */
export function buyingListJson(lists: readonly BuyingList[]): BuyingListJson {
	return { schemaVersion: buyingListVersion, lists: lists.map(listOf) };
}

function listOf(list: BuyingList): BuyingListDocument {
	const { cost, carry } = list;
	const money = (amounts: BuyingList["cost"]["totals"]): readonly Money[] =>
		amounts.map(({ currency, amount }) => ({
			currency: currency ?? null,
			amount: formatMoney(amount),
		}));
	return {
		pieces: list.pieces.map(({ piece, file }, at) => ({
			file: file ?? "",
			piece: piece.name,
			share: money(list.shares[at]?.amounts ?? cost.totals),
		})),
		unit: list.display.unit,
		sheets: list.sheets.map(materialOf),
		boards: list.boards.map(materialOf),
		lengths: list.lengths.map(materialOf),
		veneer: list.veneer.map(materialOf),
		trim: list.trim.map((line) => ({
			material: line.stock.id,
			parts: names(line.parts),
			thickness: exportedSize(line.thick),
			width: exportedSize(line.width),
			runningMm: rounded(line.running, 6),
		})),
		fasteners: list.fasteners.map((one) => ({
			label: one.line.size.label,
			kind: one.line.size.kind,
			count: one.line.count,
			spare: one.line.spare,
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
			coversM2PerLitre: known(one.line.covers),
			coversFrom: one.line.coversFrom,
			litres: known(one.line.litres),
			spareLitres: known(one.line.spare),
			tins: one.line.tins ?? null,
			...price(one),
		})),
		missing: list.missing.map(({ of, count, why, message }) => ({
			piece: of.piece,
			part: of.path,
			count,
			why,
			message,
		})),
		cost: {
			totals: money(cost.totals),
			atLeast: cost.atLeast,
			unpriced: cost.unpriced,
		},
		carry: {
			kg: rounded(carry.kg, 6),
			heaviestKg: rounded(carry.heaviest, 6),
			unknown: carry.unknown,
		},
		onHand: list.onHand.map(({ stock, lines }) => ({
			material: stock.id,
			lines,
		})),
		weights: list.weights.map((weight, at) =>
			weightOf(weight, list.pieces[at]?.piece.name ?? ""),
		),
	};
}

function materialOf(one: Priced<MaterialLine>): MaterialJson {
	const { layout, parts, area, feet, kg } = one.line;
	const { stock, kerf, proven, leastPrice, leastSheets } = layout;
	return {
		material: stock.id,
		parts: parts.map(({ path }) => path),
		areaM2: rounded(area / 1e6, 6),
		kerfMm: mmOf(kerf).toNumber(),
		sizes: layout.sizes.map((size) => ({
			name: size.name,
			...plain(size),
			count: size.count,
			onHand: size.onHand,
			...price({
				price: size.onHand ? undefined : size.price,
				currency: stock.currency,
			}),
		})),
		proven,
		leastPrice: leastPrice ? formatMoney(leastPrice) : null,
		leastCount: leastSheets,
		boardFeet: feet
			? {
					roughMm: numberOf(feet.rough),
					roughGuessed: feet.roughGuessed,
					bought: rounded(feet.bought, 6),
					used: rounded(feet.used, 6),
					roughSizes: rounded(feet.net, 6),
					kept: rounded(feet.kept, 6),
					lost: rounded(feet.lost, 6),
				}
			: null,
		assumptions: layout.assumptions,
		offcuts: layout.offcuts.map(plain),
		boughtKg: known(kg),
		...price(one),
	};
}

function plain(size: {
	readonly length: number;
	readonly width: number;
}): Plain {
	return {
		lengthMm: mmOf(size.length).toNumber(),
		widthMm: mmOf(size.width).toNumber(),
	};
}

function weightOf(weight: Weight, piece: string): WeightJson {
	return {
		piece,
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
	};
}

function price({
	price,
	currency,
}: Pick<Priced<unknown>, "price" | "currency">): Price {
	return {
		price: price === undefined ? null : formatMoney(price),
		currency: price === undefined ? null : (currency ?? null),
	};
}

function known(value: number | undefined): number | null {
	return value === undefined ? null : rounded(value, 6);
}

function names(parts: readonly Part[]): readonly string[] {
	return parts.map((part) => part.path);
}

/** Sums of floating numbers end where they stop meaning anything. */
function rounded(value: number, digits: number): number {
	return Number(value.toFixed(digits));
}
