// Behind each length that is written the same in the other unit.

import {
	type MeasureNode,
	type Span,
	walk,
} from "../../../../grammar/index.ts";
import type { Display } from "../../../model/types.ts";
import { formatBoth, lengthText } from "../../../units/format.ts";
import { bareLength, readMeasure } from "../../../units/measure.ts";
import { Rational, TooLargeError } from "../../../units/rational.ts";
import { bareNumbers } from "../bare-numbers.ts";
import { bodiesOf } from "../bodies.ts";
import type { Snapshot } from "../snapshot.ts";
import type { Hint } from "./hint.ts";

/** What sizes in the other unit are rounded to: near enough to set a rule by. */
const shownPrecision = {
	in: Rational.of(1, 64),
	mm: Rational.of(1, 10),
} as const;

/** For telling what the rounding left out. */
const finePrecision = {
	in: Rational.of(1, 1000),
	mm: Rational.of(1, 100),
} as const;

export function otherUnitHints(
	snapshot: Snapshot,
	range: Span,
	displayAt: (offset: number) => Display,
): Hint[] {
	return lengthsIn(snapshot, range, displayAt).flatMap(({ node, length }) => {
		if (length.isZero()) return [];
		const { unit } = displayAt(node.span.start);
		const other = isMetric(node, unit) ? "in" : "mm";
		const label = lengthText(length, {
			unit: other,
			precision: shownPrecision[other],
			suffix: true,
			approximately: true,
		});
		return [
			{
				kind: "otherUnit" as const,
				offset: node.span.end,
				label,
				about: node.text,
			},
		];
	});
}

/** Both units with what rounding left out; undefined where no length ends at that place. */
export function otherUnitStory(
	snapshot: Snapshot,
	offset: number,
	displayAt: (offset: number) => Display,
): string | undefined {
	const [found] = lengthsIn(
		snapshot,
		{ start: offset, end: offset },
		displayAt,
	).filter(({ node }) => node.span.end === offset);
	if (!found) return undefined;
	const unit = isMetric(found.node, displayAt(offset).unit) ? "mm" : "in";
	return formatBoth(found.length, { unit, precision: finePrecision[unit] })
		.text;
}

interface Written {
	readonly node: MeasureNode;
	/** mm */
	readonly length: Rational;
}

/** Those that end in a part of the text. A bare number is one where its place or its use makes it a length. */
function lengthsIn(
	{ result }: Snapshot,
	range: Span,
	displayAt: (offset: number) => Display,
): Written[] {
	const found: Written[] = [];
	for (const { block, context, statement } of bodiesOf(result.tree)) {
		const { span } = statement;
		if (span.start > range.end || span.end < range.start) continue;
		const { roles } = bareNumbers(block, context);
		walk(block, (node) => {
			if (node.span.start > range.end || node.span.end < range.start)
				return false;
			if (node.kind !== "measure" || node.span.end > range.end) return;
			const bare = node.unit === "none";
			if (bare && roles.get(node) !== "length") return;
			const length = lengthOf(node, displayAt);
			if (length) found.push({ node, length });
		});
	}
	return found;
}

function lengthOf(
	node: MeasureNode,
	displayAt: (offset: number) => Display,
): Rational | undefined {
	try {
		const { dimension, value } = readMeasure(node);
		if (dimension === "length") return value;
		return dimension === "number"
			? bareLength(value, displayAt(node.span.start).unit)
			: undefined;
	} catch (error) {
		if (error instanceof TooLargeError) return undefined;
		throw error;
	}
}

function isMetric({ unit }: MeasureNode, display: Display["unit"]): boolean {
	return unit === "none"
		? display === "mm"
		: unit === "mm" || unit === "cm" || unit === "m";
}
