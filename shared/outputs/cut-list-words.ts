// How a row of the cut list is put into words, the same in every format.

import { ownText } from "../model/explain.ts";
import type { Display, StageName } from "../model/types.ts";
import { formatLength } from "../units/format.ts";
import type {
	CutRow,
	CutStage,
	CutWhen,
	RowEdge,
	RowHousing,
} from "./cut-list.ts";

export const sectionTitles: Readonly<Record<CutWhen, string>> = {
	now: "Cut now",
	"to-fit": "Cut to fit, when the assembly has been measured",
	last: "Cut last",
};

export const stageWords: Readonly<Record<StageName, string>> = {
	rough: "rough",
	heavy: "sawn heavy",
	trimmed: "trimmed",
	final: "final",
};

export interface RowWords {
	/** Sizes on the way, the first one first; empty if it is cut straight to size. */
	readonly stages: readonly string[];
	readonly edges: readonly string[];
	readonly housings: readonly string[];
	/** Which are left and right, or mirrored. */
	readonly hands: string | undefined;
	/** What must be measured before. */
	readonly fit: string | undefined;
	readonly notes: readonly string[];
}

export function rowWords(row: CutRow, display: Display): RowWords {
	return {
		stages: row.stages.map(stageText),
		edges: row.edges.map(edgeText),
		housings: row.housings.map((housing) => housingText(housing, display)),
		hands: handsText(row),
		fit: fitText(row),
		notes: [
			...(row.strips === undefined
				? []
				: [`glued up from ${row.strips} strips`]),
			...row.notes,
		],
	};
}

/** The paths of the parts, in the order of the design. */
export function partNames(row: CutRow): string {
	return row.parts.map((part) => part.path).join(", ");
}

/** `2`, or `2 (1 left, 1 right)` once they differ. */
export function countText(row: CutRow): string {
	const { hands, parts } = row;
	if (!hands) return String(parts.length);
	const [one, other] = hands.named ? ["left", "right"] : ["so", "mirrored"];
	return `${parts.length} (${hands.first.length} ${one}, ${hands.second.length} ${other})`;
}

function edgeText({ edge, count }: RowEdge): string {
	const { where, work, text } = edge;
	const named = work === "mitre" || work === "bevel";
	const what = named && !text.includes(work) ? `${work} ${text}` : text;
	return `${count > 1 ? `${count} x ` : ""}${where} ${what}`;
}

function stageText({ stage, cut }: CutStage): string {
	return `${stageWords[stage]} ${cut.thick.text} x ${cut.width.text} x ${cut.length.text}`;
}

function housingText(
	{ housing, count, takes, fits }: RowHousing,
	display: Display,
): string {
	const size = (of: typeof housing.width): string =>
		ownText(of.value, display.unit);
	// Sheets of one label differ: the figure is only where to begin.
	const width = fits
		? `to fit ~${size(fits).replace(/^~/, "")}`
		: `${size(housing.width)} wide`;
	// Set out by rule, so to the piece's precision.
	const at = formatLength(housing.at.value, {
		...display,
		approximately: true,
	});
	const place = at.shown.isZero()
		? housing.datum.replace(/^from /, "at ")
		: `${at.text} ${housing.datum}`;
	return `${count > 1 ? `${count} x ` : ""}${housing.kind} ${width}, ${size(housing.depth)} deep, ${place}, for ${takes.join(", ")}`;
}

function handsText({ hands }: CutRow): string | undefined {
	if (!hands) return undefined;
	const { first, second, from } = hands;
	const names = (parts: CutRow["parts"]): string =>
		parts.map((part) => part.path).join(", ");
	if (!hands.named) return `mirrored from the ${from} on: ${names(second)}`;
	const sides = [
		...(first.length > 0 ? [`left ${names(first)}`] : []),
		...(second.length > 0 ? [`right ${names(second)}`] : []),
	];
	return `left and right alike until ${from}; then ${sides.join("; ")}`;
}

function fitText({ after, reading }: CutRow): string | undefined {
	if (after.length === 0 && reading === undefined) return undefined;
	const when = after.length > 0 ? `after ${after.join(", ")}` : "";
	const what = reading === undefined ? "" : `measure ${reading}`;
	return [when, what].filter((text) => text !== "").join(": ");
}
