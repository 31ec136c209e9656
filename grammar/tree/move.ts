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

/** Moves a statement with all below it. */
export function moveStatement(statement: Statement, by: number): void {
	const { span, headline, headSpan, items, block } = statement;
	move(span, by);
	if (headline !== span) move(headline, by);
	// The head is the first item, unless the statement has no plain word for a head.
	if (headSpan !== items[0]?.span) move(headSpan, by);
	for (const item of items) moveItem(item, by);
	if (!block) return;
	move(block.span, by);
	for (const inner of block.statements) moveStatement(inner, by);
}

function moveItem(item: Item, by: number): void {
	move(item.span, by);
	switch (item.kind) {
		case "path":
			// A path of one name is where its name is.
			for (const { span } of item.segments)
				if (span !== item.span) move(span, by);
			break;
		case "call":
			move(item.callee.span, by);
			for (const one of item.args) moveItem(one, by);
			break;
		case "unary":
			moveItem(item.operand, by);
			break;
		case "binary":
		case "compare":
			move(item.operatorSpan, by);
			moveItem(item.left, by);
			moveItem(item.right, by);
			break;
		case "cross":
			for (const one of item.sizes) moveItem(one, by);
			break;
		case "list":
			for (const one of item.elements) moveItem(one, by);
			break;
		case "group":
			moveItem(item.inner, by);
			break;
	}
}
