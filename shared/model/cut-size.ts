// What a maker sets the saw and the fence to: the sizes of the design, rounded to the piece's precision.

import { formatLength, type ShownLength } from "../units/format.ts";
import { Rational, type Rounding } from "../units/rational.ts";
import { exactText } from "./explain.ts";
import { type Size, sameValue } from "./size.ts";
import type { Display, Fit, Part, Piece } from "./types.ts";

export interface CutSize {
	readonly length: ShownLength;
	readonly width: ShownLength;
	/** Never rounded to the piece's precision: a sheet has the thickness that it has, and a planer is set by a trial piece. */
	readonly thick: ShownLength;
}

/**
 * The sizes of a part as they are cut. To the nearest step, as the maker reads the rule; but where the part must enter an
 * opening, and the nearest step would leave less than the least gap that its joint allows, to the step below. How far the
 * opening itself is off by rounding is not looked at here: each size is rounded by itself, and the difference (`error`)
 * counts in the tolerance stack.
 */
export function cutSizes(piece: Piece): ReadonlyMap<string, CutSize> {
	const fits = new Map<Part, Fit[]>();
	for (const joint of piece.joints) {
		if (joint.fits.length === 0) continue;
		const known = fits.get(joint.member);
		if (known) known.push(...joint.fits);
		else fits.set(joint.member, [...joint.fits]);
	}
	return new Map(
		piece.parts.map((part) => [
			part.id,
			cutSize(part, piece.display, fits.get(part) ?? []),
		]),
	);
}

function cutSize(part: Part, display: Display, fits: readonly Fit[]): CutSize {
	return {
		length: memberSize(part.length, display, fits),
		width: memberSize(part.width, display, fits),
		thick: trueSize(part.thick, display),
	};
}

function memberSize(
	size: Size,
	display: Display,
	fits: readonly Fit[],
): ShownLength {
	const shown = shownSize(size, display);
	if (shown.error.sign() <= 0) return shown;
	const binds = fits.some(
		(fit) =>
			sameValue(fit.member, size) &&
			fit.gap.value.sub(shown.error).cmp(fit.low) < 0 &&
			// A fit that is wrong already is no reason to cut everything short: the check tells it.
			fit.gap.value.cmp(fit.low) >= 0,
	);
	return binds ? shownSize(size, display, "down") : shown;
}

/** A size to the piece's precision. */
export function shownSize(
	size: Size,
	display: Display,
	rounding: Rounding = "nearest",
): ShownLength {
	return formatLength(size.value, { ...display, rounding });
}

/** A size that is not set out by rule: as exactly as it can be read, with `~` where that rounds it. */
export function trueSize(size: Size, display: Display): ShownLength {
	const text = exactText(size, display.unit);
	const exact = !text.startsWith("~");
	return { text, shown: size.value, exact, error: Rational.ZERO };
}
