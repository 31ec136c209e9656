// What a material is to be had in: sizes and lengths that are sold, and what lies in the shop already.

import { countOf, positiveLength, sizeAtLeastZero } from "./expressions.ts";
import type { Frame } from "./frame.ts";
import { type Row, type Rows, readRows } from "./rows.ts";
import { numberOf, type Size } from "./size.ts";
import { priceIn } from "./stock-price.ts";
import type { OnHand, SoldSize, Stock } from "./types.ts";

type Sizes = Pick<
	Stock,
	"sizes" | "widths" | "lengths" | "soldLengths" | "onHand" | "trim" | "keep"
>;

/** A batten or moulding: it has its section already and is only cut to length. */
export function isSoldInSection({ per }: Pick<Stock, "per">): boolean {
	return per === "foot" || per === "metre";
}

/** `rows` are those of a variant, `group` those of its material: the variant's own sizes take the place of the material's. */
export function readSizes(frame: Frame, rows: Rows, group: Rows): Sizes {
	const sizeRows = rows.every("size").length > 0 ? rows : group;
	const own = (head: string): Row | undefined =>
		rows.first(head) ?? group.first(head);
	const sold = soldLengths(frame, rows.first("lengths"));
	return {
		sizes: sizeRows.every("size").flatMap((row) => soldSize(frame, row) ?? []),
		widths: rangeOf(frame, rows.first("widths")),
		lengths: rangeOf(frame, rows.first("lengths")) ?? rangeOver(sold),
		soldLengths: sold,
		onHand: rows.every("on-hand").flatMap((row) => onHandOf(frame, row) ?? []),
		trim: sizeAtLeastZero(frame, own("trim")?.expression("trim"), "A trim"),
		keep: crossOf(frame, group.first("keep"), "What is kept"),
	};
}

function soldSize(frame: Frame, row: Row): SoldSize | undefined {
	const size = crossOf(frame, row, "A sheet's size");
	const price = priceIn(frame, row);
	const inStock = countOf(frame, row.expression("count"));
	return (
		size && {
			...size,
			...(price ? { price } : {}),
			...(inStock === undefined ? {} : { inStock }),
		}
	);
}

function onHandOf(frame: Frame, row: Row): OnHand | undefined {
	const size = crossOf(frame, row, "A size");
	if (!size) return undefined;
	const rows = readRows(frame.evaluation, frame.uri, row.block, "on-hand");
	return {
		...size,
		count: countOf(frame, row.expression("count")) ?? 1,
		defects: rows.every("defect").flatMap((one) => {
			const along = spanIn(frame, one, "from", "to", size.length);
			const written = one.expression("low");
			const across = written && spanIn(frame, one, "low", "high", size.width);
			return along && (across || !written) ? [{ ...along, across }] : [];
		}),
	};
}

/** From where to where; the other way round, or beyond the board, is told. */
function spanIn(
	frame: Frame,
	row: Row,
	low: string,
	high: string,
	whole: Size,
): { readonly from: Size; readonly to: Size } | undefined {
	const from = sizeAtLeastZero(frame, row.expression(low), "A place");
	const to = sizeAtLeastZero(frame, row.expression(high), "A place");
	if (!from || !to) return undefined;
	if (from.value.cmp(to.value) < 0 && numberOf(to) <= numberOf(whole) + 1e-9)
		return { from, to };
	frame.evaluation.report(
		"no-size",
		row.headline,
		"A defect runs from a place to one further on, and ends within the board",
	);
	return undefined;
}

function soldLengths(frame: Frame, row: Row | undefined): readonly Size[] {
	const written = row?.expression("lengths");
	if (!written) return [];
	const each = written.kind === "list" ? written.elements : [written];
	return each.flatMap((one) => positiveLength(frame, one, "A length") ?? []);
}

function rangeOver(sizes: readonly Size[]): Stock["lengths"] {
	const [first] = sizes;
	if (!first) return undefined;
	const pick = (sign: 1 | -1): Size =>
		sizes.reduce(
			(best, one) => (one.value.cmp(best.value) === sign ? one : best),
			first,
		);
	return { low: pick(-1), high: pick(1) };
}

function crossOf(
	frame: Frame,
	row: Row | undefined,
	what: string,
): { readonly length: Size; readonly width: Size } | undefined {
	const size = row?.expression("size");
	if (size?.kind !== "cross") return undefined;
	const [length, width] = size.sizes.map((one) =>
		positiveLength(frame, one, what),
	);
	return length && width ? { length, width } : undefined;
}

function rangeOf(
	frame: Frame,
	row: Row | undefined,
): { readonly low: Size; readonly high: Size } | undefined {
	const low = positiveLength(frame, row?.expression("low"), "A size");
	const high = positiveLength(frame, row?.expression("high"), "A size");
	return low && high ? { low, high } : undefined;
}
