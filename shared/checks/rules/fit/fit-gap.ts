// A joint whose gap, by the sizes that its parts really have, is tighter or looser than it may be.

import type { Fit, Piece } from "../../../model/types.ts";
import { Rational } from "../../../units/rational.ts";
import { defineCheck, type Found } from "../../check.ts";
import {
	alike,
	fitFixes,
	fitsOf,
	mendedSize,
	type SharedFit,
} from "../../fits.ts";
import { capital, nameOf, show, showFine, showRange } from "../../words.ts";

export const fitGap = defineCheck({
	id: "fit-gap",
	group: "fit",
	severity: "error",
	summary: "A joint is tighter or looser than its kind allows",
	explanation: `
The gap of a joint is its opening less its member: the width of a dado less the thickness of the shelf, the room between
two sides less the length of what stands between them.

    gap = opening - member

Both are taken as they measure, not as they are sold: a dado cut to the label of a sheet is loose in every shop. A gap below
zero will not go together; a gap that is too wide leaves the glue to fill it, and wood glue fills nothing. The range
belongs to the kind of joint; a \`gap\` line in the \`join\` replaces it.`,
	source:
		"common practice, no source: a glued dado or groove 0.05 to 0.15 mm over its member is good, above 0.25 mm loose, below 0 it will not enter; the message names the range of each kind",
	figures: {},
	fires: `
piece rack {
  box case {
    outside 30 x 20 x 10
    panels top, bottom, left, right of ply.three-quarter
    join top, bottom to left, right { dado 1/4 wide 47/64; glue }
  }
}`,
	silent: `
piece rack {
  box case {
    outside 30 x 20 x 10
    panels top, bottom, left, right of ply.three-quarter
    join top, bottom to left, right { dado 1/4; glue }
  }
}`,
	find: (piece) =>
		fitsOf(piece, (fit) => isTight(fit) || isLoose(fit)).map((shared) =>
			tell(piece, shared, isTight(shared.fit)),
		),
});

function isTight({ gap, low }: Fit): boolean {
	return gap.value.cmp(low) < 0;
}

function isLoose({ gap, high }: Fit): boolean {
	return gap.value.cmp(high) > 0;
}

function tell(piece: Piece, shared: SharedFit, tight: boolean): Found {
	const { fit, joint, joints } = shared;
	const { display } = piece;
	const gap = fit.gap.value;
	const what = `${capital(fit.what)}${alike(joints)}`;
	const state =
		gap.sign() < 0
			? `${showFine(display, gap.neg())} too big for its place`
			: `${showFine(display, gap)} of air`;
	const by = tight ? fit.low.sub(gap) : gap.sub(fit.high);
	const mended = mendedSize(display, fit);
	const mend = mended
		? `write ${mended.text} ${display.unit} instead of ${show(display, fit.written?.size ?? Rational.ZERO)}`
		: `${tight ? "open" : "close"} it by ${showFine(display, by)} or more`;
	return {
		origin: fit.origin,
		message: `${what}: ${state}, where a gap of ${showRange(display, fit.low, fit.high)} is right (${fit.rangeFrom}); ${mend}`,
		related: [
			{
				origin: joint.member.declaration.origin,
				message: `${nameOf(joint.member)} measures ${show(display, fit.member)} there`,
			},
		],
		fixes: fitFixes(display, fit, joint.member),
	};
}
