// The cut sequence of a material as Markdown: a numbered table for each part of it.

import { escapeMarkdown } from "../../text/markdown.ts";
import { markdownTable } from "../markdown-table.ts";
import { cautionWords } from "./cautions.ts";
import type { SawingPlan } from "./sawing-plan.ts";
import { changesText, sawingLines, sawingTitles } from "./sawing-words.ts";

export function sawingMarkdown(plan: SawingPlan): string {
	const changes = changesText(plan);
	const blocks = sawingLines(plan).map(
		({ section, settings }) =>
			`#### ${sawingTitles[section]}\n\n${markdownTable(
				["Set", "No.", "Sheet", "Cut", "Comes off", "Left"],
				settings.flatMap(({ title, cautions, rows }) =>
					rows.map((row, index) => [
						index === 0
							? [
									escapeMarkdown(title),
									...cautions.map(
										(caution) => `*${escapeMarkdown(cautionWords[caution])}*`,
									),
								].join("<br>")
							: "",
						...[row.numbers, row.sheet, row.cut, row.off, row.left].map(
							escapeMarkdown,
						),
					]),
				),
			)}`,
	);
	if (changes !== undefined) blocks.push(`${escapeMarkdown(`${changes}.`)}\n`);
	return blocks.join("\n");
}
