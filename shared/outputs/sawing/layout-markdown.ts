// The layouts of some pieces as Markdown: a section for each material.

import { codeSpan, escapeMarkdown } from "../../text/markdown.ts";
import { markdownTable } from "../markdown-table.ts";
import { firstOfAll } from "./cautions.ts";
import { heading, isSawn, ownNote, sharedNote } from "./layout-text.ts";
import {
	boundText,
	missingLines,
	sheetRows,
	usedText,
} from "./layout-words.ts";
import { sawingMarkdown } from "./sawing-markdown.ts";
import type { SawingPlan } from "./sawing-plan.ts";

export function layoutMarkdown(plans: readonly SawingPlan[]): string {
	const line = (text: string): string => `${escapeMarkdown(text)}\n`;
	return [
		`## ${escapeMarkdown(heading(plans))}\n`,
		line(sharedNote(plans)),
		...(plans.length === 0 ? ["Nothing to lay out.\n"] : []),
		...plans.map((plan) => materialMarkdown(plan, plans)),
		...(isSawn(plans) ? [line(firstOfAll)] : []),
	].join("\n");
}

function materialMarkdown(
	plan: SawingPlan,
	plans: readonly SawingPlan[],
): string {
	const { layout } = plan;
	const bound = boundText(layout);
	const facts = [
		...ownNote(plan, plans),
		`${usedText(layout)}.`,
		...(bound === undefined ? [] : [`${bound}.`]),
		...layout.assumptions.map((one) => `Taken: ${one}.`),
		...missingLines(layout).map((one) => `Missing: ${one}.`),
	];
	const rows = sheetRows(plan).map((row) => row.map(escapeMarkdown));
	return [
		`### ${codeSpan(layout.stock.id)}\n`,
		facts.map((fact) => `- ${escapeMarkdown(fact)}\n`).join(""),
		...(rows.length > 0
			? [markdownTable(["Sheet", "Size", "Parts", "Offcuts"], rows)]
			: []),
		...(plan.settings.length > 0 ? [sawingMarkdown(plan)] : []),
	].join("\n");
}
