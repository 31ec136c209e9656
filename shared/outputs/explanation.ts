// Explains the sizes of a design by name: which names there are, and the story of each.

import type { Unit } from "../../grammar/index.ts";
import {
	explainLine,
	explainTree,
	movers,
	type Story,
	shownText,
	storyOf,
} from "../model/explain.ts";
import { nearest } from "../model/meaning.ts";
import type { Size } from "../model/size.ts";
import type { Design, Display, Piece } from "../model/types.ts";
import { formatBoth } from "../units/format.ts";

/** A size that can be asked for. */
export interface NamedSize {
	readonly piece: string;
	/** `case.top.length`. */
	readonly name: string;
	readonly size: Size;
	readonly display: Display;
}

const partSizes = ["length", "width", "thick"] as const;

/** All sizes of the pieces that have a name, in the order of the design. Materials belong to the piece that is asked. */
export function namedSizes(design: Design, piece: Piece): readonly NamedSize[] {
	const sizes = new Map<string, Size>();
	for (const given of piece.givens) {
		sizes.set(given.declaration.name, given.size);
	}
	for (const [name, size] of piece.sizes) sizes.set(name, size);
	for (const part of piece.parts) {
		for (const which of partSizes) {
			const name = `${part.path}.${which}`;
			if (!sizes.has(name)) sizes.set(name, part[which]);
		}
	}
	for (const stock of design.stocks.values()) {
		if (stock.thick) sizes.set(`${stock.id}.thick`, stock.thick);
		if (stock.soldAs) sizes.set(`${stock.id}.sold-as`, stock.soldAs);
	}
	return [...sizes].map(([name, size]) => ({
		piece: piece.name,
		name,
		size,
		display: piece.display,
	}));
}

/**
 * What a name means: one size, or those of a part or thing (`case.left` gives its length, width and thickness). A name may
 * have the piece in front. Nothing, and the nearest name if one is close, where there is no such thing.
 */
export function findSizes(
	design: Design,
	pieces: readonly Piece[],
	name: string,
): { readonly found: readonly NamedSize[]; readonly near: string | undefined } {
	const known = pieces.flatMap((piece) => namedSizes(design, piece));
	const exact = known.filter(
		(one) => one.name === name || `${one.piece}.${one.name}` === name,
	);
	if (exact.length > 0) return { found: exact, near: undefined };
	const below = known.filter(
		(one) =>
			one.name.startsWith(`${name}.`) ||
			`${one.piece}.${one.name}`.startsWith(`${name}.`),
	);
	if (below.length > 0) return { found: below, near: undefined };
	const names = new Set(
		known.flatMap((one) => [one.name, one.name.replace(/\.[^.]*$/, "")]),
	);
	return { found: [], near: nearest(name, names) };
}

/** The whole story of one size: the tree, how it is cut, what moves it. */
export function explanationText(one: NamedSize): string {
	const { size, display, name } = one;
	const lines = [explainTree(size, display, name)];
	if (size.dimension === "length") {
		const both = formatBoth(size.value, {
			...display,
			approximately: true,
		}).text;
		lines.push(`  on the rule: ${both}\n`);
	}
	const moved = movers(size, display);
	if (moved.length > 0) lines.push(`  moves with: ${moved.join("; ")}\n`);
	return lines.join("");
}

/** One line for each: for the list of all that can be asked. */
export function explanationLine({ name, size, display }: NamedSize): string {
	return `${name} ${explainLine(size, display)}`;
}

/** Grows when a field changes its meaning or goes; new fields leave it. */
export const explanationVersion = 1;

export interface ExplanationJson {
	readonly schemaVersion: typeof explanationVersion;
	readonly sizes: readonly {
		readonly file: string;
		readonly piece: string;
		readonly name: string;
		readonly dimension: string;
		readonly value: {
			readonly number: number;
			/** The base unit of the dimension. */
			readonly unit: Unit;
			readonly fraction: string;
			readonly exact: boolean;
		};
		readonly text: string;
		readonly line: string;
		readonly story: Story;
		readonly moves: readonly {
			readonly source: string;
			readonly label: string;
			readonly weight: number;
			readonly toleranceMm: number;
		}[];
	}[];
}

const baseUnits: Readonly<Record<Size["dimension"], Unit>> = {
	length: "mm",
	angle: "deg",
	mass: "kg",
	temperature: "C",
	ratio: "none",
	number: "none",
	text: "none",
};

export function explanationJson(
	sizes: readonly { readonly file: string; readonly size: NamedSize }[],
): ExplanationJson {
	return {
		schemaVersion: explanationVersion,
		sizes: sizes.map(({ file, size: { piece, name, size, display } }) => ({
			file,
			piece,
			name,
			dimension: size.dimension,
			value: {
				number: size.value.toNumber(),
				unit: baseUnits[size.dimension],
				fraction: size.value.toString(),
				exact: size.exact,
			},
			text: shownText(size, display),
			line: explainLine(size, display),
			story: storyOf(size, display, name),
			moves: size.feeds.map(({ source, weight }) => ({
				source: source.id,
				label: source.label,
				weight,
				toleranceMm: source.tolerance,
			})),
		})),
	};
}
