// Sizes that statics gives, as a maker would mark them: found ones to the nearest mark, asked ones to the next mark up.

import type { Display } from "../model/types.ts";
import { show } from "./words.ts";

/** mm: 1/8 in, or 1 mm. */
const mark = { in: 25.4 / 8, mm: 1 } as const;

/** What something measures, about. */
export function showAbout(display: Display, mm: number): string {
	const step = mark[display.unit];
	return show(display, Math.round(mm / step) * step);
}

/** What is wanted at the least. */
export function showAtLeast(display: Display, mm: number): string {
	const step = mark[display.unit];
	return show(display, Math.ceil(mm / step - 1e-9) * step);
}
