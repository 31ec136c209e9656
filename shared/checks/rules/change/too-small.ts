// A part that is cut already and is too small for the design as it now stands.

import { lacking } from "../../../model/already-cut.ts";
import { numberOf } from "../../../model/size.ts";
import type { CutInfo, Piece } from "../../../model/types.ts";
import { defineCheck } from "../../check.ts";
import { listed, nameOf, show, showSizes } from "../../words.ts";

export const tooSmall = defineCheck({
	id: "too-small",
	group: "change",
	severity: "error",
	summary:
		"A part that is cut already is too small for the design as it now stands",
	explanation: `
\`cut\` lines say which parts exist, and how large. When the design changes, each of them is still right, or is to be trimmed
back (\`trim-back\`), or is too small:

    too small by = size that the design asks for - size that it has

Less than the saw is off (the \`crosscut\` and \`rip\` lines of the shop) is nothing. The message names the parts of the same
material that could still be cut from it.`,
	source:
		"arithmetic; the saw's tolerance as the shop says, by default common practice, no source",
	figures: {},
	fires: `
piece rack {
  cut case.left, case.right 19 x 10
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
			const { length, width } = lacking(piece, cut);
			if (!length && !width) continue;
			const { uri, span } = cut.origin;
			const key = `${uri} ${span.start} ${length} ${width}`;
			groups.set(key, [...(groups.get(key) ?? []), cut]);
		}
		return [...groups.values()].flatMap((cuts) => {
			const [cut] = cuts;
			if (!cut) return [];
			const { display } = piece;
			const { length, width } = lacking(piece, cut);
			const by = [
				...(length ? [`${show(display, length)} too short`] : []),
				...(width ? [`${show(display, width)} too narrow`] : []),
			].join(" and ");
			const names = listed(cuts.map(({ part }) => nameOf(part)));
			const uses = usesOf(piece, cut);
			const use =
				uses.length > 0
					? `it could still become ${listed(uses)}`
					: "no other part comes out of it";
			return [
				{
					origin: cut.origin,
					message: `${names} ${cuts.length > 1 ? "are" : "is"} cut to ${showSizes(display, cut.length, cut.width)}: ${by} for ${showSizes(display, cut.part.length, cut.part.width)}; cut anew, ${use}`,
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

/** Other parts of the same material that come out of it, not cut yet. */
function usesOf(piece: Piece, { part, length, width }: CutInfo): string[] {
	const cut = new Set(piece.cuts.map((one) => one.part));
	return piece.parts
		.filter(
			(other) =>
				!cut.has(other) &&
				other.stock === part.stock &&
				numberOf(other.length) <= numberOf(length) &&
				numberOf(other.width) <= numberOf(width),
		)
		.map(nameOf);
}
