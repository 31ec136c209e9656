// Writes designs of a given number of parts: bookcases side by side, each a piece of its own, as a shop's catalogue would hold.
// They are sound: as a maker keeps a file, and as it is while one line of it is typed, nearly all of it has nothing to tell.

const stock = `sheet ply {
  species "hardwood plywood"
  size 96 x 48
  variant three-quarter { sold-as 3/4; thick 45/64; tolerance 1/64; price 92 }
  variant quarter { sold-as 1/4; thick 7/32; price 41 }
}
`;

/** Parts of one bookcase: four panels, a back, four dividers, fifteen shelves. */
export const partsPerPiece = 24;

/** A file with at least `parts` parts. */
export function largeDesign(parts: number): string {
	const pieces = Math.max(1, Math.ceil(parts / partsPerPiece));
	return (
		stock +
		Array.from({ length: pieces }, (_, index) => bookcase(index)).join("")
	);
}

function bookcase(index: number): string {
	const shelves = Array.from(
		{ length: 5 },
		(_, bay) =>
			`    shelf s${bay}a, s${bay}b, s${bay}c of ply.three-quarter equal bay ${bay + 1} dado 1/4`,
	).join("\n");
	const walls = ["left", "d1", "d2", "d3", "d4", "right"];
	const fits = Array.from(
		{ length: 5 },
		(_, bay) =>
			`    fit s${bay}a, s${bay}b, s${bay}c after ${walls[bay]}, ${walls[bay + 1]}`,
	).join("\n");
	return `
/// Bookcase ${index} of the catalogue.
piece bookcase-${index} {
  unit in
  precision 1/32
  given width = ${40 + (index % 8)} from 36 to 47
  given height = ${72 + (index % 5)}
  mark clear = width - 2 * ply.three-quarter.thick

  box case {
    outside width x height x 12
    panels top, bottom, left, right of ply.three-quarter
    back of ply.quarter rabbet 3/8
    caps left, right
    divider d1, d2, d3, d4 of ply.three-quarter equal dado 1/4
${shelves}
    fit d1, d2, d3, d4 after top, bottom
${fits}
    join top, bottom to left, right { dado 1/4; glue }
    join back to left, right, top, bottom { tack brad 18ga x 7/8 every 7 }
  }

  must clear > 30
  load 35 lb per ft on case.bottom
}
`;
}
