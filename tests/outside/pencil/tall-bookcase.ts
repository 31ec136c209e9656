// The bookcase, worked out by hand: the sheet measures 0.71, whatever the stock file says.

import type { PencilSheets } from "../../harness/pencil.ts";

export const tallBookcase: PencilSheets = {
	"tall-bookcase": {
		unit: "in",
		known: {
			W: "47",
			H: "76",
			D: "11 + 1/4",
			ply: "0.71",
			half: "15/32",
			thin: "13/64",
			// The plinth stands 2 in at both ends of two cases.
			plinth: "2 * W - 4",
			// The back stands 3/4 in.
			deep: "D - 3/4 - thin",
			bay: "(W - 4 * ply) / 3",
			housed: "bay + 2 * 3/16",
			pins: "bay - 2 * 1/16",
			// A strip is 1/64 over each face until it is flushed.
			proud: "ply + 2 * 1/64",
			// Pigeon-holes with 1/8 to slide into their bay.
			letters: "bay - 1/8",
			letterDeep: "9 + 1/2 - thin",
		},
		parts: {
			"plinth.front-rail, plinth.rear-rail": "plinth x 3 + 1/2 x ply",
			"plinth.left-rail, plinth.right-rail": "9 - 2 * ply x 3 + 1/2 x ply",
			"plinth.front-strip, plinth.rear-strip": "plinth - 2 * ply x 3/4 x 3/4",

			// Rabbets 3/8 deep in the sides.
			"west.top, west.bottom, east.top, east.bottom":
				"W - 2 * ply + 2 * 3/8 x D x ply",
			"west.left, west.right, east.left, east.right": "H x D x ply",
			// In grooves 3/16 deep, 3/32 less in all; higher than wide, so its grain runs up.
			"west.back, east.back":
				"H - 2 * ply + 2 * 3/16 - 3/32 x W - 2 * ply + 2 * 3/16 - 3/32 x thin",
			"west.one, west.two, east.one, east.two":
				"H - 2 * ply + 2 * 3/16 x deep x ply",
			"west.mid-1, west.mid-2, west.mid-3, east.mid-1, east.mid-2, east.mid-3":
				"housed x deep x ply",
			"west.low-1, west.second-1, west.fourth-1, west.high-1":
				"pins x deep x ply",
			"west.low-2, west.fourth-2, west.high-2": "pins x deep x ply",
			"west.low-3, west.second-3, west.fourth-3, west.high-3":
				"pins x deep x ply",
			"east.low-1, east.second-1, east.fourth-1, east.high-1":
				"pins x deep x ply",
			"east.low-2, east.high-2": "pins x deep x ply",
			"east.low-3, east.second-3, east.fourth-3, east.high-3":
				"pins x deep x ply",

			// Uprights at the sides run through, over the top of the case by what is flushed there.
			"west-lip.left, west-lip.right, east-lip.left, east-lip.right": {
				heavy: "H + 2 * 1/64 x proud x 1/4",
				final: "H x ply x 1/4",
			},
			// Between the uprights, which stand 1/64 proud of the inside too.
			"west-lip.top, west-lip.bottom, east-lip.top, east-lip.bottom": {
				heavy: "W - 2 * ply - 2 * 1/64 x proud x 1/4",
				final: "W - 2 * ply - 2 * 1/64 x ply x 1/4",
			},
			// The dividers' edges show between top and bottom only, whose strips are proud as well.
			"west-lip.one, west-lip.two, east-lip.one, east-lip.two": {
				heavy: "H - 2 * ply - 2 * 1/64 x proud x 1/4",
				final: "H - 2 * ply - 2 * 1/64 x ply x 1/4",
			},

			"letters.holes.top, letters.holes.bottom":
				"letters - 2 * half + 2 * 1/4 x letterDeep x half",
			"letters.holes.left, letters.holes.right": "9 x letterDeep x half",
			// Nailed on behind: the whole outside.
			"letters.holes.back": "letters x 9 x thin",
			"letters.holes.first, letters.holes.second":
				"9 - 2 * half + 2 * 1/8 x letterDeep x half",

			// Behind the backs, between the sides.
			"tie-west.strip, tie-east.strip": "W - 2 * ply x 3 x ply",
		},
	},
};
