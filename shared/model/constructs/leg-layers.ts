// The layers of a leg: their heights, their places side by side, the blank before it is shaped.

import { contactOf } from "../contact.ts";
import { positiveLength } from "../expressions.ts";
import {
	type Held,
	low,
	makePart,
	type PartDraft,
	type PartSpec,
} from "../part-builder.ts";
import { type PieceContext, pathIn, stockOf } from "../piece-context.ts";
import { placeOn } from "../positions.ts";
import type { Row, Rows } from "../rows.ts";
import { minus, numberOf, plus, type Size } from "../size.ts";
import type { Declaration, LegInfo, Stock } from "../types.ts";
import { type Cover, coverOn } from "./coverings.ts";
import type { LegPlace } from "./leg-place.ts";
import {
	type LayerBox,
	readWorks,
	type ShapedLayer,
	shapeLayers,
	thinnestOf,
} from "./leg-shape.ts";
import { stagesOf } from "./part.ts";

export interface LegSpec {
	readonly name: string;
	readonly declaration: Declaration;
	readonly rows: Rows;
	/** Each by itself: one may end at another. */
	readonly layers: ReadonlyMap<Row, () => Layer | undefined>;
	readonly handed: boolean;
	/** Filled as the layers are made, so that shapes can be told from them. */
	readonly made: Map<Declaration, PartDraft>;
}

/** A layer with its heights, before it has a place from left to right. */
export interface Layer {
	readonly row: Row;
	readonly declaration: Declaration;
	readonly name: string;
	readonly stock: Stock;
	readonly bottom: Size;
	readonly top: Size;
	readonly width: Size;
	readonly thick: Size;
	/** What lies on the faces that it ends at. */
	readonly covers: readonly Cover[];
}

interface PlacedLayer extends Layer {
	readonly x: Held;
	/** What lies between it and the plane that the leg is against. */
	readonly behind: Cover | undefined;
	readonly box: LayerBox;
}

/** Makes the parts of one leg and books what is known of it. Layers that cannot be worked out are left away. */
export function buildLayers(
	context: PieceContext,
	leg: LegSpec,
	place: LegPlace,
): PartDraft[] {
	const read = [...leg.layers.values()].flatMap((layer) => layer() ?? []);
	const layers = placeLayers(context, leg, place, read);
	const first = layers[0];
	if (!first) return [];
	const heavyRow = leg.rows.first("heavy");
	const heavy = positiveLength(
		context.frame,
		heavyRow?.expression("amount"),
		"What is left to take off",
	);
	const parts = layers.map((layer) => {
		const part = makePart(context, specOf(context, leg, place, layer, heavy));
		leg.made.set(layer.declaration, part);
		return part;
	});
	const works = readWorks(context, leg.rows);
	const boxes = layers.map((layer) => layer.box);
	const shaped = shapeLayers(context, boxes, place.outward, works);
	parts.forEach((part, index) => {
		const { outlines, edges, handedFrom } = shaped[index] as ShapedLayer;
		part.outlines.push(...outlines);
		part.edges.push(...edges);
		if (!leg.handed || !handedFrom) return;
		part.hand = place.outward === -1 ? "left" : "right";
		part.handedFrom = handedFrom;
	});
	glueLayers(context, parts);
	context.collected.legs.push(
		infoOf(context, leg, place, layers, parts, works, heavy),
	);
	return parts;
}

export function readLayer(
	context: PieceContext,
	leg: string,
	row: Row,
	declaration: Declaration,
): Layer | undefined {
	const { frame } = context;
	const stock = stockOf(context, row.ref("material"), ["board", "sheet"]);
	const width = positiveLength(frame, row.expression("wide"), "A width");
	const written = row.expression("thick");
	const thick = written
		? positiveLength(frame, written, "A thickness")
		: stock?.thick;
	const height = (slot: "bottom" | "top"): Size | undefined => {
		const position = row.position(slot);
		if (!position) return undefined;
		// It stands on what it starts from, and reaches to the underside of what it ends at.
		const near = slot === "bottom" ? 1 : -1;
		const at = placeOn(frame, position, {
			axis: "y",
			near,
			readings: ["up from floor", "above NAME", "below NAME"],
			floor: context.origin[1],
		});
		const { datum } = position;
		if (!at || !datum || position.offsets.length > 0) return at;
		const cover = coverOn(context, datum, near === 1 ? "top" : "bottom");
		if (!cover) return at;
		covers.push(cover);
		return near === 1 ? plus(at, cover.thick) : minus(at, cover.thick);
	};
	const covers: Cover[] = [];
	const bottom = height("bottom");
	const top = height("top");
	if (!stock || !width || !thick || !bottom || !top) return undefined;
	if (top.value.cmp(bottom.value) <= 0) {
		context.evaluation.report(
			"no-size",
			row.headline,
			`\`${declaration.name}\` ends at or below the height that it starts from: it must be longer than 0`,
		);
		return undefined;
	}
	const path = pathIn(context, `${leg}.${declaration.name}`);
	const actual = (which: "thick" | "width", size: Size): Size =>
		context.collected.readings.get(`${path}.${which}`)?.size ?? size;
	return {
		row,
		declaration,
		name: declaration.name,
		stock,
		bottom,
		top,
		width: actual("width", width),
		thick: actual("thick", thick),
		covers,
	};
}

/**
 * Seen from the front, a left leg against a side (the plane is |):
 *
 *     outer |          beside the box: outward from the plane, in order
 *     outer | inner    under the box: inward from the plane, the last one against it
 */
function placeLayers(
	context: PieceContext,
	leg: LegSpec,
	place: LegPlace,
	layers: readonly Layer[],
): PlacedLayer[] {
	const under = layers.filter(
		(layer) =>
			place.style === "under" ||
			layer.top.value.cmp(place.around.min[1].value) <= 0,
	);
	const beside = layers.filter((layer) => !under.includes(layer));
	const outward = (from: Size, by: Size): Size =>
		place.outward === 1 ? plus(from, by) : minus(from, by);
	const inward = (from: Size, by: Size): Size =>
		place.outward === 1 ? minus(from, by) : plus(from, by);
	const placed = new Map<Layer, PlacedLayer>();
	const put = (
		layer: Layer,
		outer: Size,
		inner: Size,
		behind?: Cover,
	): void => {
		const lowX = place.outward === 1 ? inner : outer;
		const highX = place.outward === 1 ? outer : inner;
		const z =
			place.z.side === -1
				? ([place.z.at, plus(place.z.at, layer.width)] as const)
				: ([minus(place.z.at, layer.width), place.z.at] as const);
		placed.set(layer, {
			...layer,
			x: low(lowX),
			behind,
			box: {
				name: layer.name,
				min: [numberOf(lowX), numberOf(layer.bottom), numberOf(z[0])],
				max: [numberOf(highX), numberOf(layer.top), numberOf(z[1])],
			},
		});
	};
	let face = place.plane;
	for (const layer of [...under].reverse()) {
		const inner = inward(face, layer.thick);
		put(layer, face, inner);
		face = inner;
	}
	face = place.plane;
	for (const layer of beside) {
		const outer = outward(face, layer.thick);
		put(layer, outer, face, layer === beside[0] ? place.cover : undefined);
		face = outer;
	}
	tellOrder(context, leg, under, beside, layers);
	return [...under, ...beside].flatMap((layer) => placed.get(layer) ?? []);
}

/** Layers go from the inside outward: one that stands under the box cannot come behind one that laps it. */
function tellOrder(
	context: PieceContext,
	leg: LegSpec,
	under: readonly Layer[],
	beside: readonly Layer[],
	layers: readonly Layer[],
): void {
	const late = under.find((layer) =>
		beside.some((other) => layers.indexOf(other) < layers.indexOf(layer)),
	);
	if (!late) return;
	context.evaluation.report(
		"layer-order",
		late.row.headline,
		`\`${late.name}\` ends under what \`${leg.name}\` is against, so it is an inner layer: write it before the ones that stand beside`,
		{ severity: "warning" },
	);
}

function specOf(
	context: PieceContext,
	leg: LegSpec,
	place: LegPlace,
	layer: PlacedLayer,
	heavy: Size | undefined,
): PartSpec {
	const length = minus(layer.top, layer.bottom);
	return {
		path: `${leg.name}.${layer.name}`,
		role: "layer",
		declaration: layer.declaration,
		owner: leg.name,
		stock: layer.stock,
		along: "y",
		through: "x",
		length,
		width: layer.width,
		thick: layer.thick,
		held: [layer.x, low(layer.bottom), place.z],
		notes: [...layer.covers, ...(layer.behind ? [layer.behind] : [])].map(
			({ kind, name }) => `placed over the ${kind} \`${name}\``,
		),
		stages: stagesOf(
			context,
			layer.stock,
			length,
			layer.width,
			layer.thick,
			heavy,
		),
	};
}

/** Neighbours in the glue-up meet face to face. */
function glueLayers(context: PieceContext, parts: readonly PartDraft[]): void {
	for (let index = 1; index < parts.length; index++) {
		const inner = parts[index - 1] as PartDraft;
		const outer = parts[index] as PartDraft;
		if (contactOf(inner, outer)?.axis !== "x") continue;
		context.collected.joints.of("face", inner, outer, outer.declaration.origin);
	}
}

function infoOf(
	context: PieceContext,
	leg: LegSpec,
	place: LegPlace,
	layers: readonly PlacedLayer[],
	parts: readonly PartDraft[],
	works: ReturnType<typeof readWorks>,
	heavy: Size | undefined,
): LegInfo {
	const extreme = (which: "bottom" | "top"): Size =>
		layers.reduce(
			(best, layer) => {
				const order = layer[which].value.cmp(best.value);
				return (which === "bottom" ? order < 0 : order > 0)
					? layer[which]
					: best;
			},
			(layers[0] as PlacedLayer)[which],
		);
	const foot = extreme("bottom");
	const head = extreme("top");
	const boxes = layers.map((layer) => layer.box);
	const more = heavy ? numberOf(heavy) : 0;
	const least = (axis: 0 | 1 | 2): number =>
		Math.min(...boxes.map((box) => box.min[axis]));
	const most = (axis: 0 | 1 | 2): number =>
		Math.max(...boxes.map((box) => box.max[axis]));
	const underside = numberOf(place.around.min[1]);
	const side = place.outward === -1 ? "left" : "right";
	return {
		path: pathIn(context, leg.name),
		declaration: leg.declaration,
		layers: parts,
		hand: leg.handed ? side : undefined,
		foot,
		head,
		blank: {
			min: [least(0), least(1), least(2) - more],
			max: [most(0), most(1), most(2) + more],
		},
		// What laps the box is held by it: only the free height can be thin.
		thinnest: thinnestOf(
			boxes,
			place.outward,
			works,
			underside > numberOf(foot)
				? Math.min(underside, numberOf(head))
				: numberOf(head),
		),
		shapes: works.flatMap((work) =>
			work.kind === "face"
				? [{ face: work.face, origin: work.row.origin }]
				: [],
		),
	};
}
