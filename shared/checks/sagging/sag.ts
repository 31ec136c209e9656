// How far a part that lies level sags under what stands on it: the beam that the design makes of it, bent.

import {
	type Beam,
	type BeamLoad,
	type BeamSupport,
	bend,
	mostBent,
} from "../../mechanics/beams.ts";
import type { CreepSort } from "../../mechanics/creep.ts";
import type { SectionLayer } from "../../mechanics/sections.ts";
import { numberOf } from "../../model/size.ts";
import type { LoadInfo, Part, Piece } from "../../model/types.ts";
import { gravity } from "../../units/derived.ts";
import {
	edging,
	extent,
	gluedTo,
	layerOf,
	stiffnessOf,
	stuffOf,
} from "./stiffness.ts";
import { type Bearing, heldUp, low } from "./supports.ts";

/** The figures of the check `sag`. */
export interface SagFigures {
	/** Span over the sag allowed at first, and over the years. */
	readonly first: number;
	readonly years: number;
	readonly creepSolid: number;
	readonly creepPlywood: number;
	readonly creepBoard: number;
	/** Shares of the stiffness along the grain. */
	readonly acrossWood: number;
	readonly acrossPlywood: number;
	/** What is asked about where no load is given, kg/m. */
	readonly books: number;
}

/** The figures by name; what is missing is not a number, and then nothing sags. */
export function sagFiguresOf(
	figures: Readonly<Record<string, number>>,
): SagFigures {
	const of = (name: keyof SagFigures): number => figures[name] ?? Number.NaN;
	return {
		first: of("first"),
		years: of("years"),
		creepSolid: of("creepSolid"),
		creepPlywood: of("creepPlywood"),
		creepBoard: of("creepBoard"),
		acrossWood: of("acrossWood"),
		acrossPlywood: of("acrossPlywood"),
		books: of("books"),
	};
}

/** One stretch between two supports, or beyond the last. */
export interface SaggingSpan {
	/** From the part's end, mm. */
	readonly from: number;
	readonly to: number;
	readonly overhang: boolean;
	/** Most sag at first, and its place; mm, down is positive. */
	readonly sag: number;
	readonly at: number;
	/** Allowed at first and over the years, mm. */
	readonly limit: number;
	readonly limitYears: number;
}

export interface Sagging {
	readonly part: Part;
	readonly axis: 0 | 2;
	readonly beam: Beam;
	readonly spans: readonly SaggingSpan[];
	/** The span that is nearest to its limit, or farthest over it. */
	readonly worst: SaggingSpan;
	/** Over the years / at first. */
	readonly creep: number;
	/** Largest share of a limit that is used: above 1 it sags too much. */
	readonly used: number;
	readonly deflectionAt: (x: number) => number;
	/** Of the loads alone, kg. */
	readonly mass: number;
	readonly trimmed: readonly Part[];
}

/** What a beam is made of; a mend changes one of these and bends it again. */
export interface Design {
	readonly part: Part;
	readonly axis: 0 | 2;
	readonly length: number;
	readonly supports: readonly BeamSupport[];
	readonly own: SectionLayer;
	readonly glued: readonly SectionLayer[];
	readonly beside: readonly SectionLayer[];
	/** N/mm for each mm of the part's height. */
	readonly weightPerHeight: number;
	readonly loads: readonly BeamLoad[];
	readonly mass: number;
	readonly creep: number;
	readonly trimmed: readonly Part[];
}

/** kg on a metre, kg spread over all of it: what stands on a part. */
export interface Standing {
	readonly mass: number;
	readonly perLength: boolean;
}

const g = gravity.toNumber();

/** A span shorter than so many thicknesses is no beam. */
const leastSlender = 4;

/** The sag of a part under what stands on it and its own weight; undefined: nothing to work it out from, or nothing to sag. */
export function sagOf(
	piece: Piece,
	part: Part,
	standing: readonly Standing[],
	figures: SagFigures,
): Sagging | undefined {
	const design = designOf(piece, part, standing, figures);
	return design && bentAs(design, figures);
}

/** The loads of a piece that stand on a part. */
export function standingOn(piece: Piece, part: Part): readonly Standing[] {
	return loadsOn(piece, part).map(({ mass, perLength }) => ({
		mass: numberOf(mass),
		perLength,
	}));
}

export function loadsOn(piece: Piece, part: Part): readonly LoadInfo[] {
	return piece.loads.filter((load) => load.part === part);
}

/** The beam that a part is, along the way on which it spans farther. */
export function designOf(
	piece: Piece,
	part: Part,
	standing: readonly Standing[],
	figures: SagFigures,
): Design | undefined {
	const flat = extent(part, 1) < Math.min(extent(part, 0), extent(part, 2));
	const axes: readonly (0 | 2)[] =
		part.role === "panel" || part.role === "shelf"
			? [0]
			: flat
				? [0, 2]
				: [extent(part, 0) >= extent(part, 2) ? 0 : 2];
	let best: Design | undefined;
	for (const axis of axes) {
		const design = designAlong(piece, part, axis, standing, figures);
		if (design && (!best || longest(design) > longest(best))) best = design;
	}
	return best && longest(best) >= leastSlender * extent(part, 1)
		? best
		: undefined;
}

function longest({ supports }: Design): number {
	return supports.reduce(
		(most, { at }, i) =>
			Math.max(most, i === 0 ? 0 : at - (supports[i - 1]?.at ?? at)),
		0,
	);
}

function designAlong(
	piece: Piece,
	part: Part,
	axis: 0 | 2,
	standing: readonly Standing[],
	figures: SagFigures,
): Design | undefined {
	const held = heldUp(piece, part, axis);
	if (!held) return undefined;
	const start = low(part, axis);
	const length = extent(part, axis);
	const supports = supportsOf(held.bearings, start, length);
	if (supports.length < 2) return undefined;
	const across = { wood: figures.acrossWood, plywood: figures.acrossPlywood };
	const layer = (one: Part): SectionLayer | undefined => {
		const stuff = stuffOf(one, axis, across);
		return stuff && layerOf(one, axis, stuff.elasticity);
	};
	const stuff = stuffOf(part, axis, across);
	const own = layer(part);
	if (!stuff || !own) return undefined;
	const glued = new Set(gluedTo(piece, part));
	const trimmed = edging(piece, part, axis);
	const onePiece = [
		...trimmed,
		...held.beside.filter((rail) => glued.has(rail)),
	];
	let mass = 0;
	const loads = standing.map((one): BeamLoad => {
		const whole = one.perLength ? (one.mass * length) / 1000 : one.mass;
		mass += whole;
		return {
			kind: "uniform",
			from: 0,
			to: length,
			perLength: (whole * g) / length,
		};
	});
	const isLayer = (one: SectionLayer | undefined): one is SectionLayer =>
		one !== undefined;
	return {
		part,
		axis,
		length,
		supports,
		own,
		glued: onePiece.map(layer).filter(isLayer),
		beside: held.beside
			.filter((rail) => !glued.has(rail))
			.map(layer)
			.filter(isLayer),
		weightPerHeight: ((part.stock.density ?? 0) * own.width * g) / 1e9,
		loads,
		mass,
		creep: creepOf(stuff.creep, figures),
		trimmed,
	};
}

function creepOf(sort: CreepSort, figures: SagFigures): number {
	switch (sort) {
		case "solid":
			return figures.creepSolid;
		case "plywood":
			return figures.creepPlywood;
		case "board":
			return figures.creepBoard;
	}
}

/** A bearing this long is one support, in its middle; a longer one holds at both its ends. mm */
const oneSupport = 150;

/** The clear span counts at the ends of the part; support between them is taken in its middle. */
function supportsOf(
	bearings: readonly Bearing[],
	start: number,
	length: number,
): readonly BeamSupport[] {
	const places: number[] = [];
	bearings.forEach((bearing, i) => {
		const from = Math.max(0, bearing.from - start);
		const to = Math.min(length, bearing.to - start);
		const first = i === 0 && from < atTheEnd;
		const last = i === bearings.length - 1 && to > length - atTheEnd;
		if (first && last) return;
		if (first) places.push(to);
		else if (last) places.push(from);
		else if (to - from <= oneSupport) places.push((from + to) / 2);
		else places.push(from, to);
	});
	return places.map((at) => ({ at, kind: "pinned" }));
}

/** A bearing that comes so near to the part's end takes the end, mm. */
const atTheEnd = 25;

/** The same beam bent: with a part of another height, other layers or supports. */
export function bentAs(
	design: Design,
	figures: SagFigures,
): Sagging | undefined {
	const { own, glued, beside, length, supports, part, axis } = design;
	const beam: Beam = {
		length,
		stiffness: stiffnessOf([own, ...glued], beside),
		supports,
		loads: [
			...design.loads,
			{
				kind: "uniform",
				from: 0,
				to: length,
				perLength: design.weightPerHeight * own.height,
			},
		],
	};
	const bent = bend(beam);
	if (!bent) return undefined;
	const spans: SaggingSpan[] = [];
	const add = (from: number, to: number, overhang: boolean): void => {
		if (to - from < leastSlender * own.height) return;
		const { deflection, at } = mostBent(bent, from, to);
		// An overhang is half of a span twice as long.
		const span = (to - from) * (overhang ? 2 : 1);
		spans.push({
			from,
			to,
			overhang,
			sag: deflection,
			at,
			limit: span / figures.first,
			limitYears: span / figures.years,
		});
	};
	const places = supports.map(({ at }) => at);
	add(0, places[0] ?? 0, true);
	places.forEach((at, i) => {
		const next = places[i + 1];
		if (next !== undefined) add(at, next, false);
	});
	add(places.at(-1) ?? length, length, true);
	let worst: SaggingSpan | undefined;
	let used = 0;
	for (const span of spans) {
		const share = usedBy(span, design.creep);
		if (!worst || share > used) {
			worst = span;
			used = share;
		}
	}
	return (
		worst && {
			part,
			axis,
			beam,
			spans,
			worst,
			creep: design.creep,
			used,
			deflectionAt: bent.deflectionAt,
			mass: design.mass,
			trimmed: design.trimmed,
		}
	);
}

function usedBy(
	{ sag, limit, limitYears }: SaggingSpan,
	creep: number,
): number {
	// What is lifted by the load beside it does no harm.
	const down = Math.max(0, sag);
	return Math.max(down / limit, (down * creep) / limitYears);
}
