// What stands and lies in a box: dividers that make bays, and shelves in them.

import type { NameNode } from "../../../grammar/index.ts";
import { Rational } from "../../units/rational.ts";
import { asCut, asRouted } from "../as-cut.ts";
import { lessBoth, plusBoth } from "../both-sides.ts";
import { countOf, positiveLength, sizeAtLeastZero } from "../expressions.ts";
import { fitOf, gapRanges, housingAllowance } from "../fits.ts";
import {
	type Held,
	high,
	low,
	makePart,
	type PartDraft,
} from "../part-builder.ts";
import { stockOf } from "../piece-context.ts";
import { placeOn } from "../positions.ts";
import type { Row } from "../rows.ts";
import { markSource } from "../shop.ts";
import {
	fedBy,
	minus,
	numberOf,
	over,
	plus,
	type Size,
	stated,
	times,
} from "../size.ts";
import type { Declaration, Stock, Way } from "../types.ts";
import type { BoxWork } from "./box.ts";
import {
	cornerContact,
	cornerHousing,
	grainOf,
	type PanelName,
	type Panels,
} from "./box-panels.ts";
import { stagesOf } from "./part.ts";

/** The clear room between two uprights, world. */
export interface Bay {
	readonly left: PartDraft | undefined;
	readonly right: PartDraft | undefined;
	readonly min: Size;
	readonly max: Size;
}

export interface Bays {
	readonly parts: readonly PartDraft[];
	readonly bays: readonly Bay[];
}

interface Line {
	readonly row: Row;
	readonly stock: Stock;
	readonly thick: Size;
	readonly dado: Size | undefined;
	readonly setBack: Size | undefined;
	readonly names: readonly NameNode[];
}

function readLine(work: BoxWork, row: Row): Line | undefined {
	const { context } = work;
	const stock = stockOf(context, row.ref("material"), ["sheet", "board"]);
	const dado = row.expression("dado")
		? positiveLength(context.frame, row.expression("dado"), "The dado's depth")
		: undefined;
	const setBack = row.expression("set-back")
		? sizeAtLeastZero(context.frame, row.expression("set-back"), "The set-back")
		: undefined;
	if (!stock?.thick) return undefined;
	return {
		row,
		stock,
		thick: stock.thick,
		dado,
		setBack,
		names: row.names("names"),
	};
}

function declarationOf(
	work: BoxWork,
	line: Line,
	name: { readonly text: string; readonly span: Declaration["nameSpan"] },
): Declaration {
	return {
		kind: "part",
		name: name.text,
		path: `${work.declaration.path}.${name.text}`,
		origin: line.row.origin,
		nameSpan: name.span,
		doc: line.row.statement.doc,
	};
}

/** From the back's front face to the front of the box, less the set-back. */
function deep(work: BoxWork, line: Line): Size {
	const { plan } = work;
	return line.setBack
		? minus(plan.inside.depth, line.setBack)
		: plan.inside.depth;
}

/** The dividers of one line. */
export function buildDividers(
	work: BoxWork,
	panels: Panels,
	row: Row,
): PartDraft[] {
	const line = readLine(work, row);
	const places = line && dividerPlaces(work, line);
	if (!line || !places) return [];
	return line.names.flatMap((name, index) => {
		const place = places[index];
		return (place && buildDivider(work, panels, line, name, place)) ?? [];
	});
}

/** What the dividers leave between the sides, from the left. */
export function baysBetween(
	work: BoxWork,
	panels: Panels,
	parts: readonly PartDraft[],
): Bays {
	const { plan, at } = work;
	const inner = {
		min: plus(at[0], plan.thick.left),
		max: minus(plus(at[0], plan.outside.width), plan.thick.right),
	};
	const sorted = [...parts].sort(
		(a, b) => numberOf(a.min[0]) - numberOf(b.min[0]),
	);
	const bays: Bay[] = [];
	let left: PartDraft | undefined = panels.left;
	let from = inner.min;
	for (const divider of sorted) {
		bays.push({ left, right: divider, min: from, max: divider.min[0] });
		left = divider;
		from = divider.max[0];
	}
	bays.push({ left, right: panels.right, min: from, max: inner.max });
	return { parts, bays };
}

function dividerPlaces(work: BoxWork, line: Line): Held[] | undefined {
	const { plan, at, context } = work;
	const { row } = line;
	const start = plus(at[0], plan.thick.left);
	const count = line.names.length;
	const position = row.position("at");
	if (position) {
		const place = placeOn(context.frame, position, {
			axis: "x",
			near: 1,
			readings: ["right from left.inside", "left from right.inside"],
			floor: context.origin[1],
		});
		if (!place) return undefined;
		if (count > 1) {
			context.evaluation.report(
				"several-in-one-place",
				row.headline,
				"Several dividers cannot stand in one place: write a line for each, or `equal`",
			);
			return undefined;
		}
		const reverse = runsLeft(position);
		return [reverse ? high(place) : low(place)];
	}
	if (row.has("centred") && count === 1)
		return [low(plus(start, over(minus(plan.inside.width, line.thick), 2)))];
	if (row.has("equal") || row.has("centred")) {
		const bay = over(
			minus(plan.inside.width, times(count, line.thick)),
			count + 1,
		);
		return line.names.map((_, index) =>
			low(
				plus(
					start,
					index === 0
						? bay
						: plus(times(index + 1, bay), times(index, line.thick)),
				),
			),
		);
	}
	context.evaluation.report(
		"datum-unclear",
		row.headline,
		`Where does \`${line.names[0]?.text ?? "it"}\` stand? Write \`centred\`, \`equal\`, or a place as in \`12 right from left.inside\``,
	);
	return undefined;
}

/** A position that counts to the left holds the right face of the thing. */
function runsLeft(position: NonNullable<ReturnType<Row["position"]>>): boolean {
	if (position.direction) return position.direction === "left";
	const last = position.datum?.segments.map((one) => one.text) ?? [];
	return last[0] === "right";
}

function buildDivider(
	work: BoxWork,
	panels: Panels,
	line: Line,
	name: { readonly text: string; readonly span: Declaration["nameSpan"] },
	place: Held,
): PartDraft | undefined {
	const { plan, at, context } = work;
	const into = (host: PanelName): Size | undefined =>
		panels[host]
			? (line.dado ?? plan.housing(host, name.text)?.depth)
			: undefined;
	const bottom = into("bottom");
	const top = into("top");
	const tall = plusBoth(plan.inside.height, bottom, top);
	const wide = deep(work, line);
	const grain = grainOf(work, name.text) ?? "y";
	const along: Way = grain === "z" ? "z" : "y";
	const y = plus(at[1], plan.thick.bottom);
	const part = makePart(context, {
		path: `${work.name}.${name.text}`,
		role: "divider",
		declaration: declarationOf(work, line, name),
		owner: work.name,
		stock: line.stock,
		along,
		through: "x",
		length: along === "y" ? tall : wide,
		width: along === "y" ? wide : tall,
		thick: line.thick,
		held: [
			place,
			low(bottom ? minus(y, bottom) : y),
			low(plus(at[2], plan.backFront)),
		],
		stages: stagesOf(
			work.context,
			line.stock,
			tall,
			wide,
			line.thick,
			undefined,
		),
	});
	let first = true;
	for (const host of ["bottom", "top"] as const) {
		const panel = panels[host];
		if (!panel) continue;
		house(work, line, panel, part, host, into(host));
		if (!first || !panels.bottom || !panels.top) continue;
		first = false;
		const joint = context.collected.joints.find(panel, part);
		const member = along === "y" ? part.length : part.width;
		joint?.fits.push(
			fitOf({
				what: `length of \`${part.name}\` between bottom and top`,
				opening: openingUp(work, panels, part, bottom, top),
				member: asCut(context, member),
				range: gapRanges.between,
				measure:
					"the height inside the dry assembly, and the depth of the dadoes",
				origin: line.row.at(name.span),
			}),
		);
	}
	return part;
}

/** Bottom to top as built: the sides cut to their stop less both thicknesses, or the sides alone between them. */
function openingUp(
	work: BoxWork,
	panels: Panels,
	part: PartDraft,
	bottom: Size | undefined,
	top: Size | undefined,
): Size {
	const { context, plan } = work;
	const side = panels.left ?? panels.right;
	const sidesRun =
		plan.mitred ||
		(side
			? plan.runsOver(side === panels.left ? "left" : "right", "top")
			: false);
	const built = side
		? sidesRun
			? lessBoth(asCut(context, side.length), plan.thick.bottom, plan.thick.top)
			: asCut(context, side.length)
		: plan.inside.height;
	return plusBoth(
		built,
		bottom &&
			asRouted(context, bottom, `the depth of the dadoes of ${part.path}`),
		top && asRouted(context, top, `the depth of the dadoes of ${part.path}`),
	);
}

/** Cuts the housing and makes the joint of a divider or shelf with one of its hosts. */
function house(
	work: BoxWork,
	line: Line,
	host: PartDraft,
	member: PartDraft,
	hostName: PanelName,
	depth: Size | undefined,
	kind: "dado" | "pins" | "butt" = depth ? "dado" : "butt",
): void {
	const { context, plan } = work;
	const joint = context.collected.joints.of(
		kind,
		host,
		member,
		line.row.headline,
		cornerContact(host, member, hostName, depth),
	);
	if (!depth) return;
	const said = plan.housing(host.name, member.name);
	const expression =
		line.row.expression("wide") ?? said?.row.expression("wide");
	const written = line.row.expression("wide")
		? positiveLength(
				context.frame,
				line.row.expression("wide"),
				"The dado's width",
			)
		: said?.wide;
	const width =
		written ?? plus(line.thick, stated(housingAllowance, "0.1 mm to enter"));
	host.house(cornerHousing(host, member, hostName, "dado", width, depth));
	joint.fits.push(
		fitOf({
			what: `thickness of \`${member.name}\` in the dado of \`${host.name}\``,
			opening: asRouted(context, width, `the dado for ${member.path}`),
			member: line.thick,
			range: gapRanges.housing,
			measure: `the thickness of the sheet for \`${member.name}\``,
			origin: line.row.at(expression?.span ?? line.row.headline.span),
			...(written && expression
				? { written: { span: expression.span, size: written } }
				: {}),
		}),
	);
}

/** The shelves of one line. */
export function buildShelves(
	work: BoxWork,
	panels: Panels,
	bays: readonly Bay[],
	row: Row,
): PartDraft[] {
	const line = readLine(work, row);
	const bay = line && bayOf(work, row, bays);
	const places = bay && shelfPlaces(work, line);
	if (!line || !bay || !places) return [];
	return line.names.flatMap((name, index) => {
		const place = places[index];
		return place ? [buildShelf(work, panels, line, bay, name, place)] : [];
	});
}

function bayOf(work: BoxWork, row: Row, bays: readonly Bay[]): Bay | undefined {
	const { context } = work;
	const expression = row.expression("bay");
	if (!expression) {
		if (bays.length === 1) return bays[0];
		context.evaluation.report(
			"bay-unclear",
			row.headline,
			`The dividers make ${bays.length} bays: say which, as in \`bay 1\` (counted from the left)`,
		);
		return undefined;
	}
	const number = countOf(context.frame, expression);
	const bay = number === undefined ? undefined : bays[number - 1];
	if (number !== undefined && !bay)
		context.evaluation.report(
			"bay-unclear",
			row.at(expression.span),
			`There is no bay ${number}: the dividers make ${bays.length === 1 ? "one bay" : `${bays.length} bays`}`,
		);
	return bay;
}

function shelfPlaces(work: BoxWork, line: Line): Held[] | undefined {
	const { plan, at, context } = work;
	const { row } = line;
	const count = line.names.length;
	const position = row.position("at");
	if (position) {
		const place = placeOn(context.frame, position, {
			axis: "y",
			near: 1,
			readings: ["above bottom", "below top", "up from floor"],
			floor: context.origin[1],
		});
		if (!place) return undefined;
		if (count > 1) {
			context.evaluation.report(
				"several-in-one-place",
				row.headline,
				"Several shelves cannot lie in one place: write a line for each, or `equal`",
			);
			return undefined;
		}
		const hangs =
			position.relation === "below" || position.direction === "down";
		return [hangs ? high(place) : low(place)];
	}
	if (row.has("equal")) {
		const start = plus(at[1], plan.thick.bottom);
		const clear = over(
			minus(plan.inside.height, times(count, line.thick)),
			count + 1,
		);
		return line.names.map((_, index) =>
			low(
				plus(
					start,
					index === 0
						? clear
						: plus(times(index + 1, clear), times(index, line.thick)),
				),
			),
		);
	}
	context.evaluation.report(
		"datum-unclear",
		row.headline,
		`How high does \`${line.names[0]?.text ?? "it"}\` lie? Write a place, as in \`12 above bottom\`, or \`equal\``,
	);
	return undefined;
}

function buildShelf(
	work: BoxWork,
	panels: Panels,
	line: Line,
	bay: Bay,
	name: { readonly text: string; readonly span: Declaration["nameSpan"] },
	place: Held,
): PartDraft {
	const { plan, at, context } = work;
	const onPins = line.row.has("on");
	const clearance = line.row.expression("clearance")
		? sizeAtLeastZero(
				context.frame,
				line.row.expression("clearance"),
				"The clearance",
			)
		: onPins
			? stated(Rational.ONE, "1 mm of clearance")
			: undefined;
	const into = (host: PartDraft | undefined): Size | undefined =>
		host && !onPins
			? (line.dado ?? plan.housing(host.name, name.text)?.depth)
			: undefined;
	const left = into(bay.left);
	const right = into(bay.right);
	const clear = minus(bay.max, bay.min);
	const long =
		onPins || clearance
			? lessBoth(clear, clearance, clearance)
			: plusBoth(clear, left, right);
	const wide = deep(work, line);
	const grain = grainOf(work, name.text) ?? "x";
	const along: Way = grain === "z" ? "z" : "x";
	const x = clearance
		? plus(bay.min, clearance)
		: left
			? minus(bay.min, left)
			: bay.min;
	const part = makePart(context, {
		path: `${work.name}.${name.text}`,
		role: "shelf",
		declaration: declarationOf(work, line, name),
		owner: work.name,
		stock: line.stock,
		along,
		through: "y",
		length: along === "x" ? long : wide,
		width: along === "x" ? wide : long,
		thick: line.thick,
		held: [low(x), place, low(plus(at[2], plan.backFront))],
		stages: stagesOf(
			work.context,
			line.stock,
			long,
			wide,
			line.thick,
			undefined,
		),
	});
	const member = along === "x" ? part.length : part.width;
	for (const [hostName, host, depth] of [
		["left", bay.left, left],
		["right", bay.right, right],
	] as const) {
		if (!host) continue;
		house(
			work,
			line,
			host,
			part,
			hostName,
			depth,
			onPins ? "pins" : depth ? "dado" : "butt",
		);
	}
	const host = bay.left;
	const joint = host && context.collected.joints.find(host, part);
	if (joint && bay.right)
		joint.fits.push(
			fitOf({
				what: `length of \`${part.name}\` between its sides`,
				opening: openingAcross(work, panels, bay, left, right, part),
				member: asCut(context, member),
				range: onPins ? gapRanges.pins : gapRanges.between,
				measure: `the clear width for \`${part.name}\` in the dry assembly`,
				origin: line.row.at(name.span),
			}),
		);
	return part;
}

/** Left to right as built: top and bottom cut to their stop; a divider's place is set out by tape. */
function openingAcross(
	work: BoxWork,
	panels: Panels,
	bay: Bay,
	left: Size | undefined,
	right: Size | undefined,
	part: PartDraft,
): Size {
	const { context, plan } = work;
	const cap = panels.bottom ?? panels.top;
	const whole = bay.left === panels.left && bay.right === panels.right;
	let built: Size;
	if (whole && cap) {
		const capName = panels.bottom ? "bottom" : "top";
		const runs = !plan.mitred && plan.runsOver(capName, "left");
		const depth = plan.housing("left", capName)?.depth;
		const other = plan.housing("right", capName)?.depth;
		built =
			runs || plan.mitred
				? lessBoth(
						asCut(context, cap.length),
						plan.thick.left,
						plan.thick.right,
					)
				: lessBoth(
						asCut(context, cap.length),
						depth && asRouted(context, depth, `the housings for ${cap.path}`),
						other && asRouted(context, other, `the housings for ${cap.path}`),
					);
	} else {
		built = { ...minus(bay.max, bay.min), feeds: [] };
		for (const side of [bay.left, bay.right])
			if (side?.role === "divider")
				built = fedBy(built, markSource(context.shop, side.path));
	}
	return plusBoth(
		built,
		left && asRouted(context, left, `the depth of the dadoes of ${part.path}`),
		right &&
			asRouted(context, right, `the depth of the dadoes of ${part.path}`),
	);
}
