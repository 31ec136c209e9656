// A free-standing piece that is higher than it is deep, and a pull at its top.

import { tippingPull } from "../../../mechanics/tipping.ts";
import { numberOf } from "../../../model/size.ts";
import type { Piece } from "../../../model/types.ts";
import { defineCheck } from "../../check.ts";
import { caution, showForce } from "../../force-words.ts";
import { showAbout, showAtLeast } from "../../rounded.ts";
import { weightsOf } from "../../standing-weights.ts";

export const tip = defineCheck({
	id: "tip",
	group: "strength",
	severity: "warning",
	summary: "A tall free-standing piece tips when it is pulled at its top",
	explanation: `
Load case: the piece stands free and empty, and is pulled forward at its top edge, or as high as a limit; then the same with the loads that
the design gives. It turns about the line through its foremost feet:

    pull that tips it = W x / h

x: the weight behind that line, h: the height of the pull. Doors and drawers are no part of the language, so an open one is not counted: it
makes it worse. Only pieces with a box are looked at, and only those higher than a limit and than they are deep; one with a
\`mount\` is tied to the wall.

${caution}`,
	source:
		"statics; height and pull: ASTM F2057-23 for clothing storage (scope from 27 in and 30 lb; 10 lbf at up to 56 in, the pull from memory)",
	figures: {
		height: {
			value: 686,
			unit: "mm",
			help: "Pieces lower than this are not looked at",
			source: "ASTM F2057-23, scope: 27 in",
		},
		slender: {
			value: 2,
			unit: "times",
			help: "Pieces lower than so many times their depth are not looked at",
			source: "common practice, no source",
		},
		weight: {
			value: 133,
			unit: "N",
			help: "Pieces lighter than this, with their loads, are not looked at",
			source: "ASTM F2057-23, scope: 30 lb",
		},
		pull: {
			value: 44.5,
			unit: "N",
			help: "The pull of a child at the top edge",
			source: "ASTM F2057-23: 10 lbf, from memory",
		},
		reach: {
			value: 1422.4,
			unit: "mm",
			help: "No pull is higher than this",
			source: "ASTM F2057-23: 56 in, from memory",
		},
	},
	fires: `
piece tower {
  box case {
    outside 30 x 66 x 9
    panels top, bottom, left, right of ply.three-quarter
    back of ply.quarter rabbet 3/8
    join back to left, right, top, bottom { glue }
  }
}`,
	silent: `
piece tower {
  box case {
    outside 30 x 66 x 9
    panels top, bottom, left, right of ply.three-quarter
    back of ply.quarter inset 3/4
    join back to left, right, top, bottom { glue }
  }
  mount tie {
    kind rail
    on case.back
    of ply.three-quarter
    height 3
    down 1 from case.top
    wall { studs every 16; drywall 1/2; screw #10 x 3 }
  }
}`,
	find: (piece, { figures }) => {
		if (piece.boxes.length === 0 || piece.mounts.length > 0) return [];
		const around = extent(piece);
		const height = around.top - around.bottom;
		if (height < figures.height || height <= figures.slender * around.deep)
			return [];
		const { own, loads } = weightsOf(piece);
		if (!own) return [];
		const all = [own, ...loads].reduce((sum, { force }) => sum + force, 0);
		if (all < figures.weight) return [];
		const pulledAt = Math.min(height, figures.reach);
		const front = footLine(piece, around.bottom);
		if (front === undefined) return [];
		const pullOf = (weights: readonly (typeof own)[]): number => {
			const behind = weights.filter(({ at }) => at[2] <= front);
			const before = weights.filter(({ at }) => at[2] > front);
			const weight = behind.reduce((sum, { force }) => sum + force, 0);
			const moment = behind.reduce(
				(sum, { force, at }) => sum + force * (front - at[2]),
				0,
			);
			return tippingPull(
				{
					weight,
					behind: weight > 0 ? moment / weight : 0,
					outside: before.map(({ force, at }) => ({
						force,
						before: at[2] - front,
					})),
				},
				pulledAt,
			);
		};
		const empty = pullOf([own]);
		const loaded = loads.length > 0 ? pullOf([own, ...loads]) : undefined;
		const least = Math.min(empty, loaded ?? empty);
		if (least >= figures.pull) return [];
		const { display } = piece;
		const full =
			loaded === undefined
				? ""
				: `, ${showForce(display, loaded)} with its loads`;
		// x grows with half of what is added in depth, the weight hardly.
		const deeper = (2 * pulledAt * (figures.pull - empty)) / own.force;
		const depth =
			deeper > 0 && deeper <= around.deep
				? `, or make it about ${showAtLeast(display, deeper)} deeper at the floor`
				: "";
		return [
			{
				origin: {
					uri: piece.declaration.origin.uri,
					span: piece.declaration.nameSpan,
				},
				message: `\`${piece.name}\` tips when it is pulled forward with ${showForce(display, empty)} at ${showAbout(display, pulledAt)} above the floor${full}; a child pulls ${showForce(display, figures.pull)}: fix it to the wall (a \`mount\` of \`kind rail\` on its back)${depth}`,
			},
		];
	},
});

function extent(piece: Piece): {
	readonly top: number;
	readonly bottom: number;
	readonly deep: number;
} {
	const parts = piece.parts.filter(({ role }) => role !== "aid");
	const least = (axis: 0 | 1 | 2): number =>
		Math.min(...parts.map(({ min }) => numberOf(min[axis])));
	const most = (axis: 0 | 1 | 2): number =>
		Math.max(...parts.map(({ max }) => numberOf(max[axis])));
	return { top: most(1), bottom: least(1), deep: most(2) - least(2) };
}

/** The front of what stands on the floor, mm along z. */
function footLine(piece: Piece, floor: number): number | undefined {
	let front: number | undefined;
	for (const { role, min, max } of piece.parts) {
		if (role === "aid" || numberOf(min[1]) > floor + 1) continue;
		front = Math.max(front ?? Number.NEGATIVE_INFINITY, numberOf(max[2]));
	}
	return front;
}
