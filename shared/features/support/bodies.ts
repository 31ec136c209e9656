// The piece or component around an offset as its text has it, and the places where lines can be put into it.

import type {
	Block,
	Comment,
	ContextId,
	Edit,
	FileNode,
	Span,
	Statement,
} from "../../../grammar/index.ts";
import { namesOf } from "./known-names.ts";
import { headlineEnd, placedIn } from "./place.ts";
import type { Snapshot } from "./snapshot.ts";

/** A piece or component. */
export interface Body {
	readonly statement: Statement;
	readonly block: Block;
	readonly context: "piece" | "component";
	readonly name: string;
}

/** All pieces and components of a file that have a block and a name. */
export function bodiesOf(tree: FileNode): Body[] {
	return tree.statements.flatMap((statement) => {
		const context = placedIn("file", statement).construct?.block;
		const { block } = statement;
		const [name] = namesOf(statement, "file");
		return block && name && (context === "piece" || context === "component")
			? [{ statement, block, context, name }]
			: [];
	});
}

/** The one whose statement holds an offset, its ends included. */
export function bodyAt(tree: FileNode, offset: number): Body | undefined {
	return bodiesOf(tree).find(
		({ statement: { span } }) => span.start <= offset && offset <= span.end,
	);
}

/** Whether two spans have a place in common, ends included. */
export function touches(a: Span, b: Span): boolean {
	return a.start <= b.end && b.start <= a.end;
}

/** Whether a span lies in another, ends included. */
export function holds(outer: Span, inner: Span): boolean {
	return outer.start <= inner.start && inner.end <= outer.end;
}

/** Heads that stand before the sizes of a piece. */
const leading: ReadonlySet<string> = new Set([
	"edition",
	"unit",
	"precision",
	"given",
]);

/** Puts a line among the first ones of a piece: behind its givens, else behind its unit. */
export function putAmongGivens(
	snapshot: Snapshot,
	{ block }: Body,
	line: string,
): Edit {
	const last = block.statements.findLast(({ head }) => leading.has(head));
	return last
		? putBehind(snapshot, last, line)
		: putFirst(snapshot.text, block, line);
}

/** Puts a line in front of all others of a block; a comment behind its brace stays there. */
export function putFirst(text: string, { span }: Block, line: string): Edit {
	const at = span.start + 1;
	const rest = /^[ \t]*(?:\/\/[^\r\n]*)?(?=[\r\n])/.exec(text.slice(at))?.[0];
	return rest === undefined
		? putAt(at, `\n${line}\n`)
		: putAt(at + rest.length, `\n${line}`);
}

/** Puts a line behind a statement and the comment on its line. */
export function putBehind(
	snapshot: Snapshot,
	statement: Statement,
	line: string,
): Edit {
	const { behind } = commentsOf(snapshot, statement);
	if (behind) return putAt(behind.span.end, `\n${line}`);
	const { end } = statement.span;
	const rest = snapshot.text.slice(end);
	const sign = /^[ \t]*;/.exec(rest)?.[0] ?? "";
	const isLast = /^[ \t]*(?:[\r\n]|$)/.test(rest.slice(sign.length));
	return putAt(end + sign.length, isLast ? `\n${line}` : `\n${line}\n`);
}

function putAt(at: number, text: string): Edit {
	return { span: { start: at, end: at }, text };
}

/** From the beginning of the line that an offset is in, where nothing but blanks stands before it. */
export function lineStartBefore(text: string, at: number): number {
	let start = at;
	while (start > 0 && /[ \t]/.test(text[start - 1] as string)) start--;
	return start === 0 || /[\r\n]/.test(text[start - 1] as string) ? start : at;
}

/** Behind the line break that ends the line of an offset, where nothing but blanks stands before it. */
export function lineEndBehind(text: string, at: number): number {
	const rest = /^[ \t]*(?:\r\n|\r|\n)?/.exec(text.slice(at))?.[0] ?? "";
	return /[\r\n]$/.test(rest) ? at + rest.length : at;
}

/** The comments that belong to a statement: the lines directly above it, and the one behind it on its last line. */
export function commentsOf(
	{ text, result }: Snapshot,
	statement: Statement,
): {
	readonly above: readonly Comment[];
	readonly behind: Comment | undefined;
} {
	const { comments } = result.tree;
	const above: Comment[] = [];
	let top = statement.span.start;
	for (const comment of comments.toReversed()) {
		if (comment.span.end > top) continue;
		const between = text.slice(comment.span.end, top);
		if (!comment.ownLine || !/^[ \t]*(?:\r\n|\r|\n)[ \t]*$/.test(between))
			break;
		above.unshift(comment);
		top = comment.span.start;
	}
	const behind = comments.find(
		({ span, ownLine }) =>
			!ownLine &&
			span.start >= statement.span.end &&
			/^[ \t;]*$/.test(text.slice(statement.span.end, span.start)),
	);
	return { above, behind };
}

/** Takes a statement away; its comments stay, as lines of their own. */
export function removal(snapshot: Snapshot, statement: Statement): Edit[] {
	const { text } = snapshot;
	const { above, behind } = commentsOf(snapshot, statement);
	const edits: Edit[] = above
		.filter(({ doc }) => doc)
		.map(({ span: { start } }) => ({
			// It described what is gone: below it stands something else now.
			span: { start, end: start + 3 },
			text: "//",
		}));
	const { start, end } = statement.span;
	if (behind)
		return [...edits, { span: { start, end: behind.span.start }, text: "" }];
	const rest = /^[ \t]*;[ \t]*/.exec(text.slice(end))?.[0] ?? "";
	const from = lineStartBefore(text, start);
	const to = lineEndBehind(text, end + rest.length);
	const alone =
		from < start || start === 0 || /[\r\n]/.test(text[start - 1] ?? "");
	// On a line with others the separator before it goes along where none stands behind.
	const before =
		!alone && rest === ""
			? (/[ \t]*;[ \t]*$/.exec(text.slice(0, start))?.[0] ?? "")
			: "";
	return [
		...edits,
		{
			span: {
				start: alone ? from : start - before.length,
				end: alone && to > end ? to : end + rest.length,
			},
			text: "",
		},
	];
}

/** The unit of bare numbers in a body: its own line, else that of the file. */
export function unitOf(
	body: FileNode | Block,
	around: "in" | "mm",
): "in" | "mm" {
	const line = unitLine(body);
	const item = line?.items[1];
	const word = item?.kind === "path" ? item.segments[0]?.text : undefined;
	return word === "mm" || word === "in" ? word : around;
}

export function unitLine(body: FileNode | Block): Statement | undefined {
	return body.statements.find(({ head }) => head === "unit");
}

/** A line of a block that stands alone in the text, without its block. */
export function headlineOf(text: string, statement: Statement): string {
	return text.slice(statement.span.start, headlineEnd(statement));
}

/** The context of the block of a statement that stands in `context`. */
export function contextBehind(
	context: ContextId | undefined,
	statement: Statement,
): ContextId | undefined {
	return placedIn(context, statement).construct?.block;
}
