// A mitre so wide that the error of the saw's angle opens it at heel or toe.

import {
	commonBox,
	isEmpty,
	planeAxes,
	sizeOf,
} from "../../../geometry/solid.ts";
import type { Joint, Piece } from "../../../model/types.ts";
import { defineCheck } from "../../check.ts";
import { nameOf, show, showFine } from "../../words.ts";

export const fitMitre = defineCheck({
	id: "fit-mitre",
	group: "fit",
	severity: "warning",
	summary:
		"A mitre is so wide that the usual error of the saw's angle opens it",
	explanation: `
A mitre cut a little off its angle touches at one end and gapes at the other:

    opening = width of the mitre x tan(angle error)

The width is that of the mitred face, from heel to toe. Both pieces come off one setting, so a corner is off by twice the
error of the saw. Around a frame the corners add straight, because one setting makes them all: the last of four corners would
be off by eight times the error, if the others are pulled tight. It warns when one corner opens too far, and hints when only
the closing of the frame does: cut a test frame, or shoot the last mitre.`,
	source:
		"plane geometry; the angle error and the openings are common practice, no source",
	figures: {
		"saw-angle": {
			value: 0.1,
			unit: "deg",
			help: "How far the saw's angle may be off",
			source: "common practice, no source: a saw set with a drafting square",
		},
		opening: {
			value: 0.25,
			unit: "mm",
			help: "Most that one corner may open",
			source: "common practice, no source: what glue and a filler still hide",
		},
		closing: {
			value: 0.8,
			unit: "mm",
			help: "Most that a frame may lack at its last corner",
			source: "common practice, no source",
		},
	},
	fires: `
board beam {
  species "white oak"
  variant twelve-quarter { rough 3; planed 2 3/4; widths 4 to 14; lengths 48 to 96 }
}
piece frame {
  box case {
    outside 30 x 20 x 10
    panels top, bottom, left, right of beam.twelve-quarter
    corners mitred
  }
}`,
	silent: `
piece frame {
  box case {
    outside 30 x 20 x 10
    panels top, bottom, left, right of ply.three-quarter
    corners mitred
  }
}`,
	find: (piece, { figures }) => {
		const radians = (figures["saw-angle"] * Math.PI) / 180;
		return frames(piece).flatMap(({ joints, width }) => {
			const [joint] = joints;
			if (!joint) return [];
			const opening = width * Math.tan(2 * radians);
			const closing = width * Math.tan(2 * joints.length * radians);
			const opens = opening > figures.opening;
			if (!opens && !(joints.length > 2 && closing > figures.closing))
				return [];
			const { display } = piece;
			const face = `The mitre of ${nameOf(joint.member)} and ${nameOf(joint.host)} is ${show(display, roundly(width))} wide`;
			const off = `the saw ${figures["saw-angle"]} deg off`;
			const frame =
				joints.length > 2
					? `, and ${joints.length} such corners leave ${showFine(display, closing)} at the last`
					: "";
			return [
				{
					severity: opens ? ("warning" as const) : ("hint" as const),
					origin: joint.origin,
					message: `${face}: with ${off} it opens by ${showFine(display, opening)}${frame}; ${opens ? `more than ${showFine(display, figures.opening)} shows, so shoot it to fit or cut it narrower` : "cut a test frame, or shoot the last mitre to fit"}`,
				},
			];
		});
	},
});

/** Mitres of one line belong to one frame; the widest of them counts. */
function frames(
	piece: Piece,
): readonly { readonly joints: readonly Joint[]; readonly width: number }[] {
	const groups = new Map<string, { joints: Joint[]; width: number }>();
	for (const joint of piece.joints) {
		if (joint.kind !== "mitre") continue;
		const width = mitreWidth(joint);
		if (width === undefined) continue;
		const key = `${joint.origin.uri} ${joint.origin.span.start} ${joint.member.owner}`;
		const group = groups.get(key);
		if (!group) groups.set(key, { joints: [joint], width });
		else if (width > group.width) {
			group.joints.unshift(joint);
			group.width = width;
		} else group.joints.push(joint);
	}
	return [...groups.values()];
}

/** From heel to toe, mm: the diagonal of the square that both blanks share, in the plane of their slanted ends. */
function mitreWidth(joint: Joint): number | undefined {
	const shared = commonBox(joint.host.solid.box, joint.member.solid.box);
	if (isEmpty(shared)) return undefined;
	const outline = [
		...joint.member.solid.outlines,
		...joint.host.solid.outlines,
	][0];
	if (!outline) return undefined;
	const [u, v] = planeAxes[outline.plane];
	const size = sizeOf(shared);
	return Math.hypot(size[u], size[v]);
}

/** To 0.1 mm: a diagonal is no size for the tape. */
function roundly(mm: number): number {
	return Math.round(mm * 10) / 10;
}
