// A case or frame with nothing that keeps its corners square.

import { numberOf } from "../../../model/size.ts";
import type { BoxInfo, Joint, Part, Piece } from "../../../model/types.ts";
import { defineCheck, type Found } from "../../check.ts";
import { caution } from "../../force-words.ts";
import { listed } from "../../words.ts";

export const rack = defineCheck({
	id: "rack",
	group: "strength",
	severity: "hint",
	summary: "Nothing keeps a case or frame from racking",
	explanation: `
A case stays square by a back that is glued, screwed, nailed or held in a groove, or by corners that resist turning: glued dadoes, rabbets,
mitres, tenons, dowels or biscuits, or two and more fasteners across the joint. One of them is enough. A leg resists where it is
tenoned, dowelled, glued, or held by two and more fasteners to something. Where the design says nothing of the kind, it is told once: it
is a question of kind, not of strength.

${caution}`,
	source: "common practice, no source",
	figures: {
		height: {
			value: 300,
			unit: "mm",
			help: "A box lower than this is not looked at",
			source: "common practice, no source: a tray or drawer hardly racks",
		},
	},
	fires: `
piece open-case {
  box case {
    outside 30 x 40 x 12
    panels top, bottom, left, right of ply.three-quarter
    caps left, right
    join top, bottom to left, right { butt; screw #8 x 2 { at 6 forward from case.back; pilot; countersink } }
  }
}`,
	silent: `
piece open-case {
  box case {
    outside 30 x 40 x 12
    panels top, bottom, left, right of ply.three-quarter
    caps left, right
    join top, bottom to left, right { butt; glue; screw #8 x 2 every 4 { pilot; countersink } }
  }
}`,
	find: (piece, { figures }) => {
		const loose = piece.boxes.find(
			(box) =>
				numberOf(box.outside.height) >= figures.height && !isBraced(piece, box),
		);
		if (loose) return [looseBox(loose)];
		const legs = piece.legs.filter(
			({ layers }) => !piece.joints.some((joint) => isStiff(joint, layers)),
		);
		const first = legs[0];
		if (!first) return [];
		const names = legs.map(({ path }) => `\`${path}\``);
		return [
			{
				origin: first.declaration.origin,
				message: `Nothing keeps ${listed(names)} from racking: no joint with glue, a tenon, dowels or two fasteners holds ${names.length > 1 ? "them" : "it"}; join a rail between the legs, or glue and dowel their tops`,
			},
		];
	},
});

function looseBox(box: BoxInfo): Found {
	const { declaration } = box;
	const back = box.panels.back
		? `\`${box.panels.back.path}\` is neither glued nor fastened`
		: "it has no back";
	return {
		origin: { uri: declaration.origin.uri, span: declaration.nameSpan },
		message: `Nothing keeps \`${box.path}\` square: ${back}, and its corners have neither glue nor two fasteners each; fasten a back of ply, or glue and screw the corners`,
	};
}

function isBraced(piece: Piece, box: BoxInfo): boolean {
	const { back, top, bottom, left, right } = box.panels;
	if (back && (box.backing === "groove" || heldAtEdges(piece, back)))
		return true;
	const sides = [left, right].filter((part) => part !== undefined);
	const levels = [top, bottom, ...box.shelves].filter(
		(part) => part !== undefined,
	);
	// One level that is stiff at both sides is a frame.
	return levels.some(
		(level) =>
			sides.length > 0 &&
			sides.every((side) =>
				piece.joints.some((joint) =>
					(joint.host === side && joint.member === level) ||
					(joint.host === level && joint.member === side)
						? resistsTurning(joint)
						: false,
				),
			),
	);
}

/** Held at two edges and more, by anything: many small fasteners far apart make a plate of it. */
function heldAtEdges(piece: Piece, back: Part): boolean {
	const held = piece.joints.filter(
		(joint) =>
			(joint.host === back || joint.member === back) &&
			(joint.glue || joint.fasteners.length > 0),
	);
	return held.length >= 2;
}

function resistsTurning({ glue, kind, fasteners }: Joint): boolean {
	if (glue || kind === "tenon") return true;
	const points = fasteners
		.filter(({ counted }) => counted)
		.reduce((sum, run) => sum + run.points.length, 0);
	return points >= 2;
}

/** A joint that holds a leg to something that is no leg. */
function isStiff(joint: Joint, layers: readonly Part[]): boolean {
	const inLeg = (part: Part): boolean => layers.includes(part);
	if (inLeg(joint.host) === inLeg(joint.member)) return false;
	const other = inLeg(joint.host) ? joint.member : joint.host;
	return (
		other.role !== "layer" && numberOf(other.thick) > 0 && resistsTurning(joint)
	);
}
