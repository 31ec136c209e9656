// The cut list as small as a hover needs it: how many, what size, which parts, of what. The command line tells the rest.

import type { CutList, CutRow } from "../../outputs/cut-list.ts";
import { countText, sectionTitles } from "../../outputs/cut-list-words.ts";
import { markdownTable } from "../../outputs/markdown-table.ts";
import { escapeMarkdown } from "../../text/markdown.ts";

/** Markdown of a list whose sections may have been shortened by the caller. */
export function cutListGlance(list: CutList): string {
	const sections = list.sections.filter(({ rows }) => rows.length > 0);
	if (sections.length === 0) return "Nothing to cut.\n";
	const unit = list.display.unit === "in" ? "inches" : "millimetres";
	return sections
		.map(
			({ when, rows }, index) =>
				`**${sectionTitles[when]}**${index === 0 ? ` · thick x width x length in ${unit}` : ""}\n\n${markdownTable(["Qty", "Size", "Part", "Material"], rows.map(cells))}`,
		)
		.join("\n");
}

function cells(row: CutRow): readonly string[] {
	const size = `${row.cut.thick.text} x ${row.cut.width.text} x ${row.cut.length.text}`;
	return [
		escapeMarkdown(countText(row)),
		// A size that is broken over two lines is misread.
		escapeMarkdown(size).replaceAll(" ", "\u00a0"),
		escapeMarkdown(partsText(row.parts.map((part) => part.path))),
		escapeMarkdown(row.stock.id),
	];
}

/** `case.top, case.bottom` is `case: top, bottom`; a part alone keeps its path. */
function partsText(paths: readonly string[]): string {
	const groups = new Map<string, string[]>();
	for (const path of paths) {
		const dot = path.lastIndexOf(".");
		const owner = dot < 0 ? "" : path.slice(0, dot);
		const names = groups.get(owner) ?? [];
		names.push(path.slice(dot + 1));
		groups.set(owner, names);
	}
	return [...groups]
		.map(([owner, names]) =>
			owner === ""
				? names.join(", ")
				: names.length === 1
					? `${owner}.${names[0]}`
					: `${owner}: ${names.join(", ")}`,
		)
		.join("; ");
}
