// Where something is along an axis: an offset in a direction from a datum. A datum that could be doubted is an error
// that lists the readings.

import {
	directionWords,
	type Expression,
	type PathNode,
	type Position,
	type Span,
} from "../../grammar/index.ts";
import { lengthOf } from "./expressions.ts";
import type { Frame } from "./frame.ts";
import {
	axisIndex,
	type Bounds,
	type Meaning,
	pathText,
	type Reach,
	type Side,
	sides,
} from "./meaning.ts";
import { reachAlong, resolve } from "./names.ts";
import { minus, named, plus, type Size, zero } from "./size.ts";
import type { Way } from "./types.ts";

export interface PositionContext {
	readonly axis: Way;
	/** Which face of a thing is meant when it is named without an offset: the lower (-1) or the upper (1) one on the axis. */
	readonly near?: 1 | -1;
	/** Readings to offer when no datum was named: `["above bottom", "up from floor"]`. */
	readonly readings: readonly string[];
	/** Where the floor is, world. */
	readonly floor: Size;
}

const axisWords: Readonly<Record<Way, string>> = {
	x: "left to right",
	y: "up and down",
	z: "front to back",
};

/** The place on the axis (world, mm) of a position with one offset or none. */
export function placeOn(
	frame: Frame,
	position: Position,
	context: PositionContext,
): Size | undefined {
	return placesOn(frame, position, context)?.[0];
}

/** All places of a position with several offsets. */
export function placesOn(
	frame: Frame,
	position: Position,
	context: PositionContext,
): Size[] | undefined {
	const origin = { uri: frame.uri, span: position.span };
	if (!position.datum) {
		tellUnclear(frame, position, context);
		return undefined;
	}
	const label = pathText(position.datum.segments);
	const met = meet(frame, position.datum, context.axis);
	if (!met) return undefined;
	const words = position.direction && directionWords[position.direction];
	if (words && words.axis !== context.axis) {
		frame.evaluation.report(
			"wrong-direction",
			origin,
			`This is measured ${axisWords[context.axis]}, \`${position.direction}\` is not`,
		);
		return undefined;
	}
	const datum = datumOn(frame, position, met, label, context);
	if (!datum) return undefined;
	if (position.offsets.length === 0) return [datum.at];
	const sign = !words
		? datum.inward
		: words.axis === "x" && frame.scope.mirrored
			? -words.sign
			: words.sign;
	const places: Size[] = [];
	for (const offset of position.offsets) {
		const size = lengthOf(frame, offset);
		if (!size) return undefined;
		places.push(sign === 1 ? plus(datum.at, size) : minus(datum.at, size));
	}
	return places;
}

interface Datum {
	readonly at: Size;
	/** The way that an offset without a direction runs. */
	readonly inward: 1 | -1;
}

/** What a datum is along an axis. */
type Met = Exclude<Meaning, { kind: "part" | "thing" | "face" }> | Reached;

interface Reached {
	readonly kind: "reach";
	readonly reach: Reach;
	/** The axis that a face is square to: not always the one that is measured along. */
	readonly axis: Way;
	readonly label: string;
}

/** Along the axis alone where that is enough: so things may be placed by one another on different axes. */
function meet(frame: Frame, path: PathNode, axis: Way): Met | undefined {
	const label = pathText(path.segments);
	const alone = reachAlong(frame, path, axis);
	if (alone) {
		const reach = alone();
		return reach && { kind: "reach", reach, axis, label };
	}
	const meaning = resolve(frame, path);
	if (!meaning) return undefined;
	if (meaning.kind === "face") {
		const { at, outward } = meaning.face;
		return {
			kind: "reach",
			reach: { low: at, high: at, face: outward },
			axis: meaning.face.axis,
			label: meaning.face.label,
		};
	}
	if (meaning.kind !== "part" && meaning.kind !== "thing") return meaning;
	const bounds = boundsOfMeaning(meaning);
	if (!bounds) return { kind: "label" };
	const index = axisIndex[axis];
	const side = meaning.kind === "part" ? meaning.panelSide : undefined;
	return {
		kind: "reach",
		reach: {
			low: bounds.min[index],
			high: bounds.max[index],
			...(side ? { panelSide: side } : {}),
		},
		axis,
		label,
	};
}

/** From where to where what a path names reaches along an axis; undefined, and told, if it has no place. */
export function reachOn(
	frame: Frame,
	path: PathNode,
	axis: Way,
): Reach | undefined {
	const met = meet(frame, path, axis);
	if (!met) return undefined;
	if (met.kind === "reach" && met.axis === axis && met.reach.face === undefined)
		return met.reach;
	frame.evaluation.report(
		"not-a-datum",
		{ uri: frame.uri, span: path.span },
		`\`${pathText(path.segments)}\` has no middle: name a part, a box or a leg`,
	);
	return undefined;
}

function datumOn(
	frame: Frame,
	position: Position,
	meaning: Met,
	label: string,
	context: PositionContext,
): Datum | undefined {
	const { axis } = context;
	const origin = { uri: frame.uri, span: position.span };
	if (meaning.kind === "floor") {
		if (axis === "y") return { at: named("floor", context.floor), inward: 1 };
		frame.evaluation.report(
			"wrong-direction",
			origin,
			`This is measured ${axisWords[axis]}, the floor is below`,
		);
		return undefined;
	}
	if (meaning.kind !== "reach") {
		frame.evaluation.report(
			"not-a-datum",
			origin,
			`\`${label}\` is nothing that can be measured from: name a face (\`${label}.top\`), a part or the floor`,
		);
		return undefined;
	}
	const { low, high, face } = meaning.reach;
	if (meaning.axis !== axis) {
		frame.evaluation.report(
			"wrong-direction",
			origin,
			`This is measured ${axisWords[axis]}, and \`${meaning.label}\` is not square to that`,
		);
		return undefined;
	}
	if (face !== undefined)
		return {
			at: named(label, face === 1 ? high : low),
			inward: face === 1 ? -1 : 1,
		};
	if (position.relation === "above")
		return { at: named(label, high), inward: 1 };
	if (position.relation === "below")
		return { at: named(label, low), inward: -1 };
	// A panel of a box stands for its outside face, where that is square to the measure.
	const side = meaning.reach.panelSide;
	const outward =
		side && sides[side].axis === axis ? sides[side].outward : undefined;
	if (position.offsets.length === 0 && context.near !== undefined)
		return {
			at: named(label, context.near === 1 ? high : low),
			inward: context.near,
		};
	if (outward !== undefined)
		return {
			at: named(label, outward === 1 ? high : low),
			inward: outward === 1 ? -1 : 1,
		};
	const names: Readonly<Record<Way, readonly [Side, Side]>> = {
		x: ["left", "right"],
		y: ["bottom", "top"],
		z: ["back", "front"],
	};
	frame.evaluation.report(
		"datum-unclear",
		origin,
		`\`${label}\` could be measured from either side: write ${names[axis].map((name) => `\`${label}.${name}\``).join(" or ")}`,
		{
			fixes: names[axis].map((name) => ({
				title: `Measure from \`${label}.${name}\``,
				edits: position.datum
					? [{ span: position.datum.span, text: `${label}.${name}` }]
					: [],
			})),
		},
	);
	return undefined;
}

export function boundsOfMeaning(meaning: Meaning): Bounds | undefined {
	if (meaning.kind === "part") return meaning.part;
	if (meaning.kind === "thing") return meaning.thing.bounds();
	return undefined;
}

function tellUnclear(
	frame: Frame,
	position: Position,
	context: PositionContext,
): void {
	// A direction that is written already rules the other ways out.
	const said = position.direction;
	const alike = said === "up" ? "above" : said === "down" ? "below" : said;
	const agreeing = context.readings.filter(
		(reading) =>
			reading.startsWith(`${said} `) || reading.startsWith(`${alike} `),
	);
	const readings = said && agreeing.length > 0 ? agreeing : context.readings;
	const offset = position.offsets.at(-1);
	// What stands behind the figure gives way to the reading.
	const behind: Span = {
		get start() {
			return (offset ?? position).span.end;
		},
		get end() {
			return position.span.end;
		},
	};
	frame.evaluation.report(
		"datum-unclear",
		{ uri: frame.uri, span: position.span },
		`Measured from what? It could be ${readings.map((reading) => `\`… ${reading}\``).join(" or ")}: write one of them`,
		{
			fixes: readings
				// What stands for a name of the design is for the maker to write.
				.filter((reading) => !/\bNAME\b/.test(reading))
				.map((reading) => ({
					title: `Measure \`${reading}\``,
					edits: [{ span: behind, text: ` ${reading}` }],
				})),
		},
	);
}

/**
 * A bare distance whose datum the line's own meaning does not settle (`set-back 2`): tells the readings.
 * `expression` is the distance.
 */
export function tellNoDatum(
	frame: Frame,
	expression: Expression,
	readings: readonly string[],
): void {
	tellUnclear(
		frame,
		{
			span: expression.span,
			offsets: [expression],
			direction: undefined,
			relation: "from",
			datum: undefined,
		},
		{ axis: "y", readings, floor: zero },
	);
}
