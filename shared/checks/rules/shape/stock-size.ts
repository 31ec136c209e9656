// A part that comes out of no sheet or board that the stock file lists.

import { numberOf, type Size } from "../../../model/size.ts";
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
widest board, a glued-up one strip by strip, and against its thickness before planing. A material that gives no sizes is not checked. Veneer is left out: its seams are
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
		// Parts of one line that ask for the same are told once: the four panels of a box, a left and a right.
		const groups = new Map<string, Lack & { readonly parts: Part[] }>();
		for (const part of piece.parts) {
			if (part.role === "veneer" || part.role === "aid") continue;
			const need = needOf(part);
			const short = shortfall(part.stock, need);
			if (short === undefined) continue;
			const { uri, span } = part.declaration.origin;
			const key = `${uri} ${span.start} ${short} ${need.length} ${need.width} ${need.thick}`;
			const group = groups.get(key);
			if (group) group.parts.push(part);
			else groups.set(key, { part, need, short, parts: [part] });
		}
		return [...groups.values()].map((group) =>
			tell(piece, design, group, group.parts),
		);
	},
});

interface Need {
	readonly length: number;
	readonly width: number;
	readonly thick: number;
	readonly strips: number;
}

interface Lack {
	readonly part: Part;
	readonly need: Need;
	readonly short: "sheet" | "length" | "width" | "thick";
}

/** The largest blank that the part is cut as, mm; its thickness as it is at last. */
function needOf(part: Part): Need {
	let length = numberOf(part.length);
	let width = numberOf(part.width);
	for (const stage of part.stages) {
		length = Math.max(length, numberOf(stage.length));
		width = Math.max(width, numberOf(stage.width));
	}
	return {
		length,
		width,
		thick: numberOf(part.thick),
		strips: part.strips ?? 1,
	};
}

function tell(
	piece: Piece,
	design: Design,
	{ part, need, short }: Lack,
	parts: readonly Part[],
): Found {
	const { display } = piece;
	const { stock } = part;
	const [other] = [...design.stocks.values()]
		.filter(
			(one) =>
				one.id !== stock.id &&
				one.kind === stock.kind &&
				hasSizes(one) &&
				shortfall(one, need) === undefined,
		)
		.sort((a, b) => thicknessApart(a, part) - thicknessApart(b, part));
	const would = other ? `; \`${other.id}\` would do` : "";
	const names = listed(parts.map(nameOf));
	const is = parts.length > 1 ? "are" : "is";
	const atFirst = (final: Size, first: number): string =>
		first > numberOf(final) + grain ? " at first" : "";
	const said = {
		sheet: (): string => {
			const sheets = stock.sizes.map(({ length, width }) =>
				showSizes(display, length, width),
			);
			return `${names} ${is} ${showSizes(display, need.length, need.width)}, and no sheet of \`${stock.id}\` is as large (${listed(sheets)}${stock.grain ? ", grain along the first" : ""}): make it in two, or use a larger sheet${would}`;
		},
		length: (): string =>
			`${names} ${is} ${show(display, need.length)} long${atFirst(part.length, need.length)}, and the longest \`${stock.id}\` is ${show(display, stock.lengths?.high ?? 0)}: make it in two, or ask for longer boards${would}`,
		width: (): string => {
			const widest = stock.widths ? numberOf(stock.widths.high) : 0;
			const strips = Math.ceil(need.width / Math.max(widest, grain) - grain);
			return `${names} ${is} ${show(display, need.width)} wide${atFirst(part.width, need.width)}, and the widest \`${stock.id}\` is ${show(display, widest)}: glue it up, as in \`strips ${strips}\`${would}`;
		},
		thick: (): string =>
			`${names} ${is} ${show(display, need.thick)} thick, and \`${stock.id}\` is ${show(display, roughOf(stock) ?? 0)} at most: use a thicker board, or glue it up from layers${would}`,
	};
	return { origin: part.declaration.origin, message: said[short]() };
}

/** The thickness that a board comes in, before it is planed; undefined if the stock does not tell. */
function roughOf(stock: Stock): Size | undefined {
	return stock.surfaced ?? stock.soldAs;
}

function hasSizes(stock: Stock): boolean {
	return stock.sizes.length > 0 || stock.lengths !== undefined;
}

/** What it lacks; undefined if the part comes out of it, or if the stock does not tell its sizes. */
function shortfall(
	stock: Stock,
	{ length, width, thick, strips }: Need,
): Lack["short"] | undefined {
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
	const rough = roughOf(stock);
	if (rough && thick > numberOf(rough) + grain) return "thick";
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
