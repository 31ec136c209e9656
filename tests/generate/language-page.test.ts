// The reference agrees with the table, and every example in the table reads by its own row.

import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import {
	type ContextId,
	constructAt,
	contexts,
	fill,
	parse,
} from "../../grammar/index.ts";
import { languagePagePath, wantedLanguagePage } from "./language-page.ts";

it("is what the table says (else run `node tests/generate/language-page.ts`)", () => {
	expect(readFileSync(languagePagePath, "utf8")).toBe(wantedLanguagePage());
});

const rows = (Object.keys(contexts) as ContextId[]).flatMap((context) =>
	contexts[context].map((construct) => ({ context, construct })),
);

it.each(
	rows.map(
		({ context, construct }) =>
			[context, construct.head, construct.example] as const,
	),
)(
	"in %s, the example of `%s` fits its own row: %s",
	(context, head, example) => {
		const { tree, faults } = parse(example);
		expect(faults).toEqual([]);
		const statement = tree.statements[0];
		expect(tree.statements).toHaveLength(1);
		expect(statement?.head).toBe(head);
		const construct = constructAt(context, head);
		if (!statement || !construct) throw new Error("no such row");
		const result = fill(statement, construct);
		expect(result.ok ? "" : result.misfit.message).toBe("");
		expect(Boolean(statement.block)).toBe(
			Boolean(construct.block && !construct.blockOptional) ||
				Boolean(statement.block),
		);
	},
);

it("names every head once in its context", () => {
	for (const context of Object.keys(contexts) as ContextId[]) {
		const heads = contexts[context].flatMap((row) => [
			row.head,
			...(row.aliases ?? []),
		]);
		expect(new Set(heads).size).toBe(heads.length);
	}
});
