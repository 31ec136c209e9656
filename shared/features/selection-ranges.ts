// What "select more" takes step by step: the word, what stands in its slot, the line, the block, the thing around it, the file.

import {
	type Comment,
	type FileNode,
	fill,
	nodeAt,
	type SlotValue,
	type Span,
	type Statement,
} from "../../grammar/index.ts";
import { headlineEnd, placeAt } from "./support/place.ts";

/** Spans around an offset, innermost first; each lies in the next and is shorter than it. At least one: the file. */
export function selectionRanges(
	text: string,
	tree: FileNode,
	offset: number,
): Span[] {
	const spans: Span[] = [];
	const add = (span: Span | undefined): void => {
		if (span && span.start <= offset && offset <= span.end)
			spans.push({ start: span.start, end: span.end });
	};
	for (const span of commentSpans(text, tree.comments, offset)) add(span);
	for (const node of nodeAt(tree, offset)) {
		add(node.span);
		if (node.kind === "block" && node.closed)
			add({ start: node.span.start + 1, end: node.span.end - 1 });
		if (node.kind !== "statement") continue;
		add({ start: node.span.start, end: headlineEnd(node) });
		add(node.headSpan);
		add(describedSpan(tree.comments, node));
	}
	add(slotAt(tree, offset));
	return nested(spans);
}

/** From the shortest to the longest, without those that cut across one that is there already. */
function nested(spans: readonly Span[]): Span[] {
	const sorted = [...spans].sort(
		(a, b) => a.end - a.start - (b.end - b.start) || a.start - b.start,
	);
	const chain: Span[] = [];
	for (const span of sorted) {
		const last = chain.at(-1);
		const holds = !last || (span.start <= last.start && last.end <= span.end);
		const grows = !last || span.end - span.start > last.end - last.start;
		if (holds && grows && span.end > span.start) chain.push(span);
	}
	const file = sorted.at(-1);
	return chain.length > 0 || !file ? chain : [file];
}

/** All that stands in one slot of a line: `2 1/4 up from case.top`. */
function slotAt(tree: FileNode, offset: number): Span | undefined {
	const placed = placeAt(tree, offset).statement;
	const result = placed?.construct && fill(placed.statement, placed.construct);
	if (!result?.ok) return undefined;
	return [...result.filled.slots.values()]
		.flatMap((value) => spanOfSlot(value) ?? [])
		.find(({ start, end }) => start <= offset && offset <= end);
}

/** From the first to the last character of what fills a slot; undefined for an empty list. */
export function spanOfSlot(value: SlotValue): Span | undefined {
	switch (value.kind) {
		case "expression":
			return value.expression.span;
		case "position":
			return value.position.span;
		default: {
			const nodes = value.kind === "names" ? value.names : value.refs;
			const [first] = nodes;
			const last = nodes.at(-1);
			return first && last
				? { start: first.span.start, end: last.span.end }
				: undefined;
		}
	}
}

/** A comment, and the run of comment lines that it is one of. */
function commentSpans(
	text: string,
	comments: readonly Comment[],
	offset: number,
): readonly Span[] {
	const index = comments.findIndex(
		({ span }) => span.start <= offset && offset <= span.end,
	);
	const comment = comments[index];
	if (!comment) return [];
	const joins = (above: Comment | undefined, below: Comment | undefined) =>
		above?.ownLine === true &&
		below?.ownLine === true &&
		/^[ \t]*(?:\r\n|\r|\n)[ \t]*$/.test(
			text.slice(above.span.end, below.span.start),
		);
	let [first, last] = [index, index];
	while (joins(comments[first - 1], comments[first])) first--;
	while (joins(comments[last], comments[last + 1])) last++;
	const run = {
		start: (comments[first] as Comment).span.start,
		end: (comments[last] as Comment).span.end,
	};
	return [comment.span, run];
}

/** A statement with the description above it. */
function describedSpan(
	comments: readonly Comment[],
	{ doc, span }: Statement,
): Span | undefined {
	if (doc === "") return undefined;
	const before = comments.findLastIndex(
		({ span: own }) => own.end <= span.start,
	);
	const first = before - doc.split("\n").length + 1;
	const top = comments[first];
	return top?.doc ? { start: top.span.start, end: span.end } : undefined;
}
