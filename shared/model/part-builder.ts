// Makes parts: exact corners in the world, the solid worked out once when all housings are known.

import { measure } from "../geometry/measure.ts";
import {
	type Direction,
	type Placement,
	signOf,
	thirdOf,
} from "../geometry/place.ts";
import type { Box, Outline, Solid, Vec3 } from "../geometry/solid.ts";
import { axisIndex } from "./meaning.ts";
import { type PieceContext, pathIn, sizeOrReading } from "./piece-context.ts";
import { minus, numberOf, plus, type Size, sameValue } from "./size.ts";
import type {
	Declaration,
	EdgeWork,
	Housing,
	Part,
	PartRole,
	Stage,
	Stock,
	Way,
} from "./types.ts";

export interface PartSpec {
	/** Within its construct: `case.left`; a group's prefix is put before it. */
	readonly path: string;
	readonly role: PartRole;
	readonly declaration: Declaration;
	readonly owner: string;
	readonly stock: Stock;
	/** The axis of the grain and the axis through its thickness. */
	readonly along: Way;
	readonly through: Way;
	/** Final sizes; readings replace them. */
	readonly length: Size;
	readonly width: Size;
	readonly thick: Size;
	/**
	 * On each axis where it is held: the place of its lower (-1) or upper (1) face; its size does the rest.
	 */
	readonly held: readonly [Held, Held, Held];
	readonly stages?: readonly Stage[];
	/** World outlines that shape it (bevels, mitres, curves). */
	readonly outlines?: readonly Outline[];
	readonly cut?: Part["cut"];
	readonly hand?: "left" | "right";
	readonly handedFrom?: string;
	readonly edges?: readonly EdgeWork[];
	readonly notes?: readonly string[];
	readonly strips?: number;
}

export interface Held {
	readonly side: -1 | 1;
	readonly at: Size;
}

export const low = (at: Size): Held => ({ side: -1, at });
export const high = (at: Size): Held => ({ side: 1, at });

const now: Part["cut"] = { when: "now", after: [], reading: undefined };

/** Makes a part and books it in the piece. Its lists may grow until the piece is complete. */
export function makePart(context: PieceContext, spec: PartSpec): PartDraft {
	const path = pathIn(context, spec.path);
	const measured: ("length" | "width" | "thick")[] = [];
	const size = (which: "length" | "width" | "thick"): Size => {
		const derived = spec[which];
		const actual = sizeOrReading(context, `${path}.${which}`, derived);
		if (actual !== derived) measured.push(which);
		return actual;
	};
	const sizes = {
		length: size("length"),
		width: size("width"),
		thick: size("thick"),
	};
	const across = otherAxis(spec.along, spec.through);
	const extents: [Size, Size, Size] = [
		sizes.length,
		sizes.length,
		sizes.length,
	];
	extents[axisIndex[spec.along]] = sizes.length;
	extents[axisIndex[across]] = sizes.width;
	extents[axisIndex[spec.through]] = sizes.thick;
	const min: Size[] = [];
	const max: Size[] = [];
	for (const axis of [0, 1, 2] as const) {
		const { side, at } = spec.held[axis];
		const extent = extents[axis];
		min.push(side === -1 ? at : minus(at, extent));
		max.push(side === -1 ? plus(at, extent) : at);
	}
	const part = new PartDraft(
		context,
		path,
		spec,
		sizes,
		min as [Size, Size, Size],
		max as [Size, Size, Size],
		across,
	);
	part.measured.push(...measured);
	context.collected.parts.push(part);
	return part;
}

export function otherAxis(a: Way, b: Way): Way {
	return (["x", "y", "z"] as const).find(
		(axis) => axis !== a && axis !== b,
	) as Way;
}

/** A part while its piece is made; to the outside it is a `Part`. */
export class PartDraft implements Part {
	readonly id: string;
	readonly path: string;
	readonly name: string;
	readonly role: PartRole;
	readonly declaration: Declaration;
	readonly owner: string;
	readonly stock: Stock;
	readonly length: Size;
	readonly width: Size;
	readonly thick: Size;
	readonly min: readonly [Size, Size, Size];
	readonly max: readonly [Size, Size, Size];
	/** World, mm: the box around it before outlines and housings. */
	readonly bounds: Box;
	readonly place: Placement;
	readonly stages: Stage[];
	cut: Part["cut"];
	hand: "left" | "right" | undefined;
	handedFrom: string | undefined;
	readonly edges: EdgeWork[];
	readonly housings: Housing[] = [];
	readonly measured: ("length" | "width" | "thick")[] = [];
	readonly notes: string[];
	readonly strips: number | undefined;
	readonly outlines: Outline[];
	private made: Solid | undefined;
	private weighed: { volume: number; centre: Vec3 } | undefined;

	constructor(
		context: PieceContext,
		path: string,
		spec: PartSpec,
		sizes: { length: Size; width: Size; thick: Size },
		min: readonly [Size, Size, Size],
		max: readonly [Size, Size, Size],
		across: Way,
	) {
		this.path = path;
		this.id = `${context.piece}.${path}`;
		this.name = path.slice(path.lastIndexOf(".") + 1);
		this.role = spec.role;
		this.declaration = spec.declaration;
		this.owner = pathIn(context, spec.owner);
		this.stock = spec.stock;
		this.length = sizes.length;
		this.width = sizes.width;
		this.thick = sizes.thick;
		this.min = min;
		this.max = max;
		this.bounds = { min: cornerOf(min), max: cornerOf(max) };
		this.place = placement(spec.along, across, min, max);
		this.stages = (spec.stages ?? []).filter(
			(stage) =>
				!sameValue(stage.length, sizes.length) ||
				!sameValue(stage.width, sizes.width) ||
				!sameValue(stage.thick, sizes.thick),
		);
		this.cut = spec.cut ?? now;
		this.hand = spec.hand;
		this.handedFrom = spec.handedFrom;
		this.edges = [...(spec.edges ?? [])];
		this.notes = [...(spec.notes ?? [])];
		this.strips = spec.strips;
		this.outlines = [...(spec.outlines ?? [])];
	}

	get solid(): Solid {
		this.made ??= {
			box: this.bounds,
			outlines: this.outlines,
			cuts: this.housings.map((housing) => housing.box),
		};
		return this.made;
	}

	get volume(): number {
		return this.weigh().volume;
	}

	get centre(): Vec3 {
		return this.weigh().centre;
	}

	/** Takes wood out for another part; what was worked out before is forgotten. */
	house(housing: Housing): void {
		this.housings.push(housing);
		this.made = undefined;
		this.weighed = undefined;
	}

	private weigh(): { volume: number; centre: Vec3 } {
		if (!this.weighed) {
			const { volume, centre } = measure(this.solid);
			const { min, max } = this.bounds;
			this.weighed = {
				volume,
				centre: centre ?? [
					(min[0] + max[0]) / 2,
					(min[1] + max[1]) / 2,
					(min[2] + max[2]) / 2,
				],
			};
		}
		return this.weighed;
	}
}

function cornerOf(sizes: readonly [Size, Size, Size]): Vec3 {
	return [numberOf(sizes[0]), numberOf(sizes[1]), numberOf(sizes[2])];
}

function placement(
	along: Way,
	across: Way,
	min: readonly [Size, Size, Size],
	max: readonly [Size, Size, Size],
): Placement {
	const length: Direction = `+${along}`;
	const width: Direction = `+${across}`;
	const thick = thirdOf(length, width) as Direction;
	const origin = [0, 0, 0].map((_, axis) =>
		numberOf(
			(axis === axisIndex[thick.slice(1) as Way] && signOf(thick) === -1
				? max
				: min)[axis] as Size,
		),
	) as unknown as Vec3;
	return { origin, axes: [length, width, thick] };
}
