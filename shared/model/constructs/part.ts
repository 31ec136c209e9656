// `part`: one board or panel in its place.

import type { Expression } from "../../../grammar/index.ts";
import { countOf, positiveLength } from "../expressions.ts";
import { axisIndex } from "../meaning.ts";
import {
	type Held,
	low,
	makePart,
	otherAxis,
	type PartDraft,
} from "../part-builder.ts";
import {
	declareName,
	type PieceContext,
	pathIn,
	stockOf,
} from "../piece-context.ts";
import { readPlacing } from "../placing.ts";
import { roughAllowances } from "../rough-sizes.ts";
import { type Row, readRows } from "../rows.ts";
import { plus, type Size, times } from "../size.ts";
import type { Stage, Way } from "../types.ts";
import type { ConstructMeaning } from "./construct-meaning.ts";
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
		const name = row.name("name");
		if (!name) return;
		const path = pathIn(context, name.text);
		const declaration = declareName(context, "part", name, row, path);
		const work = context.evaluation.lazy(name.text, row.headline, () =>
			build(context, row, name.text, declaration),
		);
		bind(context, row, {
			declaration,
			meaning: () => {
				const made = work();
				return made && { kind: "part", part: made };
			},
		});
	},
};

function build(
	context: PieceContext,
	row: Row,
	name: string,
	declaration: PartDraft["declaration"],
): PartDraft | undefined {
	const { frame } = context;
	const rows = readRows(frame.evaluation, frame.uri, row.block, "part", {
		label: `\`${name}\``,
		origin: row.headline,
	});
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
	const extents: [Size, Size, Size] = [length, length, length];
	extents[axisIndex[along]] = length;
	extents[axisIndex[across]] = width;
	extents[axisIndex[through]] = thick;
	const held = readPlacing(context, rows, extents);
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
		held: held.map((one, axis) => one ?? low(context.origin[axis] as Size)) as [
			Held,
			Held,
			Held,
		],
		stages: stagesOf(
			context,
			stock.kind,
			length,
			width,
			thick,
			stock.soldAs,
			heavy,
		),
		...(strips !== undefined && strips > 1 ? { strips } : {}),
	});
	angleEnds(context, rows, made);
	return made;
}

/** The sizes that a part of solid wood has before its last; a panel is cut straight to size unless it is sawn heavy. */
export function stagesOf(
	{ display }: Pick<PieceContext, "display">,
	kind: string,
	length: Size,
	width: Size,
	thick: Size,
	rough: Size | undefined,
	heavy: Size | undefined,
): Stage[] {
	const stages: Stage[] = [];
	const { longer, wider } = roughAllowances[display.unit];
	if (kind === "board")
		stages.push({
			stage: "rough",
			length: plus(length, longer),
			width: plus(heavy ? plus(width, times(2, heavy)) : width, wider),
			thick: rough ?? thick,
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
