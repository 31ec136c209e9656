// What a name can mean while a design is evaluated, and how it is looked up.

import type { NameNode } from "../../grammar/index.ts";
import type { Frame } from "./frame.ts";
import type { Row } from "./rows.ts";
import type { Size } from "./size.ts";
import type { Declaration, Part, Stock, Way } from "./types.ts";

/** A plane that things are measured from, square to one axis. */
export interface Face {
	readonly axis: Way;
	/** The way it looks. */
	readonly outward: 1 | -1;
	/** Along the axis, world. */
	readonly at: Size;
	/** As the maker names it. */
	readonly label: string;
	readonly part: Part | undefined;
	/** The panel edges that make up this side of a box. */
	readonly edges?: () => readonly PanelEdge[];
}

/** One edge of a panel: the narrow face that looks out in a direction. */
export interface PanelEdge {
	readonly part: Part;
	/** The axis along which the edge face looks, and its sense. */
	readonly axis: Way;
	readonly outward: 1 | -1;
	/** Its place among the four of a frame, if it is in one. */
	readonly side: "top" | "bottom" | "left" | "right" | undefined;
}

/** Exact corners in the world. */
export interface Bounds {
	readonly min: readonly [Size, Size, Size];
	readonly max: readonly [Size, Size, Size];
}

/** A box, leg, trim, group …: has parts, faces and sizes that can be named behind a dot. */
export interface Thing {
	readonly path: string;
	readonly declaration: Declaration;
	readonly parts: () => readonly Part[];
	readonly bounds: () => Bounds | undefined;
	/** Own members; faces and sizes by the bounds are added for every thing. */
	readonly member: (name: string) => Meaning | undefined;
	readonly memberNames: () => readonly string[];
}

/** A component: its statement, and the frame of the file that it stands in. */
export interface ComponentMeaning {
	readonly row: Row;
	readonly frame: Frame;
}

export type Meaning =
	| { readonly kind: "size"; readonly size: Size }
	| {
			readonly kind: "material";
			readonly variants: ReadonlyMap<string, Binding>;
	  }
	| { readonly kind: "stock"; readonly stock: Stock }
	| { readonly kind: "component"; readonly component: ComponentMeaning }
	| { readonly kind: "thing"; readonly thing: Thing }
	| {
			readonly kind: "part";
			readonly part: Part;
			readonly panelSide?: Side;
			/** Read by the right one of a handed pair: its left is its right. */
			readonly mirrored?: true;
	  }
	| { readonly kind: "face"; readonly face: Face }
	| { readonly kind: "edges"; readonly edges: readonly PanelEdge[] }
	| { readonly kind: "floor" }
	/** A step, finish, piece or aid: can be named, has no shape. */
	| { readonly kind: "label" };

export type Side = "top" | "bottom" | "left" | "right" | "front" | "back";

/** The axis that a side's face is square to, and its sense. */
export const sides: Readonly<
	Record<Side, { readonly axis: Way; readonly outward: 1 | -1 }>
> = {
	left: { axis: "x", outward: -1 },
	right: { axis: "x", outward: 1 },
	bottom: { axis: "y", outward: -1 },
	top: { axis: "y", outward: 1 },
	back: { axis: "z", outward: -1 },
	front: { axis: "z", outward: 1 },
};

export const axisIndex: Readonly<Record<Way, 0 | 1 | 2>> = { x: 0, y: 1, z: 2 };

/** From where to where something reaches along one axis, world. */
export interface Reach {
	readonly low: Size;
	readonly high: Size;
	/** One face alone is meant, and it looks that way. */
	readonly face?: 1 | -1;
	/** A panel of a box: as a datum it stands for its outside face. */
	readonly panelSide?: Side;
}

/** A declared name: what it means is worked out when it is first asked for. */
export interface Binding {
	readonly declaration: Declaration;
	readonly meaning: () => Meaning | undefined;
	/**
	 * How far it, or what the names behind it mean, reaches along one axis, without its other axes: two things may be
	 * placed by one another on different ones. Undefined where only the whole tells.
	 */
	readonly along?: (
		axis: Way,
		behind: readonly string[],
	) => (() => Reach | undefined) | undefined;
}

/** What `along` answers for something that has nothing but its own reach: itself, and its faces square to the axis. */
export function reachOfBody(
	axis: Way,
	behind: readonly string[],
	body: () => Reach | undefined,
): (() => Reach | undefined) | undefined {
	const [name] = behind;
	if (name === undefined) return body;
	if (behind.length > 1 || !isSide(name) || sides[name].axis !== axis)
		return undefined;
	return () => {
		const reach = body();
		return reach && { ...reach, face: sides[name].outward };
	};
}

/** Names in force at a place; inner scopes see outer ones. */
export class Scope {
	readonly outer: Scope | undefined;
	/** Left is right here, in names and in directions. */
	readonly mirrored: boolean = false;
	private readonly names = new Map<string, Binding>();

	constructor(outer?: Scope) {
		this.outer = outer;
	}

	/** Adds a name; answers with the earlier binding if it is taken in this very scope. */
	declare(name: string, binding: Binding): Binding | undefined {
		const taken = this.names.get(name);
		if (!taken) this.names.set(name, binding);
		return taken;
	}

	own(name: string): Binding | undefined {
		return this.names.get(name);
	}

	find(name: string): Binding | undefined {
		return this.names.get(name) ?? this.outer?.find(name);
	}

	/** All names in force, inner ones first. */
	*all(): IterableIterator<[string, Binding]> {
		yield* this.names;
		if (this.outer) yield* this.outer.all();
	}
}

/** The face of bounds on a side. */
export function faceOf(
	bounds: Bounds,
	side: Side,
	label: string,
	part?: Part,
): Face {
	const { axis, outward } = sides[side];
	return {
		axis,
		outward,
		at: (outward === 1 ? bounds.max : bounds.min)[axisIndex[axis]],
		label,
		part,
	};
}

export function isSide(name: string): name is Side {
	return Object.hasOwn(sides, name);
}

/** How close two names are: the nearest of `names` within two edits, for "did you mean". */
export function nearest(
	name: string,
	names: Iterable<string>,
): string | undefined {
	let best: string | undefined;
	let least = Math.min(3, Math.ceil(name.length / 2) + 1);
	for (const candidate of names) {
		if (Math.abs(candidate.length - name.length) >= least) continue;
		const distance = editDistance(name, candidate);
		if (distance < least) {
			least = distance;
			best = candidate;
		}
	}
	return best;
}

function editDistance(a: string, b: string): number {
	let row = Array.from({ length: b.length + 1 }, (_, index) => index);
	for (let i = 1; i <= a.length; i++) {
		const next = [i];
		for (let j = 1; j <= b.length; j++) {
			next.push(
				Math.min(
					(row[j] as number) + 1,
					(next[j - 1] as number) + 1,
					(row[j - 1] as number) + (a[i - 1] === b[j - 1] ? 0 : 1),
				),
			);
		}
		row = next;
	}
	return row[b.length] as number;
}

/** `a.b.c` as it stands in the text. */
export function pathText(segments: readonly NameNode[]): string {
	const first = segments[0];
	if (segments.length === 1 && first) return first.text;
	return segments.map((segment) => segment.text).join(".");
}
