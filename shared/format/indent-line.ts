// The indentation of one line while it is typed: after a line end, and after a closing brace. Nothing but the blanks at the start
// of that line is ever touched.

import {
	type FileNode,
	nodeAt,
	type ParseResult,
	type Statement,
} from "../../grammar/index.ts";
import type { TextEdit } from "../text/edits.ts";
import { continuation, indentStep } from "./layout.ts";

/** What was typed. */
export type Typed = "}" | "\n";

/** The edit that indents the line of an offset, the cursor; undefined where it stands well or its place is not certain. */
export function indentLine(
	text: string,
	{ tree, balanced }: ParseResult,
	offset: number,
	typed: Typed,
): TextEdit | undefined {
	const start = lineStartAt(text, offset);
	const end = start + (/^[ \t]*/.exec(text.slice(start))?.[0].length ?? 0);
	const isBlank = end === text.length || /[\r\n]/.test(text[end] as string);
	// Where braces are missing, blanks before words say what belongs to what.
	if (!balanced && !isBlank) return undefined;
	const wanted =
		typed === "}"
			? text[end] === "}" && end + 1 === offset
				? closingIndent(text, tree, end)
				: undefined
			: lineIndent(text, tree, start, end);
	const is = text.slice(start, end);
	return wanted === undefined || wanted === is
		? undefined
		: { start, end, text: wanted };
}

function lineIndent(
	text: string,
	tree: FileNode,
	start: number,
	end: number,
): string | undefined {
	if (text[end] === "}") return closingIndent(text, tree, end);
	const above = codeAbove(text, tree, start);
	if (above === undefined) return "";
	const nodes = nodeAt(tree, above);
	const statements = nodes.filter((node) => node.kind === "statement");
	const character = text[above - 1];
	if (character === "{") {
		const holder = holderOf(nodes, above - 1) ?? statements.at(-1);
		return holder && indentOf(text, holder) + " ".repeat(indentStep);
	}
	if (character === "}") {
		const ended = statements.find(({ span }) => span.end === above);
		return ended && indentOf(text, ended);
	}
	const statement = statements.at(-1);
	if (!statement) return "";
	const goesOn = /(?:[,(+*/<>=-]|\bx)$/.test(
		text.slice(statement.span.start, above),
	);
	return indentOf(text, statement) + (goesOn ? " ".repeat(continuation) : "");
}

/** Behind the last character above the line that is neither blank nor comment; undefined if there is none. */
function codeAbove(
	text: string,
	{ comments }: FileNode,
	start: number,
): number | undefined {
	let at = start;
	let next = comments.findLastIndex(({ span }) => span.start < start);
	for (;;) {
		while (at > 0 && /\s/.test(text[at - 1] as string)) at--;
		if (at === 0) return undefined;
		const comment = comments[next];
		if (!comment || comment.span.end < at) return at;
		at = comment.span.start;
		next--;
	}
}

/** As the line on which the thing with that closing brace begins. */
function closingIndent(
	text: string,
	tree: FileNode,
	brace: number,
): string | undefined {
	const holder = nodeAt(tree, brace).findLast(
		(node): node is Statement =>
			node.kind === "statement" &&
			node.block?.closed === true &&
			node.block.span.end === brace + 1,
	);
	return holder && indentOf(text, holder);
}

function holderOf(
	nodes: ReturnType<typeof nodeAt>,
	brace: number,
): Statement | undefined {
	return nodes.find(
		(node): node is Statement =>
			node.kind === "statement" && node.block?.span.start === brace,
	);
}

function indentOf(text: string, { span }: Statement): string {
	const start = lineStartAt(text, span.start);
	return /^[ \t]*/.exec(text.slice(start, span.start))?.[0] ?? "";
}

function lineStartAt(text: string, at: number): number {
	let start = at;
	while (start > 0 && text[start - 1] !== "\n" && text[start - 1] !== "\r")
		start--;
	return start;
}
