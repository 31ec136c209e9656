// Fastener sizes as they are written (`#10 x 1 1/4`, `18ga x 7/8`, `5/16 x 1 3/8`, `#10`) and what they measure.

import type { Expression } from "../../grammar/index.ts";
import { Rational } from "../units/rational.ts";
import { positiveLength } from "./expressions.ts";
import type { Frame } from "./frame.ts";
import { stated } from "./size.ts";
import type { FastenerKind, FastenerSize } from "./types.ts";

/** Wood screws: D = 0.060 + 0.013 N inches (ASME B18.6.1). */
export function screwDiameter(number: number): number {
	return (0.06 + 0.013 * number) * 25.4;
}

/** Nail and pin gauges, mm: trade tables (18 ga 1.2 to 1.25; 23 ga 0.64; 15 ga 1.83; 16 ga 1.6; 21 ga 0.84). */
export const nailGauges: Readonly<Record<number, number>> = {
	15: 1.83,
	16: 1.6,
	18: 1.22,
	21: 0.84,
	23: 0.64,
};

/** Biscuits, mm: makers' sizes (#0 47 x 15, #10 53 x 19, #20 56 x 23, all 4 thick). */
export const biscuits: Readonly<
	Record<
		number,
		{
			readonly length: number;
			readonly width: number;
			readonly thick: number;
			readonly depth: number;
			readonly slot: number;
		}
	>
> = {
	// Depth of the slot in each part and its length in the face, from a 100 mm cutter: 2 sqrt(a(100 - a)).
	0: { length: 47, width: 15, thick: 4, depth: 8, slot: 54.3 },
	10: { length: 53, width: 19, thick: 4, depth: 10, slot: 60 },
	20: { length: 56, width: 23, thick: 4, depth: 12.3, slot: 65.7 },
};

/** Reads the size behind a fastener word; a wrong one is told. */
export function fastenerSize(
	frame: Frame,
	kind: FastenerKind,
	expression: Expression | undefined,
): FastenerSize | undefined {
	if (!expression) return undefined;
	const origin = { uri: frame.uri, span: expression.span };
	const tell = (message: string): undefined => {
		frame.evaluation.report("fastener-size", origin, message);
		return undefined;
	};
	if (kind === "biscuit") {
		if (expression.kind !== "size-number") return undefined;
		const facts = biscuits[expression.number];
		if (!facts)
			return tell(
				`There is no biscuit #${expression.number}: there are ${Object.keys(
					biscuits,
				)
					.map((number) => `#${number}`)
					.join(", ")}`,
			);
		return {
			kind,
			number: expression.number,
			diameter: facts.thick,
			length: stated(Rational.of(facts.width), `#${expression.number}`),
			label: `#${expression.number}`,
			numberSpan: expression.span,
		};
	}
	if (expression.kind !== "cross") return undefined;
	const [first, second] = expression.sizes;
	if (!first || !second) return undefined;
	const length = positiveLength(frame, second, "A fastener's length");
	if (!length) return undefined;
	const lengthText = second.kind === "measure" ? second.text : "…";
	if (kind === "screw") {
		if (first.kind !== "size-number")
			return tell(
				"A screw is written by its number and length, as in `#8 x 1 1/4`",
			);
		if (first.number > 24)
			return tell(
				`There is no wood screw #${first.number}: they run from #0 to #24`,
			);
		return {
			kind,
			number: first.number,
			diameter: screwDiameter(first.number),
			length,
			label: `#${first.number} x ${lengthText}`,
			lengthSpan: second.span,
		};
	}
	if (first.kind === "measure" && first.unit === "gauge") {
		if (kind === "dowel")
			return tell(
				"A dowel is written by its diameter and length, as in `5/16 x 1 3/8`",
			);
		const gauge = Number(first.numerator / first.denominator);
		const diameter = nailGauges[gauge];
		if (diameter === undefined)
			return tell(
				`${first.text} is no gauge of a ${kind}: there are ${Object.keys(
					nailGauges,
				)
					.map((known) => `${known}ga`)
					.join(", ")}`,
			);
		return {
			kind,
			number: gauge,
			diameter,
			length,
			label: `${first.text} x ${lengthText}`,
			lengthSpan: second.span,
		};
	}
	if (first.kind === "size-number")
		return tell(
			`A ${kind} has no number: write its ${kind === "dowel" ? "diameter" : "gauge"}`,
		);
	const diameter = positiveLength(frame, first, "A diameter");
	if (!diameter) return undefined;
	return {
		kind,
		number: undefined,
		diameter: diameter.value.toNumber(),
		length,
		label: `${first.kind === "measure" ? first.text : "…"} x ${lengthText}`,
		lengthSpan: second.span,
	};
}
