// The garden bench, worked out by hand. Rough boards are longer and wider than what comes of them by round figures of the
// unit that the maker measures in: 25 and 6 in millimetres, as 1 and 1/4 are in inches.

import type { PencilSheets } from "../../harness/pencil.ts";

export const gardenBench: PencilSheets = {
	"garden-bench": {
		unit: "mm",
		known: {
			L: "1300",
			D: "380",
			longer: "25",
			wider: "6",
			// Under a seat of 34.
			leg: "450 - 34",
			// Between the front and the back leg: the seat stands 40 over both, each is 70.
			clear: "D - 2 * 40 - 2 * 70",
			// The seat stands 90 over the legs, which are 22 and 28 thick.
			frames: "L - 2 * (90 + 22 + 28)",
		},
		parts: {
			// Four strips; 4 over on each edge until it is trimmed.
			seat: {
				rough: "L + longer x D + 2 * 4 + wider x 40",
				heavy: "L x D + 2 * 4 x 34",
				final: "L x D x 34",
			},
			"front-left.inner, front-right.inner, back-left.inner, back-right.inner":
				{
					rough: "leg + longer x 70 + 2 * 2 + wider x 34",
					heavy: "leg x 70 + 2 * 2 x 28",
					final: "leg x 70 x 28",
				},
			"front-left.outer, front-right.outer, back-left.outer, back-right.outer":
				{
					rough: "leg + longer x 70 + 2 * 2 + wider x 27",
					heavy: "leg x 70 + 2 * 2 x 22",
					final: "leg x 70 x 22",
				},
			// A tenon of 28 at each end.
			"left-rail, right-rail": {
				rough: "clear + 2 * 28 + longer x 70 + wider x 34",
				final: "clear + 2 * 28 x 70 x 28",
			},
			// A tenon of 18 at each end: in the rails, which are flush with the inside of the legs.
			stretcher: {
				rough: "frames + 2 * 18 + longer x 60 + wider x 34",
				final: "frames + 2 * 18 x 60 x 28",
			},
			"aid leg-pattern": "416 x 70 x 6",
			"aid caul": "400 x 60 x 28",
		},
	},
};
