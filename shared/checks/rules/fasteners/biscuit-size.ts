// A biscuit whose slot the wood has no room for.

import { stretchesAlong } from "../../../geometry/along.ts";
import type { Vec3 } from "../../../geometry/solid.ts";
import { biscuits } from "../../../model/fastener-sizes.ts";
import type { FastenerRun, Fix, Part, Piece } from "../../../model/types.ts";
import { defineCheck, type Found } from "../../check.ts";
import { fastenerLines, waysIn } from "../../driven.ts";
import { axisDriven, envelopeAt } from "../../envelopes.ts";
import { nameOf, show } from "../../words.ts";

export const biscuitSize = defineCheck({
	id: "biscuit-size",
	group: "fasteners",
	severity: "error",
	summary: "A biscuit's slot has no room in the wood, or one part is not there",
	explanation: `
The cutter makes a slot deeper and longer than the biscuit: with a cutter of 100 mm and a depth a,

    length of the slot = 2 x sqrt(a x (100 mm - a))

| biscuit | slot depth | slot length |
| --- | --- | --- |
| #0 | 8 mm | 54.3 mm |
| #10 | 10 mm | 60 mm |
| #20 | 12.3 mm | 65.7 mm |

The slot must stay inside both parts with some cover, must have wood on both sides of its 4 mm, and the biscuit must be where both
parts are. A biscuit that itself comes out is told by \`fastener-through\`.`,
	source:
		"sizes by makers' sheets, slot depth from memory, slot length by geometry; cover is common practice, no source",
	figures: {
		cover: {
			value: 1,
			unit: "mm",
			help: "Least wood below the slot",
			source: "common practice, no source",
		},
		side: {
			value: 2.5,
			unit: "mm",
			help: "Least wood on each side of the slot",
			source: "common practice, no source: none in stock under 3/8 in",
		},
	},
	fires: `
piece shelf {
  part board {
    of oak.four-quarter
    size 24 x 6
    bottom at 20 from floor
  }
  part lip {
    of ply.half
    size 24 x 1 1/2
    lies across facing front
    top at board.top
    back at board.front
  }
  join lip to board { glue; biscuit #20 every 6 }
}`,
	silent: `
piece shelf {
  part board {
    of oak.four-quarter
    size 24 x 6
    bottom at 20 from floor
  }
  part lip {
    of ply.half
    size 24 x 1 1/2
    lies across facing front
    top at board.top
    back at board.front
  }
  join lip to board { glue; biscuit #10 every 6 }
}`,
	find: (piece, { design, figures }) =>
		fastenerLines(piece).flatMap((line) => {
			let worst: Bad | undefined;
			for (const run of line) {
				if (run.size.kind !== "biscuit") continue;
				for (const point of run.points) {
					const bad = faultAt(run, point, run.size.number ?? 0, figures);
					if (bad && (!worst || bad.by > worst.by + grain)) worst = bad;
				}
			}
			return worst ? [tell(piece, design.uri, line, worst, figures)] : [];
		}),
});

/** Floating dust, mm. */
const grain = 1e-6;

interface Limits {
	readonly cover: number;
	readonly side: number;
}

interface Bad {
	readonly run: FastenerRun;
	readonly part: Part;
	readonly what: "missing" | "deep" | "long" | "thin";
	/** What there is, and how much is lacking, mm. */
	readonly there: number;
	readonly by: number;
}

/** The worst that a biscuit of that number would bring at a point. */
function faultAt(
	run: FastenerRun,
	point: Vec3,
	number: number,
	figures: Limits,
): Bad | undefined {
	const facts = biscuits[number];
	if (!facts) return undefined;
	const depths = waysIn(run, point).map(({ holds, start, direction }) => {
		const first = stretchesAlong(holds.solid, start, direction)[0];
		return {
			part: holds,
			depth: first && first.from < 0.5 ? first.to : 0,
		};
	});
	for (const { part, depth } of depths)
		if (depth <= grain)
			return { run, part, what: "missing", there: 0, by: Infinity };
	for (const { part, depth } of depths) {
		// The biscuit itself comes out: told there.
		if (depth < facts.width / 2 + 0.5 - grain) continue;
		const by = facts.depth + figures.cover - depth;
		if (by > grain) return { run, part, what: "deep", there: depth, by };
	}
	const driven = axisDriven(run);
	const { axes } = envelopeAt(run, point);
	for (const part of [run.through, run.into]) {
		const { min, max } = part.solid.box;
		for (const axis of [0, 1, 2] as const) {
			if (axis === driven) continue;
			const room = Math.min(point[axis] - min[axis], max[axis] - point[axis]);
			const isAlong = Math.abs(axes[1][axis]) > 0.5;
			if (isAlong && room >= facts.length / 2 - grain) {
				const by = facts.slot / 2 - room;
				if (by > grain) return { run, part, what: "long", there: room, by };
			}
			if (!isAlong && room >= facts.thick / 2 - grain) {
				const by = facts.thick / 2 + figures.side - room;
				if (by > grain) return { run, part, what: "thin", there: room, by };
			}
		}
	}
	return undefined;
}

function tell(
	piece: Piece,
	uri: string,
	line: readonly FastenerRun[],
	{ run, part, what, there, by }: Bad,
	figures: Limits,
): Found {
	const { display } = piece;
	const number = run.size.number ?? 0;
	const smaller = Object.keys(biscuits)
		.map(Number)
		.toSorted((a, b) => b - a)
		.find(
			(one) =>
				one < number &&
				line.every((each) =>
					each.points.every((point) => !faultAt(each, point, one, figures)),
				),
		);
	const label = `The biscuit ${run.size.label}`;
	const amount = show(display, Math.ceil(by * 10 - grain) / 10);
	const facts = biscuits[number];
	const mend =
		smaller === undefined
			? "move it, or use dowels or a spline"
			: `a #${smaller} has room`;
	const said = {
		missing: `${label} is not where ${nameOf(part)} is: move it to where both parts are`,
		deep: `The slot of ${label.toLowerCase()} is ${show(display, facts?.depth ?? 0)} deep and ${nameOf(part)} ${show(display, toTenth(there))} there: ${mend}`,
		long: `The slot of ${label.toLowerCase()} comes out of an edge of ${nameOf(part)} by ${amount}: move it in by that much${smaller === undefined ? "" : `, or ${mend}`}`,
		thin: `${label} leaves ${show(display, Math.max(0, toTenth(there - (facts?.thick ?? 0) / 2)))} of ${nameOf(part)} beside its slot: it wants ${show(display, figures.side)}; ${smaller === undefined ? "use a spline, or thicker wood" : mend}`,
	}[what];
	return {
		severity: what === "thin" ? "warning" : "error",
		origin: run.origin,
		message: said,
		related: [
			{
				origin: part.declaration.origin,
				message: `${nameOf(part)} is declared here`,
			},
		],
		fixes:
			smaller === undefined || what === "missing"
				? []
				: numberFix(run, uri, smaller),
	};
}

function numberFix(
	run: FastenerRun,
	uri: string,
	number: number,
): readonly Fix[] {
	const span = run.size.numberSpan;
	if (!span || run.origin.uri !== uri) return [];
	return [
		{
			title: `Use a biscuit #${number}`,
			edits: [{ span, text: `#${number}` }],
		},
	];
}

/** To a tenth of a millimetre. */
function toTenth(mm: number): number {
	return Math.round(mm * 10) / 10;
}
