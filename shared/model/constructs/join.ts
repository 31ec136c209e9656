// `join`: how parts meet. Pairs that a box has made already get their glue and fasteners; others get their housings here.

import { asRouted } from "../as-cut.ts";
import { apartness, boxOf, contactOf, veneerBetween } from "../contact.ts";
import { lengthOf, positiveLength } from "../expressions.ts";
import { readFastening } from "../fastening.ts";
import { fitOf, gapRanges, housingAllowance } from "../fits.ts";
import type { JointDraft } from "../joint-drafts.ts";
import { axisIndex } from "../meaning.ts";
import { thicknessAxis } from "../names.ts";
import type { PartDraft } from "../part-builder.ts";
import { type PieceContext, partsOf } from "../piece-context.ts";
import { readingSlack } from "../readings.ts";
import { type Row, type Rows, readRows } from "../rows.ts";
import { minus, over, plus, type Size, stated, zero } from "../size.ts";
import type { Housing, JointKind, Part, Way } from "../types.ts";
import type { ConstructMeaning } from "./construct-meaning.ts";

export const join: ConstructMeaning = { phase: 1, settle: settleJoin };

const kinds = ["dado", "groove", "rabbet", "mitre", "tenon"] as const;

/** The row of a join block that says its kind, if one does. */
export function kindRow(rows: Rows): Row | undefined {
	for (const kind of kinds) {
		const row = rows.first(kind);
		if (row) return row;
	}
	return rows.first("butt");
}

export function settleJoin(context: PieceContext, row: Row): void {
	const rows = readRows(
		context.evaluation,
		context.frame.uri,
		row.block,
		"join",
	);
	const first = row.refs("parts").flatMap((ref) => partsOf(context, ref) ?? []);
	const others = row
		.refs("others")
		.flatMap((ref) => partsOf(context, ref) ?? []);
	const named = row.refs("others").length > 0;
	if (!named && row.refs("parts").length === 1 && first.length < 2) {
		context.evaluation.report(
			"joins-nothing",
			row.headline,
			"A joint wants two parts: name the second behind `to`",
		);
		return;
	}
	const kind = kindRow(rows);
	let joined = 0;
	for (const [a, b] of pairsOf(first, named ? others : undefined)) {
		const known = context.collected.joints.find(a, b);
		if (!named && !known && apartness(boxOf(a), boxOf(b)) > 0.3) continue;
		if (!named && !known && !contactOf(a, b)) continue;
		const joint = known ?? makeJoint(context, row, a, b, kind);
		joint.named ||= named;
		joint.origin = row.headline;
		tellOtherKind(context, joint, kind, known !== undefined);
		overrideGap(context, joint, rows);
		readFastening(context, rows, joint);
		joined++;
	}
	if (joined === 0 && !named && first.length > 1)
		context.evaluation.report(
			"joins-nothing",
			row.headline,
			"None of these parts touch one another: check where they are placed",
		);
}

function pairsOf(
	first: readonly Part[],
	others: readonly Part[] | undefined,
): [PartDraft, PartDraft][] {
	const pairs: [PartDraft, PartDraft][] = [];
	if (others) {
		for (const a of first)
			for (const b of others)
				if (a !== b) pairs.push([a as PartDraft, b as PartDraft]);
		return pairs;
	}
	for (let i = 0; i < first.length; i++)
		for (let j = i + 1; j < first.length; j++)
			pairs.push([first[i] as PartDraft, first[j] as PartDraft]);
	return pairs;
}

function makeJoint(
	context: PieceContext,
	row: Row,
	a: PartDraft,
	b: PartDraft,
	kind: Row | undefined,
): JointDraft {
	// The second part takes the first: `join shelf to side` houses the shelf in the side.
	const between = veneerBetween(context.collected.parts, a, b);
	const contact = contactOf(b, a, undefined, between);
	const flat = contact && thicknessAxis(b) === contact.axis;
	const host = flat || !contact || thicknessAxis(a) !== contact.axis ? b : a;
	const member = host === b ? a : b;
	const bothFlat =
		contact &&
		thicknessAxis(a) === contact.axis &&
		thicknessAxis(b) === contact.axis;
	const name = (kind?.head ?? (bothFlat ? "face" : "butt")) as JointKind;
	const joint = context.collected.joints.of(
		name,
		name === "tenon" ||
			name === "dado" ||
			name === "groove" ||
			name === "rabbet"
			? b
			: host,
		name === "tenon" ||
			name === "dado" ||
			name === "groove" ||
			name === "rabbet"
			? a
			: member,
		row.headline,
	);
	if (between > 0)
		joint.contact = contactOf(joint.host, joint.member, undefined, between);
	if (kind && kind.head !== "butt" && kind.head !== "mitre")
		cutHousing(context, joint, kind);
	return joint;
}

/** Takes the member's end out of the host, as deep as the line says; the member must have been placed to reach in. */
function cutHousing(context: PieceContext, joint: JointDraft, row: Row): void {
	const { host, member } = joint;
	const tenon = row.head === "tenon" ? row.expression("size") : undefined;
	const depth =
		tenon?.kind === "cross"
			? positiveLength(context.frame, tenon.sizes[0], "The tenon's length")
			: positiveLength(context.frame, row.expression("depth"), "The depth");
	if (!depth) return;
	const contact = tenon
		? tenonContact(host, member, depth)
		: contactOf(host, member);
	if (!contact) return;
	if (tenon) joint.contact = contact;
	const axis = axisIndex[contact.axis];
	const a = boxOf(host);
	const b = boxOf(member);
	const shared =
		Math.min(a.max[axis], b.max[axis]) - Math.max(a.min[axis], b.min[axis]);
	const clearance = tenon
		? undefined
		: positiveLength(context.frame, row.expression("clearance"), "A clearance");
	const left = clearance ? clearance.value.toNumber() : 0;
	const want = depth.value.toNumber() - left;
	const off = Math.max(0.05, readingSlack(context));
	if (Math.abs(shared - want) > off || shared <= 0) {
		const room = left > 0 ? ` with ${left.toFixed(1)} mm left` : "";
		context.evaluation.report(
			"does-not-reach",
			row.origin,
			`\`${member.name}\` reaches ${shared.toFixed(1)} mm into \`${host.name}\`, the ${row.head} is ${depth.value.toNumber().toFixed(1)} mm deep${room}: lengthen or move it by ${(want - shared).toFixed(1)} mm`,
		);
		return;
	}
	const min = [0, 1, 2].map((one) =>
		Math.max(a.min[one] as number, b.min[one] as number),
	) as [number, number, number];
	const max = [0, 1, 2].map((one) =>
		Math.min(a.max[one] as number, b.max[one] as number),
	) as [number, number, number];
	if (tenon?.kind === "cross") {
		cutTenon(context, joint, row, min, max, contact.axis, depth);
		return;
	}
	const wide = positiveLength(
		context.frame,
		row.expression("wide"),
		"The width",
	);
	const width =
		wide ?? plus(member.thick, stated(housingAllowance, "0.1 mm to enter"));
	const through = axisIndex[thicknessAxis(member)];
	const more = (width.value.toNumber() - member.thick.value.toNumber()) / 2;
	if (through !== axis) {
		min[through] -= more;
		max[through] += more;
	}
	// What is left free lies at the bottom of the housing, behind the member's edge.
	if (contact.toMember === 1) min[axis] -= left;
	else max[axis] += left;
	const slack = over(minus(width, member.thick), 2);
	host.house(
		housing(
			row.head as Housing["kind"],
			joint,
			width,
			depth,
			min,
			max,
			through !== axis
				? setOut(host, member, through, minus(zero, slack))
				: setOut(host, member, alongIn(host, axis), zero),
		),
	);
	addThicknessFit(context, joint, row, width, wide !== undefined);
}

/** Along the member where it reaches in as deep as the tenon is long: that may be more than it is thick. */
function tenonContact(
	host: PartDraft,
	member: PartDraft,
	depth: Size,
): ReturnType<typeof contactOf> {
	const along = member.place.axes[0].slice(1) as Way;
	const axis = axisIndex[along];
	const a = boxOf(host);
	const b = boxOf(member);
	const shared =
		Math.min(a.max[axis], b.max[axis]) - Math.max(a.min[axis], b.min[axis]);
	const reaches = Math.abs(shared - depth.value.toNumber()) <= 0.05;
	return contactOf(host, member, reaches ? along : undefined);
}

/** The member's shoulders are cut away, the host's mortise takes what is left. */
function cutTenon(
	context: PieceContext,
	joint: JointDraft,
	row: Row,
	min: [number, number, number],
	max: [number, number, number],
	axis: Way,
	depth: Size,
): void {
	const { host, member } = joint;
	const size = row.expression("size");
	if (size?.kind !== "cross") return;
	const width = positiveLength(
		context.frame,
		size.sizes[1],
		"The tenon's width",
	);
	const thick = positiveLength(
		context.frame,
		size.sizes[2],
		"The tenon's thickness",
	);
	if (!width || !thick) return;
	const through = thicknessAxis(member);
	const across = (["x", "y", "z"] as const).find(
		(one) => one !== axis && one !== through,
	);
	if (!across || through === axis) {
		context.evaluation.report(
			"does-not-reach",
			row.origin,
			`A tenon is cut on the end or edge of a part: \`${member.name}\` meets \`${host.name}\` with its face`,
		);
		return;
	}
	const tenonMin: [number, number, number] = [...min];
	const tenonMax: [number, number, number] = [...max];
	for (const [way, extent] of [
		[across, width],
		[through, thick],
	] as const) {
		const index = axisIndex[way];
		const room = max[index] - min[index];
		const inset = (room - extent.value.toNumber()) / 2;
		if (inset < -0.001) {
			context.evaluation.report(
				"does-not-reach",
				row.origin,
				`The tenon is ${(-2 * inset).toFixed(1)} mm larger than \`${member.name}\`: make it smaller than the part`,
			);
			return;
		}
		tenonMin[index] += inset;
		tenonMax[index] -= inset;
		// Shoulders on both sides.
		const lowMax: [number, number, number] = [...max];
		lowMax[index] = tenonMin[index];
		const highMin: [number, number, number] = [...min];
		highMin[index] = tenonMax[index];
		if (inset > 0.001) {
			member.house(shoulder(joint, width, depth, min, lowMax, axis));
			member.house(shoulder(joint, width, depth, highMin, max, axis));
		}
	}
	const way = alongIn(host, axisIndex[axis]);
	const inset =
		way === axisIndex[across]
			? width
			: way === axisIndex[through]
				? thick
				: undefined;
	host.house(
		housing(
			"mortise",
			joint,
			width,
			depth,
			tenonMin,
			tenonMax,
			setOut(
				host,
				member,
				way,
				inset ? over(minus(extentOn(member, way), inset), 2) : zero,
			),
		),
	);
	member.edges.push({
		where: "end",
		work: "tenon",
		text: `tenon ${size.sizes.map((one) => (one.kind === "measure" ? one.text : "…")).join(" x ")}`,
	});
	joint.fits.push(
		fitOf({
			what: "thickness of the tenon in its mortise",
			opening: asRouted(
				context,
				plus(thick, stated(housingAllowance, "0.1 mm to enter")),
				`the mortise in ${host.path}`,
			),
			member: thick,
			range: gapRanges.tenon,
			measure: "the mortise",
			origin: row.origin,
		}),
	);
}

function housing(
	kind: Housing["kind"],
	joint: JointDraft,
	width: Size,
	depth: Size,
	min: readonly [number, number, number],
	max: readonly [number, number, number],
	place: Pick<Housing, "datum" | "at">,
): Housing {
	return {
		kind,
		width,
		depth,
		...place,
		takes: joint.member.path,
		box: { min: [...min], max: [...max] },
	};
}

/** What is cut away beside a tenon, at the end of its part. */
function shoulder(
	joint: JointDraft,
	width: Size,
	depth: Size,
	min: readonly [number, number, number],
	max: readonly [number, number, number],
	way: Way,
): Housing {
	const { host, member } = joint;
	const axis = axisIndex[way];
	const first = (min[axis] as number) <= boxOf(member).min[axis] + 1e-6;
	return {
		kind: "rabbet",
		width,
		depth,
		datum: datumOf(member, axis, first ? 0 : 1),
		at: zero,
		takes: host.path,
		box: { min: [...min], max: [...max] },
	};
}

type Axis = 0 | 1 | 2;

const ends: readonly (readonly [string, string])[] = [
	["left", "right"],
	["lower", "upper"],
	["rear", "front"],
];

/** `from the left end`: an end lies along the grain, an edge across it, a face is broad. */
function datumOf(part: PartDraft, axis: Axis, which: 0 | 1): string {
	const of = part.place.axes.findIndex(
		(one) => axisIndex[one.slice(1) as Way] === axis,
	);
	return `from the ${ends[axis]?.[which]} ${["end", "edge", "face"][of]}`;
}

/** How far a housing begins from the left, lower or rear end or edge of its part: that of the member, and a bit more or less. */
function setOut(
	host: PartDraft,
	member: PartDraft,
	axis: Axis,
	more: Size,
): Pick<Housing, "datum" | "at"> {
	const near = minus(member.min[axis], host.min[axis]);
	const begins = near.value.sign() < 0 ? zero : plus(near, more);
	return { datum: datumOf(host, axis, 0), at: begins };
}

/** The axis along which a housing of that depth is set out in the host: its length, if it is not cut into its end. */
function alongIn(host: PartDraft, depth: Axis): Axis {
	const along = axisIndex[host.place.axes[0].slice(1) as Way];
	return along === depth
		? axisIndex[host.place.axes[1].slice(1) as Way]
		: along;
}

function extentOn(part: PartDraft, axis: Axis): Size {
	return minus(part.max[axis], part.min[axis]);
}

/** The fit of a member's thickness in its dado or groove. */
export function addThicknessFit(
	context: PieceContext,
	joint: JointDraft,
	row: Row,
	width: Size,
	written: boolean,
): void {
	const { host, member } = joint;
	const expression = row.expression("wide");
	const span = expression?.span;
	joint.fits.push(
		fitOf({
			what: `thickness of \`${member.name}\` in the ${row.head} of \`${host.name}\``,
			// A width that follows the member is cut to the very sheet: it moves with it. A written one does not.
			opening: asRouted(context, width, `the ${row.head} for ${member.path}`),
			member: member.thick,
			range: gapRanges.housing,
			measure: `the thickness of the sheet for \`${member.name}\``,
			origin: row.at(span ?? row.statement.span),
			...(written && span ? { written: { span, size: width } } : {}),
		}),
	);
}

function tellOtherKind(
	context: PieceContext,
	joint: JointDraft,
	kind: Row | undefined,
	known: boolean,
): void {
	if (!known || !kind || kind.head === joint.kind || kind.head === "butt")
		return;
	context.evaluation.report(
		"kind-differs",
		kind.origin,
		`\`${joint.host.name}\` and \`${joint.member.name}\` meet in a ${joint.kind} already: a ${kind.head} that changes their sizes belongs in a \`join\` of the box that they are panels of`,
	);
}

function overrideGap(
	context: PieceContext,
	joint: JointDraft,
	rows: Rows,
): void {
	const row = rows.first("gap");
	if (!row) return;
	const low = lengthOf(context.frame, row.expression("low"));
	const high = lengthOf(context.frame, row.expression("high"));
	if (!low || !high) return;
	for (let index = 0; index < joint.fits.length; index++) {
		const fit = joint.fits[index];
		if (fit)
			joint.fits[index] = {
				...fit,
				low: low.value,
				high: high.value,
				rangeFrom: "as the design says",
			};
	}
}
