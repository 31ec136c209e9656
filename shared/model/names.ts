// Looks names up: `case.front.edges` segment by segment, and tells what is not there.

import type { NameNode, PathNode } from "../../grammar/index.ts";
import type { Frame } from "./frame.ts";
import {
	type Bounds,
	faceOf,
	isSide,
	type Meaning,
	nearest,
	type PanelEdge,
	pathText,
	type Reach,
	type Side,
	sides,
	type Thing,
} from "./meaning.ts";
import { minus, named, type Size } from "./size.ts";
import type { Declaration, Part, Stock, Way } from "./types.ts";

/** What a path means; undefined (and told) if it means nothing. */
export function resolve(frame: Frame, path: PathNode): Meaning | undefined {
	const first = path.segments[0] as NameNode;
	if (first.text === "floor" && path.segments.length === 1)
		return { kind: "floor" };
	const binding = frame.scope.find(first.text);
	if (!binding) {
		tellUnknown(frame, first, namesIn(frame), "Nothing here is called");
		return undefined;
	}
	frame.evaluation.refer(frame.uri, first.span, binding.declaration);
	let meaning = binding.meaning();
	for (let index = 1; meaning && index < path.segments.length; index++) {
		const segment = path.segments[index] as NameNode;
		const label = pathText(path.segments.slice(0, index));
		const next: Meaning | undefined = memberOf(meaning, segment.text, label);
		if (!next) {
			tellMember(frame, meaning, segment, label);
			return undefined;
		}
		const declaration = declarationOf(next);
		if (declaration && declaration.name === segment.text)
			frame.evaluation.refer(frame.uri, segment.span, declaration);
		meaning = next;
	}
	return meaning;
}

/** How far what a path names reaches along one axis, where that can be told without its other axes. */
export function reachAlong(
	frame: Frame,
	path: PathNode,
	axis: Way,
): (() => Reach | undefined) | undefined {
	const [first, ...behind] = path.segments;
	const binding = first && frame.scope.find(first.text);
	if (!first || !binding) return undefined;
	const reach = binding.along?.(
		axis,
		behind.map(({ text }) => text),
	);
	if (reach) frame.evaluation.refer(frame.uri, first.span, binding.declaration);
	return reach;
}

/** Tells a member that is not there; one that could not be worked out is silent where the fault behind it is told already. */
function tellMember(
	frame: Frame,
	meaning: Meaning,
	segment: NameNode,
	label: string,
): void {
	const known = memberNames(meaning);
	if (!known.includes(segment.text))
		tellUnknown(frame, segment, known, `\`${label}\` has no`);
	else if (frame.evaluation.findings.length === 0)
		frame.evaluation.report(
			"not-known",
			{ uri: frame.uri, span: segment.span },
			`\`${label}\` has no \`${segment.text}\`: there is nothing in it yet`,
		);
}

function namesIn(frame: Frame): string[] {
	return [...frame.scope.all()].map(([name]) => name);
}

function tellUnknown(
	frame: Frame,
	segment: NameNode,
	known: readonly string[],
	start: string,
): void {
	const origin = { uri: frame.uri, span: segment.span };
	const near = nearest(segment.text, known);
	// `width-1/2` reads as the name `width-1` and a division: the blanks are what is missing.
	const head = /^(.+?)-\d/.exec(segment.text)?.[1];
	if (head && known.includes(head)) {
		const spaced = segment.text.replace(`${head}-`, `${head} - `);
		frame.evaluation.report(
			"unknown-name",
			origin,
			`${start} \`${segment.text}\`: a minus wants a blank on both sides, as in \`${spaced}\``,
			{
				fix: {
					title: `Change to \`${spaced}\``,
					edits: [{ span: segment.span, text: spaced }],
				},
			},
		);
		return;
	}
	const some = known.slice(0, 12).map((name) => `\`${name}\``);
	frame.evaluation.report(
		"unknown-name",
		origin,
		`${start} \`${segment.text}\`${near ? `: did you mean \`${near}\`?` : some.length > 0 ? `: there is ${some.join(", ")}${known.length > 12 ? " …" : ""}` : ""}`,
		near
			? {
					fix: {
						title: `Change to \`${near}\``,
						edits: [{ span: segment.span, text: near }],
					},
				}
			: {},
	);
}

function declarationOf(meaning: Meaning): Declaration | undefined {
	switch (meaning.kind) {
		case "thing":
			return meaning.thing.declaration;
		case "part":
			return meaning.part.declaration;
		case "stock":
			return meaning.stock.declaration;
		default:
			return undefined;
	}
}

/** What a name behind a dot means. `label` is the path so far, for stories and faces. */
export function memberOf(
	meaning: Meaning,
	name: string,
	label: string,
): Meaning | undefined {
	switch (meaning.kind) {
		case "material":
			return meaning.variants.get(name)?.meaning();
		case "stock":
			return stockMember(meaning.stock, name, label);
		case "thing":
			return thingMember(meaning.thing, name, label);
		case "part":
			return partMember(
				meaning.part,
				meaning.panelSide,
				meaning.mirrored && (name === "left" || name === "right")
					? oppositeOf(name)
					: name,
				label,
			);
		case "face":
			return name === "edges" && meaning.face.edges
				? { kind: "edges", edges: meaning.face.edges() }
				: undefined;
		default:
			return undefined;
	}
}

/** The names that may stand behind a dot, for completion and for "did you mean". */
export function memberNames(meaning: Meaning): readonly string[] {
	switch (meaning.kind) {
		case "material":
			return [...meaning.variants.keys()];
		case "stock":
			return ["thick", "sold-as"];
		case "thing":
			return [
				...new Set([
					...meaning.thing.memberNames(),
					...Object.keys(sides),
					"width",
					"height",
					"depth",
				]),
			];
		case "part":
			return [
				"length",
				"width",
				"thick",
				"height",
				"depth",
				...Object.keys(sides),
				"edges",
				...(meaning.panelSide ? ["inside", "outside"] : []),
			];
		case "face":
			return meaning.face.edges ? ["edges"] : [];
		default:
			return [];
	}
}

function stockMember(
	stock: Stock,
	name: string,
	label: string,
): Meaning | undefined {
	const size =
		name === "thick"
			? stock.thick
			: name === "sold-as"
				? stock.soldAs
				: undefined;
	return size && { kind: "size", size: named(`${label}.${name}`, size) };
}

function thingMember(
	thing: Thing,
	name: string,
	label: string,
): Meaning | undefined {
	const own = thing.member(name);
	if (own) return own;
	const bounds = isSide(name) || name in extents ? thing.bounds() : undefined;
	return bounds && boundsMember(bounds, name, label, undefined);
}

const extents: Readonly<Record<string, Way>> = {
	width: "x",
	height: "y",
	depth: "z",
};

function boundsMember(
	bounds: Bounds,
	name: string,
	label: string,
	part: Part | undefined,
): Meaning | undefined {
	if (isSide(name))
		return {
			kind: "face",
			face: faceOf(bounds, name, `${label}.${name}`, part),
		};
	const way = extents[name];
	if (!way) return undefined;
	const index = way === "x" ? 0 : way === "y" ? 1 : 2;
	return {
		kind: "size",
		size: named(
			`${label}.${name}`,
			minus(bounds.max[index], bounds.min[index]),
		),
	};
}

function partMember(
	part: Part,
	panelSide: Side | undefined,
	name: string,
	label: string,
): Meaning | undefined {
	if (name === "length" || name === "width" || name === "thick")
		return { kind: "size", size: named(`${label}.${name}`, part[name]) };
	if (name === "edges") return { kind: "edges", edges: edgesOf(part) };
	if (panelSide && (name === "inside" || name === "outside")) {
		const side = name === "outside" ? panelSide : oppositeOf(panelSide);
		return {
			kind: "face",
			face: faceOf(part, side, `${label}.${name}`, part),
		};
	}
	return boundsMember(part, name, label, part);
}

export function oppositeOf(side: Side): Side {
	const pairs: Readonly<Record<Side, Side>> = {
		left: "right",
		right: "left",
		top: "bottom",
		bottom: "top",
		front: "back",
		back: "front",
	};
	return pairs[side];
}

/** The four narrow edges of a part. */
export function edgesOf(part: Part): PanelEdge[] {
	const through = thicknessAxis(part);
	return (["x", "y", "z"] as const)
		.filter((axis) => axis !== through)
		.flatMap((axis) => [
			{ part, axis, outward: -1 as const, side: undefined },
			{ part, axis, outward: 1 as const, side: undefined },
		]);
}

/** The world axis that a part's thickness lies along. */
export function thicknessAxis(part: Part): Way {
	return part.place.axes[2].slice(1) as Way;
}

/** The size of a meaning that is one. */
export function sizeOfMeaning(meaning: Meaning): Size | undefined {
	return meaning.kind === "size" ? meaning.size : undefined;
}
