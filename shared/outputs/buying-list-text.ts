// The buying list for a terminal and for paper.

import type { Display } from "../model/types.ts";
import { textTable } from "../text/table.ts";
import type { BuyingList } from "./buying-list.ts";
import {
	type BuyRow,
	buySections,
	carryLines,
	costLines,
	handTexts,
	listTitle,
	massText,
	missingLines,
	shareLines,
	weightLines,
} from "./buying-list-words.ts";
import type { TextOptions } from "./cut-list-text.ts";
import type { Weight } from "./weight.ts";
import { wrap } from "./wrap.ts";

export function buyingListText(
	list: BuyingList,
	options: TextOptions = {},
): string {
	const columns = Math.max(60, options.columns ?? 100);
	const blocks = [`Buying list: ${listTitle(list)}\n`];
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
	const told: readonly (readonly [string, readonly string[]])[] = [
		["NO SHEET OR BOARD FOR", missingLines(list)],
		["COST", costLines(list)],
		["SHARE OF THE COST", shareLines(list)],
	];
	for (const [title, lines] of told) {
		if (lines.length > 0) blocks.push(block(title, lines, columns));
	}
	const hand = handTexts(list);
	if (hand.length > 0) {
		blocks.push(
			`LEFT IN THE SHOP, TO STAND IN THE STOCK FILE\n${hand.map((line) => `  ${line}\n`).join("")}`,
		);
	}
	const carry = carryLines(list);
	if (carry.length > 0) blocks.push(block("TO CARRY HOME", carry, columns));
	list.weights.forEach((weight, at) => {
		if (weight.parts.length === 0 && weight.unknown.length === 0) return;
		const of =
			list.weights.length > 1
				? ` OF ${(list.pieces[at]?.piece.name ?? "").toUpperCase()}`
				: "";
		blocks.push(
			block(`WEIGHT${of}`, weightLines(weight, list.display), columns),
		);
		// Of several pieces the parts are too many to be looked through.
		if (list.weights.length === 1) blocks.push(byPart(weight, list.display));
	});
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

function byPart(weight: Weight, { unit }: Display): string {
	return `WEIGHT BY PART\n${textTable(
		weight.parts.map(({ part, kg }) => ["", part.path, massText(kg, unit)]),
		{ align: ["left", "left", "right"] },
	)}`;
}
