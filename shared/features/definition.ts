// From a name to where it is declared, in this file or in one that it uses. Nothing is worked out for it.

import { nodeAt, type Span } from "../../grammar/index.ts";
import type { NameWorld } from "./support/names/name-world.ts";
import type { Named, Target } from "./support/names/named.ts";
import { subjectAt } from "./support/names/occurrences.ts";

export interface Definition {
	/** What was asked about. */
	readonly from: Span;
	readonly uri: string;
	/** The whole declaration, and the name in it. */
	readonly span: Span;
	readonly nameSpan: Span;
}

/** Of the name at an offset, or of the file that a `use … from` path means. */
export function definition(
	world: NameWorld,
	uri: string,
	offset: number,
): Definition | undefined {
	const subject = subjectAt(world, uri, offset);
	const place = subject && placeOf(subject.target);
	return place
		? { from: subject.node.span, ...place }
		: usedFile(world, uri, offset);
}

type Place = Omit<Definition, "from">;

function placeOf(target: Target): Place | undefined {
	if (target.kind === "named") return placeOfNamed(target.named);
	const { of, words } = target;
	return of && (placeOfPanel(of, words[0] ?? "") ?? placeOfNamed(of));
}

function placeOfNamed({ uri, node, statement }: Named): Place {
	return { uri, span: statement.span, nameSpan: node.span };
}

/** A box says on lines of its own which panels it has, and of what. */
function placeOfPanel(
	{ kind, uri, statement: { block } }: Named,
	word: string,
): Place | undefined {
	if (kind !== "box") return undefined;
	for (const { head, headSpan, items, span } of block?.statements ?? []) {
		if (head === word && word === "back" && items.length > 1)
			return { uri, span, nameSpan: headSpan };
		if (head !== "panels") continue;
		const list = items[1]?.kind === "list" ? items[1].elements : [items[1]];
		for (const item of list)
			if (item?.kind === "path" && item.segments[0]?.text === word)
				return { uri, span, nameSpan: item.span };
	}
	return undefined;
}

function usedFile(
	world: NameWorld,
	uri: string,
	offset: number,
): Definition | undefined {
	const file = world.file(uri);
	const [, statement, item] = file ? nodeAt(file.tree, offset) : [];
	if (statement?.kind !== "statement" || statement.head !== "use")
		return undefined;
	if (item?.kind !== "text") return undefined;
	const target = world.resolve(uri, item.value);
	const start = { start: 0, end: 0 };
	return target === undefined
		? undefined
		: { from: item.span, uri: target, span: start, nameSpan: start };
}
