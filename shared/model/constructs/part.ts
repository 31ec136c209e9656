// `part`: one board or panel in its place.

import type { Expression } from "../../../grammar/index.ts";
import { countOf, positiveLength } from "../expressions.ts";
import { axisIndex, reachOfBody } from "../meaning.ts";
import {
	type Held,
	low,
	makePart,
	otherAxis,
	type PartDraft,
} from "../part-builder.ts";
import {
	type PieceContext,
	pathIn,
	sizeAsRead,
	stockOf,
} from "../piece-context.ts";
import { heldReach, readPlacing } from "../placing.ts";
import { roughAllowances } from "../rough-sizes.ts";
import type { Rows } from "../rows.ts";
import { plus, type Size, times } from "../size.ts";
import { isSoldInSection } from "../stock-sizes.ts";
import type { Stage, Stock, Way } from "../types.ts";
import type { ConstructMeaning } from "./construct-meaning.ts";
import { readNamedBlock } from "./named-block.ts";
import { angleEnds } from "./part-ends.ts";
import { bind } from "./sizes.ts";

const ways: Readonly<Record<string, Way>> = { across: "x", up: "y", deep: "z" };
const facings: Readonly<Record<string, Way>> = {
	up: "y",
	front: "z",
	side: "x",
};

export const part: ConstructMeaning = {
	declare: (context, row) => {
		const block = readNamedBlock(context, row, "part");
		if (!block) return;
		const { name, declaration, rows } = block;
		const plan = context.evaluation.lazy(`${name}'s sizes`, row.headline, () =>
			planPart(context, rows, name),
		);
		const extent = (axis: Way): Size | undefined =>
			plan()?.extents[axisIndex[axis]];
		const placing = readPlacing(context, { name: name, row, rows }, extent);
		const held = (axis: Way): Held =>
			placing[axis]() ?? low(context.origin[axisIndex[axis]]);
		const work = context.evaluation.lazy(name, row.headline, () => {
			const made = plan();
			return made && build(context, rows, name, declaration, made, held);
		});
		bind(context, row, {
			declaration,
			along: (axis, behind) =>
				reachOfBody(axis, behind, () => {
					const own = extent(axis);
					return own && heldReach(held(axis), own);
				}),
			meaning: () => {
				const made = work();
				return made && { kind: "part", part: made };
			},
		});
	},
};

/** A part before it has a place. */
interface PartPlan {
	readonly stock: Stock;
	readonly along: Way;
	readonly through: Way;
	readonly length: Size;
	readonly width: Size;
	readonly thick: Size;
	/** Along x, y, z, as it is: readings count. */
	readonly extents: readonly [Size, Size, Size];
}

function planPart(
	context: PieceContext,
	rows: Rows,
	name: string,
): PartPlan | undefined {
	const { frame } = context;
	const stock = stockOf(context, rows.first("of")?.ref("material"), [
		"sheet",
		"board",
	]);
	const size = rows.first("size")?.expression("size");
	const written: readonly Expression[] =
		size?.kind === "cross" ? size.sizes : [];
	const length = positiveLength(frame, written[0], "A length");
	const width = positiveLength(frame, written[1], "A width");
	const thick = written[2]
		? positiveLength(frame, written[2], "A thickness")
		: stock?.thick;
	const lies = rows.first("lies");
	const along = ways[lies?.word("along") ?? "across"] as Way;
	const through = facings[lies?.word("facing") ?? "up"] as Way;
	if (along === through && lies) {
		frame.evaluation.report(
			"lies-on-itself",
			lies.origin,
			"Its length cannot run the way its broad face looks: choose another of the two",
		);
		return undefined;
	}
	if (!stock || !length || !width || !thick) return undefined;
	const across = otherAxis(along, through);
	const path = pathIn(context, name);
	const actual = (which: "length" | "width" | "thick", size: Size): Size =>
		sizeAsRead(context, `${path}.${which}`, size);
	const extents: [Size, Size, Size] = [length, length, length];
	extents[axisIndex[along]] = actual("length", length);
	extents[axisIndex[across]] = actual("width", width);
	extents[axisIndex[through]] = actual("thick", thick);
	return { stock, along, through, length, width, thick, extents };
}

function build(
	context: PieceContext,
	rows: Rows,
	name: string,
	declaration: PartDraft["declaration"],
	plan: PartPlan,
	held: (axis: Way) => Held,
): PartDraft {
	const { frame } = context;
	const { stock, along, through, length, width, thick } = plan;
	const heavyRow = rows.first("heavy");
	const heavy = positiveLength(
		frame,
		heavyRow?.expression("amount"),
		"What is left to take off",
	);
	const strips = countOf(frame, rows.first("strips")?.expression("count"), 200);
	const made = makePart(context, {
		path: name,
		role: "board",
		declaration,
		owner: name,
		stock,
		along,
		through,
		length,
		width,
		thick,
		held: [held("x"), held("y"), held("z")],
		stages: stagesOf(context, stock, length, width, thick, heavy),
		...(strips !== undefined && strips > 1 ? { strips } : {}),
	});
	angleEnds(context, rows, made);
	return made;
}

/** The sizes that a part of solid wood has before its last; a panel, and a batten that comes in its section, is cut straight to size unless it is sawn heavy. */
export function stagesOf(
	{ display }: Pick<PieceContext, "display">,
	stock: Stock,
	length: Size,
	width: Size,
	thick: Size,
	heavy: Size | undefined,
): Stage[] {
	const stages: Stage[] = [];
	const { longer, wider } = roughAllowances[display.unit];
	if (stock.kind === "board" && !isSoldInSection(stock))
		stages.push({
			stage: "rough",
			length: plus(length, longer),
			width: plus(heavy ? plus(width, times(2, heavy)) : width, wider),
			thick: stock.soldAs ?? thick,
		});
	if (heavy)
		stages.push({
			stage: "heavy",
			length,
			width: plus(width, times(2, heavy)),
			thick,
		});
	return stages;
}
