// Whether two trees say the same: what the formatter must not change, whatever it does to the spelling.

import {
	type Block,
	type ContextId,
	constructAt,
	type FileNode,
	type Item,
	type Statement,
} from "../../grammar/index.ts";

/** Same statements in the same order, same values, same docs, same comments; aliases of a head count as that head. */
export function sameMeaning(a: FileNode, b: FileNode): boolean {
	return (
		sameBody(a, b, "file") &&
		a.comments.length === b.comments.length &&
		a.comments.every(
			(comment, index) =>
				comment.text.trimEnd() === b.comments[index]?.text.trimEnd() &&
				comment.doc === b.comments[index]?.doc,
		)
	);
}

function sameBody(
	a: FileNode | Block,
	b: FileNode | Block,
	context: ContextId | undefined,
): boolean {
	return (
		a.statements.length === b.statements.length &&
		a.statements.every((statement, index) =>
			sameStatement(statement, b.statements[index] as Statement, context),
		)
	);
}

function sameStatement(
	a: Statement,
	b: Statement,
	context: ContextId | undefined,
): boolean {
	if (a.doc !== b.doc || a.items.length !== b.items.length) return false;
	const head = mainSpelling(context, a.head);
	if (head !== mainSpelling(context, b.head)) return false;
	const from = a.head === "" ? 0 : 1;
	for (let index = from; index < a.items.length; index++) {
		if (!sameItem(a.items[index] as Item, b.items[index] as Item)) return false;
	}
	if (!a.block || !b.block) return a.block === b.block;
	return sameBody(a.block, b.block, blockContext(context, head));
}

/** The head as the table spells it in that context; as it stands where the table does not know it. */
export function mainSpelling(
	context: ContextId | undefined,
	head: string,
): string {
	return (context && constructAt(context, head)?.head) ?? head;
}

/** The context of the block behind a head. */
export function blockContext(
	context: ContextId | undefined,
	head: string,
): ContextId | undefined {
	return context && constructAt(context, head)?.block;
}

function sameItem(a: Item, b: Item): boolean {
	switch (a.kind) {
		case "measure":
			return (
				b.kind === "measure" &&
				a.numerator === b.numerator &&
				a.denominator === b.denominator &&
				a.unit === b.unit
			);
		case "size-number":
			return b.kind === "size-number" && a.number === b.number;
		case "text":
			return b.kind === "text" && a.value === b.value;
		case "path":
			return (
				b.kind === "path" &&
				a.segments.length === b.segments.length &&
				a.segments.every((name, index) => name.text === b.segments[index]?.text)
			);
		case "call":
			return (
				b.kind === "call" &&
				a.callee.text === b.callee.text &&
				sameItems(a.args, b.args)
			);
		case "unary":
			return (
				b.kind === "unary" &&
				a.operator === b.operator &&
				sameItem(a.operand, b.operand)
			);
		case "binary":
		case "compare":
			return (
				b.kind === a.kind &&
				a.operator === b.operator &&
				sameItem(a.left, b.left) &&
				sameItem(a.right, b.right)
			);
		case "cross":
			return b.kind === "cross" && sameItems(a.sizes, b.sizes);
		case "list":
			return b.kind === "list" && sameItems(a.elements, b.elements);
		case "group":
			return b.kind === "group" && sameItem(a.inner, b.inner);
		default:
			return a.kind === b.kind;
	}
}

function sameItems(a: readonly Item[], b: readonly Item[]): boolean {
	return (
		a.length === b.length &&
		a.every((item, index) => sameItem(item, b[index] as Item))
	);
}
