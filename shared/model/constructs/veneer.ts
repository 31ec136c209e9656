// `veneer`: sheets on the faces of panels, cut over at each edge and trimmed back.

import { spanBehind, spanOfFirst, spanOver } from "../../../grammar/index.ts";
import { inches, sizeAtLeastZero } from "../expressions.ts";
import type { Meaning, Side, Thing } from "../meaning.ts";
import { axisIndex, pathText, sides } from "../meaning.ts";
import { resolve } from "../names.ts";
import { boundsAround } from "../owners.ts";
import {
	high,
	low,
	makePart,
	otherAxis,
	type PartDraft,
} from "../part-builder.ts";
import {
	type PieceContext,
	partsOf,
	pathIn,
	stockOf,
} from "../piece-context.ts";
import { type Row, type Rows, readRows } from "../rows.ts";
import { shown } from "../shown.ts";
import { minus, plus, type Size, stated, zero } from "../size.ts";
import type { Declaration, Part, VeneerInfo, Way } from "../types.ts";
import { readCoats } from "./coats.ts";
import type { ConstructMeaning } from "./construct-meaning.ts";
import { readNamedBlock } from "./named-block.ts";
import { bind } from "./sizes.ts";
import { type CoveredFace, readFaces, withTrims } from "./veneer-faces.ts";

/** How far a sheet is cut over by default: common practice, no source. */
const usualOverhang: Size = stated(inches(5, 16), "5/16 in");

const ways: Readonly<Record<string, Way>> = { across: "x", up: "y", deep: "z" };

interface Sheet {
	readonly part: PartDraft;
	readonly covered: CoveredFace;
}

/** A veneer by its row, from declare to settle of one run. */
const inners = new WeakMap<Row, () => readonly Sheet[] | undefined>();

export const veneer: ConstructMeaning = {
	declare: (context, row) => {
		const block = readNamedBlock(context, row, "veneer");
		if (!block) return;
		const { name, path, declaration, rows } = block;
		context.collected.coverings.push({
			kind: "veneer",
			name: name,
			context,
			rows,
		});
		const work = context.evaluation.lazy(name, row.headline, () =>
			build(context, row, rows, name, declaration),
		);
		inners.set(row, work);
		bind(context, row, {
			declaration,
			meaning: () => ({
				kind: "thing",
				thing: thingOf(path, declaration, work),
			}),
		});
	},
	phase: 1,
	settle: (context, row) => {
		for (const { part, covered } of inners.get(row)?.() ?? []) {
			const joint = context.collected.joints.of(
				"veneer",
				covered.part as PartDraft,
				part,
				row.headline,
			);
			joint.glue = true;
		}
	},
};

function thingOf(
	path: string,
	declaration: Declaration,
	work: () => readonly Sheet[] | undefined,
): Thing {
	return {
		path,
		declaration,
		parts: () => (work() ?? []).map(({ part }) => part),
		bounds: () => boundsAround((work() ?? []).map(({ part }) => part)),
		member: (member): Meaning | undefined => {
			const sheet = (work() ?? []).find(({ part }) => part.name === member);
			// As a datum a sheet stands for the face that shows.
			return (
				sheet && {
					kind: "part",
					part: sheet.part,
					panelSide: sheet.covered.side,
				}
			);
		},
		memberNames: () => (work() ?? []).map(({ part }) => part.name),
	};
}

function build(
	context: PieceContext,
	row: Row,
	rows: Rows,
	name: string,
	declaration: Declaration,
): Sheet[] {
	const { frame } = context;
	const stock = stockOf(context, rows.first("of")?.ref("material"), ["veneer"]);
	const overRow = rows.first("over");
	const trims = (overRow?.refs("trims") ?? []).flatMap((ref) => {
		const parts = partsOf(context, ref) ?? [];
		const strips = context.collected.trims.flatMap((trim) =>
			trim.strips.filter(({ part }) => parts.includes(part)),
		);
		if (parts.length > 0 && strips.length === 0)
			context.evaluation.report(
				"not-a-trim",
				row.at(ref.span),
				`\`${pathText(ref.segments)}\` is no trim: veneer can run over the strips of a \`trim\``,
			);
		return strips;
	});
	const faces = readFaces(context, rows).map((face) => withTrims(face, trims));
	const overhangRow = rows.first("overhang");
	const overhang =
		sizeAtLeastZero(
			frame,
			overhangRow?.expression("overhang"),
			"An overhang",
		) ?? usualOverhang;
	const shims = readShims(context, rows, faces);
	const ordered = rows.first("order")?.refs("panels") ?? [];
	const [firstOrdered] = ordered;
	const lastOrdered = ordered.at(-1);
	const order = ordered.flatMap(
		(ref) => orderedPart(context, ref, faces) ?? [],
	);
	if (!stock?.thick) return [];
	const { thick } = stock;
	const grainRow = rows.first("grain");
	const infos: VeneerInfo["sheets"][number][] = [];
	const sheets = faces.map((face): Sheet => {
		const through = sides[face.side].axis;
		const along = grainOf(context, grainRow, face);
		const across = otherAxis(along, through);
		const edge = (way: Way, outward: 1 | -1) => {
			const side = sideOn(way, outward);
			const registered = shims.some(
				(shim) => shim.part === face.part && shim.side === side,
			);
			return { edge: side, size: registered ? zero : overhang, registered };
		};
		const edges = [
			edge(along, -1),
			edge(along, 1),
			edge(across, -1),
			edge(across, 1),
		];
		const extent = (way: Way): Size =>
			minus(face.max[axisIndex[way]], face.min[axisIndex[way]]);
		const grown = (way: Way, pair: readonly { readonly size: Size }[]): Size =>
			pair.reduce(
				(sum, { size }) => (size.value.isZero() ? sum : plus(sum, size)),
				extent(way),
			);
		const faceLength = extent(along);
		const faceWidth = extent(across);
		const held = [low(face.min[0]), low(face.min[1]), low(face.min[2])] as [
			ReturnType<typeof low>,
			ReturnType<typeof low>,
			ReturnType<typeof low>,
		];
		held[axisIndex[through]] =
			sides[face.side].outward === 1 ? low(face.at) : high(face.at);
		const turn = order.indexOf(face.part);
		const part = makePart(context, {
			path: `${name}.${face.name}`,
			role: "veneer",
			declaration,
			owner: name,
			stock,
			along,
			through,
			length: faceLength,
			width: faceWidth,
			thick,
			held,
			stages: [
				{
					stage: "heavy",
					length: grown(along, edges.slice(0, 2)),
					width: grown(across, edges.slice(2)),
					thick,
				},
			],
			notes: [
				...(turn < 0 ? [] : [`laid ${turn + 1} of ${order.length}`]),
				...shims
					.filter((shim) => shim.part === face.part)
					.map(
						(shim) =>
							`registered against a ${shown(context, shim.thick)} shim at the ${shim.side}: no overhang there`,
					),
			],
		});
		infos.push({
			part,
			covers: face.part,
			face: face.face,
			faceLength,
			faceWidth,
			overhang: edges,
		});
		return { part, covered: face };
	});
	const ground = rows.first("ground");
	const groundRows = readRows(
		context.evaluation,
		frame.uri,
		ground?.block,
		"ground",
	);
	context.collected.veneers.push({
		path: pathIn(context, name),
		declaration,
		sheets: infos,
		over: [...new Set(trims.map(({ part }) => part.owner))],
		order: order.map((part) => part.path),
		ground: readCoats(context, groundRows),
		overhangSpan: overhangRow?.expression("overhang")?.span,
		orderSpan:
			firstOrdered && lastOrdered
				? spanOver(firstOrdered.span, lastOrdered.span)
				: undefined,
		facesSpan: rows.first("faces")?.names("faces")[0]?.span,
		materialSpan: rows.first("of")?.ref("material")?.span,
		groundSpan: ground?.block && spanBehind(spanOfFirst(ground.block.span)),
		namesFaces: (rows.first("on")?.refs("panels") ?? []).some(
			(ref) => resolve(frame, ref)?.kind === "face",
		),
		origin: row.headline,
	});
	return sheets;
}

interface Shim {
	readonly part: Part;
	readonly side: Side;
	readonly thick: Size;
}

/** The edges that are registered; one that is no edge of a veneered panel is told. */
function readShims(
	context: PieceContext,
	rows: Rows,
	faces: readonly CoveredFace[],
): Shim[] {
	return rows.every("shim").flatMap((row): Shim[] => {
		const thick = sizeAtLeastZero(
			context.frame,
			row.expression("thick"),
			"A shim",
		);
		const ref = row.ref("edge");
		const meaning = ref && resolve(context.frame, ref);
		if (!thick || !ref || !meaning) return [];
		const face = meaning.kind === "face" ? meaning.face : undefined;
		const part = face?.part;
		const on = faces.find(
			(one) => one.part === part && sides[one.side].axis !== face?.axis,
		);
		if (!face || !part || !on) {
			context.evaluation.report(
				"not-an-edge",
				row.at(ref.span),
				`\`${pathText(ref.segments)}\` is no edge of a panel that is veneered here: name one as in \`${faces[0]?.part.path ?? "case.top"}.back\``,
			);
			return [];
		}
		return [{ part, side: sideOn(face.axis, face.outward), thick }];
	});
}

/** A panel of the order: by its own name, or as `on` names it (`top` for `case.top`). */
function orderedPart(
	context: PieceContext,
	ref: Parameters<typeof partsOf>[1],
	faces: readonly CoveredFace[],
): Part | undefined {
	const short = pathText(ref.segments);
	const known = faces.find((face) => face.part.name === short);
	if (known && ref.segments.length === 1 && !context.frame.scope.find(short))
		return known.part;
	const parts = partsOf(context, ref);
	const part = parts?.find((one) => faces.some((face) => face.part === one));
	if (parts && !part)
		context.evaluation.report(
			"not-veneered",
			{ uri: context.frame.uri, span: ref.span },
			`\`${short}\` is not veneered here: add it to \`on\`, or take it from the order`,
		);
	return part;
}

function grainOf(
	context: PieceContext,
	row: Row | undefined,
	face: CoveredFace,
): Way {
	const through = sides[face.side].axis;
	const usual = face.part.place.axes[0].slice(1) as Way;
	const along = ways[row?.word("direction") ?? ""] ?? usual;
	if (along !== through) return along;
	if (row && along !== usual)
		context.evaluation.report(
			"grain-through",
			row.headline,
			`Grain cannot run ${row.word("direction")} on \`${face.part.name}\`: that is through its thickness`,
		);
	return usual;
}

function sideOn(way: Way, outward: 1 | -1): Side {
	return (Object.keys(sides) as Side[]).find(
		(side) => sides[side].axis === way && sides[side].outward === outward,
	) as Side;
}
