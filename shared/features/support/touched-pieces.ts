// Two texts of a file without the pieces that stand in both: a piece is worked out from its own text and from what the file
// declares for all, so that those are the same before and after, and need no evaluation.

import type { FileNode, Statement } from "../../../grammar/index.ts";

interface Text {
	readonly text: string;
	readonly tree: FileNode;
}

/** What can be added to a file without a change to its pieces: they do not know the new names yet. */
const harmless: ReadonlySet<string> = new Set(["use", "component"]);

/** Undefined if every piece may have changed. */
export function touchedPieces(
	before: Text,
	after: Text,
): { readonly before: string; readonly after: string } | undefined {
	if (!sameAround(before, after)) return undefined;
	const [old, now] = [pieceTexts(before), pieceTexts(after)];
	return {
		before: without(before, (piece) => now.has(piece)),
		after: without(after, (piece) => old.has(piece)),
	};
}

/** Whether what is declared for all pieces is the same, with names added at most. */
function sameAround(before: Text, after: Text): boolean {
	const old = around(before);
	let next = 0;
	for (const { head, written } of around(after)) {
		if (old[next]?.written === written) next++;
		else if (!harmless.has(head)) return false;
	}
	return next === old.length;
}

function around({
	text,
	tree,
}: Text): { readonly head: string; readonly written: string }[] {
	return tree.statements
		.filter((one) => !isPiece(one))
		.map((one) => ({ head: one.head, written: slice(text, one) }));
}

function pieceTexts({ text, tree }: Text): Set<string> {
	return new Set(
		tree.statements.filter(isPiece).map((one) => slice(text, one)),
	);
}

function without(
	{ text, tree }: Text,
	isOut: (piece: string) => boolean,
): string {
	let left = "";
	let at = 0;
	for (const statement of tree.statements) {
		if (!isPiece(statement) || !isOut(slice(text, statement))) continue;
		left += text.slice(at, statement.span.start);
		at = statement.span.end;
	}
	return left + text.slice(at);
}

function isPiece({ head }: Statement): boolean {
	return head === "piece";
}

function slice(text: string, { span }: Statement): string {
	return text.slice(span.start, span.end);
}
