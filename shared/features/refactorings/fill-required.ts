// Adds the lines that the block at the cursor cannot do without, by the table's examples: to be changed to what is meant.

import {
	type Block,
	type Construct,
	type ContextId,
	contexts,
	fill,
	parse,
	type Statement,
} from "../../../grammar/index.ts";
import type { Stock } from "../../model/types.ts";
import { namesOf } from "../support/known-names.ts";
import { placeAt, placedIn } from "../support/place.ts";
import type { Asked, Offer } from "../support/refactoring.ts";

export function fillRequired({ snapshot, span, findings }: Asked): Offer[] {
	const { text, result, uri, design } = snapshot;
	const place = placeAt(result.tree, span.start);
	const chain = [
		...place.around,
		...(place.statement?.statement.block ? [place.statement] : []),
	];
	const inner = chain.at(-1);
	const block = inner?.statement.block;
	const context = inner?.construct?.block;
	if (!inner || !block?.closed || !context || text[block.span.start] !== "{")
		return [];
	const missing = missingIn(block, context);
	if (missing.length === 0) return [];
	const finding = findings.find(
		({ id, origin }) =>
			id === "missing-line" &&
			origin.uri === uri &&
			origin.span.start >= inner.statement.span.start &&
			origin.span.end <= inner.statement.headline.end,
	);
	const label =
		namesOf(inner.statement, inner.context)[0] ?? inner.statement.head;
	const heads = missing.map(({ head }) => `\`${head}\``).join(", ");
	return [
		{
			id: "fill-required",
			kind: finding ? "quickfix" : "refactor.rewrite",
			title: `Add to \`${label}\` what it needs: ${heads}`,
			...(finding ? { finding, preferred: true } : {}),
			change: () => {
				const stocks = [...design.stocks.values()];
				const at = block.span.end - 1;
				const lines = missing.map((row) => exampleFor(row, stocks));
				return {
					edits: [
						{
							span: { start: at, end: at },
							text: `\n${lines.join("\n")}\n`,
						},
					],
					keeps: "nothing",
				};
			},
		},
	];
}

/** The rows of the table that its context is incomplete without. */
function missingIn(block: Block, context: ContextId): Construct[] {
	const there = new Set(
		block.statements.map((one) => placedIn(context, one).construct),
	);
	return contexts[context].filter(
		(row) => row.required && !there.has(row) && !isNeedless(row, block),
	);
}

function isNeedless({ unless }: Construct, { statements }: Block): boolean {
	return (
		unless !== undefined &&
		statements.some(
			({ head, items: [, item] }) =>
				head === unless[0] &&
				item?.kind === "path" &&
				item.segments[0]?.text === unless[1],
		)
	);
}

/** The example of a row; of a material that the file does not have one that it has. */
function exampleFor(row: Construct, stocks: readonly Stock[]): string {
	const { example } = row;
	const [line] = parse(example).tree.statements as readonly [Statement];
	const read = fill(line, row);
	const material = read.ok ? read.filled.slots.get("material") : undefined;
	if (material?.kind !== "refs") return example;
	const [path] = material.refs;
	const id = path?.segments.map(({ text }) => text).join(".") ?? "";
	const kind = row.head === "panels" ? "sheet" : undefined;
	const other =
		stocks.find((one) => one.id === id) ??
		stocks.find((one) => one.kind === (kind ?? "board")) ??
		stocks.find((one) => one.kind === "sheet");
	return path && other
		? example.slice(0, path.span.start) +
				other.id +
				example.slice(path.span.end)
		: example;
}
