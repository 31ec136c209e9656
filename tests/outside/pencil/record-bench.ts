// The bench and the rack, worked out by hand from the text of the design and the stock file.

import type { PencilSheets } from "../../harness/pencil.ts";

export const recordBench: PencilSheets = {
	"record-bench": {
		unit: "in",
		known: {
			W: "54",
			H: "14 + 5/8",
			D: "15 + 3/4",
			ply: "45/64",
			thin: "13/64",
			skin: "1/40",
			// The case ends 21 above the floor, so it begins at:
			under: "21 - H",
			// Sawn 3/32 heavy on each edge, and 1/4 more from the board.
			leg: "2 + 3/4",
			heavy: "leg + 2 * 3/32",
			rough: "heavy + 1/4",
			// The skin runs over the lip in front.
			over: "D + 3/8",
		},
		parts: {
			// Between the sides, which run past: dowelled, so nothing enters.
			"case.top, case.bottom": "W - 2 * ply x D x ply",
			// The whole height.
			"case.left, case.right": "H x D x ply",
			// 3/8 into each panel, and 3/32 less in all so that it drops in; grain along the longer side.
			"case.back":
				"W - 2 * ply + 2 * 3/8 - 3/32 x H - 2 * ply + 2 * 3/8 - 3/32 x thin",
			// Top and bottom are housed 3/16 for it; it stands before the back.
			"case.middle": "H - 2 * ply + 2 * 3/16 x D - thin x ply",

			// Long point to long point over the case; 1/64 over each face until it is flushed, at the mitres too.
			"lip.top, lip.bottom": {
				heavy: "W + 2 * 1/64 x ply + 2 * 1/64 x 3/8",
				final: "W x ply x 3/8",
			},
			"lip.left, lip.right": {
				heavy: "H + 2 * 1/64 x ply + 2 * 1/64 x 3/8",
				final: "H x ply x 3/8",
			},

			// Grain up, as the side; 5/16 over at each edge.
			"skin.left, skin.right": {
				heavy: "H + 2 * 5/16 x over + 2 * 5/16 x skin",
				final: "H x over x skin",
			},
			// Over the ends of the sides too; the shim at the back takes the overhang there.
			"skin.top": {
				heavy: "W + 2 * 5/16 x over + 5/16 x skin",
				final: "W x over x skin",
			},

			// From the floor to the underside of the case.
			"front-left.inner, front-right.inner, back-left.inner, back-right.inner":
				{
					rough: "under + 1 x rough x 2",
					heavy: "under x heavy x 1 + 3/4",
					final: "under x leg x 1 + 3/4",
				},
			// 5 above the inside of the bottom: laps the side.
			"front-left.outer, front-right.outer, back-left.outer, back-right.outer":
				{
					rough: "under + ply + 5 + 1 x rough x 1",
					heavy: "under + ply + 5 x heavy x 3/4",
					final: "under + ply + 5 x leg x 3/4",
				},

			"aid leg-pattern": "12 + 1/8 x 2 + 3/4 x 1/4",
			"aid edge-shim": "54 x 2 x 1/16",
		},
	},
	"wall-rack": {
		unit: "mm",
		known: { ply: "17.6", thin: "9.1" },
		parts: {
			// They cap the sides.
			"rack.top, rack.bottom": "900 x 210 x ply",
			"rack.left, rack.right": "420 - 2 * ply x 210 x ply",
			// In grooves 6 deep on all four sides, 2 less in all so that it enters.
			"rack.back":
				"900 - 2 * ply + 2 * 6 - 2 x 420 - 2 * ply + 2 * 6 - 2 x thin",
			// On pins, 1.5 at each end; before the back, which stands 18 in.
			"rack.one": "900 - 2 * ply - 2 * 1.5 x 210 - 18 - thin x ply",
			// Between the sides, which run past the back to the wall.
			"hook.strip": "900 - 2 * ply x 70 x ply",
			// 6 of play at each end.
			"hook.wall-strip": "900 - 2 * ply - 2 * 6 x 70 x ply",
		},
	},
};
