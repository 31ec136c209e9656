// The cut list as Markdown: one table for each part of it.

import { exactText } from "../model/explain.ts";
import { codeSpan, escapeMarkdown } from "../text/markdown.ts";
import type { CutList, CutRow } from "./cut-list.ts";
import { measureNote } from "./cut-list-text.ts";
import { countText, rowWords, sectionTitles } from "./cut-list-words.ts";
import { markdownTable } from "./markdown-table.ts";
import { squareText } from "./squares.ts";

export function cutListMarkdown(list: CutList): string {
	const blocks = [
		`## Cut list: ${escapeMarkdown(list.piece)}\n`,
		...(list.overall === "" ? [] : [`${escapeMarkdown(list.overall)}.\n`]),
		`${measureNote(list.display)}\n`,
	];
	const sections = list.sections.filter(({ rows }) => rows.length > 0);
	if (sections.length === 0) blocks.push("Nothing to cut.\n");
	for (const { when, rows } of sections) {
		blocks.push(
			`### ${sectionTitles[when]}\n`,
			markdownTable(
				["", "Qty", "Thick x width x length", "Material", "Part", "Work"],
				rows.map((row) => cells(row, list)),
			),
		);
	}
	if (list.aids.length > 0) {
		blocks.push(
			"### Aids, from offcuts\n",
			markdownTable(
				["Aid", "Kind", "Size", "Material", "For"],
				list.aids.map(({ name, kind, length, width, thick, stock, serves }) => [
					codeSpan(name),
					escapeMarkdown(kind),
					[...(thick ? [thick] : []), width, length]
						.map((size) => exactText(size, list.display.unit))
						.join(" x "),
					codeSpan(stock?.id ?? ""),
					serves.map((path) => codeSpan(path)).join(", "),
				]),
			),
		);
	}
	if (list.squares.length > 0) {
		blocks.push(
			"### To clamp up square\n",
			list.squares
				.map((square) => `- ${escapeMarkdown(squareText(square, list))}\n`)
				.join(""),
		);
	}
	return blocks.join("\n");
}

function cells(row: CutRow, list: CutList): readonly string[] {
	const words = rowWords(row, list.display);
	const work = [
		...(words.fit === undefined ? [] : [words.fit]),
		...(words.stages.length === 0
			? []
			: [`first ${words.stages.join(", then ")}`]),
		...words.housings,
		...words.edges,
		...(words.hands === undefined ? [] : [words.hands]),
		...words.notes,
	];
	return [
		row.label,
		countText(row),
		`${row.cut.thick.text} x ${row.cut.width.text} x ${row.cut.length.text}`,
		codeSpan(row.stock.id),
		row.parts.map((part) => codeSpan(part.path)).join(", "),
		work.map((line) => escapeMarkdown(line)).join("<br>"),
	];
}
