// A veneered face that no sheet of its veneer covers in one piece.

import { numberOf } from "../../../model/size.ts";
import type { Design, Piece, Stock, VeneerInfo } from "../../../model/types.ts";
import { defineCheck, type Found } from "../../check.ts";
import { nameOf, show, showSizes } from "../../words.ts";

export const veneerSheet = defineCheck({
	id: "veneer-sheet",
	group: "shape",
	severity: "warning",
	summary: "A face does not come out of one sheet of its veneer",
	explanation: `
The face, over its trim, and what it is cut over at each edge, are held against the sheets that the veneer is sold in, the grain
along both:

    face + overhang <= sheet

A face that is too wide is laid in leaves; that is told as a hint, with the place of the seam. One that is too long would
have a seam across the grain, and one that fits only without its overhang leaves nothing to trim: both are warnings. A
veneer without sizes is not checked.`,
	source: "the stock file itself",
	figures: {},
	fires: `
piece table {
  part top {
    of ply.three-quarter
    size 96 x 22
    bottom at 28 from floor
  }
  veneer skin {
    on top
    faces both
    of skins.oak
  }
}`,
	silent: `
piece table {
  part top {
    of ply.three-quarter
    size 95 x 22
    bottom at 28 from floor
  }
  veneer skin {
    on top
    faces both
    of skins.oak
  }
}`,
	find: (piece, { design }) =>
		piece.veneers.flatMap((veneer) => {
			const short = veneer.sheets.flatMap((sheet) => {
				const lack = lackOf(sheet);
				return lack ? [{ sheet, lack }] : [];
			});
			const first = short.find(({ lack }) => lack !== "width") ?? short[0];
			return first
				? [tell(piece, design, veneer, first.sheet, first.lack)]
				: [];
		}),
});

/** Floating dust, mm. */
const grain = 1e-6;

type Sheet = VeneerInfo["sheets"][number];
type Lack = "width" | "length" | "overhang";

interface Need {
	readonly length: number;
	readonly width: number;
}

/** Along the veneer's grain and across, with all that is cut over, mm. */
function needOf({ part, faceLength, faceWidth }: Sheet): Need {
	let length = numberOf(faceLength);
	let width = numberOf(faceWidth);
	for (const stage of part.stages) {
		length = Math.max(length, numberOf(stage.length));
		width = Math.max(width, numberOf(stage.width));
	}
	return { length, width };
}

function covers(stock: Stock, { length, width }: Need): boolean {
	return stock.sizes.some(
		(size) =>
			length <= numberOf(size.length) + grain &&
			width <= numberOf(size.width) + grain,
	);
}

function lackOf(sheet: Sheet): Lack | undefined {
	const { stock } = sheet.part;
	if (stock.sizes.length === 0) return undefined;
	const need = needOf(sheet);
	if (covers(stock, need)) return undefined;
	const face = {
		length: numberOf(sheet.faceLength),
		width: numberOf(sheet.faceWidth),
	};
	if (covers(stock, face)) return "overhang";
	return covers(stock, { ...need, width: 0 }) ? "width" : "length";
}

function tell(
	piece: Piece,
	design: Design,
	veneer: VeneerInfo,
	sheet: Sheet,
	lack: Lack,
): Found {
	const { display } = piece;
	const { stock } = sheet.part;
	const need = needOf(sheet);
	const sizes = stock.sizes
		.map(({ length, width }) => showSizes(display, length, width))
		.join(", ");
	const other = [...design.stocks.values()].find(
		(one) => one.kind === "veneer" && one.id !== stock.id && covers(one, need),
	);
	const would = other ? `; \`${other.id}\` would do` : "";
	const what = `${nameOf(sheet.part)} is ${showSizes(display, need.length, need.width)} with what is cut over, and no sheet of \`${stock.id}\` is as`;
	const said = {
		overhang: (): string =>
			`${what} large (${sizes}): it fits without its overhang only, so that nothing is left to trim; cut the panel smaller, register an edge with \`shim\`, or take a larger sheet${would}`,
		length: (): string => {
			const longest = Math.max(
				...stock.sizes.map(({ length }) => numberOf(length)),
			);
			const turned = covers(stock, { length: need.width, width: need.length });
			return `${what} long (${sizes}): a seam would run across the grain ${show(display, longest)} from one end; ${turned ? "turn its grain" : "take a longer sheet, or break the face with a strip"}${would}`;
		},
		width: (): string => {
			const widest = Math.max(
				...stock.sizes
					.filter(({ length }) => numberOf(length) >= need.length - grain)
					.map(({ width }) => numberOf(width)),
			);
			const leaves = Math.ceil(need.width / widest - grain);
			const leaf = show(display, Math.ceil((need.width / leaves) * 10) / 10);
			return `${what} wide (${sizes}): the seam falls ${show(display, widest)} from one edge${leaves === 2 ? `; two leaves of ${leaf} put it in the middle` : `; ${leaves} leaves of ${leaf} are even`}${would}`;
		},
	};
	return {
		severity: lack === "width" ? "hint" : "warning",
		origin: veneer.origin,
		message: said[lack](),
		related: [
			{
				origin: stock.declaration.origin,
				message: `\`${stock.id}\` is declared here`,
			},
		],
	};
}
