// Behind the names of parts what they are cut to; behind trim and veneer how many strips or sheets they are.

import type { Span } from "../../../../grammar/index.ts";
import { type CutSize, cutSizes } from "../../../model/cut-size.ts";
import { explainTree } from "../../../model/explain.ts";
import type { Part, Piece } from "../../../model/types.ts";
import { codeBlock, codeSpan } from "../../../text/markdown.ts";
import { lengthText } from "../../../units/format.ts";
import { Rational } from "../../../units/rational.ts";
import type { Hint } from "./hint.ts";

/** Parts that one name stands for. */
interface Group {
	readonly name: Span;
	readonly parts: readonly Part[];
}

/** Strips of trim and sheets of veneer differ from edge to edge: they are counted instead. */
const counted: Readonly<
	Partial<Record<Part["role"], readonly [string, string]>>
> = { trim: ["strip", "strips"], veneer: ["sheet", "sheets"] };

export function sizeHints(piece: Piece, uri: string, range: Span): Hint[] {
	const groups = groupsOf(piece, uri, range).filter(
		({ parts }) => !parts.some(({ role }) => role in counted),
	);
	return groups.flatMap((group, index) => {
		const label = labelOf(piece, group);
		const next = groups[index + 1];
		// Neighbours in a list that are cut alike are told once, behind the last of them.
		const isTold =
			next !== undefined &&
			sameLine(group, next) &&
			labelOf(piece, next) === label;
		return label === undefined || isTold
			? []
			: [
					{
						kind: "sizes" as const,
						offset: group.name.end,
						label,
						about: group.parts[0]?.path ?? "",
					},
				];
	});
}

export function trimHints(piece: Piece, uri: string, range: Span): Hint[] {
	return groupsOf(piece, uri, range).flatMap(({ name, parts }) => {
		const [first] = parts;
		const words = first && counted[first.role];
		if (!first || !words) return [];
		const count = `${parts.length} ${parts.length === 1 ? words[0] : words[1]}`;
		const label =
			first.role === "trim" ? `${count}, ${running(piece, parts)}` : count;
		return [
			{ kind: "totals" as const, offset: name.end, label, about: first.owner },
		];
	});
}

/** Where the size of a part comes from, as Markdown. */
export function sizeStory(piece: Piece, path: string): string | undefined {
	const part = piece.partByPath.get(path);
	if (!part) return undefined;
	const story = (["length", "width", "thick"] as const)
		.map((name) => explainTree(part[name], piece.display, name))
		.join("");
	return [
		`${codeSpan(path)} as it is cut: length x width x thickness, the length along the grain. It follows from`,
		codeBlock(story.trimEnd(), "text"),
	].join("\n\n");
}

/** What the strips or sheets of a thing are, one by one. */
export function trimStory(piece: Piece, owner: string): string | undefined {
	const parts = piece.parts.filter((part) => part.owner === owner);
	if (parts.length === 0) return undefined;
	const cuts = cutsOf(piece);
	return parts
		.map((part) => {
			const cut = cuts.get(part.id);
			return `- ${codeSpan(part.path)}: ${cut ? sizeText(cut, piece) : ""}`;
		})
		.join("\n");
}

/** In the order of the text. */
function groupsOf(piece: Piece, uri: string, range: Span): Group[] {
	const groups = new Map<number, { name: Span; parts: Part[] }>();
	const { span: own } = piece.declaration.origin;
	for (const part of piece.parts) {
		const { origin, nameSpan } = part.declaration;
		// What a component brings is told in the component.
		if (
			origin.uri !== uri ||
			nameSpan.start < own.start ||
			nameSpan.end > own.end
		)
			continue;
		if (nameSpan.end < range.start || nameSpan.end > range.end) continue;
		const known = groups.get(nameSpan.start);
		if (known) known.parts.push(part);
		else groups.set(nameSpan.start, { name: nameSpan, parts: [part] });
	}
	return [...groups.values()].sort((a, b) => a.name.start - b.name.start);
}

function sameLine(a: Group, b: Group): boolean {
	return (
		a.parts[0]?.declaration.origin.span.start ===
		b.parts[0]?.declaration.origin.span.start
	);
}

/** Undefined where the parts of one name are cut to several sizes. */
function labelOf(piece: Piece, { parts }: Group): string | undefined {
	const cuts = cutsOf(piece);
	const labels = new Set(
		parts.map((part) => {
			const cut = cuts.get(part.id);
			return cut && sizeText(cut, piece);
		}),
	);
	const [label] = labels;
	return labels.size === 1 ? label : undefined;
}

function sizeText(
	{ length, width, thick }: CutSize,
	{ display }: Piece,
): string {
	return `${length.text} x ${width.text} x ${thick.text} ${display.unit}`;
}

function running({ display }: Piece, parts: readonly Part[]): string {
	const all = parts.reduce(
		(sum, { length }) => sum.add(length.value),
		Rational.ZERO,
	);
	return lengthText(all, { ...display, suffix: true });
}

const kept = new WeakMap<Piece, ReadonlyMap<string, CutSize>>();

function cutsOf(piece: Piece): ReadonlyMap<string, CutSize> {
	let cuts = kept.get(piece);
	if (!cuts) {
		cuts = cutSizes(piece);
		kept.set(piece, cuts);
	}
	return cuts;
}
