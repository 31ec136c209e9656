// A case that is glued up with nothing that pulls it square.

import { numberOf } from "../../../model/size.ts";
import type { BoxInfo, Display, Piece } from "../../../model/types.ts";
import { defineCheck, type Found } from "../../check.ts";
import { show } from "../../words.ts";

export const square = defineCheck({
	id: "square",
	group: "strength",
	severity: "hint",
	summary: "No step says how a case that is glued without a back is squared",
	explanation: `
A back that is cut square pulls a case square as it goes in. A case that is glued without one keeps whatever corner the clamps
gave it, and its two diagonals tell:

    diagonal = sqrt(width^2 + height^2), outside, from corner to corner
    they may differ by diagonal x apart, but no finer than the tape tells

It is told once for a piece that tells its steps, and none of them speaks of squares or diagonals. A piece without steps is left
alone: the cut list gives the diagonals of every case.`,
	source:
		"geometry; how far the diagonals may differ is common practice, no source: 1/16 in for a case of 4 ft",
	figures: {
		apart: {
			value: 0.00125,
			unit: "ratio",
			help: "How far the diagonals may differ, of their length",
			source: "common practice, no source: 1 mm in 800",
		},
		least: {
			value: 0.8,
			unit: "mm",
			help: "A smaller difference is not asked for",
			source: "common practice, no source: 1/32 in on the tape",
		},
		diagonal: {
			value: 450,
			unit: "mm",
			help: "A case with a shorter diagonal is not looked at",
			source: "common practice, no source: a square laid inside tells it",
		},
	},
	fires: `
piece open-case {
  box case {
    outside 30 x 20 x 12
    panels top, bottom, left, right of ply.three-quarter
    caps left, right
    join top, bottom to left, right { glue; dowel 5/16 x 1 1/4 every 4 }
  }
  step glue-up { do "glue and clamp up" }
}`,
	silent: `
piece open-case {
  box case {
    outside 30 x 20 x 12
    panels top, bottom, left, right of ply.three-quarter
    caps left, right
    back of ply.quarter applied
    join top, bottom to left, right { glue; dowel 5/16 x 1 1/4 every 4 }
    join back to top, bottom, left, right { glue }
  }
  step glue-up { do "glue and clamp up" }
}`,
	find: (piece, { figures }) => {
		if (
			piece.steps.length === 0 ||
			piece.steps.some(({ what }) => /diagonal|square/i.test(what))
		)
			return [];
		const box = piece.boxes.find(
			(one) =>
				diagonalOf(one) >= figures.diagonal &&
				!one.panels.back &&
				gluedAllRound(piece, one),
		);
		return box ? [tell(piece.display, box, figures)] : [];
	},
});

function diagonalOf({ outside }: BoxInfo): number {
	return Math.hypot(numberOf(outside.width), numberOf(outside.height));
}

/** All four corners are there and glued. */
function gluedAllRound(piece: Piece, { panels }: BoxInfo): boolean {
	const { top, bottom, left, right } = panels;
	return [left, right].every((side) =>
		[top, bottom].every((level) =>
			piece.joints.some(
				({ glue, host, member }) =>
					glue &&
					((host === side && member === level) ||
						(host === level && member === side)),
			),
		),
	);
}

function tell(
	display: Display,
	box: BoxInfo,
	{ apart, least }: { readonly apart: number; readonly least: number },
): Found {
	const diagonal = diagonalOf(box);
	const mark = display.unit === "in" ? 25.4 / 32 : 0.5;
	const onTape = (mm: number): string =>
		show(display, Math.max(1, Math.round(mm / mark)) * mark);
	const { declaration } = box;
	return {
		origin: { uri: declaration.origin.uri, span: declaration.nameSpan },
		message: `\`${box.path}\` is glued without a back that pulls it square: measure its diagonals before the glue sets; each is ${onTape(diagonal)} from corner to corner outside, and they may differ by ${onTape(Math.max(least, diagonal * apart))}; a \`step\` that says so, or a back, answers this`,
	};
}
