// The half-hung case of the corpus, worked out by hand.

import type { PencilSheets } from "../../harness/pencil.ts";

export const halfHungCase: PencilSheets = {
	"half-hung-case": {
		unit: "in",
		known: {
			W: "42",
			H: "14",
			D: "13",
			ply: "45/64",
			half: "15/32",
			// The case ends 32 above the floor.
			under: "32 - H",
			heavy: "2 + 1/2 + 2 * 3/32",
		},
		parts: {
			// Rabbets 3/8 deep in the sides.
			"case.top, case.bottom": "W - 2 * ply + 2 * 3/8 x D x ply",
			"case.left, case.right": "H x D x ply",
			// Between the panels, 1/16 less in all.
			"case.back": "W - 2 * ply - 1/16 x H - 2 * ply - 1/16 x half",
			// Before the back, which stands 3/4 in.
			"case.middle": "H - 2 * ply + 2 * 3/16 x D - 3/4 - half x ply",
			"left-leg.inner, right-leg.inner": {
				rough: "under + 1 x heavy + 1/4 x 2",
				heavy: "under x heavy x 1 + 3/4",
				final: "under x 2 + 1/2 x 1 + 3/4",
			},
			// 6 above the inside of the bottom.
			"left-leg.outer, right-leg.outer": {
				rough: "under + ply + 6 + 1 x heavy + 1/4 x 1",
				heavy: "under + ply + 6 x heavy x 3/4",
				final: "under + ply + 6 x 2 + 1/2 x 3/4",
			},
			"hook.strip": "W - 2 * ply x 3 x ply",
			"hook.wall-strip": "W - 2 * ply - 2 * 1/4 x 3 x ply",
		},
	},
};
