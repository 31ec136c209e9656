// What the text at an offset is about: found out here, put into words elsewhere.

import {
	type Construct,
	type Filled,
	type FormElement,
	fill,
	type MeasureNode,
	type Node,
	nodeAt,
	type PathNode,
	type SlotType,
	type Span,
	type Statement,
} from "../../../grammar/index.ts";
import { nearby } from "../../model/compile.ts";
import type { Size } from "../../model/size.ts";
import type {
	Declaration,
	Joint,
	Part,
	Piece,
	Stock,
} from "../../model/types.ts";
import { namesOf } from "./known-names.ts";
import { type Place, placeAt } from "./place.ts";
import { pieceAt, type Snapshot } from "./snapshot.ts";

export type Topic = { readonly span: Span } & (
	| {
			readonly kind: "head";
			readonly construct: Construct;
			/** Joints that the line makes. */
			readonly joints: readonly Joint[];
			readonly piece: Piece | undefined;
	  }
	| {
			readonly kind: "measure";
			readonly node: MeasureNode;
			/** What the line takes there; undefined where the line does not fit its row. */
			readonly slotType: SlotType | undefined;
			/** As the evaluation read it; undefined where it read nothing there. */
			readonly size: Size | undefined;
			readonly piece: Piece | undefined;
	  }
	| {
			readonly kind: "size";
			/** As it stands in the text. */
			readonly label: string;
			readonly size: Size;
			readonly declaration: Declaration | undefined;
			readonly piece: Piece | undefined;
	  }
	| { readonly kind: "part"; readonly part: Part; readonly piece: Piece }
	| {
			readonly kind: "thing";
			readonly path: string;
			readonly declaration: Declaration;
			readonly piece: Piece;
	  }
	| { readonly kind: "piece"; readonly piece: Piece }
	| {
			readonly kind: "stock";
			readonly stocks: readonly Stock[];
			readonly id: string;
			readonly declaration: Declaration;
	  }
	| { readonly kind: "name"; readonly declaration: Declaration }
);

export function topicAt(snapshot: Snapshot, offset: number): Topic | undefined {
	const { tree } = snapshot.result;
	if (
		tree.comments.some(({ span }) => span.start < offset && offset <= span.end)
	) {
		return undefined;
	}
	const place = placeAt(tree, offset);
	const placed = place.statement;
	if (!placed) return undefined;
	const { statement, construct } = placed;
	const piece = pieceAt(snapshot, offset);
	if (statement.head !== "" && holds(statement.headSpan, offset)) {
		return (
			construct &&
			headTopic(snapshot, construct, statement, statement.headSpan, piece)
		);
	}
	const result = construct && fill(statement, construct);
	const filled = result?.ok ? result.filled : undefined;
	const nodes = nodeAt(tree, offset);
	const path = nodes.find((node): node is PathNode => node.kind === "path");
	const inner =
		path && !isPhraseWord(filled, path)
			? pathTopic(snapshot, place, path, offset, piece)
			: path
				? undefined
				: valueTopic(snapshot, nodes, filled, piece);
	if (inner) return inner;
	const leaf = nodes.at(-1);
	return construct && leaf && leaf.kind !== "statement"
		? headTopic(snapshot, construct, statement, (path ?? leaf).span, piece)
		: undefined;
}

function headTopic(
	{ uri }: Snapshot,
	construct: Construct,
	statement: Statement,
	span: Span,
	piece: Piece | undefined,
): Topic {
	const isLine =
		construct.declares === undefined || construct.declares === "part";
	const joints = isLine
		? (piece?.joints ?? []).filter(
				({ origin }) =>
					origin.uri === uri &&
					origin.span.start >= statement.span.start &&
					origin.span.end <= statement.span.end,
			)
		: [];
	return { kind: "head", construct, joints, piece, span };
}

/** A number or an expression: the innermost node that the evaluation made a size of. */
function valueTopic(
	snapshot: Snapshot,
	nodes: readonly Node[],
	filled: Filled | undefined,
	piece: Piece | undefined,
): Topic | undefined {
	const leaf = nodes.at(-1);
	if (leaf?.kind === "measure") {
		const { span } = leaf;
		const size = sizeOf(snapshot, span);
		const slotType = filled && slotTypeAt(filled, span);
		return { kind: "measure", node: leaf, slotType, size, piece, span };
	}
	for (const node of nodes.toReversed()) {
		if (node.kind === "statement") return undefined;
		const size = sizeOf(snapshot, node.span);
		if (!size) continue;
		const { start, end } = node.span;
		return {
			kind: "size",
			label: snapshot.text.slice(start, end),
			size,
			declaration: undefined,
			piece,
			span: node.span,
		};
	}
	return undefined;
}

/** A name, or names with dots: what it means up to the one at the offset. */
function pathTopic(
	snapshot: Snapshot,
	place: Place,
	path: PathNode,
	offset: number,
	piece: Piece | undefined,
): Topic | undefined {
	const index = path.segments.findIndex(({ span }) => holds(span, offset));
	const segment = path.segments[index];
	if (!segment) return undefined;
	const span = { start: path.span.start, end: segment.span.end };
	const label = path.segments
		.slice(0, index + 1)
		.map((name) => name.text)
		.join(".");
	const declaration = declarationAt(snapshot, segment.span);
	const stock = snapshot.design.stocks.get(label);
	if (stock && !isShadowed(declaration)) {
		return {
			kind: "stock",
			id: label,
			stocks: [stock],
			declaration: stock.declaration,
			span,
		};
	}
	if (piece) {
		const found = thingTopic(
			piece,
			prefixesOf(place),
			label,
			declaration,
			span,
		);
		if (found) return found;
	}
	if (index === path.segments.length - 1) {
		const size =
			sizeOf(snapshot, path.span) ?? declaredSize(piece, declaration);
		if (size) return { kind: "size", label, size, declaration, piece, span };
	}
	return declaration && declarationTopic(snapshot, declaration, label, span);
}

function thingTopic(
	piece: Piece,
	prefixes: readonly string[],
	label: string,
	declaration: Declaration | undefined,
	span: Span,
): Topic | undefined {
	for (const prefix of prefixes) {
		const path = prefix + label;
		const part = piece.partByPath.get(path);
		if (part) return { kind: "part", part, piece, span };
		const owned = piece.parts.find(
			({ owner, path: own }) => owner === path || own.startsWith(`${path}.`),
		);
		if (owned && declaration && declaration.kind !== "size") {
			return { kind: "thing", path, declaration, piece, span };
		}
	}
	return undefined;
}

function declarationTopic(
	{ design }: Snapshot,
	declaration: Declaration,
	label: string,
	span: Span,
): Topic {
	if (declaration.kind === "piece" || declaration.kind === "component") {
		const piece = design.pieces.find(
			(one) =>
				one.declaration.origin.uri === declaration.origin.uri &&
				one.declaration.origin.span.start === declaration.origin.span.start,
		);
		if (piece) return { kind: "piece", piece, span };
	}
	if (declaration.kind === "material") {
		const stocks = [...design.stocks.values()].filter(
			({ id }) => id === label || id.startsWith(`${label}.`),
		);
		if (stocks.length > 0)
			return { kind: "stock", id: label, stocks, declaration, span };
	}
	if (declaration.kind === "variant") {
		const stock = [...design.stocks.values()].find(
			(one) =>
				one.declaration.origin.uri === declaration.origin.uri &&
				one.declaration.nameSpan.start === declaration.nameSpan.start,
		);
		if (stock)
			return {
				kind: "stock",
				id: stock.id,
				stocks: [stock],
				declaration,
				span,
			};
	}
	return { kind: "name", declaration, span };
}

/** A thing of the piece has the name of a material. */
function isShadowed(declaration: Declaration | undefined): boolean {
	return (
		declaration !== undefined &&
		declaration.kind !== "material" &&
		declaration.kind !== "variant"
	);
}

/** The beginnings that make a name in this place a path of the piece, inner ones first. */
function prefixesOf({ around }: Place): string[] {
	const prefixes = [""];
	let prefix = "";
	for (const { statement, construct, context } of around.slice(1)) {
		const name = construct?.declares && namesOf(statement, context)[0];
		if (!name) break;
		prefix += `${name}.`;
		prefixes.unshift(prefix);
	}
	return prefixes;
}

function declaredSize(
	piece: Piece | undefined,
	declaration: Declaration | undefined,
): Size | undefined {
	if (declaration?.kind !== "size") return undefined;
	return (
		piece?.givens.find((given) => given.declaration.path === declaration.path)
			?.size ?? piece?.sizes.get(declaration.name)
	);
}

/** The declaration that a name means or makes. */
function declarationAt(
	{ design, uri }: Snapshot,
	span: Span,
): Declaration | undefined {
	const isThis = (other: Span): boolean =>
		other.start === span.start && other.end === span.end;
	const { references, declarations } = nearby(design, span.start);
	return (
		references.find(({ origin }) => origin.uri === uri && isThis(origin.span))
			?.declaration ??
		declarations.find(
			({ origin, nameSpan }) => origin.uri === uri && isThis(nameSpan),
		)
	);
}

function sizeOf({ design, uri }: Snapshot, span: Span): Size | undefined {
	return nearby(design, span.start).sizesAt.find(
		({ origin }) =>
			origin.uri === uri &&
			origin.span.start === span.start &&
			origin.span.end === span.end,
	)?.size;
}

/** A word of the form (`from`, `centred`), not a name: it is in none of the slots. */
function isPhraseWord(filled: Filled | undefined, path: PathNode): boolean {
	if (!filled || path.segments.length > 1) return false;
	return slotAt(filled, path.span) === undefined;
}

function slotTypeAt(filled: Filled, span: Span): SlotType | undefined {
	const slot = slotAt(filled, span);
	const find = (elements: readonly FormElement[]): SlotType | undefined => {
		for (const element of elements) {
			if (element.kind === "slot" && element.slot === slot) return element.type;
			const inner =
				element.kind === "optional" ? find(element.elements) : undefined;
			if (inner) return inner;
		}
		return undefined;
	};
	return slot === undefined ? undefined : find(filled.form.elements);
}

/** The slot whose value holds a span; of a position only its offsets and its datum count. */
function slotAt(filled: Filled, span: Span): string | undefined {
	for (const [slot, value] of filled.slots) {
		const spans =
			value.kind === "expression"
				? [value.expression.span]
				: value.kind === "position"
					? [...value.position.offsets, value.position.datum].flatMap(
							(node) => node?.span ?? [],
						)
					: (value.kind === "names" ? value.names : value.refs).map(
							(node) => node.span,
						);
		if (
			spans.some(({ start, end }) => start <= span.start && span.end <= end)
		) {
			return slot;
		}
	}
	return undefined;
}

function holds(span: Span, offset: number): boolean {
	return span.start <= offset && offset <= span.end;
}
