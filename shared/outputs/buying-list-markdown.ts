// The buying list as Markdown: a table for each section.

import { codeSpan, escapeMarkdown } from "../text/markdown.ts";
import type { BuyingList } from "./buying-list.ts";
import {
	buySections,
	costLines,
	massText,
	weightLines,
} from "./buying-list-words.ts";
import { markdownTable } from "./markdown-table.ts";

export function buyingListMarkdown(list: BuyingList): string {
	const blocks = [`## Buying list: ${escapeMarkdown(list.piece)}\n`];
	const sections = buySections(list);
	if (sections.length === 0) blocks.push("Nothing to buy.\n");
	for (const { title, rows } of sections) {
		blocks.push(
			`### ${title}\n`,
			markdownTable(
				["Item", "Size", "Buy", "Price", "Note"],
				rows.map((row) => [
					codeSpan(row.item),
					escapeMarkdown(row.size),
					escapeMarkdown(row.buy),
					escapeMarkdown(row.price),
					row.notes.map((note) => escapeMarkdown(note)).join("<br>"),
				]),
			),
		);
	}
	const cost = costLines(list);
	if (cost.length > 0) blocks.push("### Cost\n", bullets(cost));
	const { weight, display } = list;
	if (weight.parts.length > 0 || weight.unknown.length > 0) {
		blocks.push(
			"### Weight\n",
			bullets(weightLines(list)),
			markdownTable(
				["Part", "Weight"],
				weight.parts.map(({ part, kg }) => [
					codeSpan(part.path),
					escapeMarkdown(massText(kg, display.unit)),
				]),
			),
		);
	}
	return blocks.join("\n");
}

function bullets(lines: readonly string[]): string {
	return lines.map((line) => `- ${escapeMarkdown(line)}\n`).join("");
}
