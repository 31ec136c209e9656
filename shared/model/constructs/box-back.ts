// The back of a box: let in, set in, or applied.

import { asCut, asRouted } from "../as-cut.ts";
import { plusBoth } from "../both-sides.ts";
import { fitOf, type GapRange, gapRanges, housingAllowance } from "../fits.ts";
import type { Contact } from "../joint-drafts.ts";
import { low, makePart, type PartDraft } from "../part-builder.ts";
import {
	minus,
	numberOf,
	over,
	plus,
	type Size,
	stated,
	times,
	zero,
} from "../size.ts";
import type { Housing, JointKind, Way } from "../types.ts";
import type { BoxWork } from "./box.ts";
import {
	grainOf,
	inwardOf,
	type PanelName,
	type Panels,
	panelNames,
} from "./box-panels.ts";
import type { BackPlan } from "./box-plan.ts";
import { stagesOf } from "./part.ts";

export function buildBack(
	work: BoxWork,
	panels: Panels,
): { readonly part: PartDraft | undefined } {
	const { plan } = work;
	const { back } = plan;
	if (!back) return { part: undefined };
	const extent = openings(work, panels, back);
	const wide = minusIf(extent.width, back.clearance);
	const tall = minusIf(extent.height, back.clearance);
	const along: Way =
		grainOf(work, "back") ??
		(wide.value.cmp(tall.value) > 0 ? ("x" as const) : ("y" as const));
	const length = along === "x" ? wide : tall;
	const width = along === "x" ? tall : wide;
	const half = over(back.clearance, 2);
	const name = back.row.statement.headSpan;
	const part = makePart(work.context, {
		path: `${work.name}.back`,
		role: "back",
		declaration: {
			...work.declaration,
			kind: "part",
			name: "back",
			path: `${work.declaration.path}.back`,
			origin: back.row.origin,
			nameSpan: name,
			doc: back.row.statement.doc,
		},
		owner: work.name,
		stock: back.stock,
		along,
		through: "z",
		length,
		width,
		thick: back.thick,
		held: [
			low(plus(extent.x, half)),
			low(plus(extent.y, half)),
			low(plus(work.at[2], plan.behind)),
		],
		stages: stagesOf(
			work.context,
			back.stock,
			length,
			width,
			back.thick,
			undefined,
		),
	});
	joinBack(work, panels, back, part, extent);
	return { part };
}

interface Opening {
	readonly x: Size;
	readonly y: Size;
	readonly width: Size;
	readonly height: Size;
}

function minusIf(size: Size, clearance: Size): Size {
	return clearance.value.isZero() ? size : minus(size, clearance);
}

/** The place that the back goes into: between the panels, or into them by the depth of rabbet or groove. */
function openings(work: BoxWork, panels: Panels, back: BackPlan): Opening {
	const { plan, at } = work;
	if (back.backing === "applied")
		return {
			x: at[0],
			y: at[1],
			width: plan.outside.width,
			height: plan.outside.height,
		};
	const into = (name: PanelName): Size | undefined =>
		panels[name] && !back.depth.value.isZero() ? back.depth : undefined;
	const left = into("left");
	const bottom = into("bottom");
	const x = plus(at[0], plan.thick.left);
	const y = plus(at[1], plan.thick.bottom);
	return {
		x: left ? minus(x, left) : x,
		y: bottom ? minus(y, bottom) : y,
		width: plusBoth(plan.inside.width, left, into("right")),
		height: plusBoth(plan.inside.height, bottom, into("top")),
	};
}

const kinds: Readonly<Record<BackPlan["backing"], JointKind>> = {
	rabbet: "rabbet",
	groove: "groove",
	inset: "butt",
	applied: "face",
};

function joinBack(
	work: BoxWork,
	panels: Panels,
	back: BackPlan,
	part: PartDraft,
	opening: Opening,
): void {
	const { context } = work;
	for (const name of panelNames) {
		const panel = panels[name];
		if (!panel) continue;
		const joint = context.collected.joints.of(
			kinds[back.backing],
			panel,
			part,
			back.row.headline,
			contactWith(panel, part, name, back),
		);
		if (back.backing === "rabbet" || back.backing === "groove")
			panel.house(housingFor(panel, part, name, back));
		if (back.backing === "groove")
			joint.fits.push(
				fitOf({
					what: `thickness of the back in the groove of \`${panel.name}\``,
					opening: asRouted(
						context,
						plus(back.thick, stated(housingAllowance, "0.1 mm to enter")),
						`the groove for ${part.path}`,
					),
					member: back.thick,
					range: gapRanges.housing,
					measure: "the thickness of the sheet for the back",
					origin: back.row.headline,
				}),
			);
	}
	if (back.backing === "applied") return;
	const range: GapRange =
		back.backing === "inset"
			? gapRanges.inset
			: back.stock.kind === "board"
				? gapRanges.backOfBoards(back.depth.value)
				: gapRanges.back;
	for (const [host, what, size, member] of [
		[panels.left ?? panels.right, "width", opening.width, along(part, "x")],
		[panels.bottom ?? panels.top, "height", opening.height, along(part, "y")],
	] as const) {
		const joint = host && context.collected.joints.find(host, part);
		if (!joint) continue;
		const clearance = back.row.expression("clearance");
		joint.fits.push(
			fitOf({
				what: `${what} of the back between the ${what === "width" ? "sides" : "top and bottom"}`,
				opening: asBuilt(work, size, back),
				member: asCut(context, member),
				range,
				measure: `the opening for the back, ${what === "width" ? "left to right" : "up and down"}`,
				origin: back.row.headline,
				...(clearance
					? { written: { span: clearance.span, size: back.clearance } }
					: {}),
			}),
		);
	}
}

function along(part: PartDraft, way: Way): Size {
	return part.place.axes[0].slice(1) === way ? part.length : part.width;
}

/** The opening as the shop makes it: the panels cut to their stops, the rabbet or groove as true as the router. */
function asBuilt(work: BoxWork, size: Size, back: BackPlan): Size {
	const { context } = work;
	const cut = asCut(context, size);
	return back.depth.value.isZero()
		? cut
		: plus(
				cut,
				times(
					2,
					asRouted(context, zero, `the ${back.backing} of ${work.name}`),
				),
			);
}

function contactWith(
	panel: PartDraft,
	part: PartDraft,
	name: PanelName,
	back: BackPlan,
): Contact {
	const { axis, sense } = inwardOf(name);
	const index = axis === "x" ? 0 : 1;
	const a = panel.bounds;
	const b = part.bounds;
	const min: [number, number, number] = [0, 0, 0];
	const max: [number, number, number] = [0, 0, 0];
	for (const one of [0, 1, 2] as const) {
		min[one] = Math.max(a.min[one], b.min[one]);
		max[one] = Math.min(a.max[one], b.max[one]);
	}
	if (back.backing === "rabbet" || back.backing === "applied") {
		// Nailed from behind: the back's front face lies on the rabbet's shoulder, or on the edge of the panel.
		min[2] = b.max[2];
		max[2] = b.max[2];
		return { axis: "z", toMember: -1, min, max };
	}
	const face = sense === 1 ? a.max[index] : a.min[index];
	const at = face - sense * numberOf(back.depth);
	min[index] = at;
	max[index] = at;
	return { axis, toMember: sense, min, max };
}

function housingFor(
	panel: PartDraft,
	part: PartDraft,
	name: PanelName,
	back: BackPlan,
): Housing {
	const { axis, sense } = inwardOf(name);
	const index = axis === "x" ? 0 : 1;
	const other = index === 0 ? 1 : 0;
	const a = panel.bounds;
	const b = part.bounds;
	const face = sense === 1 ? a.max[index] : a.min[index];
	const deep = numberOf(back.depth);
	const rabbet = back.backing === "rabbet";
	const width = rabbet
		? back.thick
		: plus(back.thick, stated(housingAllowance, "0.1 mm to enter"));
	const slack = rabbet ? 0 : (numberOf(width) - numberOf(back.thick)) / 2;
	const room = numberOf(back.clearance) / 2;
	const min: [number, number, number] = [0, 0, 0];
	const max: [number, number, number] = [0, 0, 0];
	min[index] = sense === 1 ? face - deep : face;
	max[index] = sense === 1 ? face : face + deep;
	min[other] = Math.max(a.min[other], b.min[other] - room);
	max[other] = Math.min(a.max[other], b.max[other] + room);
	min[2] = b.min[2] - slack;
	max[2] = b.max[2] + slack;
	return {
		kind: rabbet ? "rabbet" : "groove",
		width,
		depth: back.depth,
		datum: "from the rear edge",
		at: minus(part.min[2], panel.min[2]),
		takes: part.path,
		box: { min, max },
	};
}
