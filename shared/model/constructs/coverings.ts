// What lies on a face: veneer on a panel, a strip of trim on an edge. Whatever stands against that face stands off by it.

import type { PathNode } from "../../../grammar/index.ts";
import { positiveLength } from "../expressions.ts";
import { isSide, type Side, sides } from "../meaning.ts";
import { oppositeOf, resolve, thicknessAxis } from "../names.ts";
import { type PieceContext, stockOf } from "../piece-context.ts";
import type { Rows } from "../rows.ts";
import { named, type Size } from "../size.ts";
import type { Part, Way } from "../types.ts";

/** A veneer or a trim as its lines say it: nothing of it is worked out before somebody asks for its thickness. */
export interface Covering {
	readonly kind: "veneer" | "trim";
	readonly name: string;
	readonly context: PieceContext;
	readonly rows: Rows;
}

export interface Cover {
	readonly kind: Covering["kind"];
	readonly name: string;
	readonly thick: Size;
}

/**
 * What lies on the face that a path means on that side: `case.left`, `case.left.outside`, `seat` (its lower face).
 * `mirrored` asks for the same face on the other hand. Only the coverings whose `on` line names that panel are asked, and
 * only for their thickness: they may hang on whatever asks.
 */
export function coverOn(
	context: PieceContext,
	path: PathNode,
	side: Side,
	mirrored = false,
): Cover | undefined {
	const names = path.segments.map(({ text }) => text);
	const near = context.collected.coverings.filter(
		(one) =>
			one.context.prefix === context.prefix &&
			onPaths(one).some(([first]) => first === names[0]),
	);
	if (near.length === 0) return undefined;
	const meaning = resolve(context.frame, path);
	const part =
		meaning?.kind === "part"
			? meaning.part
			: meaning?.kind === "face" && facing(meaning.face) === side
				? meaning.face.part
				: undefined;
	if (!part) return undefined;
	const body = meaning?.kind === "face" ? names.slice(0, -1) : names;
	const asked = {
		body: mirrored ? body.map(otherHand) : body,
		side: mirrored ? otherSide(side) : side,
		part,
	};
	for (const one of near) {
		if (!onPaths(one).some((on) => covers(one, on, asked))) continue;
		const thick = thicknessOf(one);
		if (thick)
			return { kind: one.kind, name: one.name, thick: named(one.name, thick) };
	}
	return undefined;
}

interface Asked {
	/** Names of the part, without a face. */
	readonly body: readonly string[];
	readonly side: Side;
	readonly part: Part;
}

function onPaths({ kind, rows }: Covering): readonly string[][] {
	const refs = rows.first("on")?.refs(kind === "veneer" ? "panels" : "edges");
	return (refs ?? []).map(({ segments }) => segments.map(({ text }) => text));
}

function covers(
	covering: Covering,
	on: readonly string[],
	{ body, side, part }: Asked,
): boolean {
	const broad = sides[side].axis === thicknessAxis(part);
	const isPart = same(on, body);
	const last = on.at(-1) ?? "";
	const ofPart = same(on.slice(0, -1), body);
	if (covering.kind === "trim")
		return (
			!broad &&
			((ofPart && (last === "edges" || last === side)) ||
				// `case.front.edges`: the edges of all panels on that side.
				(last === "edges" &&
					on.at(-2) === side &&
					same(on.slice(0, -2), body.slice(0, -1))))
		);
	if (!broad) return false;
	const outside = outsideOf(part, body.at(-1));
	const inside = oppositeOf(outside);
	if (ofPart)
		return (
			(last === "outside" ? outside : last === "inside" ? inside : last) ===
			side
		);
	const ofBox = on.length < body.length && same(on, body.slice(0, on.length));
	if (!isPart && !ofBox) return false;
	const faces = covering.rows.first("faces")?.word("faces") ?? "outside";
	return faces === "both" || (faces === "inside" ? inside : outside) === side;
}

function same(a: readonly string[], b: readonly string[]): boolean {
	return a.length === b.length && a.every((name, index) => name === b[index]);
}

/** A panel looks away from its box; another part up, to the front or to the right. */
function outsideOf(part: Part, name: string | undefined): Side {
	const axis = thicknessAxis(part);
	if (
		(part.role === "panel" || part.role === "back") &&
		name !== undefined &&
		isSide(name) &&
		sides[name].axis === axis
	)
		return name;
	return ({ x: "right", y: "top", z: "front" } as const)[axis];
}

function facing(face: {
	readonly axis: Way;
	readonly outward: 1 | -1;
}): Side | undefined {
	return (Object.keys(sides) as Side[]).find(
		(side) =>
			sides[side].axis === face.axis && sides[side].outward === face.outward,
	);
}

function otherSide(side: Side): Side {
	return side === "left" || side === "right" ? oppositeOf(side) : side;
}

function otherHand(name: string): string {
	return isSide(name) ? otherSide(name) : name;
}

function thicknessOf({ kind, context, rows }: Covering): Size | undefined {
	return kind === "veneer"
		? stockOf(context, rows.first("of")?.ref("material"), ["veneer"])?.thick
		: positiveLength(
				context.frame,
				rows.first("thick")?.expression("thick"),
				"A thickness",
			);
}
