// The thing that a name behind a dot belongs to: `rack.back` is of `rack`.

import type { PathNode } from "../../grammar/index.ts";
import type { Bounds, Thing } from "./meaning.ts";
import { resolve } from "./names.ts";
import type { PieceContext } from "./piece-context.ts";
import { numberOf } from "./size.ts";
import type { Part } from "./types.ts";

/** The innermost thing that a path runs through, or names; undefined for a lone part. */
export function thingAround(
	context: PieceContext,
	path: PathNode,
): Thing | undefined {
	for (let count = path.segments.length; count > 0; count--) {
		const head = { ...path, segments: path.segments.slice(0, count) };
		const meaning = resolve(context.frame, head);
		if (meaning?.kind === "thing") return meaning.thing;
	}
	return undefined;
}

/** The parts that share an owner with this one, itself among them. */
export function familyOf(context: PieceContext, part: Part): readonly Part[] {
	return context.collected.parts.filter((one) => one.owner === part.owner);
}

/** The smallest bounds around parts. */
export function boundsAround(parts: readonly Bounds[]): Bounds | undefined {
	const [first, ...rest] = parts;
	if (!first) return undefined;
	const min = [...first.min] as [...Bounds["min"]];
	const max = [...first.max] as [...Bounds["max"]];
	for (const part of rest)
		for (const axis of [0, 1, 2] as const) {
			if (numberOf(part.min[axis]) < numberOf(min[axis]))
				min[axis] = part.min[axis];
			if (numberOf(part.max[axis]) > numberOf(max[axis]))
				max[axis] = part.max[axis];
		}
	return { min, max };
}
