// Comments stand beside the tree; which statement a `///` line describes follows from where it stands.

import type { IToken } from "chevrotain";
import { danglingDoc } from "../errors.ts";
import { endOf } from "../lexer.ts";
import type { Comment, SyntaxFault } from "./nodes.ts";

/** The `///` text directly above the statement that begins at `start`. To be asked in order of place. */
export type DocReader = (start: number) => string;

export function readComments(
	text: string,
	found: readonly IToken[],
): Comment[] {
	return found.map((token) => {
		const start = token.startOffset;
		const end = endOf(token);
		const doc = token.image.startsWith("///");
		return {
			span: { start, end },
			doc,
			ownLine: standsAlone(text, start),
			text: token.image.slice(doc ? 3 : 2).replace(/^[ \t]/, ""),
		};
	});
}

function standsAlone(text: string, start: number): boolean {
	for (let i = start - 1; i >= 0; i--) {
		const character = text[i] as string;
		if (character === "\n" || character === "\r") return true;
		if (character !== " " && character !== "\t" && character !== "\ufeff") {
			return false;
		}
	}
	return true;
}

export function docReader(
	text: string,
	comments: readonly Comment[],
): { docOf: DocReader; dangling: () => SyntaxFault[] } {
	const attached = new Set<Comment>();
	let next = 0;
	const docOf = (start: number): string => {
		if (next >= comments.length) return "";
		while (
			next < comments.length &&
			(comments[next] as Comment).span.start < start
		) {
			next++;
		}
		const lines: string[] = [];
		let below = start;
		for (let i = next - 1; i >= 0; i--) {
			const comment = comments[i] as Comment;
			if (!comment.ownLine || !isNextLine(text, comment.span.end, below)) break;
			if (comment.doc) {
				lines.push(comment.text.trimEnd());
				attached.add(comment);
			}
			below = comment.span.start;
		}
		return lines.reverse().join("\n");
	};
	const dangling = () =>
		comments
			.filter((comment) => comment.doc && !attached.has(comment))
			.map((comment) => danglingDoc(comment.span));
	return { docOf, dangling };
}

/** Where the comment lines directly above a statement begin: the start of the topmost, or of the statement itself. */
export function commentsAbove(
	text: string,
	comments: readonly Comment[],
	start: number,
): number {
	let low = 0;
	let high = comments.length;
	while (low < high) {
		const middle = (low + high) >> 1;
		if ((comments[middle] as Comment).span.start < start) low = middle + 1;
		else high = middle;
	}
	let top = start;
	for (let i = low - 1; i >= 0; i--) {
		const { span, ownLine } = comments[i] as Comment;
		if (!ownLine || !isNextLine(text, span.end, top)) break;
		top = span.start;
	}
	return top;
}

/** From `from` to `to` there is one line end and nothing else but blanks. */
function isNextLine(text: string, from: number, to: number): boolean {
	let lineEnds = 0;
	for (let i = from; i < to; i++) {
		const code = text.charCodeAt(i);
		if (code === 10 || (code === 13 && text.charCodeAt(i + 1) !== 10)) {
			if (++lineEnds > 1) return false;
		} else if (code !== 13 && code !== 32 && code !== 9) {
			return false;
		}
	}
	return lineEnds === 1;
}
