// What an editor may fold away: blocks, runs of comment lines, runs of `use` lines.

import {
	allStatements,
	type FileNode,
	type Span,
} from "../../grammar/index.ts";

export interface Fold {
	/** From the first line that stays to the last that goes. */
	readonly span: Span;
	readonly kind: "block" | "comment" | "imports";
}

/** Only folds of at least two lines; in order of place. */
export function folding(text: string, tree: FileNode): Fold[] {
	const folds: Fold[] = [];
	for (const { block } of allStatements(tree)) {
		if (block && hasLineEnd(text, block.span)) {
			folds.push({ span: block.span, kind: "block" });
		}
	}
	const comments = tree.comments.filter((comment) => comment.ownLine);
	folds.push(...runs(text, comments, "comment"));
	const uses = tree.statements.filter((statement) => statement.head === "use");
	folds.push(...runs(text, uses, "imports"));
	return folds.sort((a, b) => a.span.start - b.span.start);
}

/** Neighbours with nothing between them but one line end. */
function runs(
	text: string,
	nodes: readonly { readonly span: Span }[],
	kind: Fold["kind"],
): Fold[] {
	const found: Fold[] = [];
	let run: Span | undefined;
	const finish = (): void => {
		if (run && hasLineEnd(text, run)) found.push({ span: run, kind });
	};
	for (const { span } of nodes) {
		if (
			run &&
			/^[ \t]*(?:\r\n|\r|\n)[ \t]*$/.test(text.slice(run.end, span.start))
		) {
			run = { start: run.start, end: span.end };
		} else {
			finish();
			run = span;
		}
	}
	finish();
	return found;
}

function hasLineEnd(text: string, { start, end }: Span): boolean {
	const at = text.slice(start, end).search(/[\r\n]/);
	return at >= 0;
}
