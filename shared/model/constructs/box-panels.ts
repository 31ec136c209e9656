// The four panels of a box and how their corners meet.

import type { Outline } from "../../geometry/solid.ts";
import { asRouted } from "../as-cut.ts";
import { lessBoth } from "../both-sides.ts";
import { fitOf, gapRanges, housingAllowance } from "../fits.ts";
import type { Contact } from "../joint-drafts.ts";
import {
	high,
	low,
	makePart,
	type PartDraft,
	type PartSpec,
} from "../part-builder.ts";
import { minus, numberOf, over, plus, type Size, stated } from "../size.ts";
import type { EdgeWork, Housing, Way } from "../types.ts";
import type { BoxWork } from "./box.ts";
import { stagesOf } from "./part.ts";

export type PanelName = "top" | "bottom" | "left" | "right";
export const panelNames: readonly PanelName[] = [
	"top",
	"bottom",
	"left",
	"right",
];

export type Panels = Readonly<Partial<Record<PanelName, PartDraft>>>;

const neighbours: Readonly<Record<PanelName, readonly [PanelName, PanelName]>> =
	{
		top: ["left", "right"],
		bottom: ["left", "right"],
		left: ["bottom", "top"],
		right: ["bottom", "top"],
	};

export function buildPanels(work: BoxWork): Panels {
	const panels: Partial<Record<PanelName, PartDraft>> = {};
	for (const name of panelNames) {
		const stock = work.plan.stock[name];
		if (stock) panels[name] = buildPanel(work, name, stock);
	}
	joinCorners(work, panels);
	return panels;
}

function buildPanel(
	work: BoxWork,
	name: PanelName,
	stock: PartSpec["stock"],
): PartDraft {
	const { plan, at, context } = work;
	const upright = name === "left" || name === "right";
	const along: Way = upright ? "y" : "x";
	const whole = upright ? plan.outside.height : plan.outside.width;
	const origin = upright ? at[1] : at[0];
	const [near, far] = neighbours[name];
	const nearCut = endCut(work, name, near);
	const farCut = endCut(work, name, far);
	const length = lessBoth(whole, nearCut, farCut);
	const width =
		plan.back?.backing === "applied"
			? minus(plan.outside.depth, plan.panelsFrom)
			: plan.outside.depth;
	const thick = plan.thick[name];
	const start = nearCut ? plus(origin, nearCut) : origin;
	const zLow = plan.panelsFrom.value.isZero()
		? at[2]
		: plus(at[2], plan.panelsFrom);
	const outer =
		name === "left"
			? low(at[0])
			: name === "right"
				? high(plus(at[0], plan.outside.width))
				: name === "bottom"
					? low(at[1])
					: high(plus(at[1], plan.outside.height));
	const edges: EdgeWork[] = [];
	const outlines: Outline[] = [];
	if (plan.mitred) {
		outlines.push(mitreOutline(work, name));
		edges.push({ where: "both ends", work: "mitre", text: "45° mitre" });
	}
	const row = plan.rowOf[name];
	const grain = grainOf(work, name) ?? along;
	const swapped = grain !== along;
	return makePart(context, {
		path: `${work.name}.${name}`,
		role: "panel",
		declaration: {
			...work.declaration,
			kind: "part",
			name,
			path: `${work.declaration.path}.${name}`,
			origin: row?.origin ?? work.declaration.origin,
			nameSpan:
				row?.names("panels").find((one) => one.text === name)?.span ??
				work.declaration.nameSpan,
			doc: "",
		},
		owner: work.name,
		stock,
		along: swapped ? "z" : along,
		through: upright ? "x" : "y",
		length: swapped ? width : length,
		width: swapped ? length : width,
		thick,
		held: upright
			? [outer, low(start), low(zLow)]
			: [low(start), outer, low(zLow)],
		outlines,
		edges,
		stages: stagesOf(
			work.context,
			stock,
			swapped ? width : length,
			swapped ? length : width,
			thick,
			undefined,
		),
	});
}

/** What a `grain` line says of a panel. */
export function grainOf(work: BoxWork, name: string): Way | undefined {
	const ways: Readonly<Record<string, Way>> = {
		across: "x",
		up: "y",
		deep: "z",
	};
	for (const row of work.rows.every("grain"))
		if (row.refs("parts").some((ref) => ref.segments.at(-1)?.text === name))
			return ways[row.word("direction") ?? ""];
	return undefined;
}

/** How much of a panel's end its neighbour takes: its thickness less what the panel is housed in it. */
function endCut(
	work: BoxWork,
	name: PanelName,
	neighbour: PanelName,
): Size | undefined {
	const { plan } = work;
	if (!plan.stock[neighbour] || plan.mitred) return undefined;
	if (plan.runsOver(name, neighbour)) return undefined;
	const housing = plan.housing(neighbour, name);
	const thick = plan.thick[neighbour];
	return housing ? minus(thick, housing.depth) : thick;
}

function mitreOutline(work: BoxWork, name: PanelName): Outline {
	const { plan, at } = work;
	const x0 = numberOf(at[0]);
	const y0 = numberOf(at[1]);
	const x1 = x0 + numberOf(plan.outside.width);
	const y1 = y0 + numberOf(plan.outside.height);
	const inner = {
		x0: x0 + numberOf(plan.thick.left),
		x1: x1 - numberOf(plan.thick.right),
		y0: y0 + numberOf(plan.thick.bottom),
		y1: y1 - numberOf(plan.thick.top),
	};
	switch (name) {
		case "top":
			return {
				plane: "xy",
				points: [
					[inner.x0, inner.y1],
					[inner.x1, inner.y1],
					[x1, y1],
					[x0, y1],
				],
			};
		case "bottom":
			return {
				plane: "xy",
				points: [
					[x0, y0],
					[x1, y0],
					[inner.x1, inner.y0],
					[inner.x0, inner.y0],
				],
			};
		case "left":
			return {
				plane: "xy",
				points: [
					[x0, y0],
					[inner.x0, inner.y0],
					[inner.x0, inner.y1],
					[x0, y1],
				],
			};
		case "right":
			return {
				plane: "xy",
				points: [
					[inner.x1, inner.y0],
					[x1, y0],
					[x1, y1],
					[inner.x1, inner.y1],
				],
			};
	}
}

/** Makes the four corner joints, cuts their housings and adds their fits. */
function joinCorners(work: BoxWork, panels: Panels): void {
	const { plan, context } = work;
	for (const upright of ["left", "right"] as const)
		for (const level of ["bottom", "top"] as const) {
			const side = panels[upright];
			const cap = panels[level];
			if (!side || !cap) continue;
			const sideRuns = plan.mitred || plan.runsOver(upright, level);
			const host = sideRuns ? side : cap;
			const member = sideRuns ? cap : side;
			const hostName = sideRuns ? upright : level;
			const memberName = sideRuns ? level : upright;
			const housing = plan.mitred
				? undefined
				: plan.housing(hostName, memberName);
			const contact = cornerContact(host, member, hostName, housing?.depth);
			const joint = context.collected.joints.of(
				plan.mitred ? "mitre" : (housing?.kind ?? "butt"),
				host,
				member,
				plan.rowOf[memberName]?.headline ?? member.declaration.origin,
				contact,
			);
			if (!housing) continue;
			const width =
				housing.wide ??
				(housing.kind === "rabbet"
					? member.thick
					: plus(member.thick, stated(housingAllowance, "0.1 mm to enter")));
			host.house(
				cornerHousing(
					host,
					member,
					hostName,
					housing.kind,
					width,
					housing.depth,
				),
			);
			if (housing.kind === "rabbet") continue;
			const span = housing.row.expression("wide")?.span;
			joint.fits.push(
				fitOf({
					what: `thickness of \`${member.name}\` in the ${housing.kind} of \`${host.name}\``,
					opening: asRouted(
						context,
						width,
						`the ${housing.kind} for ${member.path}`,
					),
					member: member.thick,
					range: gapRanges.housing,
					measure: `the thickness of the sheet for \`${member.name}\``,
					origin: housing.row.at(span ?? housing.row.statement.span),
					...(span && housing.wide
						? { written: { span, size: housing.wide } }
						: {}),
				}),
			);
		}
}

const inward: Readonly<
	Record<PanelName, { readonly axis: Way; readonly sense: 1 | -1 }>
> = {
	left: { axis: "x", sense: 1 },
	right: { axis: "x", sense: -1 },
	bottom: { axis: "y", sense: 1 },
	top: { axis: "y", sense: -1 },
};

export function inwardOf(name: PanelName): {
	readonly axis: Way;
	readonly sense: 1 | -1;
} {
	return inward[name];
}

/** The face of the host that the member meets, less the depth of its housing. */
export function cornerContact(
	host: PartDraft,
	member: PartDraft,
	hostName: PanelName,
	depth?: Size,
): Contact {
	const { axis, sense } = inward[hostName];
	const index = axis === "x" ? 0 : axis === "y" ? 1 : 2;
	const a = host.bounds;
	const b = member.bounds;
	const min: [number, number, number] = [0, 0, 0];
	const max: [number, number, number] = [0, 0, 0];
	for (const one of [0, 1, 2] as const) {
		min[one] = Math.max(a.min[one], b.min[one]);
		max[one] = Math.min(a.max[one], b.max[one]);
	}
	const face = sense === 1 ? a.max[index] : a.min[index];
	const at = face - sense * (depth ? numberOf(depth) : 0);
	min[index] = at;
	max[index] = at;
	return { axis, toMember: sense, min, max };
}

/** A housing in the inside face of a panel, as wide as said, centred on the member; a rabbet runs out at the end. */
export function cornerHousing(
	host: PartDraft,
	member: PartDraft,
	hostName: PanelName,
	kind: Housing["kind"],
	width: Size,
	depth: Size,
): Housing {
	const { axis, sense } = inward[hostName];
	const index = axis === "x" ? 0 : 1;
	const other = index === 0 ? 1 : 0;
	const a = host.bounds;
	const b = member.bounds;
	const min: [number, number, number] = [0, 0, 0];
	const max: [number, number, number] = [0, 0, 0];
	const face = sense === 1 ? a.max[index] : a.min[index];
	const deep = numberOf(depth);
	min[index] = sense === 1 ? face - deep : face;
	max[index] = sense === 1 ? face : face + deep;
	const wide = numberOf(width);
	const slack = (wide - (b.max[other] - b.min[other])) / 2;
	min[other] = b.min[other] - slack;
	max[other] = b.max[other] + slack;
	min[2] = Math.max(a.min[2], b.min[2]);
	max[2] = Math.min(a.max[2], b.max[2]);
	const near = minus(member.min[other], host.min[other]);
	const start = minus(near, over(minus(width, member.thick), 2));
	return {
		kind,
		width,
		depth,
		datum: other === 1 ? "from the lower end" : "from the left end",
		at: start,
		takes: member.path,
		box: { min, max },
	};
}
