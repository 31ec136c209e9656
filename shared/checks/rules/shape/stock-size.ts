// A part that comes out of no sheet or board that the stock file lists.

import { numberOf } from "../../../model/size.ts";
import type { Design, Part, Piece, Stock } from "../../../model/types.ts";
import { defineCheck, type Found } from "../../check.ts";
import { listed, nameOf, show, showSizes } from "../../words.ts";

export const stockSize = defineCheck({
	id: "stock-size",
	group: "shape",
	severity: "error",
	summary: "A part comes out of no sheet or board that is to be had",
	explanation: `
Each part, at the largest size it has on its way (rough, sawn heavy), is held against the sizes that its material is sold in:
a sheet part against the sheets, with the face grain where the sheet has one; a solid part against the longest and the
widest board, a glued-up one strip by strip. A material that gives no sizes is not checked. Veneer is left out: its seams are
another matter. The message names the nearest material of the design that would do.`,
	source: "the stock file itself",
	figures: {},
	fires: `
piece bench {
  part seat {
    of oak.eight-quarter
    size 130 x 8
  }
}`,
	silent: `
piece bench {
  part seat {
    of oak.eight-quarter
    size 60 x 16
    strips 2
  }
}`,
	find: (piece, { design }) => {
		const told = new Set<string>();
		return piece.parts.flatMap((part): Found[] => {
			if (part.role === "veneer" || part.role === "aid") return [];
			const found = tell(piece, design, part);
			// A left and a right of one line are told once.
			if (!found || told.has(found.message)) return [];
			told.add(found.message);
			return [found];
		});
	},
});

interface Need {
	readonly length: number;
	readonly width: number;
	readonly strips: number;
}

/** The largest blank that the part is cut as, mm. */
function needOf(part: Part): Need {
	let length = numberOf(part.length);
	let width = numberOf(part.width);
	for (const stage of part.stages) {
		length = Math.max(length, numberOf(stage.length));
		width = Math.max(width, numberOf(stage.width));
	}
	return { length, width, strips: part.strips ?? 1 };
}

function tell(piece: Piece, design: Design, part: Part): Found | undefined {
	const need = needOf(part);
	const short = shortfall(part.stock, need);
	if (short === undefined) return undefined;
	const { display } = piece;
	const others = [...design.stocks.values()]
		.filter(
			(stock) =>
				stock !== part.stock &&
				stock.kind === part.stock.kind &&
				hasSizes(stock) &&
				shortfall(stock, need) === undefined,
		)
		.sort((a, b) => thicknessApart(a, part) - thicknessApart(b, part))
		.map((stock) => `\`${stock.id}\``);
	const would =
		others.length > 0 ? `; ${listed(others.slice(0, 1))} would do` : "";
	const { stock } = part;
	if (stock.kind === "sheet") {
		const sheets = stock.sizes.map(({ length, width }) =>
			showSizes(display, length, width),
		);
		return {
			origin: part.declaration.origin,
			message: `${nameOf(part)} is ${showSizes(display, need.length, need.width)}, and comes out of no sheet of \`${stock.id}\` (${listed(sheets)}${stock.grain ? ", grain along the first" : ""}): make it in two, or use a larger sheet${would}`,
		};
	}
	if (short === "length")
		return {
			origin: part.declaration.origin,
			message: `${nameOf(part)} ${need.length > numberOf(part.length) ? "is cut" : "is"} ${show(display, need.length)} long${need.length > numberOf(part.length) ? " at first" : ""}, and the longest \`${stock.id}\` is ${show(display, stock.lengths?.high ?? 0)}: make it in two, or ask for longer boards${would}`,
		};
	const widest = stock.widths ? numberOf(stock.widths.high) : 0;
	const strips = Math.ceil(need.width / Math.max(widest, 1e-9) - 1e-9);
	return {
		origin: part.declaration.origin,
		message: `${nameOf(part)} is ${show(display, need.width)} wide, and the widest \`${stock.id}\` is ${show(display, widest)}: glue it up, as in \`strips ${strips}\``,
	};
}

function hasSizes(stock: Stock): boolean {
	return stock.sizes.length > 0 || stock.lengths !== undefined;
}

/** What it lacks; undefined if the part comes out of it, or if the stock does not tell its sizes. */
function shortfall(
	stock: Stock,
	{ length, width, strips }: Need,
): "sheet" | "length" | "width" | undefined {
	if (stock.kind === "sheet") {
		if (stock.sizes.length === 0) return undefined;
		const fits = stock.sizes.some((size) => {
			const long = numberOf(size.length) + grain;
			const wide = numberOf(size.width) + grain;
			return (
				(length <= long && width <= wide) ||
				(!stock.grain && length <= wide && width <= long)
			);
		});
		return fits ? undefined : "sheet";
	}
	if (stock.kind !== "board") return undefined;
	if (stock.lengths && length > numberOf(stock.lengths.high) + grain)
		return "length";
	if (stock.widths && width / strips > numberOf(stock.widths.high) + grain)
		return "width";
	return undefined;
}

/** Floating dust, mm. */
const grain = 1e-6;

function thicknessApart(stock: Stock, part: Part): number {
	return stock.thick
		? Math.abs(numberOf(stock.thick) - numberOf(part.thick))
		: Infinity;
}
