// Keeps a list of findings quiet while somebody types: what follows from a line that cannot be read yet, or from one name
// that is not there yet, is told once.

import { faultSeverities } from "../../../grammar/index.ts";
import type { Finding } from "../../model/types.ts";
import type { LineIndex } from "../../text/line-index.ts";

/** So many places are named beside the first. */
const mostRelated = 8;

/**
 * Findings in the order of the text. On a line with a fault of form only the first such fault is left: what the rest of the
 * line means is not known before it is mended. A name that means nothing is told where it is first used, and the other
 * places with it. `lines` gives the lines of a file.
 */
export function quiet(
	findings: readonly Finding[],
	lines: (uri: string) => LineIndex | undefined,
): readonly Finding[] {
	const lineOf = ({ origin: { uri, span } }: Finding): string =>
		`${uri} ${lines(uri)?.positionAt(span.start).line ?? span.start}`;
	const broken = new Map<string, Finding>();
	for (const finding of findings) {
		if (!isOfForm(finding)) continue;
		const line = lineOf(finding);
		if (!broken.has(line)) broken.set(line, finding);
	}
	const named = new Map<string, Finding[]>();
	const left = findings.filter((finding) => {
		const first = broken.size > 0 ? broken.get(lineOf(finding)) : undefined;
		if (first && first !== finding) return false;
		if (finding.id !== "unknown-name") return true;
		const key = `${finding.origin.uri} ${finding.message}`;
		const before = named.get(key);
		if (before) before.push(finding);
		else named.set(key, [finding]);
		return !before;
	});
	return left.map((finding) => {
		const [first, ...others] =
			finding.id === "unknown-name"
				? (named.get(`${finding.origin.uri} ${finding.message}`) ?? [])
				: [];
		if (finding !== first || others.length === 0) return finding;
		const related = others
			.slice(0, mostRelated)
			.map(({ origin }) => ({ origin, message: "And here" }));
		return { ...finding, related: [...finding.related, ...related] };
	});
}

/** Faults of the line itself, of the syntax or against the forms of the table; hints about odd characters are none. */
const ofForm: ReadonlySet<string> = new Set([
	"block-missing",
	"does-not-fit",
	"unknown-head",
	...Object.entries(faultSeverities).flatMap(([id, severity]) =>
		severity === "error" ? [id] : [],
	),
]);

function isOfForm({ id }: Finding): boolean {
	return ofForm.has(id);
}
