// The cut list for a spreadsheet or a panel saw: one row for each row of the list.

import { csv } from "../text/csv.ts";
import type { CutList, CutRow, CutWhen } from "./cut-list.ts";
import { rowWords } from "./cut-list-words.ts";
import { decimalColumn, millimetreColumn } from "./exported-size.ts";

const stages = ["rough", "heavy", "trimmed"] as const;

/**
 * RFC 4180. Sizes stand three times: as the maker reads them (`52 19/32`), as a decimal in the design's unit, rounded as it
 * is cut, and exactly in millimetres. Sizes on the way are in the design's unit, thickness x width x length. A list in a
 * cell is parted by `; `.
 */
export function cutListCsv(lists: readonly CutList[]): string {
	return csv([header, ...lists.flatMap(rowsOf)]);
}

const header = [
	"piece",
	"label",
	"cut",
	"quantity",
	"left_or_first",
	"right_or_mirrored",
	"parts",
	"material",
	"unit",
	"thickness",
	"width",
	"length",
	"thickness_decimal",
	"width_decimal",
	"length_decimal",
	"thickness_mm",
	"width_mm",
	"length_mm",
	...stages,
	"strips",
	"edges_and_ends",
	"housings",
	"after",
	"reading",
	"note",
];

const cutWords: Readonly<Record<CutWhen, string>> = {
	now: "now",
	"to-fit": "to fit",
	last: "last",
};

function rowsOf(list: CutList): readonly (readonly string[])[] {
	return list.sections.flatMap(({ when, rows }) =>
		rows.map((row) => cells(list, when, row)),
	);
}

function cells(list: CutList, when: CutWhen, row: CutRow): readonly string[] {
	const { display } = list;
	const words = rowWords(row, display);
	const { thick, width, length } = row.cut;
	const { sizes } = row;
	return [
		list.piece,
		row.label,
		cutWords[when],
		String(row.parts.length),
		row.hands ? String(row.hands.first.length) : "",
		row.hands ? String(row.hands.second.length) : "",
		row.parts.map((part) => part.path).join("; "),
		row.stock.id,
		display.unit,
		thick.text,
		width.text,
		length.text,
		decimalColumn(thick.shown, display),
		decimalColumn(width.shown, display),
		decimalColumn(length.shown, display),
		millimetreColumn(sizes.thick),
		millimetreColumn(sizes.width),
		millimetreColumn(sizes.length),
		...stages.map((name) => {
			const stage = row.stages.find((one) => one.stage === name);
			return stage === undefined
				? ""
				: [stage.cut.thick, stage.cut.width, stage.cut.length]
						.map((cut) => cut.text)
						.join(" x ");
		}),
		row.strips === undefined ? "" : String(row.strips),
		words.edges.join("; "),
		words.housings.join("; "),
		row.after.join("; "),
		row.reading ?? "",
		[...(words.hands === undefined ? [] : [words.hands]), ...row.notes].join(
			"; ",
		),
	];
}
