// Two fasteners that meet in the wood.

import { clearanceBetween, type Envelope } from "../../../geometry/cover.ts";
import { nearPairs } from "../../../geometry/overlap.ts";
import type { Box } from "../../../geometry/solid.ts";
import type { FastenerRun, Piece } from "../../../model/types.ts";
import { defineCheck, type Found } from "../../check.ts";
import { fastenerLines } from "../../driven.ts";
import { envelopeAt } from "../../envelopes.ts";
import { nameOf, show } from "../../words.ts";

export const fastenerClash = defineCheck({
	id: "fastener-clash",
	group: "fasteners",
	severity: "error",
	summary: "Two fasteners, or one and a biscuit or dowel, meet in the wood",
	explanation: `
Each joint looks right by itself; at a corner, or where a strip covers a joint, the fasteners of one run into those of the
other. The space that each takes up is held against all others, in three dimensions:

    clearance = shortest way from the one to the other

A screw is a rod of its diameter, a dowel likewise, a biscuit a flat box. One that is driven at an angle is followed straight.`,
	source: "geometry; the least clearance is common practice, no source",
	figures: {
		clearance: {
			value: 1,
			unit: "mm",
			help: "Least wood between two fasteners",
			source: "common practice, no source",
		},
	},
	fires: `
piece bin {
  box case {
    outside 20 x 12 x 12
    panels left, right, bottom of ply.three-quarter
    caps left, right
    back of ply.three-quarter inset 0 clearance 0
  }
  join case.left to case.bottom { screw #8 x 2 { at 3/8 forward from case.back; pilot } }
  join case.left to case.back { screw #8 x 2 { at 3/8 up from case.bottom; pilot } }
}`,
	silent: `
piece bin {
  box case {
    outside 20 x 12 x 12
    panels left, right, bottom of ply.three-quarter
    caps left, right
    back of ply.three-quarter inset 0 clearance 0
  }
  join case.left to case.bottom { screw #8 x 2 { at 3 forward from case.back; pilot } }
  join case.left to case.back { screw #8 x 2 { at 4 up from case.bottom; pilot } }
}`,
	find: (piece, { figures }) => {
		const all: Row[] = fastenerLines(piece).flatMap((line, index) =>
			line.map((run): Row => ({ run, index, envelopes: undefined })),
		);
		const worst = new Map<string, Meeting>();
		for (const [i, j] of nearPairs(all.map(boxAround), figures.clearance)) {
			const one = all[i] as Row;
			const other = all[j] as Row;
			// A mount and its joint hold one and the same run.
			if (one.run === other.run || !sharePart(one.run, other.run)) continue;
			const clearance = clearanceOf(one, other, figures.clearance);
			if (clearance >= figures.clearance - grain) continue;
			const key = `${one.index} ${other.index}`;
			const known = worst.get(key);
			if (!known || clearance < known.clearance - grain)
				worst.set(key, { one: one.run, other: other.run, clearance });
			if (worst.size >= mostMeetings) break;
		}
		return [...worst.values()].map((meeting) =>
			tell(piece, meeting, figures.clearance),
		);
	},
});

/** Floating dust, mm. */
const grain = 1e-6;

/** More lines that meet than anybody would read: a line pasted again and again. */
const mostMeetings = 400;

/** The fasteners of one run; the spacing in a run is another matter. */
interface Row {
	readonly run: FastenerRun;
	/** Of its line. */
	readonly index: number;
	/** Worked out when another run is near. */
	envelopes: readonly Envelope[] | undefined;
}

interface Meeting {
	readonly one: FastenerRun;
	readonly other: FastenerRun;
	readonly clearance: number;
}

/** Two that run in parts of their own never meet, however near their heads are. */
function sharePart(one: FastenerRun, other: FastenerRun): boolean {
	return (
		one.through === other.through ||
		one.through === other.into ||
		one.into === other.through ||
		one.into === other.into
	);
}

/** The core of a rod reaches past its ends by its radius: taken back here, so that they are where they are. */
function blunt(envelope: Envelope): Envelope {
	const { half, radius } = envelope;
	if (radius === 0) return envelope;
	return {
		...envelope,
		half: [Math.max(0, half[0] - radius), half[1], half[2]],
	};
}

/** A box that holds all of a run, and some air. */
function boxAround({ run }: Row): Box {
	const { size, points, direction } = run;
	const length = size.length.value.toNumber() + (run.countersink ?? 0);
	const aside =
		size.kind === "biscuit" ? widestBiscuit : size.diameter / 2 + grain;
	const whole = size.kind === "dowel" || size.kind === "biscuit";
	const min: [number, number, number] = [Infinity, Infinity, Infinity];
	const max: [number, number, number] = [-Infinity, -Infinity, -Infinity];
	for (const axis of [0, 1, 2] as const) {
		const way = direction[axis];
		const ahead = aside + Math.max(0, whole ? Math.abs(way) : way) * length;
		const behind = aside + Math.max(0, whole ? Math.abs(way) : -way) * length;
		for (const point of points) {
			min[axis] = Math.min(min[axis], point[axis] - behind);
			max[axis] = Math.max(max[axis], point[axis] + ahead);
		}
	}
	return { min, max };
}

/** No biscuit reaches farther from its middle along the joint, mm. */
const widestBiscuit = 30;

function envelopesOf(row: Row): readonly Envelope[] {
	row.envelopes ??= row.run.points.map((point) =>
		blunt(envelopeAt(row.run, point)),
	);
	return row.envelopes;
}

/** The least clearance between the fasteners of two runs; `enough` or more where they are farther apart. */
function clearanceOf(one: Row, other: Row, enough: number): number {
	let least = Infinity;
	for (const a of envelopesOf(one)) {
		for (const b of envelopesOf(other)) {
			if (farApart(a, b, enough)) continue;
			least = Math.min(least, clearanceBetween(a, b));
		}
	}
	return least;
}

/** The balls around them are farther apart: a quick no. */
function farApart(a: Envelope, b: Envelope, enough: number): boolean {
	const reach =
		Math.hypot(...a.half) +
		a.radius +
		Math.hypot(...b.half) +
		b.radius +
		enough;
	return (
		Math.hypot(
			a.centre[0] - b.centre[0],
			a.centre[1] - b.centre[1],
			a.centre[2] - b.centre[2],
		) > reach
	);
}

function tell(
	piece: Piece,
	{ one, other, clearance }: Meeting,
	wanted: number,
): Found {
	const { display } = piece;
	const later = one.origin.span.start > other.origin.span.start ? one : other;
	const earlier = later === one ? other : one;
	const what = `The ${later.size.kind} ${later.size.label} in ${nameOf(later.into)}`;
	const met = `the ${earlier.size.kind} ${earlier.size.label} in ${nameOf(earlier.into)}`;
	const state =
		clearance > 0
			? `comes within ${show(display, toTenth(clearance))} of ${met}`
			: `meets ${met}`;
	return {
		severity: clearance > 0 ? "warning" : "error",
		origin: later.origin,
		message: `${what} ${state}: move one of them by ${show(display, Math.ceil((wanted - clearance) * 10 - grain) / 10)} or more`,
		related: [{ origin: earlier.origin, message: "The other one" }],
	};
}

/** To a tenth of a millimetre. */
function toTenth(mm: number): number {
	return Math.round(mm * 10) / 10;
}
