// Moves what was read of a text, in place: every span object once, so that whoever holds a node's span sees it move.

import type { Comment, Item, Span, Statement, SyntaxFault } from "./nodes.ts";

function move(span: Span, by: number): void {
	const own = span as { start: number; end: number };
	own.start += by;
	own.end += by;
}

export function moveComment(comment: Comment, by: number): void {
	move(comment.span, by);
}

/** A fault shares its spans with nobody. */
export function moveFault(fault: SyntaxFault, by: number): void {
	move(fault.span, by);
	for (const edit of fault.fix?.edits ?? []) move(edit.span, by);
}

/** Every span of a statement that was moved before: the next time none is looked for. */
const spansOf = new WeakMap<Statement, readonly Span[]>();

/** Moves a statement with all below it. */
export function moveStatement(statement: Statement, by: number): void {
	let spans = spansOf.get(statement);
	if (!spans) {
		const found: Span[] = [];
		spansInStatement(statement, found);
		spans = found;
		spansOf.set(statement, spans);
	}
	for (const span of spans) move(span, by);
}

/** Every span object of a statement once. */
function spansInStatement(statement: Statement, found: Span[]): void {
	const { span, headline, headSpan, items, block } = statement;
	found.push(span);
	if (headline !== span) found.push(headline);
	// The head is the first item, unless the statement has no plain word for a head.
	if (headSpan !== items[0]?.span) found.push(headSpan);
	for (const item of items) spansInItem(item, found);
	if (!block) return;
	found.push(block.span);
	for (const inner of block.statements) spansInStatement(inner, found);
}

function spansInItem(item: Item, found: Span[]): void {
	found.push(item.span);
	switch (item.kind) {
		case "path":
			// A path of one name is where its name is.
			for (const { span } of item.segments)
				if (span !== item.span) found.push(span);
			break;
		case "call":
			found.push(item.callee.span);
			for (const one of item.args) spansInItem(one, found);
			break;
		case "unary":
			spansInItem(item.operand, found);
			break;
		case "binary":
		case "compare":
			found.push(item.operatorSpan);
			spansInItem(item.left, found);
			spansInItem(item.right, found);
			break;
		case "cross":
			for (const one of item.sizes) spansInItem(one, found);
			break;
		case "list":
			for (const one of item.elements) spansInItem(one, found);
			break;
		case "group":
			spansInItem(item.inner, found);
			break;
	}
}
