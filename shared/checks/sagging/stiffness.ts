// How stiff a part is as a beam along one axis of the world: its wood or sheet, the way its grain runs, and what edges it.

import { axisOf } from "../../geometry/place.ts";
import type { Axis } from "../../geometry/solid.ts";
import type { CreepSort } from "../../mechanics/creep.ts";
import {
	composite,
	type SectionLayer,
	secondMoment,
} from "../../mechanics/sections.ts";
import { numberOf } from "../../model/size.ts";
import type { Part, Piece, Stock } from "../../model/types.ts";
import { panelNamed } from "../../tables/panels.ts";
import { woodNamed } from "../../tables/woods.ts";

/** Shares of the stiffness along the grain that hold across it where no table has a figure. */
export interface AcrossGrain {
	readonly wood: number;
	readonly plywood: number;
}

export interface Stuff {
	/** Modulus of elasticity in bending, MPa. */
	readonly elasticity: number;
	readonly creep: CreepSort;
}

/** Extent of a part in the world before it is shaped, mm. */
export function extent(part: Part, axis: Axis): number {
	return numberOf(part.max[axis]) - numberOf(part.min[axis]);
}

/** What a part is made of, bending along `axis` in the upright plane; undefined: its species is in no table. */
export function stuffOf(
	part: Part,
	axis: Axis,
	across: AcrossGrain,
): Stuff | undefined {
	const grain = axisOf(part.place.axes[0]) === axis;
	const { stock } = part;
	const panel = panelOf(stock);
	if (panel || (stock.kind === "sheet" && stock.stiffness)) {
		const { along, across: known } =
			stock.stiffness ??
			(panel as NonNullable<typeof panel>).stiffness(numberOf(part.thick));
		const other = known ?? along * across.plywood;
		const flat = axisOf(part.place.axes[2]) === 1;
		// On edge the plies of both ways share the bending.
		return {
			elasticity: flat ? (grain ? along : other) : (along + other) / 2,
			// A sheet that no table knows is taken as the sort that creeps most.
			creep: panel && / plywood$/.test(panel.name) ? "plywood" : "board",
		};
	}
	const along = stock.stiffness?.along ?? woodOf(stock)?.elasticity;
	if (along === undefined) return undefined;
	const other = stock.stiffness?.across ?? along * across.wood;
	return { elasticity: grain ? along : other, creep: "solid" };
}

export function panelOf({ species }: Stock) {
	return species === undefined ? undefined : panelNamed(species);
}

export function woodOf({ species }: Stock) {
	return species === undefined ? undefined : woodNamed(species);
}

/** Solid strips that are glued to an edge of a part and run along `axis`: trim, or a board that hangs below the edge. */
export function edging(piece: Piece, part: Part, axis: 0 | 2): readonly Part[] {
	return gluedTo(piece, part).filter(
		(other) =>
			(other.role === "trim" || other.role === "board") &&
			runsAlong(part, other, axis) &&
			besideEdge(part, other, axis === 0 ? 2 : 0) &&
			common(part, other, 1) > 1,
	);
}

const gluedOf = new WeakMap<Piece, ReadonlyMap<Part, readonly Part[]>>();

/** The parts that share a glued joint with a part. */
export function gluedTo(piece: Piece, part: Part): readonly Part[] {
	let glued = gluedOf.get(piece);
	if (!glued) {
		glued = gluedPairs(piece);
		gluedOf.set(piece, glued);
	}
	return glued.get(part) ?? [];
}

function gluedPairs(piece: Piece): ReadonlyMap<Part, readonly Part[]> {
	const glued = new Map<Part, Part[]>();
	const add = (part: Part, other: Part): void => {
		const known = glued.get(part);
		if (known) known.push(other);
		else glued.set(part, [other]);
	};
	for (const { glue, host, member } of piece.joints) {
		if (!glue) continue;
		add(host, member);
		add(member, host);
	}
	return glued;
}

/** A strip shorter than this share of the part stiffens only a piece of it. */
export const alongShare = 0.6;

function runsAlong(part: Part, other: Part, axis: Axis): boolean {
	return common(part, other, axis) > alongShare * extent(part, axis);
}

/** Lies before or behind the part, not under or over it. */
function besideEdge(part: Part, other: Part, axis: Axis): boolean {
	return (
		numberOf(other.min[axis]) > numberOf(part.max[axis]) - 1 ||
		numberOf(other.max[axis]) < numberOf(part.min[axis]) + 1
	);
}

/** Length that both parts lie along an axis, mm; below zero where they lie apart. */
function common(part: Part, other: Part, axis: Axis): number {
	return (
		Math.min(numberOf(part.max[axis]), numberOf(other.max[axis])) -
		Math.max(numberOf(part.min[axis]), numberOf(other.min[axis]))
	);
}

/** A part as a layer of a section; levels are heights above the floor. */
export function layerOf(
	part: Part,
	axis: 0 | 2,
	elasticity: number,
): SectionLayer {
	return {
		elasticity,
		width: extent(part, axis === 0 ? 2 : 0),
		height: extent(part, 1),
		bottom: numberOf(part.min[1]),
	};
}

/** E I of a part with the strips that are glued to its edges as one, and of rails under it that bend beside it, N mm2. */
export function stiffnessOf(
	glued: readonly SectionLayer[],
	beside: readonly SectionLayer[],
): number {
	return (
		composite(glued).stiffness +
		beside.reduce(
			(sum, { elasticity, width, height }) =>
				sum + elasticity * secondMoment(width, height),
			0,
		)
	);
}
