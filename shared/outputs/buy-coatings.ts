// Glue, finish and ground by area and volume.

import { meetingOf } from "../geometry/overlap.ts";
import { type Box, commonBox, isEmpty, sizeOf } from "../geometry/solid.ts";
import { numberOf } from "../model/size.ts";
import type { FinishInfo, Joint, Part, Piece, Stock } from "../model/types.ts";
import { type ExposedFace, exposedFaces } from "./exposed.ts";
import { type PieceToBuy, stockKey } from "./piece-to-buy.ts";
import { glueCovers } from "./practice.ts";

export interface CoatingLine {
	readonly kind: "glue" | "finish" | "ground";
	/** As the design calls it; `glue` where it does not. */
	readonly name: string;
	readonly stock: Stock | undefined;
	/** mm2, all coats together. */
	readonly area: number;
	/** The area of each piece, by its place in the list. */
	readonly shares: readonly number[];
	/** Litres that are bought on top, as `spare` says; undefined if it is not known how far it goes. */
	readonly spare: number | undefined;
	/** m2 that a litre covers; undefined if nobody says. */
	readonly covers: number | undefined;
	/** Where `covers` comes from. */
	readonly coversFrom: "stock" | "practice" | "unknown";
	/** Without what is spare. */
	readonly litres: number | undefined;
	/** Whole tins; undefined where the stock file has no size of tin. */
	readonly tins: number | undefined;
}

/** Those of all pieces together, so that a tin is shared. */
export function coatingLines(
	pieces: readonly PieceToBuy[],
): readonly CoatingLine[] {
	const lines = new Map<string, Coating>();
	pieces.forEach(({ piece, stocks }, at) => {
		for (const use of usesOf(piece, stocks)) {
			const { kind, name, stock } = use;
			const key = `${kind} ${stock ? stockKey(stock) : name}`;
			const line = lines.get(key) ?? {
				kind,
				name,
				stock,
				area: 0,
				spare: 0,
				shares: pieces.map(() => 0),
			};
			line.area += use.area;
			line.spare += use.area * piece.spare;
			line.shares[at] = (line.shares[at] ?? 0) + use.area;
			lines.set(key, line);
		}
	});
	return [...lines.values()].map(lineOf);
}

interface Coating extends Use {
	area: number;
	/** mm2. */
	spare: number;
	readonly shares: number[];
}

interface Use {
	readonly kind: CoatingLine["kind"];
	readonly name: string;
	readonly stock: Stock | undefined;
	/** mm2, all coats. */
	readonly area: number;
}

function usesOf(
	piece: Piece,
	stocks: ReadonlyMap<string, Stock>,
): readonly Use[] {
	const uses: Use[] = [];
	const add = (
		kind: CoatingLine["kind"],
		name: string,
		stock: Stock | undefined,
		area: number,
	): void => {
		if (area > 0) uses.push({ kind, name, stock, area });
	};
	const glue = usualGlue(stocks);
	for (const joint of piece.joints) {
		if (!joint.glue) continue;
		const named =
			joint.glueName === undefined ? glue : stocks.get(joint.glueName);
		add("glue", joint.glueName ?? glue?.id ?? "glue", named, gluedArea(joint));
	}
	for (const part of piece.parts) {
		const seams = (part.strips ?? 1) - 1;
		if (seams < 1) continue;
		const area = seams * numberOf(part.length) * numberOf(part.thick);
		add("glue", glue?.id ?? "glue", glue, area);
	}
	for (const veneer of piece.veneers) {
		const area = veneer.sheets.reduce(
			(sum, { faceLength, faceWidth }) =>
				sum + numberOf(faceLength) * numberOf(faceWidth),
			0,
		);
		for (const { coats, coating, stock } of veneer.ground) {
			add("ground", coating, stock, coats * area);
		}
	}
	if (piece.finishes.length > 0) {
		const faces = exposedFaces(piece);
		for (const finish of piece.finishes) {
			const area = finishedArea(finish, faces);
			for (const { coats, coating, stock } of finish.coats) {
				add("finish", coating, stock, coats * area);
			}
		}
	}
	return uses;
}

/**
 * Area of a glued joint, mm2, spread on one side: the inner faces of the housing that takes the member, or where the two
 * meet face to face.
 */
export function gluedArea(joint: Joint): number {
	const housings = joint.host.housings.filter(
		({ takes }) => takes === joint.member.path,
	);
	if (housings.length > 0) {
		const around = joint.host.solid.box;
		return housings.reduce((sum, { box }) => sum + innerFaces(box, around), 0);
	}
	return meetingOf(joint.host.solid, joint.member.solid)?.area ?? 0;
}

/** Faces of a cut that lie within the wood: those on its outside are open. */
function innerFaces(cut: Box, wood: Box): number {
	const box = commonBox(cut, wood);
	if (isEmpty(box)) return 0;
	const size = sizeOf(box);
	let area = 0;
	for (const axis of [0, 1, 2] as const) {
		const face = size.reduce(
			(product, length, one) => (one === axis ? product : product * length),
			1,
		);
		if (box.min[axis] > wood.min[axis] + 1e-6) area += face;
		if (box.max[axis] < wood.max[axis] - 1e-6) area += face;
	}
	return area;
}

/** The only glue that the stock knows, if there is just one. */
function usualGlue(stocks: ReadonlyMap<string, Stock>): Stock | undefined {
	const glues = [...stocks.values()].filter(
		({ coating }) => coating?.kind === "glue",
	);
	return glues.length === 1 ? glues[0] : undefined;
}

/** mm2 of one coat. Veneer takes the place of the face under it; strips on the wall are left bare. */
function finishedArea(
	finish: FinishInfo,
	faces: readonly ExposedFace[],
): number {
	return faces
		.filter(
			({ part, inside }) =>
				part.role !== "wall-strip" &&
				part.role !== "cleat" &&
				(finish.faces === "all" || inside === (finish.faces === "inside")) &&
				isOn(part, finish.on),
		)
		.reduce((sum, { area }) => sum + area, 0);
}

function isOn(part: Part, things: readonly string[]): boolean {
	return (
		things.length === 0 ||
		things.some(
			(path) => part.path === path || part.path.startsWith(`${path}.`),
		)
	);
}

function lineOf(coating: Coating): CoatingLine {
	const { kind, stock, area } = coating;
	const said = stock?.coating?.coversPerLitre;
	const covers = said ?? (kind === "glue" ? glueCovers : undefined);
	const litresOf = (mm2: number): number | undefined =>
		covers !== undefined && covers > 0 ? mm2 / 1e6 / covers : undefined;
	const [litres, spare] = [litresOf(area), litresOf(coating.spare)];
	const tin = stock?.coating?.tin;
	return {
		...coating,
		spare,
		covers,
		coversFrom:
			said !== undefined ? "stock" : kind === "glue" ? "practice" : "unknown",
		litres,
		tins:
			litres !== undefined && tin !== undefined && tin > 0
				? Math.ceil((litres + (spare ?? 0)) / tin - 1e-9)
				: undefined,
	};
}
