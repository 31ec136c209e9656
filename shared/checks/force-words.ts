// How checks and hovers speak of forces: pounds where the design is in inches, newtons where it is in millimetres.

import type { Display } from "../model/types.ts";
import { poundForce } from "../units/derived.ts";

/** Newtons in a pound-force. */
const perPound = poundForce.toNumber();

/** `110 lb`, `490 N`: whole, a small one to a tenth. */
export function showForce(display: Display, newton: number): string {
	const value = display.unit === "in" ? newton / perPound : newton;
	const small = Math.abs(value) < 9.95;
	const text =
		Math.abs(value) < 0.05
			? "0"
			: small
				? value.toFixed(1)
				: String(Math.round(value));
	return `${text} ${display.unit === "in" ? "lb" : "N"}`;
}

/** What every check of strength ends its page with. */
export const caution =
	"This holds a figure against a limit under the assumptions above; it does not say that anything is safe. Local building codes and a licensed practitioner decide.";
