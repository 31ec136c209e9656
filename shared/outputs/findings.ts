// Findings of several designs made ready to be told: placed in lines and columns, sorted, each once.

import type { Finding, Origin, Severity } from "../model/types.ts";
import { compareStrings } from "../text/compare.ts";
import { indexLines, type LineIndex } from "../text/line-index.ts";

export interface Place {
	/** As the caller names the file. */
	readonly file: string;
	readonly uri: string;
	/** From 1; columns in UTF-16 code units, as editors count them. */
	readonly line: number;
	readonly column: number;
	readonly endLine: number;
	readonly endColumn: number;
	/** Half-open offsets in UTF-16 code units. */
	readonly start: number;
	readonly end: number;
}

export interface PlacedFinding {
	readonly finding: Finding;
	readonly place: Place;
	readonly related: readonly {
		readonly place: Place;
		readonly message: string;
	}[];
}

/** The texts that findings speak of. */
export interface Texts {
	/** What the caller calls a file. */
	nameOf(uri: string): string;
	textOf(uri: string): string | undefined;
}

export const severities: readonly Severity[] = [
	"error",
	"warning",
	"information",
	"hint",
];

/** By file, place, severity and id. What several designs find in a file that they share is there once. */
export function placeFindings(
	findings: readonly Finding[],
	texts: Texts,
): readonly PlacedFinding[] {
	const placer = placerOf(texts);
	const seen = new Set<string>();
	const placed: PlacedFinding[] = [];
	for (const finding of findings) {
		const { uri, span } = finding.origin;
		const key = `${uri} ${span.start} ${span.end} ${finding.id} ${finding.message}`;
		if (seen.has(key)) continue;
		seen.add(key);
		placed.push({
			finding,
			place: placer(finding.origin),
			related: finding.related.map(({ origin, message }) => ({
				place: placer(origin),
				message,
			})),
		});
	}
	return placed.sort(
		(a, b) =>
			compareStrings(a.place.file, b.place.file) ||
			a.place.start - b.place.start ||
			a.place.end - b.place.end ||
			severities.indexOf(a.finding.severity) -
				severities.indexOf(b.finding.severity) ||
			compareStrings(a.finding.id, b.finding.id) ||
			compareStrings(a.finding.message, b.finding.message),
	);
}

/** How many there are of each grade. */
export function countFindings(
	findings: readonly PlacedFinding[],
): Readonly<Record<Severity, number>> {
	const counts: Record<Severity, number> = {
		error: 0,
		warning: 0,
		information: 0,
		hint: 0,
	};
	for (const { finding } of findings) counts[finding.severity] += 1;
	return counts;
}

function placerOf(texts: Texts): (origin: Origin) => Place {
	const lines = new Map<string, LineIndex>();
	return ({ uri, span }) => {
		let index = lines.get(uri);
		if (index === undefined) {
			index = indexLines(texts.textOf(uri) ?? "");
			lines.set(uri, index);
		}
		const start = index.positionAt(span.start);
		const end = index.positionAt(Math.max(span.start, span.end));
		return {
			file: texts.nameOf(uri),
			uri,
			line: start.line + 1,
			column: start.character + 1,
			endLine: end.line + 1,
			endColumn: end.character + 1,
			start: span.start,
			end: span.end,
		};
	};
}
