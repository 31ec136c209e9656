// Writes the lines of a formatted text: one walk over statements and comments in order of place.

import type {
	Block,
	Comment,
	ContextId,
	FileNode,
	Span,
	Statement,
} from "../../grammar/index.ts";
import { indexLines, type LineIndex } from "../text/line-index.ts";
import type { Damage } from "./damage.ts";
import { type Piece, piecesOf } from "./pieces.ts";
import { blockContext, mainSpelling } from "./same-meaning.ts";

/** The widest line that a block written on one line may make. */
export const lineWidth = 100;
/** Blanks of each block. */
export const indentStep = 2;
/** Blanks before a line that goes on with a statement. */
export const continuation = 4;
const tabWidth = 4;

interface Line {
	text: string;
	comment: string | undefined;
}

/** A statement with those that are tied to its line, a comment on its own, or something that belongs to neither. */
interface Entry {
	readonly span: Span;
	readonly statement: Statement | undefined;
	readonly comment: Comment | undefined;
}

export class Layout {
	private readonly text: string;
	private readonly tree: FileNode;
	private readonly damage: Damage;
	private readonly lines: Line[] = [];
	private lineIndex: LineIndex | undefined;
	/** The next comment that is not written yet. */
	private nextComment = 0;

	constructor(text: string, tree: FileNode, damage: Damage) {
		this.text = text;
		this.tree = tree;
		this.damage = damage;
	}

	run(): string {
		const mark = this.text.startsWith("\ufeff") ? "\ufeff" : "";
		this.body(
			this.tree,
			{ start: mark.length, end: this.text.length },
			0,
			"file",
		);
		const lineEnd = this.text.includes("\r\n") ? "\r\n" : "\n";
		const lines = withComments(this.lines);
		return mark + lines.map((line) => line + lineEnd).join("");
	}

	/** False if something stands between the statements that is neither a comment nor a `;` (never in the file itself). */
	private body(
		parent: FileNode | Block,
		span: Span,
		indent: number,
		context: ContextId | undefined,
	): boolean {
		let at = span.start;
		let first = true;
		const entry = (one: Entry): void => {
			if (one.comment && !one.comment.ownLine && this.canTrail(one.comment)) {
				(this.lines.at(-1) as Line).comment = this.commentText(one.comment);
			} else {
				if (!first && hasBlankLine(this.text.slice(at, one.span.start))) {
					this.put("");
				}
				if (one.comment)
					this.put(blanks(indent) + this.commentText(one.comment));
				else if (one.statement && one.statement.span.end === one.span.end) {
					this.statement(one.statement, indent, context);
				} else this.raw(one.span, indent);
			}
			first = false;
			at = one.span.end;
		};

		for (const one of this.statementEntries(parent.statements)) {
			if (!this.between(at, one.span.start, parent, entry)) return false;
			entry(one);
			this.skipComments(one.span.end);
		}
		return this.between(at, span.end, parent, entry);
	}

	/** Statements, those that share a line by fault taken together. */
	private statementEntries(statements: readonly Statement[]): Entry[] {
		const entries: Entry[] = [];
		for (const statement of statements) {
			const before = entries.at(-1);
			if (before && this.damage.tied(statement)) {
				entries[entries.length - 1] = {
					...before,
					span: { start: before.span.start, end: statement.span.end },
				};
			} else
				entries.push({ span: statement.span, statement, comment: undefined });
		}
		return entries;
	}

	/** Writes the comments between two statements, and in the file itself whatever else stands there. */
	private between(
		from: number,
		to: number,
		parent: FileNode | Block,
		entry: (one: Entry) => void,
	): boolean {
		let at = from;
		const others = (end: number): boolean => {
			for (const junk of this.text
				.slice(at, end)
				.matchAll(/[^\s;\u200b-\u200d\u2060\ufeff]+/g)) {
				if (parent.kind === "block") return false;
				const start = at + junk.index;
				entry({
					span: { start, end: start + junk[0].length },
					statement: undefined,
					comment: undefined,
				});
			}
			return true;
		};
		for (;;) {
			const comment = this.tree.comments[this.nextComment];
			if (!comment || comment.span.start >= to) break;
			if (!others(comment.span.start)) return false;
			entry({ span: comment.span, statement: undefined, comment });
			this.nextComment++;
			at = comment.span.end;
		}
		return others(to);
	}

	private canTrail(comment: Comment): boolean {
		const last = this.lines.at(-1);
		return (
			last !== undefined &&
			last.comment === undefined &&
			last.text !== "" &&
			comment.span.start > 0
		);
	}

	private statement(
		statement: Statement,
		indent: number,
		context: ContextId | undefined,
	): void {
		const { block, span } = statement;
		if (this.damage.braces(statement)) {
			this.raw(span, indent);
			return;
		}
		if (!block) {
			this.headline(statement, indent, context);
			return;
		}
		const oneLine = this.oneLineBlock(statement, context);
		const began = this.lines.length;
		const comment = this.nextComment;
		this.headline(statement, indent, context);
		const last = this.lines.at(-1) as Line;
		if (
			oneLine !== undefined &&
			last.text.length + oneLine.length <= lineWidth
		) {
			last.text += oneLine;
			return;
		}
		if (!last.text.endsWith("{") || !this.headlineIsRaw(statement)) {
			last.text += last.text.trim() === "" ? "{" : " {";
		}
		const inner = { start: block.span.start + 1, end: block.span.end - 1 };
		const done = this.body(
			block,
			inner,
			indent + indentStep,
			blockContext(context, statement.head),
		);
		if (!done) {
			this.lines.length = began;
			this.nextComment = comment;
			this.raw(span, indent);
			return;
		}
		const isEmpty = block.statements.length === 0 && this.lines.at(-1) === last;
		if (isEmpty && last.comment === undefined) last.text += " }";
		else this.put(`${blanks(indent)}}`);
	}

	/** The items, over as many lines as the maker gave them; of a damaged statement as typed, its `{` included. */
	private headline(
		statement: Statement,
		indent: number,
		context: ContextId | undefined,
	): void {
		if (this.headlineIsRaw(statement)) {
			const { span, block } = statement;
			const end = block ? block.span.start + 1 : span.end;
			this.raw({ start: span.start, end }, indent);
			return;
		}
		const pieces = this.pieces(statement, context);
		let line = blanks(indent);
		pieces.forEach((piece, index) => {
			const before = pieces[index - 1];
			const breaks =
				before &&
				/[\r\n]/.test(this.text.slice(before.span.end, piece.span.start));
			if (breaks) {
				this.put(line);
				this.between(before.span.end, piece.span.start, this.tree, (one) => {
					const { comment } = one;
					if (!comment) return;
					if (!comment.ownLine && this.canTrail(comment)) {
						(this.lines.at(-1) as Line).comment = this.commentText(comment);
					} else
						this.put(blanks(indent + continuation) + this.commentText(comment));
				});
				line = blanks(indent + continuation) + piece.text;
			} else line += (index === 0 ? "" : blanks(piece.gap)) + piece.text;
		});
		this.put(line);
	}

	/** Damaged, without a head word, or with a comment before its `{`, where there is no other place for it. */
	private headlineIsRaw(statement: Statement): boolean {
		const { items, block } = statement;
		if (statement.head === "" || this.damage.headline(statement)) return true;
		const last = items.at(-1)?.span.end ?? 0;
		return (
			block !== undefined && /\S/.test(this.text.slice(last, block.span.start))
		);
	}

	private pieces(
		statement: Statement,
		context: ContextId | undefined,
	): Piece[] {
		const pieces = piecesOf(this.text, statement.items);
		const head = pieces[0];
		if (head && statement.head !== "") {
			pieces[0] = { ...head, text: mainSpelling(context, statement.head) };
		}
		return pieces;
	}

	/** ` { a; b }` if the block was written on one line, undefined if it was not. */
	private oneLineBlock(
		statement: Statement,
		context: ContextId | undefined,
	): string | undefined {
		const block = statement.block as Block;
		const { start, end } = block.span;
		// What is that long does not fit a line, however its blanks are written.
		if (end - start > 4 * lineWidth) return undefined;
		if (/[\r\n]/.test(this.text.slice(start, end))) return undefined;
		const inner = blockContext(context, statement.head);
		const parts: string[] = [];
		let at = block.span.start + 1;
		for (const one of block.statements) {
			if (
				this.damage.tied(one) ||
				/[^\s;]/.test(this.text.slice(at, one.span.start))
			)
				return undefined;
			const nested = one.block && this.oneLineBlock(one, inner);
			if (one.block && nested === undefined) return undefined;
			parts.push(this.oneLineHeadline(one, inner) + (nested ?? ""));
			at = one.span.end;
		}
		if (/[^\s;]/.test(this.text.slice(at, block.span.end - 1)))
			return undefined;
		const brace = this.headlineIsRaw(statement) ? "" : " {";
		return parts.length === 0 ? `${brace} }` : `${brace} ${parts.join("; ")} }`;
	}

	private oneLineHeadline(
		statement: Statement,
		context: ContextId | undefined,
	): string {
		if (this.headlineIsRaw(statement)) {
			const { span, block } = statement;
			return this.text.slice(
				span.start,
				block ? block.span.start + 1 : span.end,
			);
		}
		return this.pieces(statement, context)
			.map(
				(piece, index) => (index === 0 ? "" : blanks(piece.gap)) + piece.text,
			)
			.join("");
	}

	/** Text as typed; all its lines move by as much as the first. */
	private raw(span: Span, indent: number): void {
		this.lineIndex ??= indexLines(this.text);
		const { line } = this.lineIndex.positionAt(span.start);
		const lineStart = this.lineIndex.lineStart(line);
		const before = this.text.slice(lineStart, span.start);
		const move = indent - columnsOf(/^\s*/.exec(before)?.[0] ?? "");
		const [first = "", ...rest] = this.text
			.slice(span.start, span.end)
			.trimEnd()
			.split(/\r\n|\r|\n/);
		this.put(blanks(indent) + first);
		for (const line of rest) {
			const white = /^[ \t]*/.exec(line)?.[0] ?? "";
			const body = line.slice(white.length);
			if (body === "") this.put("");
			else if (move === 0) this.put(line);
			else this.put(blanks(Math.max(0, columnsOf(white) + move)) + body);
		}
		this.skipComments(span.end);
	}

	private skipComments(end: number): void {
		while ((this.tree.comments[this.nextComment]?.span.start ?? end) < end) {
			this.nextComment++;
		}
	}

	private commentText(comment: Comment): string {
		return this.text.slice(comment.span.start, comment.span.end).trimEnd();
	}

	private put(text: string): void {
		this.lines.push({ text, comment: undefined });
	}
}

/** Puts the comments behind their lines, those of neighbouring lines of one depth in one column where all fit the width. */
function withComments(lines: readonly Line[]): string[] {
	const out: string[] = [];
	let at = 0;
	while (at < lines.length) {
		let end = at;
		const indent = indentOf(lines[at]);
		while (
			lines[end]?.comment !== undefined &&
			indentOf(lines[end]) === indent
		) {
			end++;
		}
		if (end === at) {
			out.push((lines[at++] as Line).text);
			continue;
		}
		const run = lines.slice(at, end) as { text: string; comment: string }[];
		const widest = Math.max(...run.map((line) => line.text.length));
		const fits = run.every(
			(line) => widest + 2 + line.comment.length <= lineWidth,
		);
		for (const { text, comment } of run) {
			out.push(`${fits ? text.padEnd(widest) : text}  ${comment}`);
		}
		at = end;
	}
	return out;
}

function indentOf(line: Line | undefined): number {
	return line ? line.text.search(/\S|$/) : 0;
}

function hasBlankLine(gap: string): boolean {
	return (gap.match(/\r\n|\r|\n/g) ?? []).length > 1;
}

function blanks(count: number): string {
	return " ".repeat(count);
}

/** Width of white space, tabs counted to their stops as the grammar does. */
function columnsOf(white: string): number {
	let column = 0;
	for (const character of white) {
		column =
			character === "\t" ? column - (column % tabWidth) + tabWidth : column + 1;
	}
	return column;
}
