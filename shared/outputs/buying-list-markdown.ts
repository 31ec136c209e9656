// The buying list as Markdown: a table for each section.

import { codeSpan, escapeMarkdown } from "../text/markdown.ts";
import type { BuyingList } from "./buying-list.ts";
import {
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
import { markdownTable } from "./markdown-table.ts";

export function buyingListMarkdown(list: BuyingList): string {
	const blocks = [`## Buying list: ${escapeMarkdown(listTitle(list))}\n`];
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
	const told: readonly (readonly [string, readonly string[]])[] = [
		["No sheet or board for", missingLines(list)],
		["Cost", costLines(list)],
		["Share of the cost", shareLines(list)],
	];
	for (const [title, lines] of told) {
		if (lines.length > 0) blocks.push(`### ${title}\n`, bullets(lines));
	}
	const hand = handTexts(list);
	if (hand.length > 0) {
		blocks.push(
			"### Left in the shop, to stand in the stock file\n",
			`\`\`\`\n${hand.join("\n")}\n\`\`\`\n`,
		);
	}
	const carry = carryLines(list);
	if (carry.length > 0) blocks.push("### To carry home\n", bullets(carry));
	list.weights.forEach((weight, at) => {
		if (weight.parts.length === 0 && weight.unknown.length === 0) return;
		const of =
			list.weights.length > 1
				? ` of ${escapeMarkdown(list.pieces[at]?.piece.name ?? "")}`
				: "";
		blocks.push(
			`### Weight${of}\n`,
			bullets(weightLines(weight, list.display)),
			markdownTable(
				["Part", "Weight"],
				weight.parts.map(({ part, kg }) => [
					codeSpan(part.path),
					escapeMarkdown(massText(kg, list.display.unit)),
				]),
			),
		);
	});
	return blocks.join("\n");
}

function bullets(lines: readonly string[]): string {
	return lines.map((line) => `- ${escapeMarkdown(line)}\n`).join("");
}
