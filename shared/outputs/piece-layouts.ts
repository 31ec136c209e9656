// The layouts of pieces with the labels of their cut lists, kept so that a hover and a list do not search twice.

import type { Effort } from "../cutting/index.ts";
import {
	layoutsOf,
	type MaterialLayout,
	type PieceToCut,
} from "../layouts/index.ts";
import type { Piece } from "../model/types.ts";
import { cutList } from "./cut-list.ts";

/** A piece with the labels that its cut list gives to its parts. */
export function pieceToCut(piece: Piece): PieceToCut {
	const known = ready.get(piece);
	if (known) return known;
	const made: PieceToCut = {
		piece,
		labels: new Map(
			cutList(piece).sections.flatMap(({ rows }) =>
				rows.flatMap(({ label, parts }) =>
					parts.map((part) => [part.id, label] as const),
				),
			),
		),
	};
	ready.set(piece, made);
	return made;
}

const ready = new WeakMap<Piece, PieceToCut>();

/** By effort; a piece that did not change is the same object. */
const kept = new WeakMap<Piece, Map<Effort, readonly MaterialLayout[]>>();

/** The layouts of pieces whose sheets are shared; those of a single piece are searched for once. */
export function pieceLayouts(
	pieces: readonly Piece[],
	effort: Effort,
): readonly MaterialLayout[] {
	const [only] = pieces;
	if (!only || pieces.length > 1)
		return layoutsOf(pieces.map(pieceToCut), { effort });
	const known = kept.get(only)?.get(effort);
	if (known) return known;
	const layouts = layoutsOf([pieceToCut(only)], { effort });
	const ofPiece = kept.get(only) ?? new Map();
	ofPiece.set(effort, layouts);
	kept.set(only, ofPiece);
	return layouts;
}
