// Which of two layouts is better: parts had, price, sheets, one large remnant, few cuts — in this order.
import type { Cell, Sheet } from "./cell.ts";
import type { Layout } from "./greedy.ts";
import type { Problem } from "./problem.ts";
import { flat } from "./region.ts";

/** Terms of the objective, each to be as small as possible. */
export interface Worth {
	/** Area of the parts that could not be had. */
	readonly missing: number;
	readonly price: number;
	readonly sheets: number;
	/** Minus the area of the largest remnant on one sheet that is worth keeping. */
	readonly remnant: number;
	readonly cuts: number;
}

export function worthOf(layout: Layout, problem: Problem): Worth {
	let missing = 0;
	layout.remaining.forEach((count, kind) => {
		missing += count * (problem.kinds[kind]?.area ?? 0);
	});
	let price = 0;
	let remnant = 0;
	let cuts = 0;
	const seen = new Map<Sheet, SheetWorth>();
	for (const sheet of layout.sheets) {
		price += problem.blanks[sheet.blank]?.price ?? 0;
		let worth = seen.get(sheet);
		if (worth === undefined) {
			worth = sheetWorth(sheet, problem);
			seen.set(sheet, worth);
		}
		remnant = Math.max(remnant, worth.remnant);
		cuts += worth.cuts;
	}
	return {
		missing,
		price,
		sheets: layout.sheets.length,
		remnant: 0 - remnant,
		cuts,
	};
}

export function isBetter(a: Worth, b: Worth): boolean {
	if (a.missing !== b.missing) return a.missing < b.missing;
	if (a.price !== b.price) return a.price < b.price;
	if (a.sheets !== b.sheets) return a.sheets < b.sheets;
	if (a.remnant !== b.remnant) return a.remnant < b.remnant;
	return a.cuts < b.cuts;
}

interface SheetWorth {
	readonly remnant: number;
	readonly cuts: number;
}

function sheetWorth(sheet: Sheet, problem: Problem): SheetWorth {
	let remnant = 0;
	let cuts = 0;
	const visit = (cell: Cell): void => {
		const { content } = cell;
		if (content.is === "free") {
			const length = cell.length - problem.kerf;
			const width = cell.width - problem.kerf;
			if (length >= problem.keepLength && width >= problem.keepWidth)
				remnant = Math.max(remnant, length * width);
		} else if (content.is === "cut") {
			const pieces = flat(content.pieces, content.along);
			const whole = content.along === "x" ? cell.length : cell.width;
			let filled = 0;
			for (const piece of pieces) {
				filled += content.along === "x" ? piece.length : piece.width;
				visit(piece);
			}
			// One cut between any two pieces, and one that runs off the edge if the last piece does not end there.
			cuts += pieces.length - (filled < whole ? 0 : 1);
		}
	};
	visit(sheet.root);
	return { remnant, cuts };
}
