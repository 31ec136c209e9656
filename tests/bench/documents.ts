// Documents of the same number of lines in three languages, each with a place in its middle where a line is typed.

import { largeDesign, partsPerPiece } from "./large-design.ts";
import { stylesheet } from "./stylesheet.ts";

export interface BenchDocument {
	readonly uri: string;
	readonly languageId: string;
	readonly text: string;
	/** Typed character by character, and taken away again, on a new line above this one. */
	readonly typed: string;
	readonly line: number;
	/** A name near it: its hover, and what is renamed. */
	readonly name: { readonly line: number; readonly character: number };
}

/** Bookcases, each a piece of its own. */
export function designOf(lines: number): BenchDocument {
	const one = linesOf(largeDesign(1));
	const perPiece = linesOf(largeDesign(2 * partsPerPiece)) - one;
	const pieces = Math.max(1, Math.round((lines - one) / perPiece) + 1);
	return documentOf(
		"design.rod",
		"storyrod",
		largeDesign(pieces * partsPerPiece),
		"  must clear",
		"  mark spare = clear - 2 * ply.quarter.thick",
		"width",
	);
}

export function stylesheetOf(lines: number): BenchDocument {
	const perRule = 8;
	let text = stylesheet(1);
	const length = text.length;
	text = stylesheet(length * Math.ceil(lines / perRule));
	text = text.split("\n").slice(0, roundedTo(lines, perRule)).join("\n");
	return documentOf(
		"sheet.css",
		"css",
		`${text}\n`,
		"	margin: ",
		"	max-width: calc(100% - 2 * 16px);",
		"shelf-",
	);
}

export function jsonOf(lines: number): BenchDocument {
	const perEntry = 8;
	const entries = Array.from(
		{ length: Math.ceil(lines / perEntry) },
		(_, index) => `  {
    "name": "bookcase-${index}",
    "width": ${40 + (index % 8)},
    "height": ${72 + (index % 5)},
    "shelves": ["a", "b", "c"],
    "material": { "species": "birch", "thick": 0.703125 },
    "glued": ${index % 2 === 0}
  }`,
	);
	return documentOf(
		"catalogue.json",
		"json",
		`[\n${entries.join(",\n")}\n]\n`,
		'    "shelves"',
		'    "note": "three shelves, all of one board",',
		"height",
	);
}

function documentOf(
	file: string,
	languageId: string,
	text: string,
	anchor: string,
	typed: string,
	name: string,
): BenchDocument {
	const all = text.split("\n");
	const from = all.length >> 1;
	const line = all.findIndex((one, at) => at >= from && one.startsWith(anchor));
	const named = all.findIndex((one, at) => at >= from && one.includes(name));
	const character = (all[named] as string).indexOf(name) + 1;
	return {
		uri: `file:///bench/${file}`,
		languageId,
		text,
		typed,
		line,
		name: { line: named, character },
	};
}

function linesOf(text: string): number {
	return text.split("\n").length;
}

function roundedTo(lines: number, step: number): number {
	return Math.ceil(lines / step) * step;
}
