// The layouts and the cut sequence for other programs, as `schema/layout.json` describes them.

import type { LaidPart, LaidRegion, LaidSheet } from "../../layouts/types.ts";
import { formatMoney } from "../../units/format.ts";
import { boundText, filled } from "./layout-words.ts";
import type { SawCut, SawingPlan, SawnPiece } from "./sawing-plan.ts";
import { partsIn, sizeOf } from "./sawing-words.ts";

/** Grows when a field changes its meaning or goes; new fields leave it. */
export const layoutVersion = 1;

export interface LayoutJson {
	readonly schemaVersion: typeof layoutVersion;
	readonly groups: readonly {
		readonly files: readonly string[];
		readonly materials: readonly MaterialJson[];
	}[];
}

/** In millimetres, from the corner of the whole sheet: x along the grain. */
interface AreaJson {
	readonly x: number;
	readonly y: number;
	readonly length: number;
	readonly width: number;
}

interface PartJson extends AreaJson {
	readonly label: string;
	readonly part: string;
	readonly piece: string;
	readonly share: string | null;
	/** Width x length as it is cut, in the unit of the design. */
	readonly text: string;
	readonly turned: boolean;
	/** Of two that one bevelled rip parts: the area is that of both. */
	readonly bevelDegrees: number | null;
}

interface CutJson {
	readonly number: number;
	/** From 1. */
	readonly sheet: number;
	readonly kind: SawCut["kind"];
	readonly guide: "track" | "fence" | "stop" | "knife";
	readonly setting: string;
	readonly settingMm: number;
	readonly bevelDegrees: number | null;
	readonly lengthMm: number;
	readonly blank: AreaJson;
	readonly kerf: AreaJson;
	readonly off: readonly string[];
	readonly left: readonly string[];
	readonly cautions: readonly string[];
}

interface MaterialJson {
	readonly material: string;
	readonly kind: "sheets" | "boards" | "lengths" | "veneer";
	readonly unit: "in" | "mm";
	readonly pieces: readonly string[];
	readonly kerfMm: number;
	readonly price: string | null;
	readonly currency: string | null;
	readonly leastPrice: string | null;
	readonly leastSheets: number;
	readonly proven: boolean;
	readonly bound: string | null;
	readonly filled: number;
	readonly assumptions: readonly string[];
	readonly missing: readonly {
		readonly label: string;
		readonly part: string;
		readonly piece: string;
		readonly count: number;
		readonly why: string;
		readonly message: string;
	}[];
	readonly sheets: readonly {
		readonly name: string;
		readonly length: number;
		readonly width: number;
		readonly onHand: boolean;
		readonly price: string | null;
		readonly trim: number;
		readonly defects: readonly AreaJson[];
		readonly parts: readonly PartJson[];
		readonly remnants: readonly (AreaJson & { readonly keep: boolean })[];
	}[];
	readonly cuts: readonly CutJson[];
	readonly settings: number;
	readonly settingsInTreeOrder: number;
}

/** `files` are what the caller calls the files of the pieces that share their sheets. */
export function layoutJson(
	groups: readonly {
		readonly files: readonly string[];
		readonly plans: readonly SawingPlan[];
	}[],
): LayoutJson {
	return {
		schemaVersion: layoutVersion,
		groups: groups.map(({ files, plans }) => ({
			files,
			materials: plans.map(materialOf),
		})),
	};
}

function materialOf(plan: SawingPlan): MaterialJson {
	const { layout } = plan;
	const { stock, price, leastPrice } = layout;
	return {
		material: stock.id,
		kind: layout.kind,
		unit: layout.display.unit,
		pieces: layout.pieces,
		kerfMm: mm(layout.kerf),
		price: price ? formatMoney(price) : null,
		currency: stock.currency ?? null,
		leastPrice: leastPrice ? formatMoney(leastPrice) : null,
		leastSheets: layout.leastSheets,
		proven: layout.proven,
		bound: boundText(layout) ?? null,
		filled: Number(filled(layout).toFixed(4)),
		assumptions: layout.assumptions,
		missing: layout.missing.map(({ of, count, why, message }) => ({
			label: of.label,
			part: of.path,
			piece: of.piece,
			count,
			why,
			message,
		})),
		sheets: plan.sheets.map((sheet) => sheetOf(sheet, plan)),
		cuts: plan.settings.flatMap(({ guide, text, at, bevel, cuts, cautions }) =>
			cuts.map((cut) => ({
				number: cut.number,
				sheet: cut.sheet + 1,
				kind: cut.kind,
				guide,
				setting: text,
				settingMm: mm(at),
				bevelDegrees: bevel ?? null,
				lengthMm: mm(cut.length),
				blank: areaOf(cut.blank),
				kerf: areaOf(cut.kerf),
				off: labelsOf(cut.off),
				left: labelsOf(cut.left),
				cautions,
			})),
		),
		settings: plan.changes,
		settingsInTreeOrder: plan.changesInTreeOrder,
	};
}

function sheetOf(
	sheet: LaidSheet,
	plan: SawingPlan,
): MaterialJson["sheets"][number] {
	const parts: PartJson[] = [];
	const remnants: (AreaJson & { keep: boolean })[] = [];
	const add = (
		of: LaidPart,
		region: LaidRegion,
		bevel: number | null,
	): void => {
		parts.push({
			label: of.label,
			part: of.path,
			piece: of.piece,
			share: of.share ?? null,
			...areaOf(region),
			text: sizeOf(region, plan),
			turned:
				(region.kind === "part" || region.kind === "pair") && region.turned,
			bevelDegrees: bevel,
		});
	};
	const walk = (region: LaidRegion): void => {
		if (region.kind === "part") add(region.of, region, null);
		if (region.kind === "pair")
			for (const of of region.of) add(of, region, region.bevel);
		if (region.kind === "remnant")
			remnants.push({ ...areaOf(region), keep: region.keep });
		if (region.kind === "cut") region.pieces.forEach(walk);
	};
	walk(sheet.root);
	return {
		name: sheet.name,
		length: mm(sheet.length),
		width: mm(sheet.width),
		onHand: sheet.onHand,
		price: sheet.price ? formatMoney(sheet.price) : null,
		trim: mm(sheet.trim),
		defects: sheet.defects.map(areaOf),
		parts,
		remnants,
	};
}

/** Of the parts in what comes off. */
function labelsOf(piece: SawnPiece | undefined): readonly string[] {
	if (!piece) return [];
	const parts = piece.part ? [piece.part] : partsIn(piece.region);
	return parts.map(({ label }) => label);
}

function areaOf({ x, y, length, width }: AreaJson): AreaJson {
	return { x: mm(x), y: mm(y), length: mm(length), width: mm(width) };
}

function mm(steps: number): number {
	return steps / 1_000;
}
