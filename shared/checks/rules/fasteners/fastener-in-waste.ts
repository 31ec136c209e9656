// A biscuit, dowel or screw in wood that a later cut takes away.

import { insidePolygon, stretchesAlong } from "../../../geometry/along.ts";
import {
	clearanceBetween,
	type Envelope,
	envelopeOf,
} from "../../../geometry/cover.ts";
import {
	type Box,
	normalOf,
	type Outline,
	type Point2,
	planeAxes,
	type Solid,
	type Vec3,
} from "../../../geometry/solid.ts";
import type { FastenerRun, Part, Piece } from "../../../model/types.ts";
import { defineCheck, type Found } from "../../check.ts";
import { fastenerLines, waysIn } from "../../driven.ts";
import { envelopeAt } from "../../envelopes.ts";
import { listed, nameOf, show } from "../../words.ts";

export const fastenerInWaste = defineCheck({
	id: "fastener-in-waste",
	group: "fasteners",
	severity: "warning",
	summary: "A fastener lies in, or close to, wood that a later cut removes",
	explanation: `
Glue-ups are made square and shaped after. A biscuit near a face that is then cut in comes to light at the bandsaw, and a screw
meets the blade. The space that each fastener takes is held against the final faces of its parts (shaped, tapered, angled,
and, for dowels and biscuits, the housings cut for other parts):

    cover = shortest way from the fastener to the final face

A fastener that is meant to pass a shaped face (a screw driven in through it) is left out there.`,
	source:
		"a biscuit's slot no nearer than 1/4 in to a show face, else it telegraphs (a woodworkers' gazette on plate joinery); the rest is common practice, no source",
	figures: {
		"biscuit-cover": {
			value: 6,
			unit: "mm",
			help: "Least wood over a biscuit",
			source: "a woodworkers' gazette on plate joinery: 1/4 in",
		},
		cover: {
			value: 3,
			unit: "mm",
			help: "Least wood over another fastener at a shaped face",
			source: "common practice, no source",
		},
		"housing-cover": {
			value: 1.5,
			unit: "mm",
			help: "Least wood between a fastener and the housing of another part",
			source: "common practice, no source",
		},
	},
	fires: `
piece stand {
  box case {
    outside 30 x 12 x 14
    top at 24 from floor
    panels top, bottom, left, right of ply.three-quarter
  }
  leg front-left, front-right handed {
    against outside case.left
    set-back 1 from case.front
    layer inner of oak.eight-quarter 2 3/4 wide from floor up to case.bottom
    layer outer of oak.four-quarter 2 3/4 wide from floor up to 5 above case.bottom
    shape back { cut-in 0 at 9 from floor; cut-in 1 1/2 at floor; curve }
    join inner to outer { glue; biscuit #10 1 1/2 up from floor }
  }
}`,
	silent: `
piece stand {
  box case {
    outside 30 x 12 x 14
    top at 24 from floor
    panels top, bottom, left, right of ply.three-quarter
  }
  leg front-left, front-right handed {
    against outside case.left
    set-back 1 from case.front
    layer inner of oak.eight-quarter 2 3/4 wide from floor up to case.bottom
    layer outer of oak.four-quarter 2 3/4 wide from floor up to 5 above case.bottom
    shape back { cut-in 0 at 9 from floor; cut-in 1 1/2 at floor; curve }
    join inner to outer { glue; biscuit #10 9 up from floor }
  }
}`,
	find: (piece, { figures }) =>
		fastenerLines(piece).flatMap((line) => {
			const names = new Set<string>();
			let worst: Cover | undefined;
			const offer = (found: Cover): void => {
				if (found.lacks <= 0) return;
				names.add(nameOf(found.part));
				if (!worst || found.lacks > worst.lacks + 1e-6) worst = found;
			};
			for (const run of line)
				for (const cover of coversOf(run, figures)) offer(cover);
			return worst ? [tell(piece, worst, listed([...names]))] : [];
		}),
});

/** Set before the case is closed; what is driven after goes into the part that fills the housing. */
const placed: ReadonlySet<FastenerRun["size"]["kind"]> = new Set([
	"dowel",
	"biscuit",
]);

/** The ball around the envelope does not come near the box: a quick no. */
function farFrom(envelope: Envelope, box: Box, cover: number): boolean {
	const { centre, half, radius } = envelope;
	const reach = Math.hypot(...half) + radius + cover;
	return ([0, 1, 2] as const).some(
		(axis) =>
			centre[axis] - reach > box.max[axis] ||
			centre[axis] + reach < box.min[axis],
	);
}

/** What each part leaves around each fastener of a run, where something is cut from the part. */
function* coversOf(
	run: FastenerRun,
	figures: {
		readonly "biscuit-cover": number;
		readonly cover: number;
		readonly "housing-cover": number;
	},
): IterableIterator<Cover> {
	const wanted =
		run.size.kind === "biscuit" ? figures["biscuit-cover"] : figures.cover;
	for (const part of [run.through, run.into]) {
		const { outlines } = part.solid;
		const housings = placed.has(run.size.kind)
			? part.housings.filter(
					({ takes }) => takes !== run.through.path && takes !== run.into.path,
				)
			: [];
		if (outlines.length === 0 && housings.length === 0) continue;
		for (const point of run.points) {
			const envelope = envelopeAt(run, point);
			for (const outline of outlines) {
				if (farFrom(envelope, part.solid.box, 0)) continue;
				const cover = coverOfShape(part, outline, envelope, run, point, wanted);
				yield { run, part, cover, lacks: wanted - cover, housing: undefined };
			}
			for (const { kind, takes, box } of housings) {
				if (farFrom(envelope, box, figures["housing-cover"])) continue;
				const cover = clearanceBetween(envelope, envelopeOf(box));
				yield {
					run,
					part,
					cover,
					lacks: figures["housing-cover"] - cover,
					housing: `the ${kind} for \`${takes}\``,
				};
			}
		}
	}
}

function tell(
	piece: Piece,
	{ run, part, cover, lacks, housing }: Cover,
	names: string,
): Found {
	const { display } = piece;
	const name = `The ${run.size.kind} ${run.size.label}`;
	const state =
		cover > 0
			? `has only ${show(display, toTenth(cover))} of wood before ${housing ?? "a shaped face"} of ${names}`
			: `lies in wood that ${housing ? `${housing} takes` : "the shaping takes"} from ${names}`;
	return {
		severity: cover > 0 ? "warning" : "error",
		origin: run.origin,
		message: `${name} ${state}: move it ${show(display, toTenth(lacks))} or more away from there`,
		related: [
			{
				origin: part.declaration.origin,
				message: `${nameOf(part)} is declared here`,
			},
		],
	};
}

interface Cover {
	readonly run: FastenerRun;
	readonly part: Part;
	readonly cover: number;
	readonly lacks: number;
	readonly housing: string | undefined;
}

/**
 * Cover to those edges of an outline that are cut, not the sides of the blank; negative: in the waste; `wanted` or more
 * where there is enough.
 */
function coverOfShape(
	part: Part,
	outline: Outline,
	envelope: Envelope,
	run: FastenerRun,
	point: Vec3,
	wanted: number,
): number {
	const [u, v] = planeAxes[outline.plane];
	const { solid } = part;
	const { points } = outline;
	const passed = passages(part, run, point);
	// No part of the envelope is farther from its centre than this.
	const size = Math.hypot(...envelope.half) + envelope.radius;
	const middle: Point2 = [envelope.centre[u], envelope.centre[v]];
	let nearest = Infinity;
	let shaped = false;
	for (let i = 0; i < points.length; i++) {
		const a = points[i] as Point2;
		const b = points[(i + 1) % points.length] as Point2;
		if (isSideOfBlank(solid, outline, a, b)) continue;
		shaped = true;
		// Too far away to matter: the faces of a curve are many.
		if (distanceTo(a, b, middle) - size >= Math.min(nearest, wanted)) continue;
		if (passed.some((at) => distanceTo(a, b, [at[u], at[v]]) < 0.5)) continue;
		nearest = Math.min(
			nearest,
			clearanceBetween(envelope, wallOf(solid, outline, a, b)),
		);
	}
	// Its axis never comes into the wood that is left: all of it is in the waste.
	if (
		shaped &&
		nearest > 0 &&
		passed.length === 0 &&
		!insidePolygon(points, middle)
	)
		return -Math.min(nearest, wanted);
	return nearest;
}

/** Where the axis comes into a part, and where it leaves the first part for the second: there it passes faces on purpose. */
function passages(part: Part, run: FastenerRun, point: Vec3): readonly Vec3[] {
	for (const { start, direction, passes } of waysIn(run, point)) {
		const stretches = stretchesAlong(part.solid, start, direction);
		const [first] = stretches;
		const last = stretches.at(-1);
		if (!first || !last) continue;
		const at = (distance: number): Vec3 => [
			start[0] + direction[0] * distance,
			start[1] + direction[1] * distance,
			start[2] + direction[2] * distance,
		];
		return part === passes ? [at(first.from), at(last.to)] : [at(first.from)];
	}
	return [];
}

function isSideOfBlank(
	solid: Solid,
	outline: Outline,
	a: Point2,
	b: Point2,
): boolean {
	return planeAxes[outline.plane].some((axis, i) => {
		const one = a[i as 0 | 1];
		const other = b[i as 0 | 1];
		return [solid.box.min[axis], solid.box.max[axis]].some(
			(side) => Math.abs(one - side) < 1e-6 && Math.abs(other - side) < 1e-6,
		);
	});
}

/** One cut edge of an outline, drawn through the part: a flat envelope. */
function wallOf(
	solid: Solid,
	outline: Outline,
	a: Point2,
	b: Point2,
): Envelope {
	const [u, v] = planeAxes[outline.plane];
	const w = normalOf(outline.plane);
	const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
	const du = length > 0 ? (b[0] - a[0]) / length : 1;
	const dv = length > 0 ? (b[1] - a[1]) / length : 0;
	const vector = (along: number, across: number, through: number): Vec3 => {
		const result: [number, number, number] = [0, 0, 0];
		result[u] = along;
		result[v] = across;
		result[w] = through;
		return result;
	};
	const low = solid.box.min[w];
	const high = solid.box.max[w];
	return {
		centre: vector((a[0] + b[0]) / 2, (a[1] + b[1]) / 2, (low + high) / 2),
		axes: [vector(du, dv, 0), vector(0 - dv, du, 0), vector(0, 0, 1)],
		half: [length / 2, 0, (high - low) / 2],
		radius: 0,
	};
}

function distanceTo(a: Point2, b: Point2, point: Point2): number {
	const du = b[0] - a[0];
	const dv = b[1] - a[1];
	const square = du * du + dv * dv;
	const t =
		square > 0
			? Math.min(
					1,
					Math.max(
						0,
						((point[0] - a[0]) * du + (point[1] - a[1]) * dv) / square,
					),
				)
			: 0;
	return Math.hypot(point[0] - a[0] - du * t, point[1] - a[1] - dv * t);
}

/** To a tenth of a millimetre. */
function toTenth(mm: number): number {
	return Math.round(mm * 10) / 10;
}
