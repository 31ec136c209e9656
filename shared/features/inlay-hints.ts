// What the editor writes between the words: sizes that follow, thicknesses as they measure, totals, the other unit.

import {
	type Block,
	type ContextId,
	type FileNode,
	fill,
	type Span,
} from "../../grammar/index.ts";
import { trueSize } from "../model/cut-size.ts";
import type { Display, Stock } from "../model/types.ts";
import { codeSpan, escapeMarkdown } from "../text/markdown.ts";
import { defaultPrecision, lengthText } from "../units/format.ts";
import { Rational } from "../units/rational.ts";
import {
	fastenerHints,
	fastenerStory,
} from "./support/hints/fastener-hints.ts";
import type { Hint, HintChoice } from "./support/hints/hint.ts";
import { otherUnitHints, otherUnitStory } from "./support/hints/other-unit.ts";
import {
	sizeHints,
	sizeStory,
	trimHints,
	trimStory,
} from "./support/hints/size-hints.ts";
import { placedIn } from "./support/place.ts";
import { pieceAt, type Snapshot } from "./support/snapshot.ts";

/** The hints in a part of the text, in order of place. */
export function inlayHints(
	snapshot: Snapshot,
	range: Span,
	choice: HintChoice,
): Hint[] {
	const { design, uri, result } = snapshot;
	const hints: Hint[] = [];
	for (const piece of design.pieces) {
		const { origin } = piece.declaration;
		if (origin.uri !== uri || !meets(origin.span, range)) continue;
		if (choice.sizes) hints.push(...sizeHints(piece, uri, range));
		if (choice.totals) {
			hints.push(
				...trimHints(piece, uri, range),
				...fastenerHints(piece, result.tree, uri, range),
			);
		}
	}
	if (choice.thickness) hints.push(...thicknessHints(snapshot, range));
	if (choice.otherUnit)
		hints.push(
			...otherUnitHints(snapshot, range, (offset) =>
				displayAt(snapshot, offset),
			),
		);
	return hints.sort(
		(a, b) => a.offset - b.offset || order[a.kind] - order[b.kind],
	);
}

const order = { thickness: 0, sizes: 1, totals: 2, otherUnit: 3 } as const;

/** Where a hint comes from, as Markdown; undefined where what it was about is gone. */
export function hintStory(
	snapshot: Snapshot,
	{ kind, offset, about }: Omit<Hint, "label">,
): string | undefined {
	const piece = pieceAt(snapshot, offset);
	switch (kind) {
		case "sizes":
			return piece && sizeStory(piece, about);
		case "totals":
			return (
				piece &&
				(trimStory(piece, about) ?? fastenerStory(piece, snapshot.uri, about))
			);
		case "thickness": {
			const stock = snapshot.design.stocks.get(about);
			return stock && stockStory(stock, displayAt(snapshot, offset));
		}
		case "otherUnit":
			return otherUnitStory(snapshot, offset, (at) => displayAt(snapshot, at));
	}
}

/** Behind the materials that lines name. */
function thicknessHints(snapshot: Snapshot, range: Span): Hint[] {
	const hints: Hint[] = [];
	const { stocks } = snapshot.design;
	visitLines(snapshot.result.tree, "file", range, (placed) => {
		const { statement, construct } = placed;
		const read = construct && fill(statement, construct);
		const value = read?.ok ? read.filled.slots.get("material") : undefined;
		const [ref] = value?.kind === "refs" ? value.refs : [];
		if (!ref || !within(ref.span.end, range)) return;
		const id = ref.segments.map(({ text }) => text).join(".");
		const thick = stocks.get(id)?.thick;
		if (!thick) return;
		const display = displayAt(snapshot, ref.span.start);
		hints.push({
			kind: "thickness",
			offset: ref.span.end,
			label: `${trueSize(thick, display).text} ${display.unit}`,
			about: id,
		});
	});
	return hints;
}

function stockStory(
	{ id, thick, soldAs, tolerance }: Stock,
	display: Display,
): string {
	const show = (size: typeof thick): string =>
		size ? `${trueSize(size, display).text} ${display.unit}` : "";
	const off = lengthText(Rational.near(tolerance, 1000), {
		unit: display.unit,
		precision: finest[display.unit],
		suffix: true,
	});
	return [
		`${codeSpan(id)} measures ${escapeMarkdown(show(thick))}`,
		...(soldAs ? [`sold as ${escapeMarkdown(show(soldAs))}`] : []),
		...(tolerance > 0 ? [`may be off by ${off} either way`] : []),
	].join(", ");
}

const finest = {
	in: Rational.of(1, 1000),
	mm: Rational.of(1, 100),
} as const;

function displayAt(snapshot: Snapshot, offset: number): Display {
	const { pieces, uri } = snapshot.design;
	const display = (
		pieceAt(snapshot, offset) ??
		pieces.find(({ declaration }) => declaration.origin.uri === uri)
	)?.display;
	return display ?? { unit: "in", precision: defaultPrecision.in };
}

/** The lines of a text that meet a part of it. */
function visitLines(
	body: FileNode | Block,
	context: ContextId | undefined,
	range: Span,
	visit: (placed: ReturnType<typeof placedIn>) => void,
): void {
	for (const statement of body.statements) {
		if (!meets(statement.span, range)) continue;
		const placed = placedIn(context, statement);
		visit(placed);
		if (statement.block)
			visitLines(statement.block, placed.construct?.block, range, visit);
	}
}

function meets(span: Span, range: Span): boolean {
	return span.start <= range.end && range.start <= span.end;
}

function within(offset: number, range: Span): boolean {
	return range.start <= offset && offset <= range.end;
}
