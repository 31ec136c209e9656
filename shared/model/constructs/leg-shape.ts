// The faces and ends of a leg that are cut to a line: outlines of its layers, and what they leave.

import type { Expression } from "../../../grammar/index.ts";
import {
	type AngledEnd,
	type BlankProblem,
	curveEnds,
	cutInAt,
	type FaceShape,
	faceThrough,
	type Shaped,
	type Station,
	shapeBlank,
} from "../../geometry/profile.ts";
import type { Outline, Vec3 } from "../../geometry/solid.ts";
import { evaluateAs, lengthOf } from "../expressions.ts";
import type { PieceContext } from "../piece-context.ts";
import { placeOn } from "../positions.ts";
import { type Row, type Rows, readRows } from "../rows.ts";
import { shownDegrees, shownNumber } from "../shown.ts";
import { numberOf } from "../size.ts";
import type { EdgeWork, LegInfo } from "../types.ts";
import { type Ends, pathOutline } from "./world-outline.ts";

export type LegFace = "front" | "back" | "inside" | "outside";

/** The box of a layer in the world, mm. */
export interface LayerBox {
	readonly name: string;
	readonly min: Vec3;
	readonly max: Vec3;
}

/** One line of the leg that takes wood away, in the order of the text. */
export type Work =
	| {
			readonly kind: "face";
			readonly face: LegFace;
			/** Heights are in the world, mm. */
			readonly stations: readonly Station[];
			readonly curve: FaceShape["kind"];
			readonly row: Row;
			readonly label: string;
	  }
	| {
			readonly kind: "end";
			readonly end: "top" | "bottom";
			/** From square, degrees. */
			readonly angle: number;
			readonly falls: "inward" | "outward" | "forward" | "backward";
			readonly row: Row;
			readonly label: string;
	  };

type FaceWork = Extract<Work, { kind: "face" }>;
type EndWork = Extract<Work, { kind: "end" }>;

export interface ShapedLayer {
	readonly outlines: Outline[];
	readonly edges: EdgeWork[];
	/** The line from which a left and a right one differ. */
	handedFrom: string | undefined;
}

/** Reads `shape`, `taper` and `end` lines; what cannot be cut is told and left away. */
export function readWorks(context: PieceContext, rows: Rows): Work[] {
	const works: Work[] = [];
	for (const row of rows.all) {
		const work =
			row.head === "shape"
				? readShape(context, row)
				: row.head === "taper"
					? readTaper(context, row)
					: row.head === "end"
						? readEnd(context, row)
						: undefined;
		if (!work) continue;
		const before = works.find((one) => sameTarget(one, work));
		if (before) {
			context.evaluation.report(
				"said-twice",
				row.headline,
				`The ${work.kind === "face" ? `${work.face} face` : `${work.end} end`} is cut by another line already: take one of the two away`,
				{
					related: [{ origin: before.row.headline, message: "The first one" }],
				},
			);
			continue;
		}
		works.push(work);
	}
	return works;
}

function sameTarget(a: Work, b: Work): boolean {
	return a.kind === "face"
		? b.kind === "face" && a.face === b.face
		: b.kind === "end" && a.end === b.end;
}

function readShape(context: PieceContext, row: Row): Work | undefined {
	const face = row.word("face") as LegFace | undefined;
	if (!face) return undefined;
	const rows = readRows(
		context.evaluation,
		context.frame.uri,
		row.block,
		"shape",
		{ label: `\`shape ${face}\``, origin: row.headline },
	);
	const stations = rows.every("cut-in").flatMap((one): Station[] => {
		const cutIn = depthAt(context, one.expression("depth"));
		const height = heightAt(context, one, "height");
		return cutIn === undefined || height === undefined
			? []
			: [{ cutIn, height }];
	});
	if (stations.length === 0) return undefined;
	return {
		kind: "face",
		face,
		stations: inOrder(stations),
		curve: rows.first("curve") ? "curve" : "straight",
		row,
		label: `shape ${face}`,
	};
}

function readTaper(context: PieceContext, row: Row): Work | undefined {
	const face = row.word("face") as LegFace | undefined;
	const depth = depthAt(context, row.expression("depth"));
	const start = heightAt(context, row, "start");
	const stop = heightAt(context, row, "stop");
	if (!face || depth === undefined) return undefined;
	if (start === undefined || stop === undefined) return undefined;
	return {
		kind: "face",
		face,
		stations: inOrder([
			{ height: start, cutIn: 0 },
			{ height: stop, cutIn: depth },
		]),
		curve: "straight",
		row,
		label: `taper ${face}`,
	};
}

function inOrder(stations: readonly Station[]): Station[] {
	return [...stations].sort((a, b) => a.height - b.height);
}

function depthAt(
	context: PieceContext,
	expression: Expression | undefined,
): number | undefined {
	const size = lengthOf(context.frame, expression);
	return size && numberOf(size);
}

function heightAt(
	context: PieceContext,
	row: Row,
	slot: string,
): number | undefined {
	const position = row.position(slot);
	const place =
		position &&
		placeOn(context.frame, position, {
			axis: "y",
			near: -1,
			readings: ["up from floor", "above NAME", "below NAME"],
			floor: context.origin[1],
		});
	return place && numberOf(place);
}

/** The face that keeps its length where a top falls the other way; a bottom is longest where it falls to. */
const opposite = {
	inward: "outside",
	outward: "inside",
	forward: "back",
	backward: "front",
} as const;
const toward = {
	inward: "inside",
	outward: "outside",
	forward: "front",
	backward: "back",
} as const;

function readEnd(context: PieceContext, row: Row): Work | undefined {
	const end = row.word("end");
	if (end !== "top" && end !== "bottom") {
		if (end)
			context.evaluation.report(
				"no-such-end",
				row.headline,
				`A leg has a top and a bottom end, no ${end} one`,
			);
		return undefined;
	}
	const rows = readRows(
		context.evaluation,
		context.frame.uri,
		row.block,
		"end",
		{ label: `\`end ${end}\``, origin: row.headline },
	);
	const angledRow = rows.first("angled");
	const angle = evaluateAs(
		context.frame,
		angledRow?.expression("angle"),
		"angle",
	);
	if (!angle || !angledRow) return undefined;
	const degrees = numberOf(angle);
	if (!(degrees > 0 && degrees < 90)) {
		context.evaluation.report(
			"bad-angle",
			angledRow.origin,
			"An end is angled by more than 0 and less than 90 degrees from square",
		);
		return undefined;
	}
	const fallsRow = rows.first("falls");
	const way = fallsRow?.word("way") ?? "outward";
	if (fallsRow && !Object.hasOwn(opposite, way)) {
		context.evaluation.report(
			"fall-unclear",
			fallsRow.origin,
			`The end of a leg falls inward, outward, forward or backward, not ${way}: a left and a right leg are told alike`,
		);
		return undefined;
	}
	const falls = way as EndWork["falls"];
	const longest = end === "top" ? opposite[falls] : toward[falls];
	const pointRow = rows.first("long-point");
	const point = pointRow?.word("face");
	if (pointRow && point !== longest)
		context.evaluation.report(
			"end-contradicts",
			pointRow.origin,
			`A ${end} end that falls ${falls} is longest at its ${longest} face: write \`long-point ${longest}\`, or let it fall another way`,
		);
	return {
		kind: "end",
		end,
		angle: degrees,
		falls,
		row,
		label: `end ${end} angled`,
	};
}

/**
 * The outlines of each layer. Front and back faces are cut into every layer from its own face; inside and outside ones from
 * the innermost and outermost face of the whole glue-up, so that a deep cut runs on into the next layer.
 */
export function shapeLayers(
	context: PieceContext,
	layers: readonly LayerBox[],
	outward: 1 | -1,
	works: readonly Work[],
): ShapedLayer[] {
	const shaped = layers.map(
		(): ShapedLayer => ({ outlines: [], edges: [], handedFrom: undefined }),
	);
	const blank = around(layers);
	const faces = works.filter((work) => work.kind === "face");
	const told = new Set<Row>();
	const cut = (
		box: LayerBox,
		axis: 0 | 2,
		lowFace: LegFace,
		highFace: LegFace,
	): Outline | undefined => {
		const low = faces.find((work) => work.face === lowFace);
		const high = faces.find((work) => work.face === highFace);
		const length = blank.max[1] - blank.min[1];
		const result = shapeBlank({
			plane: "xy",
			length,
			width: box.max[axis] - box.min[axis],
			...(low ? { low: shapeFrom(low, blank.min[1]) } : {}),
			...(high ? { high: shapeFrom(high, blank.min[1]) } : {}),
		});
		return outlineOr(context, result, told, low ?? high, high ?? low, (p) =>
			pathOutline(p, axis, [blank.min[1], box.min[axis]]),
		);
	};
	const across = faces.some(
		(work) => work.face === "inside" || work.face === "outside",
	);
	const wide = across
		? outward === -1
			? cut(blank, 0, "outside", "inside")
			: cut(blank, 0, "inside", "outside")
		: undefined;
	layers.forEach((layer, index) => {
		const into = shaped[index] as ShapedLayer;
		const touched = faces.filter((work) =>
			reaches(work, layer, blank, outward),
		);
		const deep = touched.filter(
			(work) => work.face === "front" || work.face === "back",
		);
		if (deep.length > 0) {
			const outline = cut(layer, 2, "back", "front");
			if (outline) {
				into.outlines.push(outline);
				for (const work of deep)
					into.edges.push(faceEdge(context, work, blank.min[1]));
			}
		}
		const wideWorks = touched.filter((work) => !deep.includes(work));
		if (wide && wideWorks.length > 0) {
			into.outlines.push(wide);
			for (const work of wideWorks)
				into.edges.push(faceEdge(context, work, blank.min[1]));
		}
	});
	for (const work of works)
		if (work.kind === "end")
			angleEnds(context, layers, shaped, outward, work, told);
	layers.forEach((layer, index) => {
		const into = shaped[index] as ShapedLayer;
		into.handedFrom = handedFrom(
			works.filter((work) =>
				work.kind === "face"
					? reaches(work, layer, blank, outward)
					: reachesEnd(layers, layer, work),
			),
		);
	});
	return shaped;
}

function shapeFrom(work: FaceWork, foot: number): FaceShape {
	return {
		kind: work.curve,
		stations: work.stations.map(({ height, cutIn }) => ({
			height: height - foot,
			cutIn,
		})),
	};
}

/** Whether the cut takes anything from this layer. */
function reaches(
	work: FaceWork,
	layer: LayerBox,
	blank: LayerBox,
	outward: 1 | -1,
): boolean {
	const outside = outward === -1 ? "min" : "max";
	const before =
		work.face === "front" || work.face === "back"
			? 0
			: work.face === "outside"
				? Math.abs(blank[outside][0] - layer[outside][0])
				: outward === -1
					? blank.max[0] - layer.max[0]
					: layer.min[0] - blank.min[0];
	return deepest(work, layer, blank) > before + 1e-6;
}

function deepest(work: FaceWork, layer: LayerBox, blank: LayerBox): number {
	const ends = endsOf(work, blank);
	const heights = [
		layer.min[1],
		layer.max[1],
		...work.stations
			.map(({ height }) => height)
			.filter((height) => height > layer.min[1] && height < layer.max[1]),
	];
	return Math.max(
		...heights.map((height) =>
			cutInAt(work.stations, work.curve, ends, height),
		),
	);
}

function endsOf(work: FaceWork, blank: LayerBox) {
	return curveEnds(
		work.stations.map(({ height, cutIn }) => ({
			height: height - blank.min[1],
			cutIn,
		})),
		blank.max[1] - blank.min[1],
	);
}

function faceEdge(
	context: PieceContext,
	work: FaceWork,
	foot: number,
): EdgeWork {
	const points = work.stations
		.map(
			({ height, cutIn }) =>
				`${shownNumber(context, cutIn)} deep at ${shownNumber(context, height - foot)}`,
		)
		.join(", ");
	return {
		where: `${work.face} face`,
		work: work.row.head === "taper" ? "taper" : "shape",
		text: `${work.curve}: ${points} above the foot`,
	};
}

function reachesEnd(
	layers: readonly LayerBox[],
	layer: LayerBox,
	work: EndWork,
): boolean {
	const heights = layers.map((one) =>
		work.end === "top" ? one.max[1] : one.min[1],
	);
	return work.end === "top"
		? layer.max[1] === Math.max(...heights)
		: layer.min[1] === Math.min(...heights);
}

function angleEnds(
	context: PieceContext,
	layers: readonly LayerBox[],
	shaped: readonly ShapedLayer[],
	outward: 1 | -1,
	work: EndWork,
	told: Set<Row>,
): void {
	const reaching = layers.filter((layer) => reachesEnd(layers, layer, work));
	const blank = around(reaching);
	const axis = work.falls === "inward" || work.falls === "outward" ? 0 : 2;
	const longest =
		work.end === "top" ? opposite[work.falls] : toward[work.falls];
	const high =
		longest === "front" || longest === (outward === 1 ? "outside" : "inside");
	const angled: AngledEnd = {
		angle: (work.angle * Math.PI) / 180,
		longPoint: high ? "high" : "low",
	};
	const ends: Ends = work.end === "top" ? { end: angled } : { start: angled };
	const result = shapeBlank({
		plane: "xy",
		length: blank.max[1] - blank.min[1],
		width: blank.max[axis] - blank.min[axis],
		...ends,
	});
	const outline = outlineOr(context, result, told, work, work, (points) =>
		pathOutline(points, axis, [blank.min[1], blank.min[axis]]),
	);
	if (!outline) return;
	layers.forEach((layer, index) => {
		if (!reaching.includes(layer)) return;
		const into = shaped[index] as ShapedLayer;
		into.outlines.push(outline);
		into.edges.push({
			where: `${work.end} end`,
			work: "angle",
			text: `falls ${work.falls} ${shownDegrees(work.angle)}, long point ${longest}`,
		});
	});
}

function outlineOr(
	context: PieceContext,
	result: Shaped,
	told: Set<Row>,
	low: Work | undefined,
	high: Work | undefined,
	place: (points: Outline["points"]) => Outline,
): Outline | undefined {
	if ("outline" in result) return place(result.outline.points);
	const { problem } = result;
	const work = "side" in problem && problem.side === "high" ? high : low;
	// A cut that cannot be made is told once, not for each layer.
	if (work && !told.has(work.row)) {
		told.add(work.row);
		context.evaluation.report(
			"cannot-be-cut",
			work.row.headline,
			problemText(context, problem),
		);
	}
	return undefined;
}

function problemText(context: PieceContext, problem: BlankProblem): string {
	const length = (mm: number): string => shownNumber(context, mm);
	switch (problem.kind) {
		case "outside-the-blank":
			return problem.cutIn < 0
				? `A cut-in of ${length(problem.cutIn)} would add wood: it must be 0 or more`
				: `${length(problem.cutIn)} in at ${length(problem.height)} above its foot lies outside the leg: a height must lie on it, a cut within it`;
		case "two-stations-at-one-height":
			return `Two cut-ins at the same height, ${length(problem.height)} above its foot: take one away`;
		case "cut-through":
			return `Nothing is left ${length(problem.height)} above its foot: the two faces cut ${length(-problem.left)} too deep together`;
		case "ends-meet":
			return "The angled end takes the whole leg away: make the angle smaller";
		default:
			return "This cannot be cut from the leg as it stands";
	}
}

/**
 * The first line from which a left and a right layer differ. A part is the same as its mirror image, only turned round, as
 * long as one plane halves it: while its inside and outside are alike, or its front and back.
 */
function handedFrom(works: readonly Work[]): string | undefined {
	for (let count = 1; count <= works.length; count++) {
		const done = works.slice(0, count);
		if (uneven(done, "inside", "outside") && uneven(done, "front", "back"))
			return works[count - 1]?.label;
	}
	return undefined;
}

function uneven(works: readonly Work[], a: LegFace, b: LegFace): boolean {
	const cut = (face: LegFace): string =>
		JSON.stringify(
			works.flatMap((work) =>
				work.kind === "face" && work.face === face
					? [work.curve, work.stations]
					: [],
			),
		);
	const falls =
		a === "inside" ? ["inward", "outward"] : ["forward", "backward"];
	return (
		cut(a) !== cut(b) ||
		works.some((work) => work.kind === "end" && falls.includes(work.falls))
	);
}

function around(layers: readonly LayerBox[]): LayerBox {
	const corner = (which: "min" | "max"): Vec3 => {
		const pick = which === "min" ? Math.min : Math.max;
		const along = (axis: 0 | 1 | 2): number =>
			pick(...layers.map((layer) => layer[which][axis]));
		return [along(0), along(1), along(2)];
	};
	return { name: "", min: corner("min"), max: corner("max") };
}

/** Where the shaped leg is thinnest from its foot up to a height (world, mm). Angled ends are left out: they run to a point. */
export function thinnestOf(
	layers: readonly LayerBox[],
	outward: 1 | -1,
	works: readonly Work[],
	upTo: number,
): LegInfo["thinnest"] {
	const blank = around(layers);
	const faces = works.filter((work) => work.kind === "face");
	const cutAt = (face: LegFace, height: number): number => {
		const work = faces.find((one) => one.face === face);
		return work
			? cutInAt(work.stations, work.curve, endsOf(work, blank), height)
			: 0;
	};
	const heights = [
		...layers.flatMap((layer) => [layer.min[1], layer.max[1]]),
		...faces.flatMap((work) =>
			faceThrough(work.stations, work.curve, endsOf(work, blank)).map(
				({ height }) => height,
			),
		),
	]
		.filter((height) => height >= blank.min[1] && height <= upTo)
		.sort((a, b) => a - b);
	const least = {
		depth: Number.POSITIVE_INFINITY,
		breadth: Number.POSITIVE_INFINITY,
		depthAt: blank.min[1],
		breadthAt: blank.min[1],
	};
	const inner = outward === -1 ? "max" : "min";
	const outer = outward === -1 ? "min" : "max";
	for (const height of heights) {
		const present = layers.filter(
			(layer) => layer.min[1] <= height && height <= layer.max[1],
		);
		if (present.length === 0) continue;
		const group = around(present);
		const depth =
			Math.min(...present.map((layer) => layer.max[2] - layer.min[2])) -
			cutAt("front", height) -
			cutAt("back", height);
		// Cuts are measured from the faces of the whole blank, and matter where they reach what is there.
		const inCut =
			cutAt("inside", height) - Math.abs(blank[inner][0] - group[inner][0]);
		const outCut =
			cutAt("outside", height) - Math.abs(blank[outer][0] - group[outer][0]);
		const breadth =
			group.max[0] - group.min[0] - Math.max(0, inCut) - Math.max(0, outCut);
		if (depth < least.depth) Object.assign(least, { depth, depthAt: height });
		if (breadth < least.breadth)
			Object.assign(least, { breadth, breadthAt: height });
	}
	return least;
}
