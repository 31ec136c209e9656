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

/**
 * The pieces of one cut, with those of pieces that are cut along the same axis in their place. A piece that its own pieces
 * do not fill stays whole: the blade runs off its end, and between two pieces there would be more than a kerf.
 */
export function flat(pieces: readonly Cell[], along: Axis): readonly Cell[] {
	if (!pieces.some((piece) => isFilled(piece, along))) return pieces;
	return pieces.flatMap((piece) =>
		piece.content.is === "cut" && isFilled(piece, along)
			? flat(piece.content.pieces, along)
			: [piece],
	);
}

/** Whether it is cut along the axis into pieces that make it up. */
function isFilled({ content, length, width }: Cell, along: Axis): boolean {
	if (content.is !== "cut" || content.along !== along) return false;
	const size = (cell: { length: number; width: number }): number =>
		along === "x" ? cell.length : cell.width;
	const sum = content.pieces.reduce((total, piece) => total + size(piece), 0);
	return sum === size({ length, width });
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
