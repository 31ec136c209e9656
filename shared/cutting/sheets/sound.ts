// Whether a layout that a search came up with holds what not every search looks at: blemishes, the shop's strips and stages.
import type { Cell } from "./cell.ts";
import type { Layout } from "./greedy.ts";
import type { Blank, Problem } from "./problem.ts";

/**
 * No part lies on a blemish, no remnant is too narrow to be held, and no part takes more stages of cuts than the shop
 * wants. The refilling of sheets and the patterns of column generation know nothing of these.
 */
export function isSound(layout: Layout, problem: Problem): boolean {
	const limited =
		problem.leastStrip > 0 || problem.stages < Number.POSITIVE_INFINITY;
	return layout.sheets.every(({ blank, root }) => {
		const shape = problem.blanks[blank];
		if (shape === undefined) return false;
		return (
			(!limited && shape.defects.length === 0) || isFine(root, shape, problem)
		);
	});
}

function isFine(cell: Cell, blank: Blank, problem: Problem): boolean {
	const { content } = cell;
	if (content.is === "part")
		return cell.stage <= problem.stages && isClean(cell, blank, problem);
	if (content.is !== "cut") return true;
	return content.pieces.every((piece) => {
		const { is } = piece.content;
		const size = content.along === "x" ? piece.length : piece.width;
		return is === "free" || is === "blemished"
			? size - problem.kerf >= problem.leastStrip
			: isFine(piece, blank, problem);
	});
}

function isClean(cell: Cell, { defects }: Blank, { kerf }: Problem): boolean {
	return !defects.some(
		(defect) =>
			defect.x < cell.x + cell.length - kerf &&
			defect.x + defect.length > cell.x &&
			defect.y < cell.y + cell.width - kerf &&
			defect.y + defect.width > cell.y,
	);
}
