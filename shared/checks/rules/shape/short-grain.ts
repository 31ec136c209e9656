// A leg shaped so far from the run of its grain that no fibre goes through where it bends.

import { stretchesAlong } from "../../../geometry/along.ts";
import { axisOf } from "../../../geometry/place.ts";
import { type Axis, planeAxes, type Vec3 } from "../../../geometry/solid.ts";
import { numberOf } from "../../../model/size.ts";
import type { LegInfo, Part, Piece } from "../../../model/types.ts";
import { defineCheck, type Found } from "../../check.ts";
import { listed, nameOf, show } from "../../words.ts";

export const shortGrain = defineCheck({
	id: "short-grain",
	group: "shape",
	severity: "warning",
	summary: "A shaped leg runs across its grain where it bends",
	explanation: `
Grain runs straight along the blank. Where a leg is sawn to a curve, the middle of it leaves that line, and past a slope the
fibres that enter at one face end at the other: it breaks there along the grain.

    slope = how far the middle between two opposite faces shifts / the height over which it does

The slope is taken over a height as long as the leg is thick there, in each board of the leg, and held against 1 in 8. A taper
or a curve on one face alone shifts the middle by half of what it cuts; a shift of less than a quarter of the thickness is left out. The last stretch at either end, as long as the leg is
thick, is left out: nothing bends there, and ends are cut at angles.`,
	source:
		"common practice, no source: 1 in 8; the Wood Handbook (Table 5-12, from memory) has about half of the bending strength left at 1 in 5",
	figures: {
		run: {
			value: 8,
			unit: "ratio",
			help: "The grain may run out by 1 in so many",
			source: "common practice, no source",
		},
		share: {
			value: 0.25,
			unit: "ratio",
			help: "A shift of the middle by less than this share of the thickness cuts few fibres",
			source: "common practice, no source",
		},
	},
	fires: `
piece stand {
  box case {
    outside 30 x 12 x 14
    top at 36 from floor
    panels top, bottom, left, right of ply.three-quarter
  }
  leg front-left, front-right handed {
    against under case.bottom
    set-back 1 from case.front
    set-in 1 from case.left
    layer only of oak.eight-quarter 4 wide from floor up to case.bottom
    shape front { cut-in 2 at 24 from floor; cut-in 2 at 14 from floor; cut-in 0 at 4 from floor; straight }
    shape back { cut-in 0 at 24 from floor; cut-in 0 at 14 from floor; cut-in 2 at 4 from floor; straight }
  }
}`,
	silent: `
piece stand {
  box case {
    outside 30 x 12 x 14
    top at 36 from floor
    panels top, bottom, left, right of ply.three-quarter
  }
  leg front-left, front-right handed {
    against under case.bottom
    set-back 1 from case.front
    set-in 1 from case.left
    layer only of oak.eight-quarter 4 wide from floor up to case.bottom
    shape front { cut-in 2 at 24 from floor; cut-in 0 at 4 from floor; straight }
    shape back { cut-in 0 at 24 from floor; cut-in 2 at 4 from floor; straight }
  }
}`,
	find: (piece, { figures }) => {
		// A left and a right of one line are told once.
		const told = new Map<
			string,
			{ leg: LegInfo; names: string[]; steep: Steep }
		>();
		for (const leg of piece.legs) {
			if (leg.shapes.length === 0) continue;
			for (const layer of leg.layers) {
				const steep = steepest(layer, figures.run, figures.share);
				if (!steep) continue;
				const { uri, span } = originOf(leg);
				const key = `${uri} ${span.start} ${layer.name}`;
				const known = told.get(key);
				if (known) known.names.push(nameOf(layer));
				else told.set(key, { leg, names: [nameOf(layer)], steep });
			}
		}
		return [...told.values()].map(
			({ leg, names, steep }): Found => ({
				origin: originOf(leg),
				message: words(piece, names, steep, figures.run),
			}),
		);
	},
});

interface Steep {
	/** 1 in so many. */
	readonly run: number;
	/** Above the foot, mm. */
	readonly height: number;
	/** How far the middle shifts, and over which height, where it is steeper than allowed; mm. */
	readonly shift: number;
	readonly over: number;
}

function originOf(leg: LegInfo): Found["origin"] {
	return leg.shapes[0]?.origin ?? leg.declaration.origin;
}

function words(
	{ display }: Piece,
	names: readonly string[],
	{ run, height, shift, over }: Steep,
	allowed: number,
): string {
	const [runs, breaks] =
		names.length > 1 ? ["run", "break"] : ["runs", "breaks"];
	const who = `${listed(names)} ${runs}`;
	const tenth = (mm: number): number => Math.round(mm * 10) / 10;
	return `${who} across the grain by 1 in ${(Math.floor(run * 10) / 10).toFixed(1)} at ${show(display, tenth(height))} up from the foot, steeper than 1 in ${allowed}, and ${breaks} there: draw the shift of ${show(display, tenth(shift))} out over ${show(display, tenth(shift * allowed))} instead of ${show(display, tenth(over))}, or saw the leg where the grain follows it`;
}

/** Heights looked at. */
const samples = 64;

/** Where the middle of a board of a leg runs steepest from its grain; undefined: nowhere steeper than allowed. */
function steepest(
	part: Part,
	allowed: number,
	share: number,
): Steep | undefined {
	const grain = axisOf(part.place.axes[0]);
	let worst: Steep | undefined;
	for (const across of [0, 1, 2] as const) {
		if (across === grain || !isShaped(part, grain, across)) continue;
		const steep = steepestAcross(part, grain, across, allowed, share);
		if (steep && (!worst || steep.run < worst.run)) worst = steep;
	}
	return worst;
}

function isShaped(part: Part, grain: Axis, across: Axis): boolean {
	return part.solid.outlines.some(({ plane }) => {
		const axes = planeAxes[plane];
		return axes.includes(grain) && axes.includes(across);
	});
}

function steepestAcross(
	part: Part,
	grain: Axis,
	across: Axis,
	allowed: number,
	share: number,
): Steep | undefined {
	const foot = numberOf(part.min[grain]);
	const length = numberOf(part.max[grain]) - foot;
	const thick = numberOf(part.max[across]) - numberOf(part.min[across]);
	const step = length / samples;
	const sections = Array.from({ length: samples + 1 }, (_, i) =>
		sectionAt(part, grain, across, foot + i * step),
	);
	const slopeAt = (i: number): number | undefined => {
		const here = sections[i];
		if (!here) return undefined;
		const half = Math.max(1, Math.round(here.thick / 2 / step));
		const end = Math.max(half, Math.round(thick / step));
		if (i < end || i > samples - end) return undefined;
		const [below, above] = [sections[i - half], sections[i + half]];
		return below && above
			? (above.middle - below.middle) / (2 * half * step)
			: undefined;
	};
	const slopes = sections.map((_, i) => slopeAt(i));
	let best: number | undefined;
	slopes.forEach((slope, i) => {
		if (Math.abs(slope ?? 0) > Math.abs(slopes[best ?? -1] ?? 0)) best = i;
	});
	const slope = best === undefined ? 0 : Math.abs(slopes[best] as number);
	// A hair over the limit is drawing, not breaking.
	if (best === undefined || slope * allowed < 1 + 1e-6) return undefined;
	const steep = (i: number): boolean =>
		Math.abs(slopes[i] ?? 0) * allowed >= 1 + 1e-6;
	let low = best;
	let high = best;
	while (steep(low - 1)) low--;
	while (steep(high + 1)) high++;
	const over = Math.max(1, high - low) * step;
	const shift = Math.abs(
		(sections[high]?.middle ?? 0) - (sections[low]?.middle ?? 0),
	);
	if (shift < share * (sections[best]?.thick ?? 0)) return undefined;
	return { run: 1 / slope, height: best * step, shift, over };
}

/** The wood at a height, through the middle of the board: mm. */
function sectionAt(
	part: Part,
	grain: Axis,
	across: Axis,
	height: number,
): { readonly middle: number; readonly thick: number } | undefined {
	const { box } = part.solid;
	const at = [0, 1, 2].map((axis) =>
		axis === grain
			? height
			: axis === across
				? box.min[axis as Axis] - 1
				: (box.min[axis as Axis] + box.max[axis as Axis]) / 2,
	) as [number, number, number];
	const way = [0, 0, 0] as [number, number, number];
	way[across] = 1;
	// A mortise or dado shifts no fibre.
	const shaped = { ...part.solid, cuts: [] };
	const stretches = stretchesAlong(shaped, at as Vec3, way as Vec3);
	const first = stretches[0];
	const last = stretches.at(-1);
	if (!first || !last) return undefined;
	return {
		middle: (first.from + last.to) / 2,
		thick: last.to - first.from,
	};
}
