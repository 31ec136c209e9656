// A size that makes sense only in the other unit.

import { spanBehind } from "../../../../grammar/index.ts";
import { numberOf, type Size } from "../../../model/size.ts";
import type {
	Design,
	Origin,
	Piece,
	SizeAt,
	Stock,
} from "../../../model/types.ts";
import { Rational } from "../../../units/rational.ts";
import { type CheckContext, defineCheck, type Found } from "../../check.ts";
import { show } from "../../words.ts";

const figures = {
	longest: {
		value: 6.5,
		unit: "m",
		help: "Nothing longer is built or sold",
		source: "common practice, no source",
	},
	"box-least": {
		value: 60,
		unit: "mm",
		help: "A box whose largest side is smaller is no furniture",
		source: "common practice, no source",
	},
	"sheet-least": {
		value: 2,
		unit: "mm",
		help: "Thinnest sheet",
		source: "common practice, no source",
	},
	"sheet-most": {
		value: 64,
		unit: "mm",
		help: "Thickest sheet",
		source: "common practice, no source",
	},
	"board-least": {
		value: 3,
		unit: "mm",
		help: "Thinnest board",
		source: "common practice, no source",
	},
	"board-most": {
		value: 160,
		unit: "mm",
		help: "Thickest board",
		source: "common practice, no source",
	},
	"veneer-least": {
		value: 0.15,
		unit: "mm",
		help: "Thinnest veneer",
		source: "common practice, no source",
	},
	"veneer-most": {
		value: 4,
		unit: "mm",
		help: "Thickest veneer",
		source: "common practice, no source",
	},
	"stock-least": {
		value: 75,
		unit: "mm",
		help: "Shortest length that a sheet or board is sold in",
		source: "common practice, no source",
	},
	"fastener-least": {
		value: 5,
		unit: "mm",
		help: "Shortest fastener",
		source: "common practice, no source",
	},
	"fastener-most": {
		value: 300,
		unit: "mm",
		help: "Longest fastener",
		source: "common practice, no source",
	},
} as const;

type Context = CheckContext<typeof figures>;

export const unitSlip = defineCheck({
	id: "unit-slip",
	group: "change",
	severity: "warning",
	summary: "A size makes sense only in the other unit",
	explanation: `
A bare number takes the file's unit, and a habit of hand takes another: \`thick 18\` in a file of inches is a sheet of eighteen
inches. It tells when a size lies outside what is built or sold, and the same number in the other unit lies inside:

    size not in range, and (size x 25.4 or size / 25.4) in range

Thickness of materials, sizes they are sold in, lengths of fasteners, boxes and parts are held against their ranges.`,
	source: "common practice, no source",
	figures,
	fires: `
sheet birch {
  species "birch plywood"
  size 2440 mm x 1220 mm
  variant eighteen { thick 18 }
}`,
	silent: `
sheet birch {
  species "birch plywood"
  size 2440 mm x 1220 mm
  variant eighteen { thick 18 mm }
}`,
	find: (piece, context) => [
		...boxes(piece, context),
		...parts(piece, context),
		...fasteners(piece, context),
	],
	findInFile: (context) =>
		[...context.design.stocks.values()]
			// Materials of another file are told there.
			.filter(
				({ declaration }) => declaration.origin.uri === context.design.uri,
			)
			.flatMap((stock) => stockSlips(stock, context)),
});

/** mm */
interface Range {
	readonly least: number;
	readonly most: number;
}

/** What the number would be in the other unit, if that makes sense and what stands there does not. */
function slipOf(
	mm: number,
	{ least, most }: Range,
): { readonly unit: "in" | "mm"; readonly mm: number } | undefined {
	if (!(mm > 0) || (mm >= least && mm <= most)) return undefined;
	const smaller = mm / 25.4;
	const larger = mm * 25.4;
	if (smaller >= least && smaller <= most) return { unit: "mm", mm: smaller };
	if (larger >= least && larger <= most) return { unit: "in", mm: larger };
	return undefined;
}

function stockSlips(stock: Stock, context: Context): Found[] {
	const { figures: f } = context;
	const longest = f.longest * 1000;
	const found: Found[] = [];
	const { origin } = stock.declaration;
	const look = (what: string, size: Size | undefined, range: Range): void => {
		if (!size) return;
		const slip = slipOf(numberOf(size), range);
		if (slip) found.push(tell(context.design, what, [size], slip, origin));
	};
	const name = `\`${stock.id}\``;
	const thick: Readonly<Partial<Record<Stock["kind"], Range>>> = {
		sheet: { least: f["sheet-least"], most: f["sheet-most"] },
		board: { least: f["board-least"], most: f["board-most"] },
		veneer: { least: f["veneer-least"], most: f["veneer-most"] },
	};
	const range = thick[stock.kind];
	if (range) {
		look(`The thickness of ${name}`, stock.thick, range);
		look(`What ${name} is sold as`, stock.soldAs, range);
		look(`What ${name} is surfaced to`, stock.surfaced, range);
	}
	const sold = { least: f["stock-least"], most: longest };
	for (const { length, width } of stock.sizes) {
		look(`The length of ${name}`, length, sold);
		look(`The width of ${name}`, width, sold);
	}
	look(`The longest ${name}`, stock.lengths?.high, sold);
	look(`The length of ${name}`, stock.fastener?.size.length, {
		least: f["fastener-least"],
		most: f["fastener-most"],
	});
	return found;
}

function boxes(piece: Piece, context: Context): Found[] {
	const { figures: f } = context;
	const range = { least: f["box-least"], most: f.longest * 1000 };
	return piece.boxes.flatMap((box): Found[] => {
		const sizes = [box.outside.width, box.outside.height, box.outside.depth];
		const largest = sizes.reduce((a, b) => (a.value.cmp(b.value) >= 0 ? a : b));
		const slip = slipOf(numberOf(largest), range);
		if (!slip) return [];
		return [
			tell(
				context.design,
				`The largest side of \`${box.path}\``,
				sizes,
				slip,
				box.declaration.origin,
			),
		];
	});
}

/** Parts that stand alone: those of boxes follow their box. */
function parts(piece: Piece, context: Context): Found[] {
	const { figures: f } = context;
	const range = { least: f["fastener-least"], most: f.longest * 1000 };
	return piece.parts
		.filter((part) => part.role === "board")
		.flatMap((part): Found[] => {
			const slip = slipOf(numberOf(part.length), range);
			if (!slip) return [];
			return [
				tell(
					context.design,
					`The length of \`${part.path}\``,
					[part.length, part.width],
					slip,
					part.declaration.origin,
				),
			];
		});
}

function fasteners(piece: Piece, context: Context): Found[] {
	const { figures: f } = context;
	const range = { least: f["fastener-least"], most: f["fastener-most"] };
	const runs = [
		...piece.joints.flatMap((joint) => joint.fasteners),
		...piece.mounts.flatMap((mount) => mount.fasteners),
	];
	const told = new Set<string>();
	return runs.flatMap((run): Found[] => {
		const key = `${run.origin.uri} ${run.origin.span.start}`;
		if (told.has(key)) return [];
		told.add(key);
		const slip = slipOf(numberOf(run.size.length), range);
		if (!slip) return [];
		return [
			tell(
				context.design,
				`The length of the ${run.size.kind} ${run.size.label}`,
				[run.size.length],
				slip,
				run.origin,
			),
		];
	});
}

function tell(
	design: Design,
	what: string,
	sizes: readonly Size[],
	slip: { readonly unit: "in" | "mm"; readonly mm: number },
	origin: Origin,
): Found {
	const size = sizes.reduce((a, b) => (a.value.cmp(b.value) >= 0 ? a : b));
	// Bare numbers only: one that carries its unit was meant.
	const [first] = literalsOf(design, size);
	const written = first ? sizes.flatMap((one) => literalsOf(design, one)) : [];
	const other = slip.unit === "mm" ? "in" : "mm";
	const number = show({ unit: other, precision: Rational.of(1, 64) }, size);
	const meant = show(
		{ unit: slip.unit, precision: Rational.of(1, 64) },
		Rational.near(slip.mm, 1_000_000),
	);
	const own = written.filter(({ origin: { uri } }) => uri === design.uri);
	return {
		origin: first?.origin ?? origin,
		message: `${what} is ${number}, which makes sense only in the other unit: did you mean ${meant}?`,
		fixes:
			own.length > 0 && own.length === written.length
				? [
						{
							title: `Write it in ${slip.unit}`,
							edits: own.map((at) => ({
								span: spanBehind(at.origin.span),
								text: ` ${slip.unit}`,
							})),
						},
					]
				: [],
	};
}

/** The bare numbers in the text that a size comes from; none if one of them carries a unit already. */
function literalsOf(design: Design, size: Size): readonly SizeAt[] {
	const leaves = new Set<Size["why"]>();
	const open = [size];
	for (let steps = 0; open.length > 0 && steps < 1_000; steps++) {
		const { why } = open.pop() as Size;
		if (why.kind === "written") leaves.add(why);
		else if (why.kind === "named") open.push(why.of);
		else if (why.kind === "sum" || why.kind === "product")
			open.push(why.left, why.right);
		else if (why.kind === "function") open.push(...why.args);
		else if (why.of) open.push(why.of);
	}
	const seen = new Set<string>();
	return design.sizesAt.filter(({ origin, size: { bare, why } }) => {
		const key = `${origin.uri} ${origin.span.start} ${origin.span.end}`;
		if (bare === undefined || !leaves.has(why) || seen.has(key)) return false;
		seen.add(key);
		return true;
	});
}
