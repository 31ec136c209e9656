// The cut sequence of a material for a terminal and for paper.

import { textTable } from "../../text/table.ts";
import { wrap } from "../wrap.ts";
import { cautionWords } from "./cautions.ts";
import type { SawingPlan } from "./sawing-plan.ts";
import { changesText, sawingLines, sawingTitles } from "./sawing-words.ts";

/** `columns` of the page: 100 by default, never under 60. */
export function sawingText(
	plan: SawingPlan,
	options: { readonly columns?: number } = {},
): string {
	const columns = Math.max(60, options.columns ?? 100);
	const sections = sawingLines(plan);
	// All tables share their columns.
	const rows = sections.flatMap(({ settings }) =>
		settings.flatMap((setting) => setting.rows),
	);
	const lines = textTable(
		rows.map((row) => ["", row.numbers, row.sheet, row.cut, row.off, row.left]),
		{ align: ["left", "right"] },
	)
		.split("\n")
		.slice(0, -1);
	const lineOf = new Map(rows.map((row, index) => [row, lines[index] ?? ""]));
	const changes = changesText(plan);
	return [
		...sections.map(({ section, settings }) =>
			[
				`${sawingTitles[section].toUpperCase()}\n`,
				...settings.flatMap(({ title, cautions, rows }) => [
					...wrapped(title, columns, 2),
					...cautions.flatMap((caution) =>
						wrapped(`! ${cautionWords[caution]}`, columns, 4),
					),
					...rows.map((row) => `${lineOf.get(row) ?? ""}\n`),
				]),
			].join(""),
		),
		changes === undefined ? "" : wrapped(`${changes}.`, columns, 0).join(""),
	]
		.filter((block) => block !== "")
		.join("\n");
}

function wrapped(text: string, columns: number, indent: number): string[] {
	return wrap(text, columns - indent - 2).map(
		(line, at) => `${" ".repeat(at === 0 ? indent : indent + 2)}${line}\n`,
	);
}
