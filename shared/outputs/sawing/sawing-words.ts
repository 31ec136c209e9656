// How cuts and what comes of them are put into words, the same in every format.

import { leftText, partsIn as placedIn } from "../../layouts/index.ts";
import type { LaidPart, LaidRegion } from "../../layouts/types.ts";

import type { Guide } from "./blanks.ts";
import type { Caution } from "./cautions.ts";
import {
	extentText,
	type SawCut,
	type SawingPlan,
	type SawnPiece,
	type SawSetting,
} from "./sawing-plan.ts";

/** The parts of a sequence, in their order. */
export type SawingSection = "trim" | "track" | "saw" | "knife";

export const sawingTitles: Readonly<Record<SawingSection, string>> = {
	trim: "Trim the edges",
	track: "Large cuts, with a track or panel saw",
	saw: "At the saw",
	knife: "With rule and knife",
};

export interface SawingLines {
	readonly section: SawingSection;
	readonly settings: readonly SettingLines[];
}

export interface SettingLines {
	readonly setting: SawSetting;
	/** `Fence at 15 3/4`. */
	readonly title: string;
	/** Those that are not told at the setting before already. */
	readonly cautions: readonly Caution[];
	readonly rows: readonly CutRow[];
}

export interface CutRow {
	/** `12`, or `1-4` where cuts that are alike stand in one row. */
	readonly numbers: string;
	/** `sheet 2`. */
	readonly sheet: string;
	/** `rip 96 long`. */
	readonly cut: string;
	/** `A`, `a strip for A, B`. */
	readonly off: string;
	/** `leaves C`; empty if more is cut from it first. */
	readonly left: string;
}

export function sawingLines(plan: SawingPlan): readonly SawingLines[] {
	const sections: { section: SawingSection; settings: SettingLines[] }[] = [];
	let told: readonly Caution[] = [];
	for (const setting of plan.settings) {
		const section = sectionOf(setting);
		if (sections.at(-1)?.section !== section)
			sections.push({ section, settings: [] });
		sections.at(-1)?.settings.push({
			setting,
			title: settingTitle(setting, plan),
			cautions: setting.cautions.filter((one) => !told.includes(one)),
			rows: rowsOf(setting, plan),
		});
		told = setting.cautions;
	}
	return sections;
}

/** `17 settings for 40 cuts; piece by piece it would be 25`. */
export function changesText(plan: SawingPlan): string | undefined {
	const { changes, changesInTreeOrder: other } = plan;
	if (changes === 0) return undefined;
	const cuts = plan.settings
		.filter(({ kind }) => kind === "cut")
		.reduce((sum, { cuts }) => sum + cuts.length, 0);
	const saved = other > changes ? `; piece by piece it would be ${other}` : "";
	return `${counted(changes, "setting")} for ${counted(cuts, "cut")}${saved}`;
}

/** `sheet 2`, `board 1`. */
export function sheetName({ layout }: SawingPlan, index: number): string {
	return `${sheetWord(layout.kind)} ${index + 1}`;
}

export function sheetWord(kind: SawingPlan["layout"]["kind"]): string {
	if (kind === "boards") return "board";
	return kind === "lengths" ? "length" : "sheet";
}

/** `A`, or `A (strip 2 of 4)`. */
export function partLabel({ label, share }: LaidPart): string {
	return share === undefined ? label : `${label} (${share})`;
}

export function pieceText(
	{ region, part }: SawnPiece,
	plan: SawingPlan,
): string {
	if (part) return partLabel(part);
	switch (region.kind) {
		case "part":
			return partLabel(region.of);
		case "pair":
			return `a strip for ${labelsIn(region)}`;
		case "remnant":
			return region.keep ? `offcut ${sizeOf(region, plan)}, keep it` : "waste";
		case "cut":
			return `${sizeOf(region, plan)} for ${labelsIn(region)}`;
	}
}

/**
 * Of what becomes parts width x length, as the cut list has it: of a part its own, of anything else across the grain and
 * along it. Of an offcut length x width, as the stock file has it, and never larger than it is.
 */
export function sizeOf(region: LaidRegion, plan: SizesKnown): string {
	if (region.kind === "remnant") return leftText(region, plan.layout.display);
	const turned = region.kind === "part" && region.turned;
	const [across, along] = turned
		? (["x", "y"] as const)
		: (["y", "x"] as const);
	return `${extentText(region, across, plan)} x ${extentText(region, along, plan)}`;
}

type SizesKnown = Pick<SawingPlan, "layout" | "cutTexts">;

/** `2 x A, B`, in the order in which they lie. */
export function labelsIn(region: LaidRegion): string {
	const counts = new Map<string, number>();
	for (const { label } of partsIn(region))
		counts.set(label, (counts.get(label) ?? 0) + 1);
	if (counts.size === 0) return "no part";
	return [...counts]
		.map(([label, count]) => (count > 1 ? `${count} x ${label}` : label))
		.join(", ");
}

/** All that is cut from a region. */
export function partsIn(region: LaidRegion): readonly LaidPart[] {
	return placedIn(region).map(({ of }) => of);
}

function sectionOf({ kind, guide }: SawSetting): SawingSection {
	if (kind === "trim") return "trim";
	if (guide === "knife") return "knife";
	return guide === "track" ? "track" : "saw";
}

const guideWords: Readonly<Record<Guide, string>> = {
	track: "Track",
	fence: "Fence",
	stop: "Stop",
	knife: "Rule",
};

function settingTitle(
	{ kind, guide, text, bevel, cuts }: SawSetting,
	plan: SawingPlan,
): string {
	if (kind === "trim") {
		return plan.sheets.some(({ root }) => root.y > 0)
			? `${text} off all four edges: a long one, a short one square to it, then the others`
			: `${text} off both ends`;
	}
	const tilt = bevel === undefined ? "" : `, blade at ${angle(bevel)}`;
	const [first] = cuts;
	return guide === "track" && first
		? `${upperFirst(sheetName(plan, first.sheet))}: ${text} from the edge${tilt}`
		: `${guideWords[guide]} at ${text}${tilt}`;
}

function angle(degrees: number): string {
	return `${Number(degrees.toFixed(1))}°`;
}

function rowsOf(setting: SawSetting, plan: SawingPlan): readonly CutRow[] {
	const rows: { first: SawCut; last: SawCut; row: Omit<CutRow, "numbers"> }[] =
		[];
	for (const cut of setting.cuts) {
		const row = rowOf(cut, plan);
		const known = rows.at(-1);
		if (known && alike(known.row, row)) known.last = cut;
		else rows.push({ first: cut, last: cut, row });
		const latest = rows.at(-1);
		if (latest && row.left !== "")
			latest.row = { ...latest.row, left: row.left };
	}
	return rows.map(({ first, last, row }) => ({
		numbers:
			first === last ? `${first.number}` : `${first.number}-${last.number}`,
		...row,
	}));
}

/** Another one of the same, while nothing has been left yet. */
function alike(
	known: Omit<CutRow, "numbers">,
	next: Omit<CutRow, "numbers">,
): boolean {
	return (
		known.left === "" &&
		known.sheet === next.sheet &&
		known.cut === next.cut &&
		known.off === next.off
	);
}

function rowOf(cut: SawCut, plan: SawingPlan): Omit<CutRow, "numbers"> {
	const sheet = sheetName(plan, cut.sheet);
	if (cut.kind === "trim") {
		const { name } = plan.sheets[cut.sheet] ?? { name: "" };
		return { sheet, cut: name, off: "", left: "" };
	}
	return {
		sheet,
		cut: `${cut.kind} ${cut.lengthText} long`,
		off: cut.off ? pieceText(cut.off, plan) : "",
		left: cut.left ? `leaves ${pieceText(cut.left, plan)}` : "",
	};
}

function upperFirst(text: string): string {
	return text.charAt(0).toUpperCase() + text.slice(1);
}

/** `3 sheets`; with `words` for small numbers `three sheets`. */
export function counted(
	count: number,
	word: string,
	words: readonly string[] = [],
): string {
	return `${words[count] ?? count} ${word}${count === 1 ? "" : "s"}`;
}
