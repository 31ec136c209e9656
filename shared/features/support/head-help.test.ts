// Help and snippets, for every row of the table.

import { describe, expect, test } from "vitest";
import { contexts, fill, parse } from "../../../grammar/index.ts";
import { headHelp, headSnippet } from "./head-help.ts";

const rows = Object.entries(contexts).flatMap(([context, all]) =>
	all.map((row) => [`${context}: ${row.head}`, row] as const),
);

describe.each(rows)("%s", (_name, row) => {
	test("has help with its form and an example", () => {
		const help = headHelp(row);
		expect(help).toContain(`${row.help}.`);
		expect(help).toContain(`\`\`\`storyrod\n${row.example}\n\`\`\``);
	});

	test("has a snippet that, filled in, fits the row", () => {
		const line = headSnippet(row)
			.replace(/\$\{\d+\|([^,|]*)[^}]*\}/g, "$1")
			.replace(/\$\{\d+:((?:[^}\\]|\\.)*)\}/g, "$1")
			.replace("$0", "")
			.replace(/\\(.)/g, "$1");
		const { tree, faults } = parse(line);
		expect(faults).toEqual([]);
		const [statement] = tree.statements;
		expect(statement && fill(statement, row).ok, line).toBe(true);
	});
});
