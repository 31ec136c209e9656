// Two parts that a join brings together, and that do not touch.

import { numberOf } from "../../../model/size.ts";
import { defineCheck } from "../../check.ts";
import { jointsOfMember } from "../../fits.ts";
import { nameOf, show } from "../../words.ts";

export const gap = defineCheck({
	id: "gap",
	group: "fit",
	severity: "error",
	summary: "Two parts are joined by name, but do not touch",
	explanation: `
\`join a to b\` says that a and b meet. If there is air between them, glue and fasteners hold nothing. A clearance that the
joint asks for (a shelf on pins, \`butt clearance\`, a \`gap\` line) is no gap of this kind.`,
	source: "geometry; the least gap is common practice, no source",
	figures: {
		apart: {
			value: 0.1,
			unit: "mm",
			help: "Parts no farther apart than this touch",
			source: "common practice, no source: what glue still closes",
		},
	},
	fires: `
piece rack {
  box case {
    outside 30 x 20 x 10
    panels top, bottom, left, right of ply.three-quarter
  }
  part rail {
    of oak.four-quarter
    size 20 x 2
    left at 4 right from case.left
    top at 1/4 down from case.top.inside
    back at case.back
  }
  join rail to case.top { glue }
}`,
	silent: `
piece rack {
  box case {
    outside 30 x 20 x 10
    panels top, bottom, left, right of ply.three-quarter
  }
  part rail {
    of oak.four-quarter
    size 20 x 2
    left at 4 right from case.left
    top at case.top.inside
    back at case.back
  }
  join rail to case.top { glue }
}`,
	find: (piece, { figures }) =>
		piece.joints.flatMap((joint) => {
			if (!joint.named || !(joint.apart > figures.apart)) return [];
			let allowed = figures.apart;
			// A back's clearance is told once on each axis, at one of the two panels that it stands between.
			const fits =
				joint.fits.length > 0
					? joint.fits
					: jointsOfMember(piece, joint.member).flatMap(({ fits }) => fits);
			for (const fit of fits)
				allowed = Math.max(
					allowed,
					fit.high.toNumber() + figures.apart,
					numberOf(fit.gap) + figures.apart,
				);
			if (!(joint.apart > allowed)) return [];
			const { host, member } = joint;
			const far = Number.isFinite(joint.apart)
				? `stand ${show(piece.display, joint.apart)} apart`
				: "do not lie opposite each other";
			return [
				{
					origin: joint.origin,
					message: `${nameOf(member)} and ${nameOf(host)} are joined, but ${far}: move one to the other, or leave the pair out of this line`,
					related: [
						{
							origin: member.declaration.origin,
							message: `${nameOf(member)} is declared here`,
						},
						{
							origin: host.declaration.origin,
							message: `${nameOf(host)} is declared here`,
						},
					],
				},
			];
		}),
});
