// Everything there is to tell about a design: what syntax and evaluation found, and what the checks find in it.

import { allFindings, type CheckOptions } from "../checks/index.ts";
import type { Design, Finding } from "../model/types.ts";

/** In the order of the text, the design's own file first. */
export function diagnose(
	design: Design,
	options?: CheckOptions,
): readonly Finding[] {
	return [...allFindings(design, options)].sort(
		(a, b) =>
			Number(a.origin.uri !== design.uri) -
				Number(b.origin.uri !== design.uri) ||
			a.origin.span.start - b.origin.span.start ||
			a.origin.span.end - b.origin.span.end,
	);
}

/** Findings about text that has no effect: an editor may grey it. */
export function isAboutUnused({ id }: Finding): boolean {
	return id.startsWith("unused-");
}
