// The cut sequence of a material as Markdown: a numbered table for each part of it.

import { escapeMarkdown } from "../../text/markdown.ts";
import { markdownTable } from "../markdown-table.ts";
import { cautionWords, firstOfAll } from "./cautions.ts";
import type { SawingPlan } from "./sawing-plan.ts";
import { changesText, sawingLines, sawingTitles } from "./sawing-words.ts";

export function sawingMarkdown(plan: SawingPlan): string {
	const changes = changesText(plan);
	const blocks = sawingLines(plan).map(
		({ section, settings }) =>
			`#### ${sawingTitles[section]}\n\n${markdownTable(
				["Set", "No.", "Sheet", "Cut", "Comes off", "Left"],
				settings.flatMap(({ setting, title, rows }) =>
					rows.map((row, index) => [
						index === 0
							? [
									escapeMarkdown(title),
									...setting.cautions.map(
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
	if (blocks.length > 0 && plan.layout.kind !== "veneer")
		blocks.push(`${escapeMarkdown(firstOfAll)}\n`);
	return blocks.join("\n");
}
