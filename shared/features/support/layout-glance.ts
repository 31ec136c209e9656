// How a material is sawn up for the pieces of a file, in words and as a small picture, for the hover on it.

import type { MaterialLayout } from "../../layouts/index.ts";
import type { Piece } from "../../model/types.ts";
import { layoutGlance } from "../../outputs/pictures/sheet-picture.ts";
import { firstLayouts } from "../../outputs/piece-layouts.ts";
import { boundText, usedText } from "../../outputs/sawing/layout-words.ts";
import { sawingPlan } from "../../outputs/sawing/sawing-plan.ts";
import { base64 } from "../../text/base64.ts";
import { codeSpan, escapeMarkdown } from "../../text/markdown.ts";

/** More pictures make a hover too long to read. */
const most = 3;

/** Of materials by their ids; undefined where the pieces use none of them. */
export function layoutGlanceText(
	pieces: readonly Piece[],
	ids: ReadonlySet<string>,
): string | undefined {
	const blocks = pieces
		.filter(({ kind }) => kind === "piece")
		.flatMap((piece) =>
			glancesOf(piece)
				.filter(({ layout }) => ids.has(layout.stock.id))
				.map(({ text }) => text),
		);
	return blocks.length === 0 ? undefined : blocks.slice(0, most).join("\n\n");
}

interface Glance {
	readonly layout: MaterialLayout;
	readonly text: string;
}

/** A piece that did not change is the same object. */
const kept = new WeakMap<Piece, readonly Glance[]>();

function glancesOf(piece: Piece): readonly Glance[] {
	const known = kept.get(piece);
	if (known) return known;
	const made = firstLayouts(piece)
		.filter(({ sheets }) => sheets.length > 0)
		.map((layout) => ({ layout, text: glanceText(layout, piece) }));
	kept.set(piece, made);
	return made;
}

function glanceText(layout: MaterialLayout, piece: Piece): string {
	const { id } = layout.stock;
	const bound = boundText(layout);
	const words = `${usedText(layout)}.${bound === undefined ? "" : ` ${bound}.`}`;
	const alt = escapeMarkdown(`How ${id} is sawn up for ${piece.name}`);
	const svg = layoutGlance(sawingPlan(layout, [piece]));
	return `${codeSpan(id)} for ${codeSpan(piece.name)}: ${escapeMarkdown(words)}\n\n![${alt}](data:image/svg+xml;base64,${base64(svg)})`;
}
