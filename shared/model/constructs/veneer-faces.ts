// The faces that a veneer covers: of a box the whole side outside, the clear room inside; of a lone part its own face.

import type { PathNode } from "../../../grammar/index.ts";
import {
	axisIndex,
	faceOf,
	isSide,
	type Meaning,
	pathText,
	type Side,
	sides,
} from "../meaning.ts";
import { oppositeOf, resolve, thicknessAxis } from "../names.ts";
import { boundsAround, familyOf, thingAround } from "../owners.ts";
import type { PieceContext } from "../piece-context.ts";
import type { Rows } from "../rows.ts";
import { minus, numberOf, plus, type Size } from "../size.ts";
import type { Part, TrimInfo, Way } from "../types.ts";

export interface CoveredFace {
	/** Of its sheet: `left`, `left-inside`. */
	readonly name: string;
	readonly part: Part;
	readonly face: "outside" | "inside";
	/** The way that the face looks. */
	readonly side: Side;
	/** Along the axis that it looks along. */
	readonly at: Size;
	/** The corners of the face; on the axis that it looks along they do not matter. */
	readonly min: readonly [Size, Size, Size];
	readonly max: readonly [Size, Size, Size];
}

/** The faces of a veneer's `on` and `faces` lines, in the order of the text. */
export function readFaces(context: PieceContext, rows: Rows): CoveredFace[] {
	const which = rows.first("faces")?.word("faces") ?? "outside";
	const wanted: readonly ("outside" | "inside")[] =
		which === "both" ? ["outside", "inside"] : [which as "outside" | "inside"];
	const faces: CoveredFace[] = [];
	const taken = new Set<string>();
	const add = (part: Part, face: "outside" | "inside", side: Side): void => {
		if (faces.some((one) => one.part === part && one.side === side)) return;
		const plain = face === "inside" ? `${part.name}-inside` : part.name;
		let name = plain;
		for (let count = 2; taken.has(name); count++) name = `${plain}-${count}`;
		taken.add(name);
		faces.push(coveredFace(context, part, face, side, name));
	};
	for (const ref of rows.first("on")?.refs("panels") ?? []) {
		// All parts of the box must stand: they bound the faces inside.
		thingAround(context, ref)?.parts();
		const meaning = resolve(context.frame, ref);
		if (!meaning) continue;
		if (meaning.kind === "face") {
			const { part, axis, outward } = meaning.face;
			if (!part || axis !== thicknessAxis(part)) {
				tellNoPanel(context, ref);
				continue;
			}
			const side = sideAlong(axis, outward);
			add(part, side === outsideOf(part) ? "outside" : "inside", side);
			continue;
		}
		for (const part of panelsOf(context, ref, meaning))
			for (const face of wanted)
				add(
					part,
					face,
					face === "outside" ? outsideOf(part) : oppositeOf(outsideOf(part)),
				);
	}
	return faces;
}

function panelsOf(
	context: PieceContext,
	ref: PathNode,
	meaning: Meaning,
): readonly Part[] {
	if (meaning.kind === "part") return [meaning.part];
	if (meaning.kind === "thing") {
		const panels = meaning.thing
			.parts()
			.filter(({ role }) => role !== "veneer" && role !== "trim");
		if (panels.length > 0) return panels;
	}
	tellNoPanel(context, ref);
	return [];
}

function tellNoPanel(context: PieceContext, ref: PathNode): void {
	const label = pathText(ref.segments);
	context.evaluation.report(
		"not-a-part",
		{ uri: context.frame.uri, span: ref.span },
		`\`${label}\` is no panel or broad face of one: name a panel (\`case.top\`), or a face of a part (\`seat.top\`)`,
	);
}

/** Which way the outside of a part looks: a panel away from its box, another part up, to the front or to the right. */
function outsideOf(part: Part): Side {
	const axis = thicknessAxis(part);
	if (
		(part.role === "panel" || part.role === "back") &&
		isSide(part.name) &&
		sides[part.name].axis === axis
	)
		return part.name;
	return sideAlong(axis, 1);
}

function sideAlong(axis: Way, outward: 1 | -1): Side {
	return (Object.keys(sides) as Side[]).find(
		(side) => sides[side].axis === axis && sides[side].outward === outward,
	) as Side;
}

function coveredFace(
	context: PieceContext,
	part: Part,
	face: "outside" | "inside",
	side: Side,
	name: string,
): CoveredFace {
	const { at } = faceOf(part, side, part.path);
	const panels = familyOf(context, part).filter(({ role }) => role === "panel");
	const base = { name, part, face, side, at };
	if (part.role !== "panel") return { ...base, min: part.min, max: part.max };
	if (face === "outside") {
		// The ends of the neighbours that run past this panel belong to the same side of the box.
		const around = boundsAround(panels) ?? part;
		return { ...base, min: around.min, max: around.max };
	}
	const min = [...part.min] as [Size, Size, Size];
	const max = [...part.max] as [Size, Size, Size];
	const family = familyOf(context, part).filter(
		({ role }) => role === "panel" || role === "back",
	);
	for (const axis of ["x", "y", "z"] as const) {
		if (axis === sides[side].axis) continue;
		const index = axisIndex[axis];
		const middle = (numberOf(part.min[index]) + numberOf(part.max[index])) / 2;
		for (const other of family) {
			if (other === part || thicknessAxis(other) !== axis) continue;
			const below = numberOf(other.max[index]) <= middle;
			if (below && numberOf(other.max[index]) > numberOf(min[index]))
				min[index] = other.max[index];
			if (!below && numberOf(other.min[index]) < numberOf(max[index]))
				max[index] = other.min[index];
		}
	}
	return { ...base, min, max };
}

/** The same face with the trim that it runs over: longer by what the strips stand before the edge. */
export function withTrims(
	face: CoveredFace,
	strips: readonly TrimInfo["strips"][number][],
): CoveredFace {
	const min = [...face.min] as [Size, Size, Size];
	const max = [...face.max] as [Size, Size, Size];
	for (const { part, covers } of strips) {
		if (covers !== face.part) continue;
		const axis = (["x", "y", "z"] as const).find(
			(way) => way === thicknessAxis(part) && way !== sides[face.side].axis,
		);
		if (!axis) continue;
		const index = axisIndex[axis];
		const before = numberOf(part.min[index]) >= numberOf(covers.max[index]);
		if (before) max[index] = plus(max[index], part.thick);
		else min[index] = minus(min[index], part.thick);
	}
	return { ...face, min, max };
}
