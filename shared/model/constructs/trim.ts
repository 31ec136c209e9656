// `trim`: solid edging on panel edges. Its width follows the edge, its length the corners that it makes.

import { positiveLength, sizeAtLeastZero } from "../expressions.ts";
import { readFastening } from "../fastening.ts";
import type { Meaning, Thing } from "../meaning.ts";
import { boundsAround } from "../owners.ts";
import { makePart, type PartDraft } from "../part-builder.ts";
import { type PieceContext, pathIn, stockOf } from "../piece-context.ts";
import { type Row, type Rows, readRows } from "../rows.ts";
import { shown } from "../shown.ts";
import { minus, named, over, plus, type Size, zero } from "../size.ts";
import type { Declaration, TrimInfo } from "../types.ts";
import type { ConstructMeaning } from "./construct-meaning.ts";
import { readNamedBlock } from "./named-block.ts";
import { bind } from "./sizes.ts";
import {
	cornersOf,
	type Meeting,
	type Strip,
	stripsOf,
} from "./trim-corners.ts";
import { readEdges } from "./trim-edges.ts";

interface Made {
	readonly strips: readonly {
		readonly part: PartDraft;
		readonly strip: Strip;
	}[];
	readonly meetings: readonly Meeting[];
	readonly thick: Size;
}

/** A trim by its row, from declare to settle of one run. */
const inners = new WeakMap<Row, { rows: Rows; work: () => Made | undefined }>();

export const trim: ConstructMeaning = {
	declare: (context, row) => {
		const block = readNamedBlock(context, row, "trim");
		if (!block) return;
		const { name, path, declaration, rows } = block;
		context.collected.coverings.push({
			kind: "trim",
			name: name,
			context,
			rows,
		});
		const work = context.evaluation.lazy(name, row.headline, () =>
			build(context, row, rows, name, declaration),
		);
		inners.set(row, { rows, work });
		bind(context, row, {
			declaration,
			meaning: () => ({
				kind: "thing",
				thing: thingOf(path, name, declaration, work),
			}),
		});
	},
	phase: 1,
	settle: (context, row) => {
		const inner = inners.get(row);
		const made = inner?.work();
		if (!inner || !made) return;
		fastenStrips(context, row, inner.rows, made);
	},
};

function thingOf(
	path: string,
	name: string,
	declaration: Declaration,
	work: () => Made | undefined,
): Thing {
	const strip = (member: string): Meaning | undefined => {
		const found = work()?.strips.find(({ strip }) => strip.name === member);
		// As a datum a strip stands for its face away from the box.
		return (
			found && { kind: "part", part: found.part, panelSide: found.strip.faces }
		);
	};
	return {
		path,
		declaration,
		parts: () => (work()?.strips ?? []).map(({ part }) => part),
		bounds: () => boundsAround((work()?.strips ?? []).map(({ part }) => part)),
		member: (member) => {
			if (member !== "thick") return strip(member);
			const thick = work()?.thick;
			return thick && { kind: "size", size: named(`${name}.thick`, thick) };
		},
		memberNames: () => [
			...(work()?.strips ?? []).map(({ strip }) => strip.name),
			"thick",
		],
	};
}

function build(
	context: PieceContext,
	row: Row,
	rows: Rows,
	name: string,
	declaration: Declaration,
): Made | undefined {
	const { frame } = context;
	const edges = readEdges(context, rows.first("on"));
	const stock = stockOf(context, rows.first("of")?.ref("material"), ["board"]);
	const thick = positiveLength(
		frame,
		rows.first("thick")?.expression("thick"),
		"A thickness",
	);
	if (!stock || !thick) return undefined;
	const wideRow = rows.first("wide")?.expression("wide");
	const wide = positiveLength(frame, wideRow, "A width");
	const proudRow = rows.first("proud");
	const amount = sizeAtLeastZero(
		frame,
		proudRow?.expression("amount"),
		"What is left proud",
	);
	const faces = proudRow?.word("faces") ?? "both";
	const proudOf = (edge: Size): readonly [Size, Size] => {
		if (amount)
			return [
				faces === "inside" ? zero : amount,
				faces === "outside" ? zero : amount,
			];
		// A written width shares what it has over the edge between both faces.
		const half = wide ? over(minus(wide, edge), 2) : zero;
		return [half, half];
	};
	const widthOf = (edge: Size, proud: readonly [Size, Size]): Size =>
		wide ?? sum([edge, ...proud]);
	const strips = stripsOf(edges, proudOf, thick);
	const corners = cornersOf(
		context,
		strips,
		{
			mitred: rows.first("corners")?.word("style") !== "butted",
			caps: rows.first("caps")?.words("strips") ?? ["left", "right"],
		},
		row.headline,
	);
	const infos: TrimInfo["strips"][number][] = [];
	const made = corners.placed.map(({ strip, place }) => {
		const width = widthOf(strip.edge, strip.proud);
		const flush = width.value.cmp(strip.edge.value) < 0 ? width : strip.edge;
		const part = makePart(context, {
			path: `${name}.${strip.name}`,
			role: "trim",
			declaration,
			owner: name,
			stock,
			along: strip.along,
			through: strip.out,
			length: minus(place.stop, place.start),
			width: flush,
			thick,
			held: place.held,
			outlines: place.outlines,
			edges: place.edges,
			stages: [
				{
					stage: "heavy",
					length: sum([minus(place.stop, place.start), ...place.over]),
					width,
					thick,
				},
			],
			notes: [
				`ripped from ${stock.id}: stands ${shown(context, thick)} before the edge of ${strip.part.path}`,
			],
		});
		infos.push({
			part,
			covers: strip.part,
			edge: strip.edge,
			width,
			proud: strip.proud,
			widthSpan: wideRow?.span,
		});
		return { part, strip };
	});
	context.collected.trims.push({
		path: pathIn(context, name),
		declaration,
		strips: infos,
		thick,
		origin: row.headline,
	});
	return { strips: made, meetings: corners.meetings, thick };
}

/** Sizes added up; zeros are left out of the story. */
function sum(sizes: readonly Size[]): Size {
	const [first, ...rest] = sizes.filter((size) => !size.value.isZero());
	return first ? rest.reduce((total, size) => plus(total, size), first) : zero;
}

/** Each strip is held on its panel by what the line says, and meets its neighbours at the corners. */
function fastenStrips(
	context: PieceContext,
	row: Row,
	rows: Rows,
	made: Made,
): void {
	const fasten = rows.first("fasten");
	const lines = readRows(
		context.evaluation,
		context.frame.uri,
		fasten?.block,
		"fasten",
	);
	const { joints } = context.collected;
	for (const { part, strip } of made.strips)
		readFastening(
			context,
			lines,
			joints.of(
				"trim",
				strip.part as PartDraft,
				part,
				(fasten ?? row).headline,
			),
		);
	const partOf = (strip: Strip): PartDraft | undefined =>
		made.strips.find((one) => one.strip === strip)?.part;
	for (const { cap, other, kind } of made.meetings) {
		const host = partOf(cap);
		const member = partOf(other);
		if (!host || !member) continue;
		const joint = joints.of(kind, host, member, row.headline);
		joint.glue ||= lines.first("glue") !== undefined;
	}
}
