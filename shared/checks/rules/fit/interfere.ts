// Two parts that claim the same space where no joint gives it to them.

import { contains } from "../../../geometry/bounds.ts";
import {
	contactTolerance,
	type Overlap,
	overlapOf,
} from "../../../geometry/overlap.ts";
import { commonBox, sizeOf } from "../../../geometry/solid.ts";
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
	find: (piece, { design, figures }) => {
		const tolerance = Math.max(figures.depth, contactTolerance);
		const clashes: Clash[] = [];
		let jointOf: ReadonlyMap<string, Joint> | undefined;
		for (const [a, b] of overlappingBlanks(piece, tolerance)) {
			if (a.role === "aid" || b.role === "aid") continue;
			if (isHoused(a, b)) continue;
			const overlap = overlapOf(a.solid, b.solid, tolerance);
			if (!overlap) continue;
			jointOf ??= jointsByPair(piece);
			const joint = jointOf.get(pairKey(a, b));
			if (joint && overlap.depth <= tightness(joint) + tolerance) continue;
			const early = isBefore(a, b, design.uri);
			clashes.push({
				first: early ? a : b,
				second: early ? b : a,
				overlap,
				joint,
			});
		}
		return byThings(clashes).map((group) => tell(piece, group));
	},
});

interface Clash {
	/** In the order of the text. */
	readonly first: Part;
	readonly second: Part;
	readonly overlap: Overlap;
	readonly joint: Joint | undefined;
}

const housing: ReadonlySet<Joint["kind"]> = new Set([
	"dado",
	"groove",
	"rabbet",
	"tenon",
]);

/** In the order of the text; what comes from another file stands first, so that the clash is told in the file at hand. */
function isBefore(a: Part, b: Part, uri: string): boolean {
	const one = a.declaration.origin;
	const other = b.declaration.origin;
	const here = one.uri === uri;
	return here === (other.uri === uri)
		? one.span.start <= other.span.start
		: !here;
}

/** Two boxes, or a leg and a box, that run into each other do so with many of their parts: told once, the most first. */
function byThings(clashes: readonly Clash[]): readonly (readonly Clash[])[] {
	const groups = new Map<string, Clash[]>();
	for (const clash of clashes) {
		const { first, second } = clash;
		const key =
			first.owner === second.owner
				? `${first.id} ${second.id}`
				: `${first.owner} ${second.owner}`;
		const group = groups.get(key);
		if (group) group.push(clash);
		else groups.set(key, [clash]);
	}
	return [...groups.values()].map((group) =>
		group.toSorted((a, b) => b.overlap.volume - a.overlap.volume),
	);
}

function tell(piece: Piece, group: readonly Clash[]): Found {
	const [{ first, second, overlap, joint }] = group as readonly [Clash];
	const shared = showSizes(piece.display, ...sizeOf(overlap.box).map(toGrid));
	const more =
		group.length > 1
			? ` (and ${group.length - 1} more of their parts clash)`
			: "";
	const mend = !joint
		? "no joint says so: move one of them, or house it in the other"
		: housing.has(joint.kind)
			? "their joint takes out less than that: deepen its housing, or move one of them"
			: "their joint takes no wood out: move one of them, or house it in the other";
	return {
		origin: second.declaration.origin,
		message: `${nameOf(first)} and ${nameOf(second)} share ${shared} (across, up, deep)${more}: ${mend}`,
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
