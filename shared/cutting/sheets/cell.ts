// A sheet while it is cut up: a tree of cells, in sizes grown by the kerf, and how a part is cut out of a free one.
import type { Blank, Problem } from "./problem.ts";

export type Axis = "x" | "y";

/** A rectangle of a sheet, grown by the kerf, so that the pieces of a cut cell fill it up to a rest that is nobody's. */
export interface Cell {
	readonly x: number;
	readonly y: number;
	/** Sizes along x and y, grown. */
	readonly length: number;
	readonly width: number;
	/** Along which axis the cell above is cut; `undefined` at the root. */
	readonly from: Axis | undefined;
	/** How many stages of cuts it takes to have this cell. */
	readonly stage: number;
	content: Content;
}

export type Content =
	| { readonly is: "free" }
	| { readonly is: "blemished" }
	| { readonly is: "part"; readonly kind: number; readonly turned: boolean }
	| {
			readonly is: "cut";
			readonly along: Axis;
			readonly pieces: readonly Cell[];
	  };

/** A sheet that is being cut, or is. */
export interface Sheet {
	/** Index into the problem's blanks. */
	readonly blank: number;
	readonly root: Cell;
}

const free: Content = { is: "free" };

export function freeCell(
	x: number,
	y: number,
	length: number,
	width: number,
	from: Axis | undefined,
	stage: number,
): Cell {
	return { x, y, length, width, from, stage, content: free };
}

/** Whether the rest beyond a piece may be cut off: nothing, no more than the blade takes, or wide enough to be held. */
export function restIsFine(rest: number, problem: Problem): boolean {
	return rest <= problem.kerf || rest - problem.kerf >= problem.leastStrip;
}

/** Whether the root may be cut along this axis: the blade then runs along the other, through the whole sheet. */
export function firstCutIsFine(
	along: Axis,
	root: { readonly length: number; readonly width: number },
	problem: Problem,
): boolean {
	const run = (along === "x" ? root.width : root.length) - problem.kerf;
	return run <= problem.longestFirstCut;
}

/** In which ways a part of a size may be cut out of the corner of a free cell: first along x, first along y. */
export function waysToCut(
	cell: Cell,
	length: number,
	width: number,
	problem: Problem,
): { readonly x: boolean; readonly y: boolean } {
	const restX = cell.length - length;
	const restY = cell.width - width;
	if (restX < 0 || restY < 0) return neither;
	if (!restIsFine(restX, problem) || !restIsFine(restY, problem))
		return neither;
	if (restX === 0 && restY === 0) return both;
	const x = restX > 0 && isAllowed(cell, "x", restY > 0, problem);
	const y = restY > 0 && isAllowed(cell, "y", restX > 0, problem);
	if (x) return y ? both : onlyX;
	return y ? onlyY : neither;
}

const neither = { x: false, y: false };
const both = { x: true, y: true };
const onlyX = { x: true, y: false };
const onlyY = { x: false, y: true };

function isAllowed(
	cell: Cell,
	first: Axis,
	thenOther: boolean,
	problem: Problem,
): boolean {
	if (cell.from === undefined && !firstCutIsFine(first, cell, problem))
		return false;
	const stages = (cell.from === first ? 0 : 1) + (thenOther ? 1 : 0);
	return cell.stage + stages <= problem.stages;
}

/** Cuts a part out of the corner of a free cell, along one axis first; the cells that stay free are added to the list. */
export function cutOut(
	cell: Cell,
	kind: number,
	turned: boolean,
	length: number,
	width: number,
	first: Axis,
	problem: Problem,
	left: Cell[],
): void {
	const part: Content = { is: "part", kind, turned };
	const inX = cell.length > length;
	const inY = cell.width > width;
	if (!inX && !inY) {
		cell.content = part;
		return;
	}
	const along: Axis = inX && inY ? first : inX ? "x" : "y";
	const stage = cell.stage + (cell.from === along ? 0 : 1);
	const rest = along === "x" ? cell.length - length : cell.width - width;
	const piece =
		along === "x"
			? freeCell(cell.x, cell.y, length, cell.width, along, stage)
			: freeCell(cell.x, cell.y, cell.length, width, along, stage);
	const pieces = [piece];
	if (rest > problem.kerf) {
		const over =
			along === "x"
				? freeCell(cell.x + length, cell.y, rest, cell.width, along, stage)
				: freeCell(cell.x, cell.y + width, cell.length, rest, along, stage);
		pieces.push(over);
		left.push(over);
	}
	cell.content = { is: "cut", along, pieces };
	cutOut(piece, kind, turned, length, width, first, problem, left);
}

/** A whole sheet: one free cell, or, if it is blemished, the free cells around the blemishes, first cut along `first`. */
export function freshSheet(
	blank: Blank,
	index: number,
	first: Axis,
	problem: Problem,
): { readonly sheet: Sheet; readonly free: Cell[] } {
	const root = freeCell(0, 0, blank.x, blank.y, undefined, 0);
	const left: Cell[] = [];
	cutAround(root, blank, first, problem, left);
	return { sheet: { blank: index, root }, free: left };
}

function cutAround(
	cell: Cell,
	blank: Blank,
	first: Axis,
	problem: Problem,
	left: Cell[],
): void {
	const { kerf } = problem;
	const inside = blank.defects.filter(
		(defect) =>
			defect.x < cell.x + cell.length - kerf &&
			defect.x + defect.length > cell.x &&
			defect.y < cell.y + cell.width - kerf &&
			defect.y + defect.width > cell.y,
	);
	const [defect] = inside;
	if (defect === undefined) {
		left.push(cell);
		return;
	}
	for (const along of first === "x" ? axes : [...axes].reverse()) {
		if (!isAllowed(cell, along, false, problem)) continue;
		const start = along === "x" ? defect.x - cell.x : defect.y - cell.y;
		const end = start + (along === "x" ? defect.length : defect.width);
		const whole = along === "x" ? cell.length : cell.width;
		const sizes = around(start, end, whole, problem);
		if (sizes.every(([, blemished]) => blemished)) continue;
		const stage = cell.stage + (cell.from === along ? 0 : 1);
		let at = along === "x" ? cell.x : cell.y;
		const pieces = sizes.map(([size, blemished]) => {
			const piece =
				along === "x"
					? freeCell(at, cell.y, size, cell.width, along, stage)
					: freeCell(cell.x, at, cell.length, size, along, stage);
			at += size;
			const other: Axis = along === "x" ? "y" : "x";
			cutAround(piece, blank, blemished ? other : first, problem, left);
			return piece;
		});
		cell.content = { is: "cut", along, pieces };
		return;
	}
	cell.content = { is: "blemished" };
}

const axes: readonly Axis[] = ["x", "y"];

/** Cuts a length on both sides of a blemish: grown sizes of the pieces, and which one has the blemish. */
function around(
	start: number,
	end: number,
	whole: number,
	problem: Problem,
): [size: number, blemished: boolean][] {
	const { kerf } = problem;
	const strip = Math.max(problem.leastStrip, 1) + kerf;
	// Before the blemish up to its edge, the blade in it; behind it from its other edge on.
	let before = Math.max(0, start + kerf);
	let behind = Math.max(end, 0);
	if (behind - before < strip) before = behind - strip;
	if (before < strip) {
		before = 0;
		behind = Math.max(behind, strip);
	}
	if (whole - behind < strip) {
		behind = whole;
		before = Math.max(0, Math.min(before, whole - strip));
		if (before < strip) before = 0;
	}
	const sizes: [number, boolean][] = [];
	if (before > 0) sizes.push([before, false]);
	sizes.push([behind - before, true]);
	if (whole > behind) sizes.push([whole - behind, false]);
	return sizes;
}
