// The layouts of pieces with the labels of their cut lists, kept so that the blocks of a hover do not search twice.

import {
	type MaterialLayout,
	type PieceToCut,
	searchLayouts,
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

/** A piece that did not change is the same object. */
const kept = new WeakMap<Piece, readonly MaterialLayout[]>();

/** The first answer, which comes within milliseconds: who hovers does not wait for a better one. */
export function firstLayouts(piece: Piece): readonly MaterialLayout[] {
	const known = kept.get(piece);
	if (known) return known;
	const search = searchLayouts([pieceToCut(piece)], { effort: "quick" });
	const { value, done } = search.next();
	const layouts = done === true ? value : value.layouts;
	kept.set(piece, layouts);
	return layouts;
}
