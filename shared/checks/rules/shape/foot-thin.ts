// A leg that is shaped or tapered to less wood than its use bears.

import { numberOf } from "../../../model/size.ts";
import type { LegInfo, Piece } from "../../../model/types.ts";
import { gravity } from "../../../units/derived.ts";
import { defineCheck, type Found } from "../../check.ts";
import { listed, show, showLimit } from "../../words.ts";

export const footThin = defineCheck({
	id: "foot-thin",
	group: "shape",
	severity: "warning",
	summary: "A leg gets thinner than its use bears",
	explanation: `
Two limits are held against the thinnest section of each leg. The first is practice: a foot below a certain size chips and
splits, whatever it carries. The second is bending: a piece that is pushed over the floor drags each foot with its friction,
and the leg bends about the section above.

    stress = friction x load on the leg x height of the section / (breadth x depth^2 / 6)

with the smaller way taken as the depth. The load on a leg is its share of the piece's weight and of the loads that the design
gives; without a \`load\` line it is the weight alone. It is a check of proportion, not a proof of strength.`,
	source:
		"section modulus: any text on beams; friction, limit and least size are common practice, no source",
	figures: {
		least: {
			value: 16,
			unit: "mm",
			help: "Least size of a leg either way",
			source: "common practice, no source: 5/8 in",
		},
		friction: {
			value: 0.5,
			unit: "ratio",
			help: "Friction of a foot on the floor",
			source: "common practice, no source: wood on carpet or rough floor",
		},
		stress: {
			value: 12,
			unit: "MPa",
			help: "Most bending stress",
			source:
				"common practice, no source: a sixth of the bending strength of a weak wood (about 70 MPa)",
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
    layer outer of oak.four-quarter 2 wide from floor up to 8 above case.bottom
    taper back 1 1/2 from case.bottom to floor
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
    layer outer of oak.four-quarter 2 wide from floor up to 8 above case.bottom
    taper back 1 from case.bottom to floor
  }
}`,
	find: (piece, { figures }) => {
		if (piece.legs.length === 0) return [];
		const load = loadOnLeg(piece);
		// A left and a right of one line are told once.
		const told = new Map<
			string,
			{ leg: LegInfo; names: string[]; weak: Weak }
		>();
		for (const leg of piece.legs) {
			const weak = weakOf(leg, figures, load);
			if (!weak) continue;
			const { uri, span } = originOf(leg);
			const key = `${uri} ${span.start} ${toTenth(weak.thin)} ${weak.stress === undefined}`;
			const known = told.get(key);
			if (known) known.names.push(`\`${leg.path}\``);
			else told.set(key, { leg, names: [`\`${leg.path}\``], weak });
		}
		return [...told.values()].map(({ leg, names, weak }): Found => {
			const { display } = piece;
			const { thin, way, height, stress } = weak;
			const who = `${listed(names)} ${names.length > 1 ? "are" : "is"}`;
			const size = `only ${show(display, toTenth(thin))} ${way} ${place(display, height)}`;
			return {
				origin: originOf(leg),
				message:
					stress === undefined
						? `${who} ${size}: less than ${showLimit(display, figures.least)} chips and splits; cut in less, or start wider`
						: `${who} ${size}, and ${names.length > 1 ? "bend" : "bends"} to ${stress.toFixed(1)} MPa there when the loaded piece is pushed, with ${Math.round(load)} N on the leg: more than ${figures.stress} MPa; make it thicker there`,
			};
		});
	},
});

interface Weak {
	readonly thin: number;
	readonly way: "front to back" | "side to side";
	/** Above the foot, mm. */
	readonly height: number;
	/** MPa; undefined: too thin whatever it carries. */
	readonly stress: number | undefined;
}

function originOf(leg: LegInfo): Found["origin"] {
	return leg.shapes[0]?.origin ?? leg.declaration.origin;
}

function weakOf(
	leg: LegInfo,
	figures: {
		readonly least: number;
		readonly friction: number;
		readonly stress: number;
	},
	load: number,
): Weak | undefined {
	const { depth, breadth, depthAt, breadthAt } = leg.thinnest;
	const deep = depth <= breadth;
	const thin = Math.min(depth, breadth);
	const height = (deep ? depthAt : breadthAt) - leg.blank.min[1];
	const way = deep ? "front to back" : "side to side";
	if (thin < figures.least - 1e-6)
		return { thin, way, height, stress: undefined };
	const stress = bending(leg, figures.friction * load, height);
	return stress > figures.stress ? { thin, way, height, stress } : undefined;
}

/** Newtons on one leg: its share of the weight and the loads. */
function loadOnLeg(piece: Piece): number {
	let mass = 0;
	for (const part of piece.parts)
		mass += (part.volume * (part.stock.density ?? 0)) / 1e9;
	for (const load of piece.loads)
		mass +=
			numberOf(load.mass) *
			(load.perLength && load.part ? numberOf(load.part.length) / 1000 : 1);
	// Fewer than four legs share with the wall or another support; a fourth each is what they carry.
	return (mass * gravity.toNumber()) / Math.max(4, piece.legs.length);
}

/** MPa at the thinnest section, `force` at the foot, `height` above it. */
function bending(leg: LegInfo, force: number, height: number): number {
	const { depth, breadth } = leg.thinnest;
	const thin = Math.min(depth, breadth);
	const wide = Math.max(depth, breadth);
	return (force * Math.max(0, height)) / ((wide * thin * thin) / 6);
}

function place(display: Piece["display"], height: number): string {
	return height > 1
		? `${show(display, toTenth(height))} up from the foot`
		: "at the foot";
}

/** To a tenth of a millimetre. */
function toTenth(mm: number): number {
	return Math.round(mm * 10) / 10;
}
