// Makes a piece by hand, part by part, for tests of what is read from a piece rather than from a text.

import { measure } from "../../shared/geometry/measure.ts";
import { axisOf, type Orientation } from "../../shared/geometry/place.ts";
import type { Solid, Vec3 } from "../../shared/geometry/solid.ts";
import {
	fact,
	named,
	numberOf,
	type Size,
	stated,
} from "../../shared/model/size.ts";
import type {
	Declaration,
	FastenerSize,
	Joint,
	Origin,
	Part,
	Piece,
	Shop,
	Stock,
	StockKind,
} from "../../shared/model/types.ts";
import { inch } from "../../shared/units/dimensions.ts";
import { Rational } from "../../shared/units/rational.ts";

export const nowhere: Origin = {
	uri: "file:///hand.rod",
	span: { start: 0, end: 0 },
};

/** A length as a maker writes it, in inches: `14 5/8`, `0.71`, `-3/4`. */
export function inches(text: string): Size {
	return stated(readMixed(text).mul(inch), text);
}

/** A length in millimetres: `18`, `18.1`. */
export function millimetres(text: string): Size {
	return stated(readMixed(text), `${text} mm`);
}

/** A thickness as the stock file tells it. */
export function asItMeasures(id: string, size: Size, tolerance = 0): Size {
	return {
		...fact(`${id} as it measures`, size),
		feeds: [
			{
				source: {
					id: `${id}.thick`,
					label: `${id}, as it measures`,
					tolerance,
				},
				weight: 1,
			},
		],
	};
}

function readMixed(text: string): Rational {
	const negative = text.startsWith("-");
	let sum = Rational.ZERO;
	for (const word of text.replace(/^-/, "").split(" ")) {
		const [top = "", bottom = "1"] = word.split("/");
		const value = Rational.fromDecimalText(top);
		const by = Rational.fromDecimalText(bottom);
		if (!value || !by) throw new Error(`Not a length: ${text}`);
		sum = sum.add(value.div(by));
	}
	return negative ? sum.neg() : sum;
}

export function declarationOf(
	path: string,
	kind: Declaration["kind"] = "part",
): Declaration {
	return {
		kind,
		name: path.split(".").at(-1) ?? path,
		path,
		origin: nowhere,
		nameSpan: nowhere.span,
		doc: "",
	};
}

export function stockOf(
	kind: StockKind,
	id: string,
	more: Partial<Stock> = {},
): Stock {
	return {
		kind,
		id,
		declaration: declarationOf(id, "variant"),
		species: undefined,
		thick: undefined,
		soldAs: undefined,
		surfaced: undefined,
		tolerance: 0,
		sizes: [],
		widths: undefined,
		lengths: undefined,
		soldLengths: [],
		onHand: [],
		trim: undefined,
		keep: undefined,
		grain: true,
		sawn: undefined,
		stiffness: undefined,
		shrinkage: undefined,
		price: undefined,
		per: undefined,
		currency: undefined,
		density: undefined,
		densitySource: "",
		fastener: undefined,
		coating: undefined,
		adhesiveAbove: undefined,
		adhesiveBacked: false,
		...more,
	};
}

export interface PartSetup
	extends Partial<Omit<Part, "min" | "max" | "solid">> {
	readonly stock: Stock;
	/** Along the grain, across it, through it. */
	readonly length: Size;
	readonly width: Size;
	readonly thick: Size;
	/** Where length, width and thickness run; across, deep, up by default. */
	readonly axes?: Orientation;
	/** World corner with the least coordinates; the origin by default. */
	readonly at?: readonly [Size, Size, Size];
	readonly solid?: (solid: Solid) => Solid;
}

const origin = [
	stated(Rational.ZERO, "0"),
	stated(Rational.ZERO, "0"),
	stated(Rational.ZERO, "0"),
] as const;

/** A part in its place; its solid is its box unless `solid` shapes it. */
export function partOf(path: string, setup: PartSetup): Part {
	const {
		axes = ["+x", "+z", "-y"],
		at = origin,
		solid: shape,
		...given
	} = setup;
	const sizes: [Size, Size, Size] = [given.length, given.width, given.thick];
	const max: [Size, Size, Size] = [...at];
	axes.forEach((direction, index) => {
		const axis = axisOf(direction);
		const from = at[axis];
		const by = sizes[index] as Size;
		max[axis] = {
			...stated(from.value.add(by.value), ""),
			feeds: by.feeds,
		};
	});
	const low: Vec3 = [numberOf(at[0]), numberOf(at[1]), numberOf(at[2])];
	const high: Vec3 = [numberOf(max[0]), numberOf(max[1]), numberOf(max[2])];
	const box: Solid = { box: { min: low, max: high }, outlines: [], cuts: [] };
	const solid = shape ? shape(box) : box;
	const { volume, centre } = measure(solid);
	const local = low.map((value, axis) => {
		const direction = axes.find((entry) => axisOf(entry) === axis);
		return direction?.startsWith("-") ? (high[axis] as number) : value;
	}) as unknown as Vec3;
	const name = path.split(".").at(-1) ?? path;
	return {
		id: `piece.${path}`,
		path,
		name,
		role: "panel",
		declaration: declarationOf(path),
		owner: path.includes(".") ? path.slice(0, path.lastIndexOf(".")) : path,
		place: { origin: local, axes },
		stages: [],
		cut: { when: "now", after: [], reading: undefined },
		hand: undefined,
		handedFrom: undefined,
		edges: [],
		housings: [],
		measured: [],
		notes: [],
		strips: undefined,
		...given,
		min: at,
		max,
		solid,
		volume,
		centre,
	};
}

export function fastenerSize(
	kind: FastenerSize["kind"],
	label: string,
	diameter: number,
	length: Size,
	number?: number,
): FastenerSize {
	return { kind, number, diameter, length, label };
}

export function jointOf(
	host: Part,
	member: Part,
	more: Partial<Joint> = {},
): Joint {
	return {
		id: `${host.path}~${member.path}`,
		kind: "butt",
		origin: nowhere,
		host,
		member,
		named: true,
		glue: false,
		glueName: undefined,
		fasteners: [],
		fits: [],
		apart: 0,
		...more,
	};
}

export const shop: Shop = {
	kerf: named("kerf", inches("1/8")),
	leastStrip: undefined,
	firstCut: undefined,
	stages: undefined,
	crosscut: 0.4,
	rip: 0.4,
	router: 0.1,
	mark: 0.8,
	drill: 0.5,
	temperature: undefined,
	humidity: undefined,
	origin: undefined,
};

export function pieceOf(
	name: string,
	parts: readonly Part[],
	more: Partial<Piece> = {},
): Piece {
	return {
		name,
		kind: "piece",
		declaration: declarationOf(name, "piece"),
		display: { unit: "in", precision: Rational.of(1, 32) },
		editions: [],
		givens: [],
		parts,
		partByPath: new Map(parts.map((part) => [part.path, part])),
		joints: [],
		boxes: [],
		legs: [],
		trims: [],
		veneers: [],
		mounts: [],
		finishes: [],
		loads: [],
		matches: [],
		spare: 0,
		room: { humidity: undefined, temperature: undefined, origin: undefined },
		shop,
		measured: [],
		cuts: [],
		steps: [],
		aids: [],
		overCase: undefined,
		overAll: undefined,
		sizes: new Map(),
		...more,
	};
}
