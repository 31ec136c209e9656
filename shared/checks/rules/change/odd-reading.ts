// A reading from the shop that lies farther from the design than any tolerance explains.

import { numberOf } from "../../../model/size.ts";
import { defineCheck } from "../../check.ts";
import { show, showFine } from "../../words.ts";

export const oddReading = defineCheck({
	id: "odd-reading",
	group: "change",
	severity: "warning",
	summary: "A reading is farther from the design than its tolerance explains",
	explanation: `
A \`measured\` line takes the place of a size, and everything follows it; a typing error follows just as well. The reading is
held against the size that the design has without it:

    difference = reading - size, against times x what it could be off by

What it could be off by is the tolerance of the size, from the material and the shop. More than that is most often a slip
of a key, the other unit, or the wrong part.`,
	source: "common practice, no source",
	figures: {
		times: {
			value: 2,
			unit: "times",
			help: "A reading may be off by so many times the tolerance",
			source:
				"common practice, no source: a sheet out of its class happens, twice out of it is something else",
		},
		least: {
			value: 0.5,
			unit: "mm",
			help: "A smaller difference is never told",
			source: "common practice, no source: what a tape reads",
		},
	},
	fires: `
piece rack {
  measured ply.three-quarter.thick 0.17
  box case {
    outside 30 x 20 x 10
    panels top, bottom, left, right of ply.three-quarter
  }
}`,
	silent: `
piece rack {
  measured ply.three-quarter.thick 0.71
  box case {
    outside 30 x 20 x 10
    panels top, bottom, left, right of ply.three-quarter
  }
}`,
	find: (piece, { figures }) =>
		piece.measured.flatMap((reading) => {
			const { derived, expected } = reading;
			if (!derived || expected === undefined) return [];
			const off = numberOf(reading.reading) - numberOf(derived);
			const allowed = Math.max(figures.times * expected, figures.least);
			if (Math.abs(off) <= allowed + 1e-9) return [];
			const { display } = piece;
			return [
				{
					origin: { uri: reading.origin.uri, span: reading.readingSpan },
					message: `\`${reading.what}\` reads ${show(display, reading.reading)}, ${show(display, Math.abs(off))} ${off > 0 ? "more" : "less"} than the ${show(display, derived)} of the design, and it should be off by ${showFine(display, expected)} at most: a slip of a key, or another part?`,
				},
			];
		}),
});
