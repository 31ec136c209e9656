// The wall cabinet, worked out by hand.

import type { PencilSheets } from "../../harness/pencil.ts";

export const wallCabinet: PencilSheets = {
	"wall-cabinet": {
		unit: "mm",
		known: {
			W: "900",
			H: "680",
			D: "300",
			ply: "17.6",
			// Before the back, which is 12 thick and stands 18 in.
			deep: "D - 18 - 12",
			// Two sides and two dividers leave three bays.
			bay: "(W - 4 * ply) / 3",
			pins: "bay - 2 * 1.5",
		},
		parts: {
			// Rabbets 6 deep in the sides.
			"case.top, case.bottom": "W - 2 * ply + 2 * 6 x D x ply",
			"case.left, case.right": "H x D x ply",
			// Between the panels with 1.5 in all to enter; the maker wants its grain up.
			"case.back": "H - 2 * ply - 1.5 x W - 2 * ply - 1.5 x 12",
			// Housed 5 in top and bottom.
			"case.one, case.two": "H - 2 * ply + 2 * 5 x deep x ply",
			// Housed 5 in the side and the divider.
			"case.spice": "bay + 2 * 5 x deep x ply",
			// On pins with 1.5 at each end, 20 back from the front.
			"case.high, case.lower, case.upper, case.plates":
				"pins x deep - 20 x ply",
			"cleat.strip": "W - 2 * ply x 80 x ply",
			"cleat.wall-strip": "W - 2 * ply - 2 * 5 x 80 x ply",
		},
	},
};
