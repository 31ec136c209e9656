// The cut list for other programs, as `schema/cutlist.json` describes it.

import type { CutSize } from "../model/cut-size.ts";
import type { Display, StageName } from "../model/types.ts";
import type { CutList, CutRow, CutWhen, Sizes } from "./cut-list.ts";
import { rowWords } from "./cut-list-words.ts";
import {
	type ExportedCut,
	type ExportedSize,
	exportedCut,
	exportedSize,
} from "./exported-size.ts";

/** Grows when a field changes its meaning or goes; new fields leave it. */
export const cutListVersion = 1;

export interface CutListJson {
	readonly schemaVersion: typeof cutListVersion;
	readonly pieces: readonly CutListPiece[];
}

interface CutListPiece {
	readonly file: string;
	readonly piece: string;
	readonly unit: Display["unit"];
	/** In that unit. */
	readonly precision: string;
	readonly rows: readonly CutListRow[];
	readonly aids: readonly {
		readonly name: string;
		readonly kind: string;
		readonly length: ExportedSize;
		readonly width: ExportedSize;
		readonly thickness: ExportedSize | null;
		readonly material: string | null;
		readonly for: readonly string[];
	}[];
}

interface CutListRow {
	readonly label: string;
	readonly cut: CutWhen;
	readonly quantity: number;
	readonly parts: readonly string[];
	readonly material: string;
	readonly thickness: ExportedCut;
	readonly width: ExportedCut;
	readonly length: ExportedCut;
	readonly stages: readonly {
		readonly stage: StageName;
		readonly thickness: ExportedCut;
		readonly width: ExportedCut;
		readonly length: ExportedCut;
	}[];
	readonly hands: {
		readonly kind: "left-right" | "mirrored";
		readonly first: readonly string[];
		readonly second: readonly string[];
		readonly from: string;
	} | null;
	readonly edges: readonly {
		readonly where: string;
		readonly quantity: number;
		readonly work: string;
		readonly text: string;
	}[];
	readonly housings: readonly {
		readonly kind: string;
		readonly quantity: number;
		readonly width: ExportedSize;
		readonly fits: ExportedSize | null;
		readonly depth: ExportedSize;
		readonly at: ExportedSize;
		readonly datum: string;
		readonly for: readonly string[];
		readonly text: string;
	}[];
	readonly strips: number | null;
	readonly after: readonly string[];
	readonly reading: string | null;
	readonly notes: readonly string[];
}

/** One document for any number of pieces; `file` is how the caller names the file of a piece. */
export function cutListJson(
	lists: readonly { readonly file: string; readonly list: CutList }[],
): CutListJson {
	return {
		schemaVersion: cutListVersion,
		pieces: lists.map(({ file, list }) => pieceOf(file, list)),
	};
}

function pieceOf(file: string, list: CutList): CutListPiece {
	return {
		file,
		piece: list.piece,
		unit: list.display.unit,
		precision: list.display.precision.toString(),
		rows: list.sections.flatMap(({ when, rows }) =>
			rows.map((row) => rowOf(row, when, list.display)),
		),
		aids: list.aids.map(
			({ name, kind, length, width, thick, stock, serves }) => ({
				name,
				kind,
				length: exportedSize(length),
				width: exportedSize(width),
				thickness: thick ? exportedSize(thick) : null,
				material: stock?.id ?? null,
				for: serves,
			}),
		),
	};
}

function rowOf(row: CutRow, cut: CutWhen, display: Display): CutListRow {
	const words = rowWords(row, display);
	return {
		label: row.label,
		cut,
		quantity: row.parts.length,
		parts: row.parts.map((part) => part.path),
		material: row.stock.id,
		...threeSizes(row.sizes, row.cut),
		stages: row.stages.map(({ stage, sizes, cut }) => ({
			stage,
			...threeSizes(sizes, cut),
		})),
		hands: row.hands
			? {
					kind: row.hands.named ? "left-right" : "mirrored",
					first: row.hands.first.map((part) => part.path),
					second: row.hands.second.map((part) => part.path),
					from: row.hands.from,
				}
			: null,
		edges: row.edges.map(({ edge: { where, work, text }, count }) => ({
			where,
			quantity: count,
			work,
			text,
		})),
		housings: row.housings.map(({ housing, count, takes, fits }, index) => ({
			kind: housing.kind,
			quantity: count,
			width: exportedSize(housing.width),
			fits: fits ? exportedSize(fits) : null,
			depth: exportedSize(housing.depth),
			at: exportedSize(housing.at),
			datum: housing.datum,
			for: takes,
			text: words.housings[index] ?? "",
		})),
		strips: row.strips ?? null,
		after: row.after,
		reading: row.reading ?? null,
		notes: row.notes,
	};
}

function threeSizes(
	sizes: Sizes,
	cut: CutSize,
): {
	readonly thickness: ExportedCut;
	readonly width: ExportedCut;
	readonly length: ExportedCut;
} {
	return {
		thickness: exportedCut(sizes.thick, cut.thick),
		width: exportedCut(sizes.width, cut.width),
		length: exportedCut(sizes.length, cut.length),
	};
}
