// Faces that must lie in one plane, under trim or veneer, and do not.

import type { Axis, Box } from "../../../geometry/solid.ts";
import type { Piece, TrimInfo, VeneerInfo } from "../../../model/types.ts";
import { defineCheck, type Found } from "../../check.ts";
import { nameOf, show, showFine } from "../../words.ts";

export const flush = defineCheck({
	id: "flush",
	group: "fit",
	severity: "warning",
	summary: "Faces that must be flush, under trim or before veneer, step",
	explanation: `
Trim lies on the edges of several panels at once, and veneer runs over a panel and the trim at its edge. Both need one plane:
trim bridges a step with a gap, and veneer shows it for ever after.

    step = place of one face - place of the other, along the way that they look

The edges under one line of trim must agree, and so must a panel's face and the trim that its veneer covers; trim that
stands proud is sanded down to the panel and is no step.`,
	source:
		"common practice, no source: ground flush within 0.05 to 0.1 mm before veneering",
	figures: {
		step: {
			value: 0.1,
			unit: "mm",
			help: "A step no higher than this is flush",
			source: "common practice, no source",
		},
	},
	fires: `
piece rack {
  measured case.top.width 10 1/16
  box case {
    outside 30 x 20 x 10
    panels top, bottom, left, right of ply.three-quarter
  }
  trim lip {
    on case.front.edges
    of oak.four-quarter
    thick 3/8
    proud 1/64 on both faces
  }
}`,
	silent: `
piece rack {
  box case {
    outside 30 x 20 x 10
    panels top, bottom, left, right of ply.three-quarter
  }
  trim lip {
    on case.front.edges
    of oak.four-quarter
    thick 3/8
    proud 1/64 on both faces
  }
}`,
	find: (piece, { figures }) => [
		...piece.trims.flatMap((trim) => underTrim(piece, trim, figures.step)),
		...piece.veneers.flatMap((veneer) =>
			underVeneer(piece, veneer, figures.step),
		),
	],
});

function underTrim(piece: Piece, trim: TrimInfo, limit: number): Found[] {
	const edges = trim.strips.flatMap(({ part, covers }) => {
		const look = lookOf(covers.solid.box, part.solid.box);
		return look ? [{ covers, ...look }] : [];
	});
	const found: Found[] = [];
	const [first] = edges;
	if (!first) return found;
	for (const edge of edges.slice(1)) {
		if (edge.axis !== first.axis || edge.outward !== first.outward) continue;
		const step = edge.at - first.at;
		if (Math.abs(step) <= limit) continue;
		const [proud, low] =
			step * edge.outward > 0
				? [edge.covers, first.covers]
				: [first.covers, edge.covers];
		found.push({
			origin: trim.origin,
			message: `The edges under \`${trim.path}\` are not flush: ${nameOf(proud)} stands ${amount(piece, step)} before ${nameOf(low)}; ${showFine(piece.display, limit)} is flush, so plane it back or cut both to one size`,
			related: [
				{
					origin: proud.declaration.origin,
					message: `${nameOf(proud)} is declared here`,
				},
			],
		});
	}
	return found.slice(0, 1);
}

function underVeneer(piece: Piece, veneer: VeneerInfo, limit: number): Found[] {
	const strips = piece.trims
		.filter((trim) => veneer.over.includes(trim.path))
		.flatMap((trim) => trim.strips);
	return veneer.sheets.flatMap((sheet): Found[] => {
		const look = lookOf(sheet.covers.solid.box, sheet.part.solid.box);
		if (!look) return [];
		return strips
			.filter((strip) => strip.covers === sheet.covers)
			.flatMap((strip): Found[] => {
				const { min, max } = strip.part.solid.box;
				const at = (look.outward === 1 ? max : min)[look.axis];
				const below = (look.at - at) * look.outward;
				if (below <= limit) return [];
				return [
					{
						origin: veneer.origin,
						message: `\`${veneer.path}\` would run over a step: ${nameOf(strip.part)} lies ${amount(piece, below)} below the face of ${nameOf(sheet.covers)}; make the trim wider, or more proud`,
						related: [
							{
								origin: strip.part.declaration.origin,
								message: `${nameOf(strip.part)} is declared here`,
							},
						],
					},
				];
			});
	});
}

/** The face of a box that another lies on: the axis on which they are least apart without sharing room. */
function lookOf(
	box: Box,
	on: Box,
):
	| { readonly axis: Axis; readonly outward: 1 | -1; readonly at: number }
	| undefined {
	let best:
		| { readonly axis: Axis; readonly outward: 1 | -1; readonly at: number }
		| undefined;
	let least = Infinity;
	for (const axis of [0, 1, 2] as const) {
		const ahead = Math.abs(on.min[axis] - box.max[axis]);
		const behind = Math.abs(box.min[axis] - on.max[axis]);
		if (ahead < least) {
			least = ahead;
			best = { axis, outward: 1, at: box.max[axis] };
		}
		if (behind < least) {
			least = behind;
			best = { axis, outward: -1, at: box.min[axis] };
		}
	}
	return best;
}

function amount(piece: Piece, step: number): string {
	return show(piece.display, Math.abs(step));
}
