// Amounts of movement by the marks of a tape: 1/64 in or 0.1 mm is as fine as wood can be told.

import type { Display } from "../model/types.ts";
import { Rational } from "../units/rational.ts";
import { show } from "./words.ts";

const steps = {
	in: { mm: 25.4 / 64, of: Rational.of(254, 640) },
	mm: { mm: 0.1, of: Rational.of(1, 10) },
} as const;

/** One mark, mm. */
export function leastMark({ unit }: Display): number {
	return steps[unit].mm;
}

/** To the nearest mark: `5/64 in`, `1.9 mm`; what is less than one says so. */
export function marked(display: Display, mm: number): string {
	const step = steps[display.unit];
	const count = Math.round(mm / step.mm);
	return count === 0
		? `less than ${show(display, step.of)}`
		: show(display, times(step.of, count));
}

/** Up to a mark that can be halved: 1/32 in, or 0.5 mm. */
export function roundedUp({ unit }: Display, mm: number): Rational {
	const by = unit === "in" ? 2 : 5;
	const step = steps[unit];
	const count = Math.max(Math.ceil(mm / (step.mm * by) - 1e-9), 1) * by;
	return times(step.of, count);
}

/** Down to a mark of the piece's own tape; undefined if none is left. */
export function markedDown(display: Display, mm: number): string | undefined {
	const by = display.unit === "in" ? 16 : 10;
	const step = steps[display.unit];
	const count = Math.floor(mm / (step.mm * by) + 1e-9) * by;
	return count > 0 ? show(display, times(step.of, count)) : undefined;
}

function times(step: Rational, count: number): Rational {
	return step.mul(Rational.of(count));
}
