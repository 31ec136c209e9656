// The odds of the workshop, worked out by hand.

import type { PencilSheets } from "../../harness/pencil.ts";

export const workshopOdds: PencilSheets = {
	"finishing-table": {
		unit: "in",
		known: {
			ply: "45/64",
			skin: "1/40",
			// The six-quarter was planed a hair too far.
			six: "1 + 15/64",
			// Under the top, which is veneered below.
			post: "30 - skin",
			rail: "18 - 2 * 2 + 2 * 1",
			// The frames stand 4 in at both ends, the spreader is housed 3/8 in both.
			spreader: "48 - 2 * 4 - 2 * six + 2 * 3/8",
		},
		parts: {
			board: "48 x 22 x ply",
			"left-end.front-post, left-end.rear-post, right-end.front-post, right-end.rear-post":
				{
					rough: "post + 1 x 2 + 1/4 x 1 + 1/2",
					final: "post x 2 x six",
				},
			"left-end.top-rail, right-end.top-rail": {
				rough: "rail + 1 x 3 + 1/4 x 1 + 1/2",
				final: "rail x 3 x six",
			},
			"left-end.foot-rail, right-end.foot-rail": {
				rough: "rail + 1 x 2 + 1/4 x 1 + 1/2",
				final: "rail x 2 x six",
			},
			spreader: {
				rough: "spreader + 1 x 2 + 1/4 x 1 + 1/2",
				final: "spreader x 2 x six",
			},
			// Mitred round the board: long point to long point, 3/4 beyond it at both ends.
			"edge.front, edge.back": {
				heavy: "48 + 2 * 3/4 x 47/64 x 3/4",
				final: "48 + 2 * 3/4 x ply x 3/4",
			},
			"edge.left, edge.right": {
				heavy: "22 + 2 * 3/4 x 47/64 x 3/4",
				final: "22 + 2 * 3/4 x ply x 3/4",
			},
			// Over the edge all round, 3/8 over that until it is trimmed.
			"face.board, face.board-inside": {
				heavy: "48 + 2 * 3/4 + 2 * 3/8 x 22 + 2 * 3/4 + 2 * 3/8 x skin",
				final: "48 + 2 * 3/4 x 22 + 2 * 3/4 x skin",
			},
			// As thick as the board that it is cut from.
			"aid stop-block": "4 x 2 x 1/2",
		},
	},
	"key-cupboard": {
		unit: "mm",
		known: {
			// Clear inside 236 x 316 x 60, panels of 12; before a back of 6.5 that stands 12 in.
			W: "236 + 2 * 12",
			H: "316 + 2 * 12",
			D: "60 + 12 + 6.5",
		},
		parts: {
			// Mitred: long point to long point.
			"case.top, case.bottom": "W x D x 12",
			"case.left, case.right": "H x D x 12",
			// In grooves 4 deep, 1 less in all, grain across.
			"case.back": "236 + 2 * 4 - 1 x 316 + 2 * 4 - 1 x 6.5",
			// 1 short of the inside; 25 longer and 6 wider from the board: round figures of the unit that the maker measures in.
			"hook-rail": {
				rough: "236 - 1 + 25 x 60 + 6 x 27",
				final: "236 - 1 x 60 x 16",
			},
			"rail.strip": "236 x 45 x 12",
		},
	},
	"tool-tote": {
		unit: "in",
		known: {
			L: "24",
			// Between the sides of 5/8, and 3/16 into both.
			across: "10 - 2 * 5/8 + 2 * 3/16",
			// Between the ends, which stand 1 1/2 in and are 3/4 thick.
			clear: "L - 2 * (1 + 1/2) - 2 * 3/4",
		},
		parts: {
			"front-side, rear-side": {
				rough: "L + 1 x 5 + 1/4 x 1",
				final: "L x 5 x 5/8",
			},
			// Grain round the tote, two strips.
			"left-end, right-end": {
				rough: "across + 1 x 9 + 1/4 x 1",
				final: "across x 9 x 3/4",
			},
			bottom: "clear x across x 13/64",
			bar: {
				rough: "clear + 1 x 1 + 1/2 + 1/4 x 1",
				final: "clear x 1 + 1/2 x 3/4",
			},
		},
	},
	"step-stool": {
		unit: "in",
		known: {
			leg: "16 - (1 + 1/4)",
			// The seat stands 1 1/2 over legs of 2; a tenon of 3/4 at each end.
			rail: "12 - 2 * (1 + 1/2) - 2 * 2 + 2 * 3/4",
			// Rails of 3/4 in the middle of legs of 1 5/8 that stand 2 in: their inner faces are 2 + 13/16 + 3/8 in.
			long: "18 - 2 * (2 + 13/16 + 3/8) + 2 * 1/4",
		},
		parts: {
			seat: {
				rough: "18 + 1 x 12 + 2 * 1/8 + 1/4 x 1 + 1/2",
				heavy: "18 x 12 + 2 * 1/8 x 1 + 1/4",
				final: "18 x 12 x 1 + 1/4",
			},
			"front-left.only, front-right.only, back-left.only, back-right.only": {
				rough: "leg + 1 x 2 + 1/4 x 2",
				final: "leg x 2 x 1 + 5/8",
			},
			"left-rail, right-rail": {
				rough: "rail + 1 x 2 + 1/2 + 1/4 x 1",
				final: "rail x 2 + 1/2 x 3/4",
			},
			// Housed 1/4 in both.
			"long-rail": {
				rough: "long + 1 x 2 + 1/2 + 1/4 x 1",
				final: "long x 2 + 1/2 x 3/4",
			},
		},
	},
	"pattern-chest": {
		unit: "in",
		known: {
			W: "34",
			H: "16",
			ply: "45/64",
			half: "15/32",
			thin: "13/64",
			// The back is nailed on behind: the panels are that much less deep than the chest.
			deep: "14 - thin",
			clear: "W - 2 * ply",
			// The second bay: what the first of 12 and a divider leave.
			bay: "clear - 12 - half",
			holesDeep: "10 - thin",
		},
		parts: {
			"foot.front-rail, foot.rear-rail": "32 x 3 + 1/2 x ply",
			"foot.left-rail, foot.right-rail": "12 - 2 * ply x 3 + 1/2 x ply",
			"foot.front-strip, foot.rear-strip": "32 - 2 * ply x 3/4 x 3/4",
			// They cap the sides.
			"case.top, case.bottom": "W x deep x ply",
			"case.left, case.right": "H - 2 * ply x deep x ply",
			"case.back": "W x H x thin",
			// Housed 3/16 in top and bottom, 1/2 back from the front.
			"case.rack": "H - 2 * ply + 2 * 3/16 x deep - 1/2 x half",
			// Housed 3/16 in the divider and the side.
			"case.half-way": "bay + 2 * 3/16 x deep x ply",

			"cutters.holes.top, cutters.holes.bottom":
				"20 - 2 * half + 2 * 1/4 x holesDeep x half",
			"cutters.holes.left, cutters.holes.right": "8 x holesDeep x half",
			"cutters.holes.back": "20 x 8 x thin",
			"cutters.holes.first, cutters.holes.second":
				"8 - 2 * half + 2 * 1/8 x holesDeep x half",
		},
	},
	"saw-door": {
		unit: "in",
		known: { W: "16", H: "26", frame: "2 + 1/2" },
		parts: {
			"left-stile, right-stile": {
				rough: "H + 1 x frame + 1/4 x 1",
				final: "H x frame x 3/4",
			},
			// Tenons of 1 1/4 at both ends.
			"bottom-rail, top-rail": {
				rough: "W - 2 * frame + 2 * (1 + 1/4) + 1 x frame + 1/4 x 1",
				final: "W - 2 * frame + 2 * (1 + 1/4) x frame x 3/4",
			},
			// Grooves of 3/8: 1/16 is left free in the rails, 1/8 in the stiles.
			panel: {
				rough:
					"H - 2 * frame + 2 * (3/8 - 1/16) + 1 x W - 2 * frame + 2 * (3/8 - 1/8) + 1/4 x 1",
				final:
					"H - 2 * frame + 2 * (3/8 - 1/16) x W - 2 * frame + 2 * (3/8 - 1/8) x 1/2",
			},
		},
	},
};
