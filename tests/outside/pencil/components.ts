// The components as they stand, with the givens that they begin with.

import type { PencilSheets } from "../../harness/pencil.ts";

export const components: PencilSheets = {
	base: {
		unit: "in",
		known: { ply: "45/64" },
		parts: {
			"front-rail, rear-rail": "30 x 3 + 1/2 x ply",
			// Between the two.
			"left-rail, right-rail": "9 - 2 * ply x 3 + 1/2 x ply",
			"front-strip, rear-strip": "30 - 2 * ply x 3/4 x 3/4",
		},
	},
	"side-frame": {
		unit: "in",
		known: { rail: "16 - 2 * 2 + 2 * 1" },
		parts: {
			"front-post, rear-post": {
				rough: "28 + 1 x 2 + 1/4 x 1 + 1/2",
				final: "28 x 2 x 1 + 1/4",
			},
			// Shoulder to shoulder, and a tenon of 1 at each end.
			"top-rail": {
				rough: "rail + 1 x 3 + 1/4 x 1 + 1/2",
				final: "rail x 3 x 1 + 1/4",
			},
			"foot-rail": {
				rough: "rail + 1 x 2 + 1/4 x 1 + 1/2",
				final: "rail x 2 x 1 + 1/4",
			},
		},
	},
	"pigeon-holes": {
		unit: "in",
		known: { half: "15/32", thin: "13/64", deep: "9 + 1/2 - thin" },
		parts: {
			"holes.top, holes.bottom": "18 - 2 * half + 2 * 1/4 x deep x half",
			"holes.left, holes.right": "9 x deep x half",
			"holes.back": "18 x 9 x thin",
			"holes.first, holes.second": "9 - 2 * half + 2 * 1/8 x deep x half",
		},
	},
};
