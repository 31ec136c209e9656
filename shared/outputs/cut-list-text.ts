// The cut list for a terminal and for paper: straight columns, details under each row.

import { exactText } from "../model/explain.ts";
import type { Display } from "../model/types.ts";
import { textTable } from "../text/table.ts";
import { mixedText } from "../units/format.ts";
import type { CutList, CutRow } from "./cut-list.ts";
import { partNames, rowWords, sectionTitles } from "./cut-list-words.ts";
import { squareText } from "./squares.ts";
import { wrap } from "./wrap.ts";

export interface TextOptions {
	/** Columns of the page; 100 by default, never under 60. */
	readonly columns?: number;
}

export function cutListText(list: CutList, options: TextOptions = {}): string {
	const columns = Math.max(60, options.columns ?? 100);
	const blocks = [heading(list, columns)];
	const rows = list.sections.flatMap((section) => section.rows);
	if (rows.length === 0) blocks.push("Nothing to cut.\n");
	else {
		// All parts of the list share their columns.
		const lines = table(rows, list.display, columns);
		for (const { when, rows } of list.sections) {
			if (rows.length === 0) continue;
			blocks.push(
				[
					`${sectionTitles[when].toUpperCase()}\n`,
					lines.header,
					...rows.map((row) => lines.of.get(row) ?? ""),
				].join(""),
			);
		}
	}
	if (list.aids.length > 0) blocks.push(aids(list));
	if (list.squares.length > 0) blocks.push(squares(list, columns));
	return blocks.join("\n");
}

/** What the figures on the list are, in one line. */
export function measureNote({ unit, precision }: Display): string {
	const name = unit === "in" ? "inches" : "millimetres";
	const step =
		unit === "in" ? mixedText(precision) : String(precision.toNumber());
	return `Thickness x width x length in ${name} to the nearest ${step}; the grain runs along the length.`;
}

function heading(list: CutList, columns: number): string {
	return [
		`Cut list: ${list.piece}`,
		...(list.overall === "" ? [] : wrap(`${list.overall}.`, columns)),
		...wrap(measureNote(list.display), columns),
	]
		.map((line) => `${line}\n`)
		.join("");
}

interface Table {
	readonly header: string;
	readonly of: ReadonlyMap<CutRow, string>;
}

function table(
	rows: readonly CutRow[],
	display: Display,
	columns: number,
): Table {
	const cells = rows.map((row) => [
		row.label,
		String(row.parts.length),
		row.cut.thick.text,
		"x",
		row.cut.width.text,
		"x",
		row.cut.length.text,
		row.stock.id,
		"",
	]);
	const head = ["", "Qty", "Thick", "", "Width", "", "Length", "Material", ""];
	const lines = textTable([head, ...cells], {
		align: ["left", "right", "right", "left", "right", "left", "right"],
		gap: 1,
	})
		.split("\n")
		.slice(0, -1);
	const width = Math.max(...lines.map((line) => [...line].length));
	// The names stand in the last column; where that leaves too little, they go under the row.
	const room = columns - width - 2;
	const indent = " ".repeat(4);
	const of = new Map<CutRow, string>();
	rows.forEach((row, index) => {
		const first = lines[index + 1] ?? "";
		const under = (text: string): string =>
			wrap(text, columns - indent.length - 2)
				.map((line, at) => `${indent}${at === 0 ? "" : "  "}${line}\n`)
				.join("");
		const names = partNames(row);
		const beside = room >= 20 ? wrap(names, room) : [];
		const text =
			room >= 20
				? beside
						.map((line, at) =>
							at === 0
								? `${first.padEnd(width)}  ${line}\n`
								: `${" ".repeat(width)}  ${line}\n`,
						)
						.join("")
				: `${first}\n${under(names)}`;
		of.set(row, text + detailLines(row, display).map(under).join(""));
	});
	const header = lines[0] ?? "";
	return {
		header: room >= 20 ? `${header.padEnd(width)}  Part\n` : `${header}\n`,
		of,
	};
}

function detailLines(row: CutRow, display: Display): readonly string[] {
	const words = rowWords(row, display);
	return [
		...(words.fit === undefined ? [] : [words.fit]),
		...(words.stages.length === 0
			? []
			: [`first ${words.stages.join(", then ")}, then as above`]),
		...words.housings,
		...words.edges,
		...(words.hands === undefined ? [] : [words.hands]),
		...words.notes,
	];
}

function aids(list: CutList): string {
	const { unit } = list.display;
	const rows = list.aids.map(
		({ name, kind, length, width, thick, stock, serves }) => [
			"",
			name,
			kind,
			[...(thick ? [thick] : []), width, length]
				.map((size) => exactText(size, unit))
				.join(" x "),
			stock?.id ?? "any offcut",
			serves.length > 0 ? `for ${serves.join(", ")}` : "",
		],
	);
	return `AIDS, FROM OFFCUTS\n${textTable(rows)}`;
}

function squares(list: CutList, columns: number): string {
	const lines = list.squares.flatMap((square) =>
		wrap(squareText(square, list), columns - 4).map(
			(line, at) => `${at === 0 ? "  " : "    "}${line}\n`,
		),
	);
	return `TO CLAMP UP SQUARE\n${lines.join("")}`;
}
