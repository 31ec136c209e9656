// The items of a statement as a flat row of pieces, each with its own spelling and the place it comes from.

import type { Expression, Item, Span } from "../../grammar/index.ts";
import { readsAsUnit, spellMeasure, spellText } from "./spelling.ts";

export interface Piece {
	readonly text: string;
	readonly span: Span;
	/** Blanks before it, where no line break stands there. */
	readonly gap: 0 | 1 | 2;
}

/** All pieces of a sound statement's items, in order of place. */
export function piecesOf(text: string, items: readonly Item[]): Piece[] {
	const pieces: Piece[] = [];
	let bareNumber = false;
	/** The next piece touches the one before. */
	let tight = true;

	const put = (written: string, span: Span, touches = false): void => {
		const gap =
			tight || touches ? 0 : bareNumber && readsAsUnit(written) ? 2 : 1;
		pieces.push({ text: written, span, gap });
		tight = false;
		bareNumber = false;
	};
	const putSign = (sign: RegExp, from: number, to: number): void => {
		const at = findSign(text, sign, from, to);
		put(sign === comma ? "," : "x", { start: at, end: at + 1 }, sign === comma);
	};
	const row = (elements: readonly Expression[], sign: RegExp): void => {
		elements.forEach((element, index) => {
			const before = elements[index - 1];
			if (before) putSign(sign, before.span.end, element.span.start);
			item(element);
		});
	};
	const open = (at: number): void => {
		put("(", { start: at, end: at + 1 });
		tight = true;
	};
	const close = (span: Span): void =>
		put(")", { start: span.end - 1, end: span.end }, true);

	const item = (node: Item): void => {
		switch (node.kind) {
			case "measure":
				put(spellMeasure(node), node.span);
				bareNumber = node.unit === "none";
				return;
			case "text":
				put(
					spellText(node, text.slice(node.span.start, node.span.end)),
					node.span,
				);
				return;
			case "path":
				put(node.segments.map((name) => name.text).join("."), node.span);
				return;
			case "equals":
				put("=", node.span);
				return;
			case "call":
				put(node.callee.text, node.callee.span);
				tight = true;
				open(node.callee.span.end);
				row(node.args, comma);
				close(node.span);
				return;
			case "unary":
				put(node.operator, {
					start: node.span.start,
					end: node.span.start + 1,
				});
				tight = true;
				item(node.operand);
				return;
			case "binary":
			case "compare":
				item(node.left);
				put(node.operator, node.operatorSpan);
				item(node.right);
				return;
			case "cross":
				row(node.sizes, cross);
				return;
			case "list":
				row(node.elements, comma);
				return;
			case "group":
				open(node.span.start);
				item(node.inner);
				close(node.span);
				return;
			default:
				put(text.slice(node.span.start, node.span.end), node.span);
		}
	};
	for (const one of items) item(one);
	return pieces;
}

const comma = /,/;
const cross = /[x\u00d7]/;

/** Where a separating sign stands between two nodes: nothing else is there but blanks and comments. */
function findSign(
	text: string,
	sign: RegExp,
	from: number,
	to: number,
): number {
	for (let at = from; at < to; at++) {
		if (text.startsWith("//", at)) {
			while (at < to && text[at] !== "\n" && text[at] !== "\r") at++;
		} else if (sign.test(text[at] as string)) return at;
	}
	return from;
}
