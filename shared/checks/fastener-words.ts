// Lengths of fasteners that would do, and the edit that writes one.

import type {
	Display,
	FastenerKind,
	FastenerRun,
	Fix,
} from "../model/types.ts";
import type { Rational } from "../units/rational.ts";
import { usualLengths } from "./usual-lengths.ts";
import { show, writtenLike } from "./words.ts";

/** The longest usual length that is no longer than `most` mm. */
export function usualAtMost(
	kind: FastenerKind,
	display: Display,
	most: number,
): Rational | undefined {
	return usualLengths(kind, display).findLast(
		(length) => length.toNumber() <= most + 1e-6,
	);
}

/** The shortest usual length from `least` to `most` mm. */
export function usualBetween(
	kind: FastenerKind,
	display: Display,
	least: number,
	most: number,
): Rational | undefined {
	const length = usualLengths(kind, display).find(
		(one) => one.toNumber() >= least - 1e-6,
	);
	return length !== undefined && length.toNumber() <= most + 1e-6
		? length
		: undefined;
}

/** Writes another length, if the place of the first one is known and lies in the file `uri`. */
export function lengthFix(
	run: FastenerRun,
	display: Display,
	uri: string,
	length: Rational,
): readonly Fix[] {
	const span = run.size.lengthSpan;
	if (!span || run.origin.uri !== uri) return [];
	return [
		{
			title: `Use a ${run.size.kind} ${show(display, length)} long`,
			edits: [{ span, text: writtenLike(display, run.size.length, length) }],
		},
	];
}

/** Driven with a hammer, a gun or a screwdriver: what wedges the wood apart. */
export function isDriven({ size }: FastenerRun): boolean {
	return size.kind !== "dowel" && size.kind !== "biscuit";
}

/** Writes `pilot` into the block of a fastener, or gives it one, if its line lies in the file `uri`. */
export function pilotFix(run: FastenerRun, uri: string): readonly Fix[] {
	if (run.origin.uri !== uri || run.pilot !== undefined) return [];
	return [
		{
			title: "Pre-drill it",
			edits: [
				{
					span: run.lineSpan,
					text: run.hasBlock ? " pilot;" : " { pilot }",
				},
			],
		},
	];
}
