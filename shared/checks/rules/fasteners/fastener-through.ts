// A fastener that comes out of the wood on the far side.

import type { FastenerRun, Part, Piece } from "../../../model/types.ts";
import { defineCheck, type Found } from "../../check.ts";
import {
	drivenIn,
	fastenerLines,
	type WayIn,
	type WoodAlong,
	woodAlong,
	woodBeyond,
} from "../../driven.ts";
import { axisDriven, envelopeAt } from "../../envelopes.ts";
import { lengthFix, usualAtMost } from "../../fastener-words.ts";
import { bare, listed, nameOf, show } from "../../words.ts";

export const fastenerThrough = defineCheck({
	id: "fastener-through",
	group: "fasteners",
	severity: "error",
	summary: "A fastener comes out of the far face, or so near that it shows",
	explanation: `
The length of a brad, pin, nail or screw is held against the wood along its own axis, the angle it is driven at included:

    comes out by = countersink + length - wood along the axis

Wood of a third part that follows without a gap counts, veneer does not. Half a dowel or biscuit, and the room at the bottom
of its hole, must stay in each of its two parts in the same way, and a biscuit must be no longer than its joint. The tip must keep a little wood before it, or it shows as a bump. One that is driven at an angle goes \`length x sin(angle)\` sideways, too; which way is not
told, so it is told only where it comes out whichever way it leans.`,
	source:
		"geometry; room below a dowel 1 to 2 mm and the cover before a tip are common practice, no source",
	figures: {
		cover: {
			value: 0.5,
			unit: "mm",
			help: "Least wood left before a tip",
			source: "common practice, no source",
		},
		"dowel-room": {
			value: 1,
			unit: "mm",
			help: "How much deeper than half the dowel its hole is drilled",
			source: "common practice, no source: 1 to 2 mm in all",
		},
	},
	fires: `
piece rack {
  box case {
    outside 30 x 20 x 10
    panels top, bottom, left, right of ply.three-quarter
  }
  part rail {
    of oak.four-quarter
    size 20 x 2
    left at 4 right from case.left
    top at case.top.inside
    back at case.back
  }
  join rail to case.top { glue; screw #8 x 2 every 6 { from below } }
}`,
	silent: `
piece rack {
  box case {
    outside 30 x 20 x 10
    panels top, bottom, left, right of ply.three-quarter
  }
  part rail {
    of oak.four-quarter
    size 20 x 2
    left at 4 right from case.left
    top at case.top.inside
    back at case.back
  }
  join rail to case.top { glue; screw #8 x 1 1/4 every 6 { from below } }
}`,
	find: (piece, { design, figures }) => {
		return fastenerLines(piece).flatMap((line) => {
			const { cover } = figures;
			const names = new Set<string>();
			let worst: Through | undefined;
			for (const run of line) {
				const extra = run.size.kind === "dowel" ? figures["dowel-room"] : 0;
				for (const { way, wood } of drivenIn(run)) {
					const tip = way.tip + extra;
					if (tip <= wood.to - cover + grain) continue;
					// Beside all wood: told as biting too little.
					if (wood.to <= grain) continue;
					const { to, part } = woodBeyond(piece, way, wood.to);
					if (tip <= to - cover + grain) continue;
					const last = part ?? lastOf(way, wood);
					names.add(nameOf(last));
					if (!worst || tip - to > worst.by + grain)
						worst = { run, way, wood, by: tip - to, to, extra };
				}
			}
			return worst
				? [tell(piece, design.uri, worst, cover, listed([...names]))]
				: [...aside(piece, line), ...leaning(piece, line, cover)];
		});
	},
});

/** A biscuit that is longer than its joint comes out of an edge of the narrower part. */
function aside(piece: Piece, line: readonly FastenerRun[]): readonly Found[] {
	let worst: { run: FastenerRun; part: Part; by: number } | undefined;
	for (const run of line) {
		if (run.size.kind !== "biscuit") continue;
		const driven = axisDriven(run);
		for (const point of run.points) {
			const { axes, half } = envelopeAt(run, point);
			for (const part of [run.through, run.into]) {
				const { min, max } = part.solid.box;
				for (const axis of [0, 1, 2] as const) {
					if (axis === driven) continue;
					// It is not where the part is at all: told as that.
					if (point[axis] < min[axis] || point[axis] > max[axis]) continue;
					const size = axes.reduce(
						(sum, way, i) => sum + Math.abs(way[axis]) * (half[i] as number),
						0,
					);
					const by = Math.max(
						min[axis] - (point[axis] - size),
						point[axis] + size - max[axis],
					);
					if (by > (worst?.by ?? 0) + grain) worst = { run, part, by };
				}
			}
		}
	}
	if (!worst) return [];
	const { run, part, by } = worst;
	return [
		{
			origin: run.origin,
			message: `The biscuit ${run.size.label} comes out of an edge of ${nameOf(part)} by ${show(piece.display, toGrid(by))}: move it in by that much, or use a smaller one`,
			related: [
				{
					origin: part.declaration.origin,
					message: `${nameOf(part)} is declared here`,
				},
			],
		},
	];
}

/**
 * One that is driven at an angle goes sideways, too. Which way it leans is not told, so it is told only where it comes out
 * whichever way that is.
 */
function leaning(
	piece: Piece,
	line: readonly FastenerRun[],
	cover: number,
): readonly Found[] {
	let worst: { run: FastenerRun; part: Part; by: number } | undefined;
	for (const run of line) {
		if (!(run.angle > 0) || run.angle >= 90) continue;
		const driven = axisDriven(run);
		const aside = Math.sin((run.angle * Math.PI) / 180);
		const ahead = Math.cos((run.angle * Math.PI) / 180);
		for (const point of run.points) {
			let least: { part: Part; by: number } | undefined;
			for (const axis of [0, 1, 2] as const) {
				if (axis === driven) continue;
				for (const sense of [1, -1]) {
					const direction: [number, number, number] = [
						run.direction[0] * ahead,
						run.direction[1] * ahead,
						run.direction[2] * ahead,
					];
					direction[axis] = sense * aside;
					const sunk = run.countersink ?? 0;
					const way: WayIn = {
						start: point,
						direction,
						holds: run.into,
						passes: run.through,
						tip: sunk + run.size.length.value.toNumber(),
						sunk,
					};
					const wood = woodAlong(way);
					const { to, part } = woodBeyond(piece, way, wood.to);
					const by = way.tip - (to - cover);
					if (!least || by < least.by)
						least = { part: part ?? lastOf(way, wood), by };
				}
			}
			if (least && least.by > (worst?.by ?? 0) + grain)
				worst = { run, ...least };
		}
	}
	if (!worst) return [];
	const { run, part, by } = worst;
	return [
		{
			origin: run.origin,
			message: `The ${run.size.kind} ${run.size.label}, driven ${run.angle} deg from straight, comes out of the side of ${nameOf(part)} whichever way it leans, by ${show(piece.display, toGrid(by))} or more: drive it straighter, or use a shorter one`,
			related: [
				{
					origin: part.declaration.origin,
					message: `${nameOf(part)} is declared here`,
				},
			],
		},
	];
}

/** Floating dust, mm. */
const grain = 1e-6;

interface Through {
	readonly run: FastenerRun;
	readonly way: WayIn;
	readonly wood: WoodAlong;
	/** How far the tip stands out; below zero: how much wood is before it. */
	readonly by: number;
	readonly to: number;
	/** Room at the bottom of its hole, mm. */
	readonly extra: number;
}

function lastOf(way: WayIn, wood: WoodAlong): WayIn["holds"] {
	return wood.to > wood.passed || !way.passes ? way.holds : way.passes;
}

function tell(
	piece: Piece,
	uri: string,
	{ run, way, wood, by, to, extra }: Through,
	cover: number,
	names: string,
): Found {
	const { display } = piece;
	const { kind, label } = run.size;
	const what = `The ${kind} ${label}`;
	const halves = kind === "dowel" || kind === "biscuit";
	const state =
		by > cover / 10
			? `${extra > 0 ? `The hole of the ${kind} ${label}` : what} comes out of ${names} by ${show(display, toGrid(by))}`
			: `${extra > 0 ? `The hole of the ${kind} ${label}` : what} ends at the far face of ${names}, with ${show(display, Math.max(0, toGrid(-by)))} before it`;
	const most = (to - cover - way.sunk - extra) * (halves ? 2 : 1);
	const usual = usualAtMost(kind, display, most);
	const within =
		wood.to > wood.passed || halves
			? (to - wood.passed) / 2
			: Number.POSITIVE_INFINITY;
	// One that would not hold is no mend: it must go half through the part that holds it.
	const holds =
		usual !== undefined &&
		usual.toNumber() / (halves ? 2 : 1) + way.sunk >= wood.passed + within;
	const place = halves
		? `with half of it in ${show(display, toGrid(wood.to))}`
		: wood.to > wood.passed
			? `through ${bare(display, toGrid(wood.passed - way.sunk))} + ${show(display, toGrid(to - wood.passed))} here`
			: `in ${show(display, toGrid(to - way.sunk))} here`;
	const other = kind === "biscuit" ? "a smaller biscuit" : "another fastening";
	const mend =
		usual && holds
			? `at most ${show(display, usual)} fits ${place}`
			: `none of the usual ${kind === "biscuit" ? "sizes" : "lengths"} fits ${place}; use thicker wood or ${other}`;
	return {
		origin: run.origin,
		message: `${state}: ${mend}`,
		related: [
			{
				origin: way.holds.declaration.origin,
				message: `${nameOf(way.holds)} is declared here`,
			},
		],
		fixes: usual && holds ? lengthFix(run, display, uri, usual) : [],
	};
}

/** To a hundredth of a millimetre: what the tape can tell. */
function toGrid(mm: number): number {
	return Math.round(mm * 10_000) / 10_000;
}
