// A part that is cut already and larger than the design now asks for.

import { excess, sizeAtStage } from "../../../model/already-cut.ts";
import type { CutInfo } from "../../../model/types.ts";
import { defineCheck } from "../../check.ts";
import { listed, nameOf, show, showSizes } from "../../words.ts";

export const trimBack = defineCheck({
	id: "trim-back",
	group: "change",
	severity: "information",
	summary: "A part that is cut already must be trimmed back",
	explanation: `
The other half of \`too-small\`: the part exists and is larger than the design now asks for at its stage.

    take off = size that it has - size that the design asks for

If housings are cut in it already, the message says from where they are set out: take the wood off the other end, and the
housings stay right. A part at its \`rough\` or \`heavy\` stage is held against the size of that stage.`,
	source:
		"arithmetic; the saw's tolerance as the shop says, by default common practice, no source",
	figures: {},
	fires: `
piece rack {
  cut case.left, case.right 20 1/2 x 10
  box case {
    outside 30 x 20 x 10
    panels top, bottom, left, right of ply.three-quarter
  }
}`,
	silent: `
piece rack {
  cut case.left, case.right 20 x 10
  box case {
    outside 30 x 20 x 10
    panels top, bottom, left, right of ply.three-quarter
  }
}`,
	find: (piece) => {
		const groups = new Map<string, CutInfo[]>();
		for (const cut of piece.cuts) {
			const over = excess(piece, cut);
			if (!over.length && !over.width) continue;
			const { uri, span } = cut.origin;
			const key = `${uri} ${span.start} ${over.length} ${over.width}`;
			groups.set(key, [...(groups.get(key) ?? []), cut]);
		}
		return [...groups.values()].flatMap((cuts) => {
			const [cut] = cuts;
			if (!cut) return [];
			const { display } = piece;
			const over = excess(piece, cut);
			const datums = [
				...new Set(cut.part.housings.map((housing) => housing.datum)),
			];
			const where =
				over.length && datums.length > 0
					? ` (its housings are set out ${listed(datums)}: keep that one)`
					: "";
			const off = [
				...(over.length
					? [`${show(display, over.length)} off its length${where}`]
					: []),
				...(over.width ? [`${show(display, over.width)} off its width`] : []),
			].join(" and ");
			const names = listed(cuts.map(({ part }) => nameOf(part)));
			const wanted = sizeAtStage(cut);
			return [
				{
					origin: cut.origin,
					message: `${names} ${cuts.length > 1 ? "are" : "is"} cut to ${showSizes(display, cut.length, cut.width)}, now ${showSizes(display, wanted.length, wanted.width)}: take ${off}`,
					related: [
						{
							origin: cut.part.declaration.origin,
							message: `${nameOf(cut.part)} is declared here`,
						},
					],
				},
			];
		});
	},
});
