// Matched parts as one rectangle for the optimiser, and that rectangle cut up again.

import type { Rectangle } from "../cutting/index.ts";
import type { Blank } from "./blanks.ts";
import type { LaidRegion } from "./types.ts";

/**
 * One blank for parts that lie one behind the other along the grain, or side by side across it, a kerf apart. A part that
 * is narrower (or shorter) than the others has a remnant beside it.
 */
export function compositeOf(
	blanks: readonly Blank[],
	way: "along" | "across",
	kerf: number,
): Blank {
	const isAlong = way === "along";
	const run = (blank: Blank): number => (isAlong ? blank.length : blank.width);
	const side = (blank: Blank): number => (isAlong ? blank.width : blank.length);
	const whole =
		blanks.reduce((sum, blank) => sum + run(blank), 0) +
		(blanks.length - 1) * kerf;
	const widest = Math.max(...blanks.map(side));
	return {
		length: isAlong ? whole : widest,
		width: isAlong ? widest : whole,
		parts: blanks.flatMap(({ parts }) => parts),
		apart: blanks,
		lay: (place, turned) => {
			const along = isAlong !== turned ? "x" : "y";
			let at = along === "x" ? place.x : place.y;
			const pieces = blanks.map((blank): LaidRegion => {
				const piece = across(place, along, at, run(blank));
				at += run(blank) + kerf;
				return trimmed(blank, piece, along, side(blank), turned, kerf);
			});
			return { ...place, kind: "cut", along, pieces, matched: true };
		},
	};
}

/** The part of a rectangle from `at` on, `run` long along an axis. */
function across(
	place: Rectangle,
	along: "x" | "y",
	at: number,
	run: number,
): Rectangle {
	return along === "x"
		? { x: at, y: place.y, length: run, width: place.width }
		: { x: place.x, y: at, length: place.length, width: run };
}

/** A piece that is wider than its part is cut once more, unless the blade takes all there is. */
function trimmed(
	blank: Blank,
	piece: Rectangle,
	along: "x" | "y",
	side: number,
	turned: boolean,
	kerf: number,
): LaidRegion {
	const other = along === "x" ? "y" : "x";
	const has = along === "x" ? piece.width : piece.length;
	if (has - side <= kerf) return blank.lay(piece, turned);
	const start = other === "x" ? piece.x : piece.y;
	const rest = across(piece, other, start + side + kerf, has - side - kerf);
	return {
		...piece,
		kind: "cut",
		along: other,
		pieces: [
			blank.lay(across(piece, other, start, side), turned),
			{ ...rest, kind: "remnant", keep: false },
		],
	};
}
