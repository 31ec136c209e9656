// Reads the statements of a block by the table: what fits becomes a row, what does not becomes a finding.

import {
	type Block,
	type Construct,
	type ContextId,
	constructAt,
	contexts,
	contextsOf,
	type Expression,
	type FileNode,
	type Filled,
	fill,
	type NameNode,
	type PathNode,
	type Position,
	type Span,
	type Statement,
	spanOfFirst,
} from "../../grammar/index.ts";
import type { Evaluation } from "./evaluation.ts";
import { nearest } from "./meaning.ts";
import type { Origin } from "./types.ts";

/** A statement that fits its row, with plain access to its slots. */
export class Row {
	readonly filled: Filled;
	readonly uri: string;

	constructor(filled: Filled, uri: string) {
		this.filled = filled;
		this.uri = uri;
	}

	get head(): string {
		return this.filled.construct.head;
	}
	get construct(): Construct {
		return this.filled.construct;
	}
	get statement(): Statement {
		return this.filled.statement;
	}
	get block(): Block | undefined {
		return this.filled.statement.block;
	}
	get origin(): Origin {
		return { uri: this.uri, span: this.filled.statement.span };
	}
	/** The line without its block. */
	get headline(): Origin {
		return { uri: this.uri, span: this.filled.statement.headline };
	}
	at(span: Span): Origin {
		return { uri: this.uri, span };
	}
	has(word: string): boolean {
		return this.filled.words.has(word);
	}
	expression(slot: string): Expression | undefined {
		const value = this.filled.slots.get(slot);
		return value?.kind === "expression" ? value.expression : undefined;
	}
	names(slot: string): readonly NameNode[] {
		const value = this.filled.slots.get(slot);
		return value?.kind === "names" ? value.names : [];
	}
	/** The first name of a slot that takes one. */
	name(slot: string): NameNode | undefined {
		return this.names(slot)[0];
	}
	/** The word chosen in a `<slot:a|b>`. */
	word(slot: string): string | undefined {
		return this.names(slot)[0]?.text;
	}
	words(slot: string): readonly string[] {
		return this.names(slot).map((name) => name.text);
	}
	refs(slot: string): readonly PathNode[] {
		const value = this.filled.slots.get(slot);
		return value?.kind === "refs" ? value.refs : [];
	}
	ref(slot: string): PathNode | undefined {
		return this.refs(slot)[0];
	}
	position(slot: string): Position | undefined {
		const value = this.filled.slots.get(slot);
		return value?.kind === "position" ? value.position : undefined;
	}
	/** Whether the word stands right behind the head, as in `kind brackets`. */
	startsWith(word: string): boolean {
		const item = this.filled.statement.items[1];
		return (
			item?.kind === "path" &&
			item.segments.length === 1 &&
			item.segments[0]?.text === word
		);
	}
	text(slot: string): string | undefined {
		const expression = this.expression(slot);
		return expression?.kind === "text" ? expression.value : undefined;
	}
}

/** The rows of one block. */
export class Rows {
	readonly all: readonly Row[];

	constructor(all: readonly Row[]) {
		this.all = all;
	}

	first(head: string): Row | undefined {
		return this.all.find((row) => row.head === head);
	}
	every(head: string): Row[] {
		return this.all.filter((row) => row.head === head);
	}
}

export const noRows = new Rows([]);

/** Reads all statements of a block in a context. Tells what does not belong, does not fit, is there twice or is missing. */
export function readRows(
	evaluation: Evaluation,
	uri: string,
	block: Block | FileNode | undefined,
	context: ContextId,
	owner?: { readonly label: string; readonly origin: Origin },
): Rows {
	if (!block) return noRows;
	const rows: Row[] = [];
	const seen = new Map<Construct, Row>();
	for (const statement of block.statements) {
		const construct = constructFor(evaluation, uri, statement, context);
		if (!construct) continue;
		const result = fill(statement, construct);
		if (!result.ok) {
			// A line that could not be read at all is told by the grammar already.
			if (!statement.items.some((item) => item.kind === "bad"))
				evaluation.report(
					"does-not-fit",
					{ uri, span: result.misfit.span },
					result.misfit.message,
				);
			seen.set(construct, new Row({ construct, statement } as Filled, uri));
			continue;
		}
		const row = new Row(result.filled, uri);
		checkBlock(evaluation, row);
		const before = seen.get(construct);
		if (before && !construct.repeats) {
			evaluation.report(
				"said-twice",
				{ uri, span: statement.headSpan },
				`\`${construct.head}\` is said twice here: the first one holds; take one away`,
				{
					related: [
						{
							origin: { uri, span: before.statement.span },
							message: "The first one",
						},
					],
				},
			);
			continue;
		}
		seen.set(construct, row);
		rows.push(row);
	}
	if (owner) {
		for (const construct of contexts[context]) {
			if (construct.required && !seen.has(construct) && !isNeedless(construct))
				evaluation.report(
					"missing-line",
					owner.origin,
					`${owner.label} has no \`${construct.head}\` line: add one, as in \`${construct.example}\``,
				);
		}
	}
	return new Rows(rows);

	function isNeedless({ unless }: Construct): boolean {
		if (!unless) return false;
		const [head, word] = unless;
		return rows.some((row) => row.head === head && row.startsWith(word));
	}
}

function constructFor(
	evaluation: Evaluation,
	uri: string,
	statement: Statement,
	context: ContextId,
): Construct | undefined {
	const { head, headSpan } = statement;
	const construct = constructAt(context, head);
	if (construct) return construct;
	if (statement.items.some((item) => item.kind === "bad")) return undefined;
	const label = context === "file" ? "a file" : `\`${context}\``;
	if (!head) {
		if (statement.items.length > 0)
			evaluation.report(
				"no-head",
				{ uri, span: headSpan },
				`A line begins with a word that says what it is; ${label} takes ${heads(context)}`,
			);
		return undefined;
	}
	const others = contextsOf(head);
	const near = nearest(
		head,
		contexts[context].map((row) => row.head),
	);
	const mend = near
		? `did you mean \`${near}\`?`
		: others.length > 0
			? `it belongs in ${others.map((id) => `\`${id}\``).join(", ")}`
			: `${label} takes ${heads(context)}`;
	evaluation.report(
		"unknown-head",
		{ uri, span: headSpan },
		`\`${head}\` has no meaning in ${label}: ${mend}`,
		near
			? {
					fix: {
						title: `Change to \`${near}\``,
						edits: [{ span: headSpan, text: near }],
					},
				}
			: {},
	);
	return undefined;
}

function heads(context: ContextId): string {
	return [...new Set(contexts[context].map((row) => `\`${row.head}\``))].join(
		", ",
	);
}

function checkBlock(evaluation: Evaluation, row: Row): void {
	const { construct, block } = row;
	if (block && !construct.block) {
		evaluation.report(
			"no-block",
			row.at(spanOfFirst(block.span)),
			`\`${construct.head}\` takes no block: write it as \`${construct.example}\``,
		);
	} else if (!block && construct.block && !construct.blockOptional) {
		evaluation.report(
			"block-missing",
			row.headline,
			`\`${construct.head}\` wants a block \`{ … }\` behind it, as in \`${construct.example}\``,
		);
	}
}
