// Everything there is to tell about a design: what syntax and evaluation found, and what the checks find in it.

import { allFindings, type CheckOptions } from "../checks/index.ts";
import type { Design, Finding } from "../model/types.ts";
import type { LineIndex } from "../text/line-index.ts";
import { quiet } from "./support/quiet.ts";

/**
 * In the order of the text, the design's own file first; what follows from a half-typed line or a missing name is told
 * once. `lines` gives the lines of a file.
 */
export function diagnose(
	design: Design,
	lines: (uri: string) => LineIndex | undefined,
	options?: CheckOptions,
): readonly Finding[] {
	const sorted = [...allFindings(design, options)].sort(
		(a, b) =>
			Number(a.origin.uri !== design.uri) -
				Number(b.origin.uri !== design.uri) ||
			a.origin.span.start - b.origin.span.start ||
			a.origin.span.end - b.origin.span.end,
	);
	return quiet(sorted, lines);
}

/** Findings about text that has no effect: an editor may grey it. */
export function isAboutUnused({ id }: Finding): boolean {
	return id.startsWith("unused-");
}
