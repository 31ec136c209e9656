// From the cells of the search to the plan's tree: kerfs taken off again, nested cuts along one axis joined, parts named.
import type { CutSheet, Region } from "../job.ts";
import type { Axis, Cell, Sheet } from "./cell.ts";
import type { Kind, Member, Problem } from "./problem.ts";

/** The sheets of a plan, each kind's parts dealt out in the order of the job. */
export function toCutSheets(
	sheets: readonly Sheet[],
	problem: Problem,
): CutSheet[] {
	const deal = dealer(problem.kinds);
	return sheets.map((sheet) => {
		const blank = problem.blanks[sheet.blank];
		if (blank === undefined) throw new Error("A sheet of no blank");
		const at = { trim: blank.trim, kerf: problem.kerf, deal };
		return { stock: blank.stock, root: toRegion(sheet.root, at) };
	});
}

interface Setting {
	readonly trim: number;
	readonly kerf: number;
	readonly deal: (kind: number) => Member;
}

function toRegion(cell: Cell, at: Setting): Region {
	const frame = {
		x: cell.x + at.trim,
		y: cell.y + at.trim,
		length: cell.length - at.kerf,
		width: cell.width - at.kerf,
	};
	const { content } = cell;
	if (content.is === "part") {
		const { part, swapped } = at.deal(content.kind);
		const turned = content.turned !== swapped;
		return { ...frame, kind: "part", part, turned };
	}
	if (content.is !== "cut") return { ...frame, kind: "remnant" };
	const pieces = flat(content.pieces, content.along).map((piece) =>
		toRegion(piece, at),
	);
	return { ...frame, kind: "cut", along: content.along, pieces };
}

/** The pieces of one cut, with those of pieces that are cut along the same axis in their place. */
export function flat(pieces: readonly Cell[], along: Axis): readonly Cell[] {
	const nested = pieces.some(
		({ content }) => content.is === "cut" && content.along === along,
	);
	if (!nested) return pieces;
	return pieces.flatMap((piece) =>
		piece.content.is === "cut" && piece.content.along === along
			? flat(piece.content.pieces, along)
			: [piece],
	);
}

function dealer(kinds: readonly Kind[]): (kind: number) => Member {
	const places = kinds.map(() => ({ member: 0, dealt: 0 }));
	return (kind) => {
		const place = places[kind];
		const members = kinds[kind]?.members;
		if (place === undefined || members === undefined)
			throw new Error("A part of no kind");
		let member = members[place.member];
		if (member !== undefined && place.dealt >= member.count) {
			place.member++;
			place.dealt = 0;
			member = members[place.member];
		}
		if (member === undefined) throw new Error("More parts than were asked for");
		place.dealt++;
		return member;
	};
}
