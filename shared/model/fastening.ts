// What holds a joint: reads the lines of a `join` or `fasten` block into glue and fasteners at their places.

import { spanBehind, spanOfFirst } from "../../grammar/index.ts";
import type { Vec3 } from "../geometry/solid.ts";
import { lengthText } from "../units/format.ts";
import { Rational } from "../units/rational.ts";
import { boxOf, contactOf } from "./contact.ts";
import { evaluateAs, lengthOf, positiveLength } from "./expressions.ts";
import { fastenerSize } from "./fastener-sizes.ts";
import type { Contact, JointDraft } from "./joint-drafts.ts";
import { axisIndex, type Meaning, pathText } from "./meaning.ts";
import { resolve, thicknessAxis } from "./names.ts";
import type { PartDraft } from "./part-builder.ts";
import type { PieceContext } from "./piece-context.ts";
import { placesOn } from "./positions.ts";
import { noRows, type Row, type Rows, readRows } from "./rows.ts";
import { numberOf, type Size } from "./size.ts";
import type {
	FastenerKind,
	FastenerRun,
	FastenerSize,
	Part,
	Way,
} from "./types.ts";

const driven: readonly FastenerKind[] = ["screw", "brad", "pin", "nail"];

/** Adds to the joint what the lines of its block say. */
export function readFastening(
	context: PieceContext,
	rows: Rows,
	joint: JointDraft,
): void {
	const filled = rows.first("fill") !== undefined;
	for (const row of rows.all) {
		if (row.head === "glue") {
			joint.glue = true;
			const glue = row.ref("glue");
			if (glue) {
				const meaning = resolve(context.frame, glue);
				joint.glueName = pathText(glue.segments);
				if (meaning && !isGlue(meaning))
					context.evaluation.report(
						"not-a-material",
						row.at(glue.span),
						`\`${joint.glueName}\` is no glue: declare it with \`coating ${joint.glueName} { kind glue }\``,
					);
			}
			continue;
		}
		const kind = kindOf(row);
		if (!kind) continue;
		const size = fastenerSize(context.frame, kind, row.expression("size"));
		if (!size) continue;
		const contact = joint.contact ?? contactOf(joint.host, joint.member);
		if (!contact) continue;
		const place = row.block
			? readRows(
					context.evaluation,
					context.frame.uri,
					row.block,
					"fastener-place",
				)
			: noRows;
		const every = positiveLength(
			context.frame,
			row.expression("every"),
			"The spacing",
		);
		tellTooClose(context, row, every, size);
		const sided = sides(joint, contact, place.first("from")?.word("side"));
		const angle = evaluateAs(
			context.frame,
			place.first("angled")?.expression("angle"),
			"angle",
		);
		const pilotRow = place.first("pilot");
		const sinkRow = place.first("countersink");
		const pilot = pilotRow
			? (numberOrZero(context, pilotRow, "diameter") ?? 0)
			: undefined;
		const sink = sinkRow
			? (numberOrZero(context, sinkRow, "depth") ?? 0)
			: undefined;
		const across = driven.includes(kind)
			? entryPlane(contact, sided)
			: contact.min[axisIndex[contact.axis]];
		const points = pointsOf(context, row, place, contact, every, joint).map(
			(point): Vec3 => {
				const placed: [number, number, number] = [...point];
				placed[axisIndex[contact.axis]] = across;
				return placed;
			},
		);
		const run: FastenerRun = {
			size,
			counted: row.head !== "tack",
			origin: row.origin,
			through: sided.through,
			into: sided.into,
			points,
			direction: directionOf(contact.axis, sided.sense),
			angle: angle ? numberOf(angle) : 0,
			every,
			pilot,
			countersink: sink,
			filled,
			lineSpan: spanBehind(
				row.block ? spanOfFirst(row.block.span) : row.headline.span,
			),
			hasBlock: row.block !== undefined,
		};
		joint.fasteners.push(run);
	}
}

function kindOf(row: Row): FastenerKind | undefined {
	if (row.head === "tack") return row.word("kind") as FastenerKind | undefined;
	return driven.includes(row.head as FastenerKind) ||
		row.head === "dowel" ||
		row.head === "biscuit"
		? (row.head as FastenerKind)
		: undefined;
}

function isGlue(meaning: Meaning): boolean {
	return meaning.kind === "stock" && meaning.stock.coating?.kind === "glue";
}

function numberOrZero(
	context: PieceContext,
	row: Row,
	slot: string,
): number | undefined {
	const size = positiveLength(context.frame, row.expression(slot), "This size");
	return size && numberOf(size);
}

interface Sided {
	readonly through: PartDraft;
	readonly into: PartDraft;
	/** Along the contact's axis, the way it is driven. */
	readonly sense: 1 | -1;
}

/**
 * Which part a fastener enters first. Said by `from`; else the one that lies flat against the joint (a nail goes through
 * a panel into an edge), the thinner one where both do.
 */
function sides(
	joint: JointDraft,
	contact: Contact,
	from: string | undefined,
): Sided {
	const { host, member } = joint;
	const fromHost: Sided = {
		through: host,
		into: member,
		sense: contact.toMember,
	};
	const fromMember: Sided = {
		through: member,
		into: host,
		sense: contact.toMember === 1 ? -1 : 1,
	};
	if (from) {
		const axis = axisIndex[contact.axis];
		const lowFirst = contact.toMember === 1 ? fromHost : fromMember;
		const highFirst = contact.toMember === 1 ? fromMember : fromHost;
		if (from === "below" || from === "back") return lowFirst;
		if (from === "above" || from === "front") return highFirst;
		// The inner of the two parts is the one nearer to the middle of what they belong to.
		const middle = middleOf(joint, axis);
		const at = contact.min[axis];
		const innerIsLow = at >= middle;
		return (from === "inside") === innerIsLow ? lowFirst : highFirst;
	}
	const hostFlat = thicknessAxis(host) === contact.axis;
	const memberFlat = thicknessAxis(member) === contact.axis;
	if (hostFlat && memberFlat)
		return numberOf(host.thick) <= numberOf(member.thick)
			? fromHost
			: fromMember;
	return memberFlat ? fromMember : fromHost;
}

/** The middle of the box that one of the two belongs to, or of both parts. */
function middleOf(joint: JointDraft, axis: 0 | 1 | 2): number {
	const { host, member } = joint;
	const inner = [host, member].find((part) => part.role === "panel") ?? host;
	const family = joint.siblings(inner.owner);
	// A lone part has no family: the two of them have an inside together.
	const others = family.length > 1 ? family : [host, member];
	let low = Number.POSITIVE_INFINITY;
	let high = Number.NEGATIVE_INFINITY;
	for (const part of others) {
		const box = boxOf(part);
		low = Math.min(low, box.min[axis]);
		high = Math.max(high, box.max[axis]);
	}
	return (low + high) / 2;
}

/** Where on the axis it enters: the far face of the part that it goes through. */
function entryPlane(contact: Contact, sided: Sided): number {
	const axis = axisIndex[contact.axis];
	const box = boxOf(sided.through);
	return sided.sense === 1 ? box.min[axis] : box.max[axis];
}

function directionOf(axis: Way, sense: 1 | -1): Vec3 {
	const direction: [number, number, number] = [0, 0, 0];
	direction[axisIndex[axis]] = sense;
	return direction;
}

function tellTooClose(
	context: PieceContext,
	row: Row,
	every: Size | undefined,
	size: FastenerSize,
): void {
	const expression = row.expression("every");
	if (!every || !expression || numberOf(every) >= size.diameter) return;
	const { display } = context;
	const wide = Rational.near(size.diameter, 100);
	context.evaluation.report(
		"too-close",
		row.at(expression.span),
		`\`${size.label}\` is ${lengthText(wide, { ...display, suffix: true })} thick: at this spacing they would stand in each other, set them wider apart`,
	);
}

/** The points in the plane of the joint. */
function pointsOf(
	context: PieceContext,
	row: Row,
	place: Rows,
	contact: Contact,
	every: ReturnType<typeof positiveLength>,
	joint: JointDraft,
): Vec3[] {
	const axis = axisIndex[contact.axis];
	const others = ([0, 1, 2] as const).filter((one) => one !== axis) as [
		0 | 1 | 2,
		0 | 1 | 2,
	];
	const extent = (one: 0 | 1 | 2): number =>
		contact.max[one] - contact.min[one];
	const long = extent(others[0]) >= extent(others[1]) ? others[0] : others[1];
	const short = long === others[0] ? others[1] : others[0];
	const coordinates = new Map<0 | 1 | 2, number[]>([
		[short, [(contact.min[short] + contact.max[short]) / 2]],
	]);
	const said = saidPlaces(context, row, place, contact, others);
	for (const [one, places] of said) coordinates.set(one, places);
	for (const [one, places] of setIns(context, place, others, joint))
		if (!coordinates.has(one) || !said.has(one)) coordinates.set(one, places);
	if (!coordinates.has(long))
		coordinates.set(
			long,
			spread(
				contact.min[long],
				contact.max[long],
				every ? numberOf(every) : undefined,
			),
		);
	const points: Vec3[] = [];
	for (const along of coordinates.get(long) ?? [])
		for (const aside of coordinates.get(short) ?? []) {
			const point: [number, number, number] = [0, 0, 0];
			point[axis] = contact.min[axis];
			point[long] = along;
			point[short] = aside;
			points.push(point);
		}
	return points;
}

/** Equal steps of at most `every`, half a step at the ends; at least two on anything longer than two fingers. */
function spread(
	low: number,
	high: number,
	every: number | undefined,
): number[] {
	const length = high - low;
	const wanted = every ? Math.ceil(length / every - 1e-9) : 1;
	const count = Math.min(1_000, Math.max(wanted, every && length > 50 ? 2 : 1));
	return Array.from(
		{ length: count },
		(_, index) => low + (length * (index + 0.5)) / count,
	);
}

/** `at 1 1/4, 3 3/4 up from case.bottom`: the axis follows from the datum or direction. */
function saidPlaces(
	context: PieceContext,
	row: Row,
	place: Rows,
	contact: Contact,
	others: readonly (0 | 1 | 2)[],
): Map<0 | 1 | 2, number[]> {
	const said = new Map<0 | 1 | 2, number[]>();
	const positions = [
		row.position("at"),
		...place.every("at").map((one) => one.position("at")),
	];
	for (const position of positions) {
		if (!position) continue;
		const way = axisOfPosition(context, position);
		if (way === undefined) {
			// Tells what is wrong with it.
			placesOn(context.frame, position, {
				axis: contact.axis === "y" ? "x" : "y",
				readings: [
					"up from floor",
					"down from NAME.top",
					"right from NAME.left",
				],
				floor: context.origin[1],
			});
			continue;
		}
		const places = placesOn(context.frame, position, {
			axis: way,
			near: 1,
			readings: ["up from floor"],
			floor: context.origin[1],
		});
		if (!places) continue;
		const index = axisIndex[way];
		if (!others.includes(index)) {
			context.evaluation.report(
				"wrong-direction",
				{ uri: context.frame.uri, span: position.span },
				"This is measured the way that the fastener is driven: measure along the joint",
			);
			continue;
		}
		said.set(index, [...(said.get(index) ?? []), ...places.map(numberOf)]);
	}
	return said;
}

function axisOfPosition(
	context: PieceContext,
	position: NonNullable<ReturnType<Row["position"]>>,
): Way | undefined {
	if (position.relation === "above" || position.relation === "below")
		return "y";
	switch (position.direction) {
		case "up":
		case "down":
			return "y";
		case "left":
		case "right":
			return "x";
		case "forward":
		case "back":
			return "z";
	}
	if (!position.datum) return undefined;
	const meaning = resolve(context.frame, position.datum);
	if (meaning?.kind === "floor") return "y";
	return meaning?.kind === "face" ? meaning.face.axis : undefined;
}

/** `set-in 1 1/2 from outer.edges`: a row at each edge of the part; one row where the two would fall together. */
function setIns(
	context: PieceContext,
	place: Rows,
	others: readonly (0 | 1 | 2)[],
	joint: JointDraft,
): Map<0 | 1 | 2, number[]> {
	const rows = new Map<0 | 1 | 2, number[]>();
	for (const row of place.every("set-in")) {
		const distance = lengthOf(context.frame, row.expression("distance"));
		const ref = row.ref("edges");
		if (!distance || !ref) continue;
		const meaning = resolve(context.frame, ref);
		if (!meaning) continue;
		const inset = numberOf(distance);
		if (meaning.kind === "face") {
			const axis = axisIndex[meaning.face.axis];
			if (others.includes(axis)) {
				rows.set(axis, [
					numberOf(meaning.face.at) - meaning.face.outward * inset,
				]);
				continue;
			}
		}
		if (meaning.kind === "edges" && meaning.edges.length > 0) {
			const part: Part = (meaning.edges[0] as { part: Part }).part;
			const box = boxOf(part);
			const length = part.place.axes[0].slice(1) as Way;
			const axis = others.find((one) => one !== axisIndex[length]);
			if (axis !== undefined) {
				const low = box.min[axis] + inset;
				const high = box.max[axis] - inset;
				rows.set(
					axis,
					high - low > 6 ? [low, high] : [(box.min[axis] + box.max[axis]) / 2],
				);
				continue;
			}
		}
		context.evaluation.report(
			"not-a-datum",
			row.at(ref.span),
			`\`${pathText(ref.segments)}\` is no edge along this joint: name a face or the edges of \`${joint.member.name}\``,
		);
	}
	return rows;
}
