// Trim that is narrower than the edge it covers, or that leaves nothing to sand flush.

import { numberOf, type Size } from "../../../model/size.ts";
import type { Fix, Piece, TrimInfo } from "../../../model/types.ts";
import { Rational } from "../../../units/rational.ts";
import { defineCheck } from "../../check.ts";
import { nameOf, plainSize, show, writtenLike } from "../../words.ts";

export const trimWidth = defineCheck({
	id: "trim-width",
	group: "shape",
	severity: "error",
	summary:
		"Trim is narrower than the edge it covers, or leaves nothing to sand flush",
	explanation: `
Trim is glued on a little wider than the edge and brought flush after:

    left over a face = (width of the trim - thickness of the edge) / 2, or as \`proud\` says

Less than nothing leaves the edge showing: an error. Nothing at all asks for a glue-up without a hair of error, and a sheet that
is a little thick shows: a hint. Leave \`wide\` out and say \`proud\` instead; then the width follows the edge.`,
	source: "common practice, no source: 0.2 to 0.5 mm proud on each face",
	figures: {
		proud: {
			value: 0.4,
			unit: "mm",
			help: "What a fix leaves over on each face",
			source: "common practice, no source: 0.2 to 0.5 mm, 1/64 in",
		},
		least: {
			value: 0.1,
			unit: "mm",
			help: "Less than this over a face is nothing to sand",
			source: "common practice, no source",
		},
	},
	fires: `
piece rack {
  box case {
    outside 30 x 20 x 10
    panels top, bottom, left, right of ply.three-quarter
  }
  trim lip {
    on case.front.edges
    of oak.four-quarter
    thick 3/8
    wide 5/8
  }
}`,
	silent: `
piece rack {
  box case {
    outside 30 x 20 x 10
    panels top, bottom, left, right of ply.three-quarter
  }
  trim lip {
    on case.front.edges
    of oak.four-quarter
    thick 3/8
    wide 47/64
  }
}`,
	find: (piece, { figures }) =>
		piece.trims.flatMap((trim) => {
			const worst = worstOf(trim);
			if (!worst) return [];
			const { strip, least } = worst;
			const { display } = piece;
			const origin = strip.widthSpan
				? { uri: trim.origin.uri, span: strip.widthSpan }
				: trim.origin;
			const width = show(display, strip.width);
			const edge = `the edge of ${nameOf(strip.covers)} is ${show(display, strip.edge)}`;
			const wanted = wantedWidth(piece, strip.edge, figures.proud);
			const mend = wanted
				? `${show(display, wanted.value)} leaves enough to sand flush`
				: "make it wider";
			const fixes = wanted
				? widthFix(piece, strip.widthSpan, strip.width, wanted.value)
				: [];
			if (least < -grain) {
				return [
					{
						origin,
						message: `\`${trim.path}\` is ${width} wide and ${edge}: ${show(display, -least)} of it stays bare on a face; ${strip.widthSpan ? mend : "let it stand proud, as in `proud 1/64 on both faces`"}`,
						fixes,
					},
				];
			}
			if (least >= figures.least - grain) return [];
			return [
				{
					severity: "hint" as const,
					origin,
					message: `\`${trim.path}\` is ${width} wide and ${edge}: nothing is left to sand flush; let it stand proud, as in \`proud ${display.unit === "in" ? "1/64" : "0.5"} on both faces\``,
					fixes,
				},
			];
		}),
});

/** Floating dust, mm. */
const grain = 1e-9;

function worstOf(
	trim: TrimInfo,
):
	| { readonly strip: TrimInfo["strips"][number]; readonly least: number }
	| undefined {
	let worst:
		| { readonly strip: TrimInfo["strips"][number]; readonly least: number }
		| undefined;
	for (const strip of trim.strips) {
		const least = Math.min(...strip.proud.map(numberOf));
		if (!worst || least < worst.least) worst = { strip, least };
	}
	return worst;
}

function wantedWidth(
	piece: Piece,
	edge: Size,
	proud: number,
): { readonly value: Rational } | undefined {
	const over = Rational.near(2 * proud, 10_000);
	return plainSize(
		piece.display,
		edge.value.add(over),
		edge.value.add(over).add(Rational.ONE),
		edge.value.add(over),
	);
}

function widthFix(
	piece: Piece,
	span: TrimInfo["strips"][number]["widthSpan"],
	before: Size,
	wanted: Rational,
): readonly Fix[] {
	if (!span) return [];
	return [
		{
			title: `Make it ${show(piece.display, wanted)} wide`,
			edits: [{ span, text: writtenLike(piece.display, before, wanted) }],
		},
	];
}
