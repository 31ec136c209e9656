// The buying list for a terminal and for paper.

import { textTable } from "../text/table.ts";
import type { BuyingList } from "./buying-list.ts";
import {
	type BuyRow,
	buySections,
	costLines,
	massText,
	weightLines,
} from "./buying-list-words.ts";
import type { TextOptions } from "./cut-list-text.ts";
import { wrap } from "./wrap.ts";

export function buyingListText(
	list: BuyingList,
	options: TextOptions = {},
): string {
	const columns = Math.max(60, options.columns ?? 100);
	const blocks = [`Buying list: ${list.piece}\n`];
	const sections = buySections(list);
	if (sections.length === 0) blocks.push("Nothing to buy.\n");
	// All sections share their columns.
	const rows = sections.flatMap((section) => section.rows);
	const lines = textTable(
		rows.map((row) => ["", row.item, row.size, row.buy, row.price]),
		{ align: ["left", "left", "left", "left", "right"], gap: 2 },
	)
		.split("\n")
		.slice(0, -1);
	const lineOf = new Map(rows.map((row, index) => [row, lines[index] ?? ""]));
	for (const { title, rows } of sections) {
		blocks.push(
			`${title.toUpperCase()}\n${rows
				.map((row) => `${lineOf.get(row) ?? ""}\n${noteText(row, columns)}`)
				.join("")}`,
		);
	}
	const cost = costLines(list);
	if (cost.length > 0) blocks.push(block("COST", cost, columns));
	if (list.weight.parts.length > 0 || list.weight.unknown.length > 0) {
		blocks.push(block("WEIGHT", weightLines(list), columns));
		blocks.push(byPart(list));
	}
	return blocks.join("\n");
}

function noteText(row: BuyRow, columns: number): string {
	return row.notes
		.flatMap((note) =>
			wrap(note, columns - 8).map(
				(line, at) => `${" ".repeat(at === 0 ? 6 : 8)}${line}\n`,
			),
		)
		.join("");
}

function block(
	title: string,
	lines: readonly string[],
	columns: number,
): string {
	return `${title}\n${lines
		.flatMap((line) =>
			wrap(line, columns - 4).map(
				(one, at) => `${" ".repeat(at === 0 ? 2 : 4)}${one}\n`,
			),
		)
		.join("")}`;
}

function byPart({ weight, display }: BuyingList): string {
	return `WEIGHT BY PART\n${textTable(
		weight.parts.map(({ part, kg }) => [
			"",
			part.path,
			massText(kg, display.unit),
		]),
		{ align: ["left", "left", "right"] },
	)}`;
}
