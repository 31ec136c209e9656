// What is being typed at a cursor: the word, the statement that it continues, and what stands before it there.

import { type Item, parse, type Statement } from "../../../grammar/index.ts";
import { headlineEnd, type Place } from "./place.ts";
import type { Snapshot } from "./snapshot.ts";

export interface Word {
	/** Where the dotted path begins that ends at the cursor. */
	readonly start: number;
	readonly path: string;
	/** The names before the last dot. */
	readonly base: readonly string[];
	/** What is typed of the last name. */
	readonly last: string;
}

export function wordBefore(text: string, offset: number): Word {
	const line = text.slice(Math.max(0, offset - 400), offset);
	const path = /[\p{L}\p{M}\p{N}_.-]*$/u.exec(line)?.[0] ?? "";
	const names = path.split(".");
	const last = names.pop() ?? "";
	return { start: offset - path.length, path, base: names, last };
}

export function isInCommentOrText(
	{ result, text }: Snapshot,
	offset: number,
): boolean {
	const { comments } = result.tree;
	if (comments.some(({ span }) => span.start < offset && offset <= span.end)) {
		return true;
	}
	const start =
		Math.max(
			text.lastIndexOf("\n", offset - 1),
			text.lastIndexOf("\r", offset - 1),
		) + 1;
	const line = text.slice(start, offset);
	// A quote right after a digit is an inch mark, unless a text is open.
	let open = false;
	for (let at = 0; at < line.length; at++) {
		if (line[at] === "\\" && open) at++;
		else if (line[at] === '"') {
			if (open) open = false;
			else open = !/\d/.test(line[at - 1] ?? "");
		}
	}
	return open;
}

/** The statement that the word at `start` continues; `new` if it begins one, `none` if nothing may stand there. */
export function statementBefore(
	text: string,
	place: Place,
	start: number,
): Statement | "new" | "none" {
	const statement = place.body.statements.findLast(
		(one) => one.span.start <= start,
	);
	if (!statement || statement.span.start === start) return "new";
	const end = statement.block ? statement.span.end : headlineEnd(statement);
	if (start <= headlineEnd(statement)) return statement;
	const gap = text.slice(Math.min(end, start), start);
	if (gap.includes(";")) return "new";
	if (statement.block) return /[\r\n]/.test(gap) ? "new" : "none";
	if (!/[\r\n]/.test(gap)) return statement;
	return goesOn(text, statement, start) ? statement : "new";
}

/** Behind a comma or an operator the statement goes on in the next line, if that is indented deeper. */
function goesOn(text: string, statement: Statement, start: number): boolean {
	const before = text
		.slice(statement.span.start, start)
		.replace(/\/\/[^\r\n]*/g, "")
		.trimEnd();
	return (
		/[,=+*/<>-]$|(?:^|\s)x$/.test(before) &&
		column(text, start) > indentAt(text, statement.span.start)
	);
}

function column(text: string, at: number): number {
	return at - (text.lastIndexOf("\n", at - 1) + 1);
}

function indentAt(text: string, at: number): number {
	const start = text.lastIndexOf("\n", at - 1) + 1;
	return text.slice(start).search(/[^ \t]|$/);
}

export interface Before {
	/** Items behind the head that stand before the word. */
	readonly items: readonly Item[];
	/** A comma stands before the word: the names that are in the list already. */
	readonly list: readonly string[] | undefined;
	/** An operator or an open bracket stands before the word. */
	readonly wantsOperand: boolean;
}

/** Reads the beginning of a statement for itself, so that it does not matter what is broken behind the cursor. */
export function readBefore(beginning: string): Before {
	const written = beginning.replace(/\/\/[^\r\n]*/g, "").trimEnd();
	const itemsOf = (part: string): readonly Item[] =>
		parse(part).tree.statements[0]?.items.slice(1) ?? [];
	const opens = (written.match(/\(/g) ?? []).length;
	const closes = (written.match(/\)/g) ?? []).length;
	if (opens > closes || /(?:[+*/<>-]|[<>=!]=|\sx)$/.test(written)) {
		return { items: [], list: undefined, wantsOperand: true };
	}
	if (!written.endsWith(",")) {
		return { items: itemsOf(written), list: undefined, wantsOperand: false };
	}
	const items = itemsOf(written.slice(0, -1));
	const last = items.at(-1);
	const elements = last?.kind === "list" ? last.elements : last ? [last] : [];
	return {
		items: items.slice(0, -1),
		list: elements.map((one) =>
			one.kind === "path"
				? one.segments.map((name) => name.text).join(".")
				: "",
		),
		wantsOperand: false,
	};
}
