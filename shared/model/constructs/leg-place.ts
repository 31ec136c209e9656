// Where a leg stands: the plane that it is against, its front or back face, and what is above it.

import {
	type Expression,
	type PathNode,
	spanOver,
} from "../../../grammar/index.ts";
import {
	type Bounds,
	faceOf,
	type Meaning,
	pathText,
	type Side,
	sides,
} from "../meaning.ts";
import { resolve } from "../names.ts";
import { boundsAround, familyOf, thingAround } from "../owners.ts";
import type { Held } from "../part-builder.ts";
import type { PieceContext } from "../piece-context.ts";
import { boundsOfMeaning, placeOn, tellNoDatum } from "../positions.ts";
import type { Row, Rows } from "../rows.ts";
import { minus, plus, type Size } from "../size.ts";
import type { Part, Way } from "../types.ts";
import { type Cover, coverOn } from "./coverings.ts";

export interface LegPlace {
	/** Layers lap the plane on both sides, or all stand on its inner side. */
	readonly style: "outside" | "under";
	/** Where x is the plane that the leg is against, over what lies on it, and the way out of the box from there. */
	readonly plane: Size;
	readonly outward: 1 | -1;
	/** The same plane without what lies on it; what does so there, and on the other hand. */
	readonly bare: Size;
	readonly cover: Cover | undefined;
	readonly otherCover: Cover | undefined;
	/** Its front or its back face. */
	readonly z: Held;
	/** What it is against, as a whole: a layer that ends at or below its lowest stands under it. */
	readonly around: Bounds;
	/** The parts of what it is against, as far as they stand when asked. */
	readonly family: () => readonly Part[];
}

/** The same place about the middle of what it is against, left and right. */
export function mirroredPlace(place: LegPlace): LegPlace {
	const { min, max } = place.around;
	return {
		...place,
		...over(
			minus(plus(min[0], max[0]), place.bare),
			place.outward === 1 ? -1 : 1,
			place.otherCover,
			place.cover,
		),
	};
}

type Plane = Pick<
	LegPlace,
	"plane" | "outward" | "bare" | "cover" | "otherCover"
>;

/** Sizes outside follow the layers inside: what stands against a veneered face stands over the veneer. */
function over(
	bare: Size,
	outward: 1 | -1,
	cover?: Cover,
	otherCover?: Cover,
): Plane {
	const plane = !cover
		? bare
		: outward === 1
			? plus(bare, cover.thick)
			: minus(bare, cover.thick);
	return { plane, outward, bare, cover, otherCover };
}

/** Reads `against`, `set-back` and `set-in`; undefined, and told, where they do not say enough. */
export function placeOfLeg(
	context: PieceContext,
	rows: Rows,
	name: string,
	leg: Row,
): LegPlace | undefined {
	const row = rows.first("against");
	const ref = row?.ref("of");
	if (!row || !ref) return undefined;
	const meaning = resolve(context.frame, ref);
	if (!meaning) return undefined;
	const style = row.word("side") === "under" ? "under" : "outside";
	const family = familyAt(context, ref, meaning);
	const around = aroundOf(context, ref, meaning, family);
	const label = pathText(ref.segments);
	if (!around) {
		context.evaluation.report(
			"not-a-datum",
			row.at(ref.span),
			`\`${label}\` is nothing that a leg can stand against: name a side of a box (\`outside case.left\`), or a part that it stands under`,
		);
		return undefined;
	}
	const across =
		style === "outside"
			? besidePlane(context, row, ref, meaning, label)
			: underPlane(context, rows, name, leg, around);
	const z = depthOf(context, rows, name, leg);
	return across && z && { style, ...across, z, around, family };
}

/** `outside case.left`: the plane is that face. */
function besidePlane(
	context: PieceContext,
	row: Row,
	ref: PathNode,
	meaning: Meaning,
	label: string,
): Plane | undefined {
	const face =
		meaning.kind === "face"
			? meaning.face
			: meaning.kind === "part" && meaning.panelSide
				? faceOf(meaning.part, meaning.panelSide, label)
				: undefined;
	if (face?.axis === "x") {
		const side = face.outward === 1 ? "right" : "left";
		return over(
			face.at,
			face.outward,
			coverOn(context, ref, side),
			coverOn(context, ref, side, true),
		);
	}
	context.evaluation.report(
		"not-a-datum",
		row.at(ref.span),
		face
			? `A leg stands beside a left or a right side, \`${label}\` is neither`
			: `\`${label}\` has two sides: write \`outside ${label}.left\` or \`outside ${label}.right\``,
	);
	return undefined;
}

/** `under seat`: the outer face stands as far in from a side as `set-in` says. */
function underPlane(
	context: PieceContext,
	rows: Rows,
	name: string,
	leg: Row,
	around: Bounds,
): Plane | undefined {
	const set = distanceFrom(context, rows, name, leg, "set-in", "x", [
		"left",
		"right",
	]);
	if (!set) return undefined;
	const middle = around.min[0].value.add(around.max[0].value);
	// From a left face it stands to the right of it; where the datum faces inward, by the nearer side.
	const outward =
		set.outward ?? (set.at.value.add(set.at.value).cmp(middle) < 0 ? -1 : 1);
	return over(set.at, outward);
}

function depthOf(
	context: PieceContext,
	rows: Rows,
	name: string,
	leg: Row,
): Held | undefined {
	const set = distanceFrom(context, rows, name, leg, "set-back", "z", [
		"front",
		"back",
	]);
	return set && { side: set.outward ?? 1, at: set.at };
}

/** A face of the leg, so far in from a datum; without a datum the readings are told. */
function distanceFrom(
	context: PieceContext,
	rows: Rows,
	name: string,
	leg: Row,
	head: "set-back" | "set-in",
	axis: Way,
	faces: readonly [Side, Side],
): { readonly at: Size; readonly outward: 1 | -1 | undefined } | undefined {
	const row = rows.first(head);
	const against = rows.first("against")?.ref("of")?.segments[0]?.text ?? "case";
	if (!row) {
		context.evaluation.report(
			"missing-line",
			leg.headline,
			`\`${name}\` does not say how far ${head === "set-back" ? "back" : "in"} it stands: add \`${head} 2 from ${against}.${faces[0]}\``,
		);
		return undefined;
	}
	const distance = row.expression("distance");
	const datum = row.ref("datum");
	if (!distance) return undefined;
	if (!datum) {
		tellNoDatum(
			context.frame,
			distance,
			faces.map((face) => `from ${against}.${face}`),
		);
		return undefined;
	}
	const at = offsetFrom(context, distance, datum, axis);
	if (!at) return undefined;
	const meaning = resolve(context.frame, datum);
	const outward =
		meaning?.kind === "face"
			? meaning.face.outward
			: meaning?.kind === "part" && meaning.panelSide
				? sides[meaning.panelSide].outward
				: undefined;
	return { at, outward };
}

/** So far in from a face. */
export function offsetFrom(
	context: PieceContext,
	distance: Expression,
	datum: PathNode,
	axis: Way,
	direction?: "down",
): Size | undefined {
	return placeOn(
		context.frame,
		{
			span: spanOver(distance.span, datum.span),
			offsets: [distance],
			direction,
			relation: "from",
			datum,
		},
		{ axis, readings: [], floor: context.origin[1] },
	);
}

function familyAt(
	context: PieceContext,
	ref: PathNode,
	meaning: Meaning,
): () => readonly Part[] {
	const part =
		meaning.kind === "part"
			? meaning.part
			: meaning.kind === "face"
				? meaning.face.part
				: undefined;
	if (part) return () => familyOf(context, part);
	const thing = thingAround(context, ref);
	return () => thing?.parts() ?? [];
}

function aroundOf(
	context: PieceContext,
	ref: PathNode,
	meaning: Meaning,
	family: () => readonly Part[],
): Bounds | undefined {
	if (meaning.kind !== "part" && meaning.kind !== "face")
		return boundsOfMeaning(meaning);
	return (
		thingAround(context, ref)?.bounds() ??
		boundsAround(family()) ??
		boundsOfMeaning(meaning)
	);
}
