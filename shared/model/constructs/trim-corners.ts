// Where the strips of a trim begin and end: mitred or butted where two meet, else as far as their edge shows.

import type { Outline, Point2 } from "../../geometry/solid.ts";
import { axisIndex, type PanelEdge, type Side, sides } from "../meaning.ts";
import { thicknessAxis } from "../names.ts";
import { familyOf } from "../owners.ts";
import { type Held, high, low, otherAxis } from "../part-builder.ts";
import type { PieceContext } from "../piece-context.ts";
import { shownDegrees } from "../shown.ts";
import { minus, numberOf, plus, type Size, zero } from "../size.ts";
import type { EdgeWork, Origin, Part, Way } from "../types.ts";
import { worldOutline } from "./world-outline.ts";

/** A strip before it has its length. */
export interface Strip {
	readonly name: string;
	readonly part: Part;
	/** The side of the box or part that it is on, away from the middle. */
	readonly faces: Side;
	/** The axes of its length, of its width (through the panel), and of what it adds. */
	readonly along: Way;
	readonly across: Way;
	readonly out: Way;
	/** The way that the edge looks, and the way to the outside face of the panel. */
	readonly outward: 1 | -1;
	readonly outside: 1 | -1;
	/** Thickness of the edge. */
	readonly edge: Size;
	/** Left over the outside and the inside face. */
	readonly proud: readonly [Size, Size];
	readonly thick: Size;
	readonly side: PanelEdge["side"];
}

/** Two strips that meet at a corner; a cap runs over the end of the other. */
export interface Meeting {
	readonly cap: Strip;
	readonly other: Strip;
	readonly kind: "mitre" | "butt";
}

export interface StripPlace {
	readonly start: Size;
	readonly stop: Size;
	readonly held: readonly [Held, Held, Held];
	/** What the sawn strip is longer, for what is flushed at the corners. */
	readonly over: readonly Size[];
	readonly outlines: readonly Outline[];
	readonly edges: readonly EdgeWork[];
}

/** The strips of edges, each with a name of its own. */
export function stripsOf(
	edges: readonly PanelEdge[],
	proudOf: (edge: Size) => readonly [Size, Size],
	thick: Size,
): Strip[] {
	const taken = new Set<string>();
	return edges.map((edge) => {
		const { part, axis, outward, side } = edge;
		const across = thicknessAxis(part);
		const several = edges.filter((one) => one.part === part).length > 1;
		const looks = sideOf(axis, outward);
		const wanted = side ?? (several ? looks : part.name);
		let name = wanted;
		for (let count = 2; taken.has(name); count++) name = `${wanted}-${count}`;
		taken.add(name);
		return {
			name,
			part,
			faces: side ?? looks,
			along: otherAxis(axis, across),
			across,
			out: axis,
			outward,
			outside: side && sides[side].axis === across ? sides[side].outward : 1,
			edge: part.thick,
			proud: proudOf(part.thick),
			thick,
			side,
		};
	});
}

function sideOf(axis: Way, outward: 1 | -1): Side {
	return (Object.keys(sides) as Side[]).find(
		(side) => sides[side].axis === axis && sides[side].outward === outward,
	) as Side;
}

/** One end of a strip: where its outer and its inner corner are along it. */
interface End {
	/** The farther corner, and the nearer one where the end is mitred. */
	readonly outer: Size;
	readonly inner: Size;
	/** The axis across which a mitre runs; undefined where the end is square. */
	readonly mitre: Way | undefined;
	readonly over: Size;
}

/** Places all strips of a trim. */
export function cornersOf(
	context: PieceContext,
	strips: readonly Strip[],
	style: { readonly mitred: boolean; readonly caps: readonly string[] },
	origin: Origin,
): {
	readonly placed: readonly { strip: Strip; place: StripPlace }[];
	readonly meetings: readonly Meeting[];
} {
	const meetings: Meeting[] = [];
	const placed = strips.flatMap((strip) => {
		const ends = ([-1, 1] as const).map((sign): End => {
			const next = neighbour(strips, strip, sign);
			if (!next) {
				const at = showsTo(context, strips, strip, sign);
				return { outer: at, inner: at, mitre: undefined, over: zero };
			}
			const cap = style.mitred || runsOver(strip, next.strip, style.caps);
			const known = meetings.some(
				({ cap: a, other: b }) =>
					(a === strip && b === next.strip) ||
					(b === strip && a === next.strip),
			);
			if (!known)
				meetings.push({
					cap: cap ? strip : next.strip,
					other: cap ? next.strip : strip,
					kind: style.mitred ? "mitre" : "butt",
				});
			return cornerEnd(strip, next, sign, style.mitred, cap);
		});
		const [start, stop] = ends as [End, End];
		if (stop.outer.value.cmp(start.outer.value) <= 0) {
			context.evaluation.report(
				"no-size",
				origin,
				`Nothing is left of the strip on \`${strip.part.name}\`: its edge does not show`,
			);
			return [];
		}
		return [{ strip, place: placeOf(strip, start, stop) }];
	});
	return { placed, meetings };
}

interface Next {
	readonly strip: Strip;
	/** In the frame of a box the two look the same way; round one part they look away from each other. */
	readonly frame: boolean;
}

function neighbour(
	strips: readonly Strip[],
	strip: Strip,
	sign: 1 | -1,
): Next | undefined {
	for (const other of strips) {
		if (other === strip) continue;
		if (
			other.side &&
			strip.side &&
			other.part.owner === strip.part.owner &&
			other.out === strip.out &&
			other.outward === strip.outward &&
			sides[other.side].axis === strip.along &&
			sides[other.side].outward === sign
		)
			return { strip: other, frame: true };
		if (
			other.part === strip.part &&
			other.out === strip.along &&
			other.outward === sign
		)
			return { strip: other, frame: false };
	}
	return undefined;
}

/** Of two that meet, the one that is named first among the caps; upright ones where neither is. */
function runsOver(
	strip: Strip,
	other: Strip,
	caps: readonly string[],
): boolean {
	const rank = (one: Strip): number => {
		const index = caps.indexOf(one.side ?? one.name);
		return index < 0 ? caps.length + (one.along === "y" ? 0 : 1) : index;
	};
	const a = rank(strip);
	const b = rank(other);
	if (a !== b) return a < b;
	// Two of a kind, round a part: the one along x.
	return strip.along === "x";
}

/**
 * A corner of a frame, seen square to its edges, at the left end of a top strip:
 *
 *     outer ┌──────────     a mitre runs from the outer corner of both
 *           │ \________     to the corner of their inner faces
 *           │ │ inner
 */
function cornerEnd(
	strip: Strip,
	next: Next,
	sign: 1 | -1,
	mitred: boolean,
	cap: boolean,
): End {
	const { strip: other, frame } = next;
	const index = axisIndex[strip.along];
	const far = (at: Size, by: Size): Size =>
		by.value.isZero() ? at : sign === 1 ? plus(at, by) : minus(at, by);
	const near = (at: Size, by: Size): Size =>
		by.value.isZero() ? at : sign === 1 ? minus(at, by) : plus(at, by);
	const edgeFace = (sign === 1 ? other.part.max : other.part.min)[index];
	const outer = frame ? edgeFace : far(edgeFace, other.thick);
	const inner = frame
		? (sign === 1 ? other.part.min : other.part.max)[index]
		: edgeFace;
	const over = frame ? other.proud[0] : zero;
	if (mitred)
		return { outer, inner, mitre: frame ? strip.across : strip.out, over };
	if (cap) return { outer, inner: outer, mitre: undefined, over };
	// The other stays proud on its inner face where this one meets it.
	const meets = frame ? near(inner, other.proud[1]) : inner;
	return { outer: meets, inner: meets, mitre: undefined, over: zero };
}

/** How far an edge shows: a part that it is housed in, or a strip across it, hides the rest. */
function showsTo(
	context: PieceContext,
	strips: readonly Strip[],
	strip: Strip,
	sign: 1 | -1,
): Size {
	const index = axisIndex[strip.along];
	const { part } = strip;
	let at = (sign === 1 ? part.max : part.min)[index];
	for (const other of familyOf(context, part)) {
		if (other === part || !hides(other, part, strip, sign)) continue;
		const face = (sign === 1 ? other.min : other.max)[index];
		if (numberOf(face) * sign < numberOf(at) * sign) at = face;
	}
	for (const other of strips) {
		if (other === strip || other.across !== strip.along) continue;
		if (other.out !== strip.out || other.outward !== strip.outward) continue;
		if (!crosses(other, strip, sign, at)) continue;
		// Its upper face stands at a lower end of this one, and the other way round.
		const proud = other.proud[other.outside === sign ? 1 : 0];
		if (proud.value.isZero()) continue;
		at = sign === 1 ? minus(at, proud) : plus(at, proud);
	}
	return at;
}

/** Whether another part takes in the end of this one. */
function hides(other: Part, part: Part, strip: Strip, sign: 1 | -1): boolean {
	const index = axisIndex[strip.along];
	const end = numberOf((sign === 1 ? part.max : part.min)[index]);
	if (
		!(numberOf(other.min[index]) < end && end < numberOf(other.max[index])) ||
		numberOf(other.max[index]) - numberOf(other.min[index]) >
			numberOf(part.max[index]) - numberOf(part.min[index])
	)
		return false;
	return ([0, 1, 2] as const).every(
		(axis) =>
			axis === index ||
			Math.min(numberOf(other.max[axis]), numberOf(part.max[axis])) -
				Math.max(numberOf(other.min[axis]), numberOf(part.min[axis])) >
				0.01,
	);
}

/** Whether a strip lies over the end of this one: on a panel that this one's part runs up to. */
function crosses(other: Strip, strip: Strip, sign: 1 | -1, at: Size): boolean {
	const along = axisIndex[strip.along];
	const across = axisIndex[strip.across];
	const face = (sign === 1 ? other.part.min : other.part.max)[along];
	const middle =
		(numberOf(strip.part.min[across]) + numberOf(strip.part.max[across])) / 2;
	return (
		Math.abs(numberOf(face) - numberOf(at)) < 0.01 &&
		numberOf(other.part.min[across]) <= middle &&
		middle <= numberOf(other.part.max[across])
	);
}

function placeOf(strip: Strip, start: End, stop: End): StripPlace {
	const { along, across, out, part } = strip;
	const held: [Held, Held, Held] = [low(zero), low(zero), low(zero)];
	held[axisIndex[along]] = low(start.outer);
	// Flush with the outside face of the panel.
	held[axisIndex[across]] =
		strip.outside === 1
			? high(part.max[axisIndex[across]])
			: low(part.min[axisIndex[across]]);
	held[axisIndex[out]] =
		strip.outward === 1
			? low(part.max[axisIndex[out]])
			: high(part.min[axisIndex[out]]);
	return {
		start: start.outer,
		stop: stop.outer,
		held,
		over: [start.over, stop.over],
		outlines: outlinesOf(strip, start, stop),
		edges: edgeWorks(strip, start, stop),
	};
}

/** One trapezoid for each plane in which an end is mitred. */
function outlinesOf(strip: Strip, start: End, stop: End): Outline[] {
	const planes = [
		...new Set([start.mitre, stop.mitre].filter((way) => way !== undefined)),
	];
	return planes.map((way) => {
		const { from, to } = reach(strip, way);
		const at = (end: End): [number, number] =>
			end.mitre === way
				? [numberOf(end.outer), numberOf(end.inner)]
				: [numberOf(end.outer), numberOf(end.outer)];
		const [startFar, startNear] = at(start);
		const [stopFar, stopNear] = at(stop);
		const points: Point2[] = [
			[startFar, to],
			[startNear, from],
			[stopNear, from],
			[stopFar, to],
		];
		return worldOutline(points, axisIndex[strip.along], axisIndex[way]);
	});
}

/** From the face where a mitre begins (inner) to the one where it ends (outer), mm. */
function reach(strip: Strip, way: Way): { from: number; to: number } {
	const { part } = strip;
	const index = axisIndex[way];
	const min = numberOf(part.min[index]);
	const max = numberOf(part.max[index]);
	if (way === strip.across)
		return strip.outside === 1
			? { from: min, to: max }
			: { from: max, to: min };
	const thick = numberOf(strip.thick);
	return strip.outward === 1
		? { from: max, to: max + thick }
		: { from: min, to: min - thick };
}

function edgeWorks(strip: Strip, start: End, stop: End): EdgeWork[] {
	const text = (end: End): string | undefined => {
		if (!end.mitre) return undefined;
		const { from, to } = reach(strip, end.mitre);
		const run = Math.abs(numberOf(end.outer) - numberOf(end.inner));
		return shownDegrees((Math.atan2(run, Math.abs(to - from)) * 180) / Math.PI);
	};
	const first = text(start);
	const second = text(stop);
	if (first !== undefined && first === second)
		return [{ where: "both ends", work: "mitre", text: first }];
	const name = (sign: 1 | -1): string => `${sideOf(strip.along, sign)} end`;
	return [
		...(first === undefined
			? []
			: [{ where: name(-1), work: "mitre" as const, text: first }]),
		...(second === undefined
			? []
			: [{ where: name(1), work: "mitre" as const, text: second }]),
	];
}
