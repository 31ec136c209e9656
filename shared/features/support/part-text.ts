// A part in words: its size, how many there are, its grain, what is sawn on the way, and why it is that size.

import { movementText } from "../../checks/moving.ts";
import { explainTree } from "../../model/explain.ts";
import type { Display, Part, Piece } from "../../model/types.ts";
import {
	type CutList,
	type CutRow,
	cutList,
	cutOrder,
} from "../../outputs/cut-list.ts";
import { countText, rowWords } from "../../outputs/cut-list-words.ts";
import { codeBlock, codeSpan, escapeMarkdown } from "../../text/markdown.ts";
import { lengthText } from "../../units/format.ts";
import { Rational } from "../../units/rational.ts";
import { cutListGlance } from "./cut-list-glance.ts";

export function partText(part: Part, piece: Piece): string {
	const row = rowOf(part, piece);
	return [
		`**${codeSpan(part.path)}**, ${part.role} of ${codeSpan(part.stock.id)}`,
		...(row ? rowText(row, part, piece) : []),
		"Why it is that size:",
		codeBlock(whyText(part, piece.display), "text"),
	].join("\n\n");
}

function rowText(row: CutRow, part: Part, piece: Piece): string[] {
	const { display } = piece;
	const words = rowWords(row, display);
	const others = row.parts.filter((one) => one !== part);
	const alike =
		others.length > 0
			? `, with ${others.map((one) => codeSpan(one.path)).join(", ")}`
			: "";
	const lines = [
		`Thick x width x length: **${row.cut.thick.text} x ${row.cut.width.text} x ${row.cut.length.text} ${display.unit}** (${otherSystem(part, display)})`,
		`How many: ${countText(row)}${alike}`,
		`Grain: along the length, ${grainWay(part)}`,
		...movementLine(part, piece),
		...(words.stages.length > 0
			? [`On the way: ${escapeMarkdown(words.stages.join(", then "))}`]
			: []),
		...[
			...(words.fit === undefined ? [] : [words.fit]),
			...words.housings,
			...words.edges,
			...(words.hands === undefined ? [] : [words.hands]),
			...words.notes,
		].map((line) => escapeMarkdown(line)),
	];
	return [lines.map((line) => `- ${line}`).join("\n")];
}

/** Over the year in the piece's room; nothing where the room is not given, or where it is less than a mark of the tape. */
function movementLine(part: Part, piece: Piece): string[] {
	const text = movementText(part, piece);
	return text === undefined ? [] : [escapeMarkdown(text)];
}

function rowOf(part: Part, piece: Piece): CutRow | undefined {
	for (const { rows } of cutList(piece).sections) {
		const row = rows.find(({ parts }) => parts.includes(part));
		if (row) return row;
	}
	return undefined;
}

function otherSystem(
	{ thick, width, length }: Part,
	{ unit }: Display,
): string {
	const other = unit === "in" ? "mm" : "in";
	const sizes = [thick, width, length].map((size) =>
		lengthText(size.value, { ...fine[other], approximately: true }),
	);
	return `${sizes.join(" x ")} ${other}`;
}

const fine = {
	in: { unit: "in", precision: Rational.of(1, 64) },
	mm: { unit: "mm", precision: Rational.of(1, 10) },
} as const;

function grainWay({ place }: Part): string {
	switch (place.axes[0].slice(1)) {
		case "x":
			return "which runs across";
		case "y":
			return "which runs up";
		default:
			return "which runs from back to front";
	}
}

function whyText(part: Part, display: Display): string {
	return (["length", "width", "thick"] as const)
		.map((name) => explainTree(part[name], display, name))
		.join("")
		.trimEnd();
}

/** Rows that a hover has room for. */
const mostRows = 40;

/** The cut list of a piece or of one of its things, as long as a hover may be. */
export function cutListText(piece: Piece, path?: string): string {
	const whole = cutListOf(piece, path);
	let room = mostRows;
	const sections = whole.sections.map(({ when, rows }) => {
		const shown = rows.slice(0, room);
		room -= shown.length;
		return { when, rows: shown };
	});
	const count = (list: CutList): number =>
		list.sections.reduce((sum, { rows }) => sum + rows.length, 0);
	const short = { ...whole, sections };
	const left = count(whole) - count(short);
	const more =
		left > 0 ? `\nAnd ${left} more row${left === 1 ? "" : "s"}.\n` : "";
	return cutListGlance(short) + more;
}

/** The cut list of a piece, or of what in it belongs to one of its things. */
function cutListOf(piece: Piece, path?: string): CutList {
	const whole = cutList(piece);
	if (path === undefined) return whole;
	const isOwn = ({ owner, path: own }: Part): boolean =>
		owner === path || own === path || own.startsWith(`${path}.`);
	return {
		...whole,
		piece: path,
		aids: [],
		sections: cutOrder.map((when) => ({
			when,
			rows: (whole.sections.find((one) => one.when === when)?.rows ?? [])
				.map((row) => ({
					...row,
					parts: row.parts.filter(isOwn),
					hands: undefined,
				}))
				.filter(({ parts }) => parts.length > 0),
		})),
	};
}
