// Mends that findings offer, where the cursor or the selection is.

import type { Edit, Span } from "../../grammar/index.ts";
import type { Finding } from "../model/types.ts";

export interface CodeAction {
	readonly title: string;
	readonly finding: Finding;
	/** In the finding's own file. */
	readonly edits: readonly Edit[];
	/** The only mend of its finding. */
	readonly preferred: boolean;
}

/** The fixes of all findings in the file that touch the span. */
export function codeActions(
	findings: readonly Finding[],
	uri: string,
	span: Span,
): CodeAction[] {
	return findings
		.filter(
			({ origin }) =>
				origin.uri === uri &&
				origin.span.start <= span.end &&
				span.start <= origin.span.end,
		)
		.flatMap((finding) =>
			finding.fixes.map(({ title, edits }) => ({
				title,
				finding,
				edits,
				preferred: finding.fixes.length === 1,
			})),
		);
}
