// `measured`: readings from the shop. Each replaces one size; everything downstream follows.

import type { Expression } from "../../grammar/index.ts";
import { toBase } from "../units/dimensions.ts";
import { Rational } from "../units/rational.ts";
import { positiveLength } from "./expressions.ts";
import { type Binding, nearest, pathText } from "./meaning.ts";
import type { PieceContext } from "./piece-context.ts";
import type { Row } from "./rows.ts";
import type { Size } from "./size.ts";
import { withTolerance } from "./stock.ts";
import type { MeasuredInfo } from "./types.ts";

/** A tape reading, mm, half range: common practice, no source. */
const readingTolerance = 0.1;

/** The best that a calliper reads, mm, half range: common practice, no source. */
const calliperTolerance = 0.02;

/**
 * How much less (or more) a part may reach by its reading than the design says, mm, before that is a fault of the design:
 * as much as the shop's own setting out is off (`mark within`, 1/32 in by default). Parts were cut, and by that much they
 * come out; what is more is told. Nothing where nothing is measured: a design on paper is exact. One reading moves the
 * parts beside it too, so it counts for all.
 */
export function readingSlack({ collected, shop }: PieceContext): number {
	return collected.readings.size > 0 ? shop.mark + dust : 0;
}

/** Floating dust, mm. */
const dust = 1e-6;

/** A decimal reading is as true as its last figure: `0.702` in inches is right to 0.0005 in. */
function toleranceOf(expression: Expression, unit: "in" | "mm"): number {
	if (expression.kind !== "measure") return readingTolerance;
	const decimals = /\.(\d+)/.exec(expression.text)?.[1]?.length;
	if (decimals === undefined) return readingTolerance;
	const own = expression.unit === "none" ? unit : expression.unit;
	const last = toBase(
		Rational.of(1, 10 ** Math.min(decimals, 6)),
		own,
	).toNumber();
	return Math.min(readingTolerance, Math.max(calliperTolerance, last / 2));
}

/** Books the readings before anything is worked out. A reading of a material shadows it in this piece alone. */
export function readReadings(
	context: PieceContext,
	rows: readonly Row[],
): void {
	for (const row of rows) {
		const what = row.ref("what");
		const size = positiveLength(
			context.frame,
			row.expression("reading"),
			"A reading",
		);
		if (!what || !size) continue;
		const path = pathText(what.segments);
		const before = context.collected.readings.get(path);
		if (before) {
			context.evaluation.report(
				"said-twice",
				row.headline,
				`\`${path}\` is measured twice: keep the reading that holds`,
				{
					related: [
						{ origin: before.row.headline, message: "The first reading" },
					],
				},
			);
			continue;
		}
		const expression = row.expression("reading");
		const tolerance = expression
			? toleranceOf(expression, context.frame.unit)
			: readingTolerance;
		context.collected.readings.set(path, {
			size,
			row,
			tolerance,
			derived: undefined,
		});
		shadowStock(context, path, size, tolerance);
	}
}

/** A sheet that was measured for the piece is the same sheet in a component that is made into it. */
export function shadowReadings(context: PieceContext): void {
	for (const [path, { size, tolerance }] of context.collected.readings)
		shadowStock(context, path, size, tolerance);
}

function shadowStock(
	context: PieceContext,
	path: string,
	size: Size,
	tolerance: number,
): void {
	const [group, variant, fact] = path.split(".");
	if (fact !== "thick" || !group || !variant) return;
	const { scope } = context.frame;
	const binding = scope.find(group);
	const meaning = binding?.meaning();
	if (!binding || meaning?.kind !== "material") return;
	const inner = meaning.variants.get(variant);
	const stock = inner?.meaning();
	if (!inner || stock?.kind !== "stock") return;
	const reading = context.collected.readings.get(path);
	if (reading) reading.derived = stock.stock.thick;
	const read = {
		...stock.stock,
		thick: withTolerance(size, stock.stock.id, tolerance, "as measured"),
		tolerance,
	};
	const shadowed = new Map<string, Binding>(meaning.variants);
	shadowed.set(variant, {
		declaration: inner.declaration,
		meaning: () => ({ kind: "stock", stock: read }),
	});
	const own = scope.own(group);
	if (own) replaceVariants(own, shadowed);
	else
		scope.declare(group, {
			declaration: binding.declaration,
			meaning: () => ({ kind: "material", variants: shadowed }),
		});
}

/** A second reading of the same material adds to the first shadow. */
function replaceVariants(
	own: Binding,
	variants: ReadonlyMap<string, Binding>,
): void {
	const meaning = own.meaning();
	if (meaning?.kind !== "material") return;
	const target = meaning.variants as Map<string, Binding>;
	for (const [name, binding] of variants) target.set(name, binding);
}

/** The readings with what the design says without them; one that names no size is told. */
export function tellReadings(context: PieceContext): MeasuredInfo[] {
	const { readings, sizes } = context.collected;
	return [...readings].flatMap(([what, { size, row, derived }]) => {
		const ref = row.ref("what");
		const expression = row.expression("reading");
		if (!ref || !expression) return [];
		if (!derived) {
			const near = nearest(what, sizes.keys());
			context.evaluation.report(
				"unknown-size",
				row.at(ref.span),
				`\`${what}\` is no size of this piece that can be measured${near ? `: did you mean \`${near}\`?` : ", as `case.middle.length` or `ply.three-quarter.thick` would be"}`,
				near
					? {
							fix: {
								title: `Change to \`${near}\``,
								edits: [{ span: ref.span, text: near }],
							},
						}
					: {},
			);
			return [];
		}
		const spread = derived.feeds.reduce(
			(sum, feed) => sum + Math.abs(feed.weight) * feed.source.tolerance,
			0,
		);
		return [
			{
				what,
				reading: size,
				derived,
				expected: Math.max(spread, context.shop.crosscut) + readingTolerance,
				origin: row.headline,
				readingSpan: expression.span,
			},
		];
	});
}
