// What is told about the place under the pointer, as Markdown. Text from files is escaped.

import type { Span } from "../../grammar/index.ts";
import type { Declaration, Piece } from "../model/types.ts";
import { codeSpan, escapeMarkdown } from "../text/markdown.ts";
import { footText } from "./support/foot-text.ts";
import { headHelp } from "./support/head-help.ts";
import { jointsText } from "./support/joint-text.ts";
import { layoutGlanceText } from "./support/layout-glance.ts";
import { measureText, sizeText } from "./support/measure-text.ts";
import { mountText } from "./support/mount-text.ts";
import { cutListText, partText } from "./support/part-text.ts";
import { pieceText } from "./support/piece-text.ts";
import { sagOfPartText } from "./support/sag-text.ts";
import type { Snapshot } from "./support/snapshot.ts";
import { stockText } from "./support/stock-text.ts";
import { type Topic, topicAt } from "./support/topic.ts";

export interface Hover {
	/** What it is about. */
	readonly span: Span;
	readonly markdown: string;
}

export function hover(snapshot: Snapshot, offset: number): Hover | undefined {
	const topic = topicAt(snapshot, offset);
	if (!topic) return undefined;
	const markdown = textOf(snapshot, topic);
	return markdown === "" ? undefined : { span: topic.span, markdown };
}

function textOf(snapshot: Snapshot, topic: Topic): string {
	switch (topic.kind) {
		case "head":
			return blocks(
				topic.piece && jointsText(topic.joints, topic.piece.display),
				topic.piece &&
					topic.construct.head === "mount" &&
					mountAround(topic.piece, topic.span),
				headHelp(topic.construct),
			);
		case "measure":
			return measureText(
				topic.node,
				topic.slotType,
				topic.size,
				topic.piece?.display,
			);
		case "size":
			return blocks(
				sizeText(topic.label, topic.size, topic.piece?.display),
				topic.declaration && docOf(topic.declaration),
				topic.declaration && rangeOf(topic),
			);
		case "part":
			return blocks(
				partText(topic.part, topic.piece),
				sagOfPartText(topic.part, topic.piece),
				docOf(topic.part.declaration),
			);
		case "thing":
			return blocks(
				`${topic.declaration.kind} ${codeSpan(topic.path)}`,
				docOf(topic.declaration),
				mountOf(topic.piece, topic.path),
				legOf(topic.piece, topic.path),
				cutListText(topic.piece, topic.path),
			);
		case "piece":
			return blocks(
				docOf(topic.piece.declaration),
				pieceText(topic.piece),
				cutListText(topic.piece),
			);
		case "stock":
			return blocks(
				stockText(topic, snapshot.design),
				layoutGlanceText(
					snapshot.design.pieces,
					new Set(topic.stocks.map((stock) => stock.id)),
				),
				docOf(topic.declaration),
			);
		case "name":
			return blocks(
				`${topic.declaration.kind} ${codeSpan(topic.declaration.path)}`,
				docOf(topic.declaration),
			);
	}
}

function mountOf(piece: Piece, path: string): string | undefined {
	const mount = piece.mounts.find((one) => one.path === path);
	return mount && mountText(mount, piece);
}

function legOf(piece: Piece, path: string): string | undefined {
	const leg = piece.legs.find((one) => one.path === path);
	const text = leg && footText(piece, leg);
	return text === undefined ? undefined : escapeMarkdown(`${text}.`);
}

function mountAround(piece: Piece, span: Span): string | undefined {
	const mount = piece.mounts.find(
		({ declaration: { origin } }) =>
			origin.span.start <= span.start && span.end <= origin.span.end,
	);
	return mount && mountText(mount, piece);
}

function rangeOf({
	declaration,
	piece,
}: Topic & { readonly kind: "size" }): string | undefined {
	const given = piece?.givens.find(
		(one) => one.declaration.path === declaration?.path,
	);
	if (!piece || !given?.low || !given.high) return undefined;
	const low = sizeText(undefined, given.low, piece.display);
	const high = sizeText(undefined, given.high, piece.display);
	return `May be from ${low} to ${high}.`;
}

/** A description as its writer meant it: lines run on, an empty one parts paragraphs. */
function docOf({ doc }: Declaration): string | undefined {
	if (doc === "") return undefined;
	return doc
		.split(/\n\s*\n/)
		.map((paragraph) => escapeMarkdown(paragraph.replace(/\s*\n\s*/g, " ")))
		.join("\n\n");
}

function blocks(...parts: readonly (string | false | undefined)[]): string {
	return parts
		.filter((part) => part)
		.map((part) => (part || "").trim())
		.join("\n\n");
}
