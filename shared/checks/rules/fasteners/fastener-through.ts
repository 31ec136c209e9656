// A fastener that comes out of the wood on the far side.

import type { FastenerRun, Finding, Piece } from "../../../model/types.ts";
import { defineCheck } from "../../check.ts";
import {
	drivenIn,
	fastenerLines,
	type WayIn,
	type WoodAlong,
	woodBeyond,
} from "../../driven.ts";
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
of its hole, must stay in each of its two parts in the same way. The tip must keep a little wood before it, or it shows as a bump.`,
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
				: [];
		});
	},
});

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
): {
	readonly origin: Finding["origin"];
	readonly message: string;
	readonly related: Finding["related"];
	readonly fixes: Finding["fixes"];
} {
	const { display } = piece;
	const { kind, label } = run.size;
	const what = `The ${kind} ${label}`;
	const halves = kind === "dowel" || kind === "biscuit";
	const state =
		by > cover / 10
			? `${extra > 0 ? `The hole of the ${kind} ${label}` : what} comes out of ${names} by ${show(display, toGrid(by))}`
			: `${extra > 0 ? `The hole of the ${kind} ${label}` : what} ends at the far face of ${names}, with ${show(display, Math.max(0, toGrid(-by)))} before it`;
	const thicknesses = halves
		? `half of it in ${bare(display, toGrid(wood.to))} ${display.unit}`
		: wood.to > wood.passed
			? `through ${bare(display, toGrid(wood.passed - way.sunk))} + ${show(display, toGrid(to - wood.passed))}`
			: `in ${show(display, toGrid(to - way.sunk))}`;
	const most = (to - cover - way.sunk - extra) * (halves ? 2 : 1);
	const usual = halves ? undefined : usualAtMost(kind, display, most);
	const reaches =
		usual !== undefined && usual.toNumber() + way.sunk > wood.passed;
	const mend = halves
		? `at most ${show(display, toGrid(Math.max(0, most)))} in all fits, ${thicknesses}`
		: usual && reaches
			? `at most ${show(display, usual)} fits ${thicknesses} here`
			: `no usual length fits ${thicknesses} here: use thicker wood or another fastening`;
	return {
		origin: run.origin,
		message: `${state}: ${mend}`,
		related: [
			{
				origin: way.holds.declaration.origin,
				message: `${nameOf(way.holds)} is declared here`,
			},
		],
		fixes: usual && reaches ? lengthFix(run, display, uri, usual) : [],
	};
}

/** To a hundredth of a millimetre: what the tape can tell. */
function toGrid(mm: number): number {
	return Math.round(mm * 10_000) / 10_000;
}
