// From a pattern to the cells of a sheet: where each cut runs, so that what is left over stays in few large pieces.
import {
	type Axis,
	type Cell,
	cutOut,
	firstCutIsFine,
	freeCell,
	type Sheet,
} from "./cell.ts";
import type { Pattern } from "./patterns.ts";
import type { Problem } from "./problem.ts";

/** The sheet cut up by a pattern; `undefined` if its first cut would be too long for the shop. */
export function cutUp(
	problem: Problem,
	blank: number,
	pattern: Pattern,
): Sheet | undefined {
	const shape = problem.blanks[blank];
	if (shape === undefined) throw new Error("No such blank");
	const root = freeCell(0, 0, shape.x, shape.y, undefined, 0);
	layIn(root, measured(pattern, problem), problem);
	const { content } = root;
	return content.is !== "cut" || firstCutIsFine(content.along, root, problem)
		? { blank, root }
		: undefined;
}

/** The pattern of cells, without their sizes; `undefined` if no part is in it. */
export function patternOf(cell: Cell): Pattern | undefined {
	const { content } = cell;
	if (content.is === "part")
		return { kind: content.kind, turned: content.turned };
	if (content.is !== "cut") return undefined;
	const pieces = content.pieces.flatMap((piece) => patternOf(piece) ?? []);
	return pieces.length > 1
		? { alongX: content.along === "x", pieces }
		: pieces[0];
}

interface Measured {
	readonly length: number;
	readonly width: number;
	readonly pattern: Pattern;
	readonly pieces: readonly Measured[];
}

function measured(pattern: Pattern, problem: Problem): Measured {
	if ("kind" in pattern) {
		const kind = problem.kinds[pattern.kind];
		if (kind === undefined) throw new Error("No such kind");
		const [length, width] = pattern.turned
			? [kind.y, kind.x]
			: [kind.x, kind.y];
		return { length, width, pattern, pieces: [] };
	}
	const pieces = pattern.pieces.map((piece) => measured(piece, problem));
	let length = 0;
	let width = 0;
	for (const piece of pieces) {
		length = pattern.alongX
			? length + piece.length
			: Math.max(length, piece.length);
		width = pattern.alongX ? Math.max(width, piece.width) : width + piece.width;
	}
	return { length, width, pattern, pieces };
}

function layIn(cell: Cell, layout: Measured, problem: Problem): void {
	const { pattern } = layout;
	const restX = cell.length - layout.length;
	const restY = cell.width - layout.width;
	const alongX = mayCut(cell, "x", problem);
	const alongY = mayCut(cell, "y", problem);
	const first: Axis =
		alongX && (!alongY || restX * cell.width >= restY * cell.length)
			? "x"
			: "y";
	if ("kind" in pattern) {
		const { kind, turned } = pattern;
		cutOut(cell, kind, turned, layout.length, layout.width, first, problem, []);
		return;
	}
	// What is over is cut off in one piece each way, the larger first, before the pieces are parted.
	const along: Axis = pattern.alongX ? "x" : "y";
	const across: Axis = pattern.alongX ? "y" : "x";
	const overAlong = pattern.alongX ? restX : restY;
	const overAcross = pattern.alongX ? restY : restX;
	if (overAcross > 0) {
		const cut =
			first === across || (overAlong === 0 && mayCut(cell, across, problem))
				? across
				: overAlong > 0
					? along
					: undefined;
		if (cut !== undefined) {
			const [piece] = split(cell, cut, [sizeOf(layout, cut)], problem);
			if (piece !== undefined) layIn(piece, layout, problem);
			return;
		}
	}
	const sizes = layout.pieces.map((piece) => sizeOf(piece, along));
	const cells = split(cell, along, sizes, problem);
	layout.pieces.forEach((piece, index) => {
		const into = cells[index];
		if (into !== undefined) layIn(into, piece, problem);
	});
}

function mayCut(cell: Cell, along: Axis, problem: Problem): boolean {
	return cell.from !== undefined || firstCutIsFine(along, cell, problem);
}

function sizeOf(layout: Measured, along: Axis): number {
	return along === "x" ? layout.length : layout.width;
}

/** Cuts a cell into pieces of these sizes, and the rest, if it is more than the blade takes. */
function split(
	cell: Cell,
	along: Axis,
	sizes: readonly number[],
	problem: Problem,
): Cell[] {
	const stage = cell.stage + (cell.from === along ? 0 : 1);
	let at = along === "x" ? cell.x : cell.y;
	const end = at + (along === "x" ? cell.length : cell.width);
	const piece = (size: number): Cell =>
		along === "x"
			? freeCell(at, cell.y, size, cell.width, along, stage)
			: freeCell(cell.x, at, cell.length, size, along, stage);
	const pieces = sizes.map((size) => {
		const next = piece(size);
		at += size;
		return next;
	});
	cell.content = {
		is: "cut",
		along,
		pieces: end - at > problem.kerf ? [...pieces, piece(end - at)] : pieces,
	};
	return pieces;
}
