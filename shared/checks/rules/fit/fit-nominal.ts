// A dado or groove that is sized from what a sheet is sold as.

import { numberOf } from "../../../model/size.ts";
import type { Fit, Part } from "../../../model/types.ts";
import { defineCheck } from "../../check.ts";
import { comesFrom, fitFixes, fitsOf, isThickness } from "../../fits.ts";
import { listed, nameOf, show } from "../../words.ts";

export const fitNominal = defineCheck({
	id: "fit-nominal",
	group: "fit",
	severity: "warning",
	summary:
		"A dado or groove is cut to what its sheet is sold as, not to what it measures",
	explanation: `
Sheet goods are thinner than their label. A dado as wide as the label holds nothing: the sheet sold as 3/4 in measures about
45/64 in, and the dado is 3/64 in too wide. Write the width from the actual thickness, or leave \`wide\` out: then it
follows the member.

It tells when the written width is the label's thickness, or comes from \`sold-as\`, and that thickness is not what the
member measures.`,
	source:
		"thickness tolerances of PS 1, HP-1 and EN 315: a sheet is sold by a label, and measures less; the rule is common practice, no source",
	figures: {
		difference: {
			value: 0.05,
			unit: "mm",
			help: "Label and actual thickness that differ by less are the same",
			source: "common practice, no source: finer than a router is set",
		},
	},
	fires: `
piece rack {
  box case {
    outside 30 x 20 x 10
    panels top, bottom, left, right of ply.three-quarter
    join top, bottom to left, right { dado 1/4 wide 3/4; glue }
  }
}`,
	silent: `
piece rack {
  box case {
    outside 30 x 20 x 10
    panels top, bottom, left, right of ply.three-quarter
    join top, bottom to left, right { dado 1/4 wide ply.three-quarter.thick + 0.004; glue }
  }
}`,
	find: (piece, { figures }) =>
		fitsOf(piece, (fit, { member }) =>
			byLabel(fit, member, figures.difference),
		).flatMap(({ fit, joint, joints }) => {
			const { written } = fit;
			if (!written) return [];
			const off =
				numberOf(joint.member.stock.soldAs ?? fit.member) -
				numberOf(fit.member);
			const { display } = piece;
			const names = new Set(joints.map((one) => nameOf(one.member)));
			const members = `${listed([...names])} ${names.size > 1 ? "measure" : "measures"}`;
			return [
				{
					origin: { uri: fit.origin.uri, span: written.span },
					message: `${show(display, written.size)} is what \`${joint.member.stock.id}\` is sold as: ${members} ${show(display, fit.member)}, ${show(display, Math.abs(off))} ${off > 0 ? "less" : "more"}; cut to the actual thickness`,
					related: [
						{
							origin: joint.member.stock.declaration.origin,
							message: "Both thicknesses stand here",
						},
					],
					fixes: fitFixes(display, fit, joint.member),
				},
			];
		}),
});

/** The opening's width is written, and is the label's thickness or comes from it. */
function byLabel(fit: Fit, member: Part, difference: number): boolean {
	const { written } = fit;
	const label = member.stock.soldAs;
	if (!written || member.stock.kind !== "sheet" || !label) return false;
	if (!isThickness(fit, member)) return false;
	if (Math.abs(numberOf(label) - numberOf(fit.member)) < difference)
		return false;
	return (
		written.size.value.eq(label.value) ||
		comesFrom(
			written.size,
			({ why }) => why.kind === "named" && why.name.endsWith(".sold-as"),
		)
	);
}
