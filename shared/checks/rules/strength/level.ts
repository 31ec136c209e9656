// Legs that do not reach one floor: the piece rocks, or stands askew.

import { numberOf } from "../../../model/size.ts";
import type { LegInfo } from "../../../model/types.ts";
import { defineCheck } from "../../check.ts";
import { caution } from "../../force-words.ts";
import { listed, show } from "../../words.ts";

export const level = defineCheck({
	id: "level",
	group: "strength",
	severity: "warning",
	summary: "The feet of a piece do not stand on one level",
	explanation: `
The feet of all legs are compared. A foot that ends higher than the lowest by more than a limit hangs in the air, or the piece leans over it
by the difference over the distance of the legs. A floor that is itself not level is for the maker to measure: on a piece with a cleat,
what counts is the height of the wall strip over the floor at the feet.

${caution}`,
	source: "geometry; the limit is common practice, no source",
	figures: {
		off: {
			value: 1,
			unit: "mm",
			help: "Feet may differ by so much",
			source: "common practice, no source: what a felt pad takes up",
		},
	},
	fires: `
piece stand {
  box case {
    outside 30 x 12 x 14
    top at 24 from floor
    panels top, bottom, left, right of ply.three-quarter
  }
  leg front-left, front-right handed {
    against outside case.left
    set-back 1 from case.front
    layer only of oak.eight-quarter 2 wide from floor up to 8 above case.bottom
  }
  leg back-left, back-right handed {
    against outside case.left
    set-back 1 from case.back
    layer only of oak.eight-quarter 2 wide from 1/4 up from floor up to 8 above case.bottom
  }
}`,
	silent: `
piece stand {
  box case {
    outside 30 x 12 x 14
    top at 24 from floor
    panels top, bottom, left, right of ply.three-quarter
  }
  leg front-left, front-right handed {
    against outside case.left
    set-back 1 from case.front
    layer only of oak.eight-quarter 2 wide from floor up to 8 above case.bottom
  }
  leg back-left, back-right handed {
    against outside case.left
    set-back 1 from case.back
    layer only of oak.eight-quarter 2 wide from floor up to 8 above case.bottom
  }
}`,
	find: (piece, { figures }) => {
		const feet = piece.legs.map((leg) => ({ leg, foot: numberOf(leg.foot) }));
		const lowest = Math.min(...feet.map(({ foot }) => foot));
		const high = feet.filter(({ foot }) => foot > lowest + figures.off + 1e-9);
		const first = high[0];
		if (!first) return [];
		const names = high.map(({ leg }) => `\`${leg.path}\``);
		const low = feet.find(({ foot }) => foot === lowest)?.leg as LegInfo;
		const { display } = piece;
		const off = first.foot - lowest;
		return [
			{
				origin: first.leg.declaration.origin,
				message: `${listed(names)} ${names.length > 1 ? "end" : "ends"} ${show(display, off)} above the foot of \`${low.path}\`: the piece rocks; bring all feet to one level`,
			},
		];
	},
});
