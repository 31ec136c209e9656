// Two parts that claim the same space where no joint gives it to them.

import { contains } from "../../../geometry/bounds.ts";
import { contactTolerance, overlapOf } from "../../../geometry/overlap.ts";
import { type Box, commonBox, sizeOf } from "../../../geometry/solid.ts";
import { numberOf } from "../../../model/size.ts";
import type { Joint, Part, Piece } from "../../../model/types.ts";
import { defineCheck, type Found } from "../../check.ts";
import { overlappingBlanks } from "../../neighbours.ts";
import { nameOf, showSizes } from "../../words.ts";

export const interfere = defineCheck({
	id: "interfere",
	group: "fit",
	severity: "error",
	summary: "Two parts share space where no joint says so",
	explanation: `
Wood that a joint takes out (dado, groove, rabbet, mortise, mitre) is taken out of the solids first; what two solids still share
cannot be built. Parts are compared by their exact solids, after a sweep over their boxes has dropped the pairs that are far
apart. A joint that is only too tight in its housing is told by \`fit-gap\`, not here.`,
	source:
		"geometry; the depth that counts as contact is common practice, no source",
	figures: {
		depth: {
			value: 0.1,
			unit: "mm",
			help: "An overlap no deeper than this is contact",
			source: "common practice, no source: below what a saw holds",
		},
	},
	fires: `
piece rack {
  box case {
    outside 30 x 20 x 10
    panels top, bottom, left, right of ply.three-quarter
    divider middle of ply.three-quarter centred
  }
  part tray {
    of ply.half
    size 20 x 8
    left at 4 right from case.left
    bottom at 6 up from case.bottom
    back at case.back
  }
}`,
	silent: `
piece rack {
  box case {
    outside 30 x 20 x 10
    panels top, bottom, left, right of ply.three-quarter
    divider middle of ply.three-quarter centred
  }
  part tray {
    of ply.half
    size 8 x 8
    left at 4 right from case.left
    bottom at 6 up from case.bottom
    back at case.back
  }
}`,
	find: (piece, { figures }) => {
		const tolerance = Math.max(figures.depth, contactTolerance);
		const found: Found[] = [];
		let jointOf: ReadonlyMap<string, Joint> | undefined;
		for (const [a, b] of overlappingBlanks(piece, tolerance)) {
			if (a.role === "aid" || b.role === "aid") continue;
			if (isHoused(a, b)) continue;
			const overlap = overlapOf(a.solid, b.solid, tolerance);
			if (!overlap) continue;
			jointOf ??= jointsByPair(piece);
			const joint = jointOf.get(pairKey(a, b));
			if (joint && overlap.depth <= tightness(joint) + tolerance) continue;
			found.push(tell(piece, a, b, overlap.box, joint));
		}
		return found;
	},
});

function tell(
	piece: Piece,
	a: Part,
	b: Part,
	box: Box,
	joint: Joint | undefined,
): Found {
	const [first, second] =
		a.declaration.origin.span.start <= b.declaration.origin.span.start
			? [a, b]
			: [b, a];
	const shared = showSizes(piece.display, ...sizeOf(box).map(toGrid));
	const mend = joint
		? "their joint takes out less than that: deepen its housing, or move one of them"
		: "no joint says so: move one of them, or house it in the other";
	return {
		origin: second.declaration.origin,
		message: `${nameOf(first)} and ${nameOf(second)} share ${shared} (across, up, deep): ${mend}`,
		related: [
			{
				origin: first.declaration.origin,
				message: `${nameOf(first)} is declared here`,
			},
		],
	};
}

/** All that both blanks share has been taken out of one of them: the usual dado or rabbet. */
function isHoused(a: Part, b: Part): boolean {
	const shared = commonBox(a.solid.box, b.solid.box);
	return (
		a.solid.cuts.some((cut) => contains(cut, shared)) ||
		b.solid.cuts.some((cut) => contains(cut, shared))
	);
}

/** How far the member of a joint is too big for its opening, mm: told by another check. */
function tightness(joint: Joint): number {
	let most = 0;
	for (const fit of joint.fits) most = Math.max(most, -numberOf(fit.gap));
	return most;
}

function jointsByPair(piece: Piece): ReadonlyMap<string, Joint> {
	return new Map(
		piece.joints.map((joint) => [pairKey(joint.host, joint.member), joint]),
	);
}

function pairKey(a: Part, b: Part): string {
	return a.id < b.id ? `${a.id}~${b.id}` : `${b.id}~${a.id}`;
}

/** To a thousandth of a millimetre: geometry is exact to floating dust. */
function toGrid(mm: number): number {
	return Math.round(mm * 1000) / 1000;
}
