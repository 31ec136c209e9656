// Findings for other programs, as `schema/check.json` describes them.

import type { Severity } from "../model/types.ts";
import { countFindings, type Place, type PlacedFinding } from "./findings.ts";

/** Grows when a field changes its meaning or goes; new fields leave it. */
export const findingsVersion = 1;

type PlaceJson = Omit<Place, "uri">;

export interface FindingsJson {
	readonly schemaVersion: typeof findingsVersion;
	readonly files: readonly string[];
	readonly counts: Readonly<Record<Severity, number>>;
	readonly findings: readonly {
		readonly id: string;
		readonly severity: Severity;
		readonly message: string;
		readonly place: PlaceJson;
		readonly related: readonly {
			readonly message: string;
			readonly place: PlaceJson;
		}[];
		/** Mechanical mends; offsets are those of the finding's file, in UTF-16 code units. */
		readonly fixes: readonly {
			readonly title: string;
			readonly edits: readonly {
				readonly start: number;
				readonly end: number;
				readonly text: string;
			}[];
		}[];
	}[];
}

/** `files` are the designs that were looked at, also those without a finding. */
export function findingsJson(
	findings: readonly PlacedFinding[],
	files: readonly string[],
): FindingsJson {
	return {
		schemaVersion: findingsVersion,
		files,
		counts: countFindings(findings),
		findings: findings.map(({ finding, place, related }) => ({
			id: finding.id,
			severity: finding.severity,
			message: finding.message,
			place: placeOf(place),
			related: related.map((one) => ({
				message: one.message,
				place: placeOf(one.place),
			})),
			fixes: finding.fixes.map(({ title, edits }) => ({
				title,
				edits: edits.map(({ span, text }) => ({
					start: span.start,
					end: span.end,
					text,
				})),
			})),
		})),
	};
}

function placeOf({ uri: _, ...place }: Place): PlaceJson {
	return place;
}
