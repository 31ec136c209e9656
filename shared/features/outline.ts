// The things of a text as a tree, for the outline of the editor: pieces with their boxes, legs, panels, sizes.

import {
	type Block,
	type Construct,
	type ContextId,
	type Declares,
	type FileNode,
	fill,
	type Span,
	type Statement,
} from "../../grammar/index.ts";
import { headlineEnd, placedIn } from "./support/place.ts";

export interface OutlineEntry {
	readonly name: string;
	/** What is told beside it: `box`, `given 54`. */
	readonly detail: string;
	readonly kind: Declares;
	/** The whole statement. */
	readonly span: Span;
	/** The name, or the head where there is none; inside `span`. */
	readonly nameSpan: Span;
	readonly children: readonly OutlineEntry[];
}

/** From the tree and the table alone: it is there in a text with faults, too. */
export function outline(text: string, tree: FileNode): OutlineEntry[] {
	return entriesOf(text, tree, "file");
}

function entriesOf(
	text: string,
	body: FileNode | Block,
	context: ContextId | undefined,
): OutlineEntry[] {
	return body.statements.flatMap((statement) => {
		const { construct } = placedIn(context, statement);
		const children = statement.block
			? entriesOf(text, statement.block, construct?.block)
			: [];
		const entry = construct && entryOf(text, statement, construct, children);
		return entry ? [entry] : children;
	});
}

function entryOf(
	text: string,
	statement: Statement,
	construct: Construct,
	children: readonly OutlineEntry[],
): OutlineEntry | undefined {
	if (!construct.declares) return undefined;
	const nameSpan = namesSpan(statement, construct);
	if (!nameSpan) return undefined;
	const value =
		statement.items[2]?.kind === "equals" ? statement.items[3] : undefined;
	const written =
		value && oneLine(text.slice(value.span.start, value.span.end));
	return {
		name: oneLine(text.slice(nameSpan.start, nameSpan.end)),
		detail: written ? `${construct.head} ${written}` : construct.head,
		kind: construct.declares,
		span: statement.span,
		nameSpan,
		children,
	};
}

/** Of the names that a statement brings into being; of a half-typed one whatever stands behind its head. */
function namesSpan(
	statement: Statement,
	construct: Construct,
): Span | undefined {
	const result = fill(statement, construct);
	const slot =
		result.ok &&
		(result.filled.slots.get("names") ?? result.filled.slots.get("name"));
	if (slot && slot.kind === "names") {
		const first = slot.names[0];
		const last = slot.names.at(-1);
		if (first && last) return { start: first.span.start, end: last.span.end };
	}
	const second = statement.items[1];
	if (!second || second.kind === "bad" || second.kind === "equals") {
		return undefined;
	}
	return {
		start: second.span.start,
		end: Math.min(second.span.end, headlineEnd(statement)),
	};
}

function oneLine(text: string): string {
	return text.replace(/\s+/g, " ").trim();
}
