// What the constructs of one piece share while it is evaluated: names, shop, readings, and the lists that they fill.

import type {
	Declares,
	NameNode,
	PathNode,
	Statement,
} from "../../grammar/index.ts";
import type { Covering } from "./constructs/coverings.ts";
import type { Evaluation } from "./evaluation.ts";
import type { Frame } from "./frame.ts";
import { JointDrafts } from "./joint-drafts.ts";
import {
	type Bounds,
	type Meaning,
	pathText,
	type Scope,
	type Thing,
} from "./meaning.ts";
import { resolve } from "./names.ts";
import type { PartDraft } from "./part-builder.ts";
import type { Row } from "./rows.ts";
import { named, type Size, settled } from "./size.ts";
import type {
	AidInfo,
	BoxInfo,
	Declaration,
	Display,
	FinishInfo,
	Given,
	LegInfo,
	LoadInfo,
	MatchInfo,
	MountInfo,
	Part,
	Shop,
	StepInfo,
	Stock,
	TrimInfo,
	VeneerInfo,
} from "./types.ts";

/** A reading of the shop that replaces one size, by the path of the size. */
export interface Reading {
	readonly size: Size;
	readonly row: Row;
	/** Half range of the reading, mm. */
	readonly tolerance: number;
	/** What the design said without it, once that has been worked out. */
	derived: Size | undefined;
}

/** The lists that a piece ends up with. One set for a piece and all that it makes from components. */
export interface Collected {
	readonly parts: PartDraft[];
	readonly joints: JointDrafts;
	readonly givens: Given[];
	readonly boxes: BoxInfo[];
	readonly legs: LegInfo[];
	readonly trims: TrimInfo[];
	readonly veneers: VeneerInfo[];
	readonly mounts: MountInfo[];
	readonly finishes: FinishInfo[];
	readonly loads: LoadInfo[];
	readonly matches: MatchInfo[];
	readonly steps: StepInfo[];
	readonly aids: AidInfo[];
	/** Parts that wait for an assembly to be measured, by path: after which paths. */
	readonly toFit: Map<string, readonly string[]>;
	/** Veneers and trims by their lines, for whatever stands against a face that one of them covers. */
	readonly coverings: Covering[];
	readonly readings: Map<string, Reading>;
	/** All sizes by path, for the build and for `explain`. */
	readonly sizes: Map<string, Size>;
}

export function emptyCollected(): Collected {
	const parts: PartDraft[] = [];
	return {
		parts,
		joints: new JointDrafts(parts),
		givens: [],
		boxes: [],
		legs: [],
		trims: [],
		veneers: [],
		mounts: [],
		finishes: [],
		loads: [],
		matches: [],
		steps: [],
		aids: [],
		toFit: new Map(),
		coverings: [],
		readings: new Map(),
		sizes: new Map(),
	};
}

export interface PieceContext {
	readonly evaluation: Evaluation;
	readonly frame: Frame;
	/** Name of the piece; ids of parts begin with it. */
	readonly piece: string;
	/** Path of the group that this is made into; empty in the piece itself. */
	readonly prefix: string;
	/** Where x = 0, the floor and z = 0 are, world: moved for things made from components. */
	readonly origin: readonly [Size, Size, Size];
	readonly display: Display;
	readonly shop: Shop;
	readonly collected: Collected;
	/** What is made from components, and from which: set where one is made, absent in the piece itself. */
	readonly made?: Made;
}

/** Where a context is inside things made from components. */
export interface Made {
	/** Name of the component: what its lines declare stands in its text, not in that of the piece. */
	readonly component: string;
	/** The components that it stands in, itself last: none of them can be made in it again. */
	readonly chain: readonly Statement[];
	/** Bounds by path and givens, of components worked out at the origin. */
	readonly bounds: Map<string, Bounds | undefined>;
	/** How many more may be made here, one in another. */
	readonly budget: { left: number };
}

/** The context with another scope: inside a box or a leg, its own names come first. */
export function within(context: PieceContext, scope: Scope): PieceContext {
	return { ...context, frame: { ...context.frame, scope } };
}

/** `case.left` within the piece, group prefixes before it. */
export function pathIn(context: PieceContext, path: string): string {
	return context.prefix ? `${context.prefix}.${path}` : path;
}

/** Makes the declaration of a name and books it. */
export function declareName(
	context: PieceContext,
	kind: Declares,
	name: NameNode,
	row: Row,
	path: string,
): Declaration {
	const declaration: Declaration = {
		kind,
		name: name.text,
		path: pathInText(context, path),
		origin: row.origin,
		nameSpan: name.span,
		doc: row.statement.doc,
	};
	return context.evaluation.declare(declaration);
}

/** The path by the text that a name stands in: a component's own, whatever it was made into. */
function pathInText(context: PieceContext, path: string): string {
	if (!context.made) return `${context.piece}.${path}`;
	const own = path.startsWith(`${context.prefix}.`)
		? path.slice(context.prefix.length + 1)
		: path;
	return `${context.made.component}.${own}`;
}

/** The size, unless a reading replaces it: then the reading, and the derived size is kept beside it. */
export function sizeOrReading(
	context: PieceContext,
	path: string,
	derived: Size,
): Size {
	const reading = context.collected.readings.get(path);
	const size = sizeAsRead(context, path, derived);
	if (reading) reading.derived = derived;
	context.collected.sizes.set(path, size);
	return size;
}

/** The same, where the size is only needed to place something: it is booked when the part is made. */
export function sizeAsRead(
	context: PieceContext,
	path: string,
	derived: Size,
): Size {
	const reading = context.collected.readings.get(path);
	return reading
		? named(`${path} as measured`, settled(reading.size))
		: derived;
}

/** The material that a path names; anything else is told. */
export function stockOf(
	context: PieceContext,
	path: PathNode | undefined,
	kinds: readonly Stock["kind"][],
): Stock | undefined {
	if (!path) return undefined;
	const meaning = resolve(context.frame, path);
	if (!meaning) return undefined;
	const origin = { uri: context.frame.uri, span: path.span };
	const label = pathText(path.segments);
	if (meaning.kind === "material") {
		const variants = [...meaning.variants.keys()].map(
			(variant) => `\`${label}.${variant}\``,
		);
		context.evaluation.report(
			"not-a-material",
			origin,
			`\`${label}\` comes in several kinds: write ${variants.slice(0, 6).join(" or ")}`,
		);
		return undefined;
	}
	if (meaning.kind !== "stock") {
		context.evaluation.report(
			"not-a-material",
			origin,
			`\`${label}\` is no material: declare it with \`sheet\`, \`board\` or \`veneer\`, or take it with \`use\``,
		);
		return undefined;
	}
	if (!kinds.includes(meaning.stock.kind)) {
		context.evaluation.report(
			"not-a-material",
			origin,
			`\`${label}\` is ${meaning.stock.kind} stock, this wants ${kinds.join(" or ")}`,
		);
		return undefined;
	}
	return meaning.stock;
}

/** The parts that a path names: one part, or all of a thing. Anything else is told. */
export function partsOf(
	context: PieceContext,
	path: PathNode,
): readonly Part[] | undefined {
	const meaning = resolve(context.frame, path);
	if (!meaning) return undefined;
	if (meaning.kind === "part") return [meaning.part];
	if (meaning.kind === "thing") return meaning.thing.parts();
	context.evaluation.report(
		"not-a-part",
		{ uri: context.frame.uri, span: path.span },
		`\`${pathText(path.segments)}\` is no part: name a part, or a box, leg or trim for all of its parts`,
	);
	return undefined;
}

/** One part that a path names. */
export function partOf(
	context: PieceContext,
	path: PathNode | undefined,
): Part | undefined {
	if (!path) return undefined;
	const meaning = resolve(context.frame, path);
	if (!meaning) return undefined;
	if (meaning.kind === "part") return meaning.part;
	const label = pathText(path.segments);
	const parts = meaning.kind === "thing" ? meaning.thing.parts() : [];
	context.evaluation.report(
		"not-a-part",
		{ uri: context.frame.uri, span: path.span },
		parts.length > 0
			? `\`${label}\` has several parts: name one, as in \`${parts[0]?.path ?? label}\``
			: `\`${label}\` is no part: name one that is there, or declare it`,
	);
	return undefined;
}

export function thingMeaning(thing: Thing): Meaning {
	return { kind: "thing", thing };
}
