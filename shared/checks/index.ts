// The door of the checks: the list of them, and the run over a design.

import type { Design, Finding, Piece, Severity } from "../model/types.ts";
import { compareStrings } from "../text/compare.ts";
import { TooLargeError } from "../units/rational.ts";
import type { Check, Found } from "./check.ts";
import { type CheckOptions, figuresOf, severityOf } from "./options.ts";
import { checks } from "./registry.ts";
import { type Active, remembered } from "./remembered.ts";

export type { Check, CheckGroup, Figure } from "./check.ts";
export { checkGroups } from "./check.ts";
export type { CheckOptions } from "./options.ts";
export { type Case, checkAnchor, checkPage, checksPage } from "./page.ts";
export { checks } from "./registry.ts";
export {
	figureKey,
	mergeOptions,
	type ReadSettings,
	readSettings,
	readSettingsText,
	settingsFileName,
	severityChoices,
} from "./settings.ts";

/** So many findings of one check are listed for a piece; a last one tells how many there are beside them. */
const mostListed = 200;

const byId = new Map(checks.map((check) => [check.id, check]));

/** The check of an id; undefined for a fault of syntax or evaluation that has no page. */
export function checkById(id: string): Check | undefined {
	return byId.get(id);
}

/** All there is to tell of a design: what syntax, evaluation and checks found, as the options want it. */
export function allFindings(
	design: Design,
	options: CheckOptions = noOptions,
): readonly Finding[] {
	const evaluated = design.findings.flatMap((finding): readonly Finding[] => {
		const check = byId.get(finding.id);
		const severity = check && severityOf(check, options);
		if (severity === undefined) return [finding];
		return severity === "off" ? [] : [{ ...finding, severity }];
	});
	return [...evaluated, ...runChecks(design, options)];
}

/** What the checks find in a design, in the order of its text. What syntax and evaluation found stands in the design itself. */
export function runChecks(
	design: Design,
	options: CheckOptions = noOptions,
): readonly Finding[] {
	const active = activeWith(options);
	const { stocks } = design;
	const byCheck = new Map<
		Check,
		{ pieces: (readonly Found[])[]; components: (readonly Found[])[] }
	>();
	for (const piece of design.pieces) {
		const all = remembered(piece, stocks, active, ({ check, figures }) =>
			unlessTooLarge(check, piece, () =>
				shortened(check.find(piece, { design, figures })),
			),
		);
		for (const { check, found } of all) {
			const lists = byCheck.get(check) ?? { pieces: [], components: [] };
			byCheck.set(check, lists);
			lists[piece.kind === "piece" ? "pieces" : "components"].push(found);
		}
	}
	const findings = active.flatMap(({ check, figures, severity }) => {
		const inFile = check.findInFile({ design, figures });
		const lists = byCheck.get(check);
		if (inFile.length === 0 && !lists) return [];
		return once(
			check,
			severity,
			[inFile, ...(lists?.pieces ?? [])],
			lists?.components ?? [],
		);
	});
	return findings.sort(
		(a, b) =>
			compareStrings(a.origin.uri, b.origin.uri) ||
			a.origin.span.start - b.origin.span.start ||
			a.origin.span.end - b.origin.span.end ||
			compareStrings(a.id, b.id),
	);
}

const noOptions: CheckOptions = {};
const actives = new WeakMap<CheckOptions, readonly Active[]>();

/** The checks that are not turned off; the same list for the same options. */
function activeWith(options: CheckOptions): readonly Active[] {
	const known = actives.get(options);
	if (known) return known;
	const active = checks.flatMap((check): Active[] => {
		const severity = severityOf(check, options);
		if (severity === "off") return [];
		return [{ check, figures: figuresOf(check, options), severity }];
	});
	actives.set(options, active);
	return active;
}

/** As findings, each once: a component made twice brings its own twice. */
function once(
	check: Check,
	severity: Severity | undefined,
	inPieces: readonly (readonly Found[])[],
	inComponents: readonly (readonly Found[])[],
): Finding[] {
	const findings: Finding[] = [];
	const told = new Set<string>();
	const toldPlaces = new Set<string>();
	const add = (found: readonly Found[], unlessToldThere: boolean): void => {
		const places: string[] = [];
		for (const one of found) {
			const { uri, span } = one.origin;
			const place = `${uri} ${span.start} ${span.end}`;
			const key = `${place} ${one.message}`;
			if (told.has(key) || (unlessToldThere && toldPlaces.has(place))) continue;
			told.add(key);
			places.push(place);
			findings.push({
				id: check.id,
				severity: severity ?? one.severity ?? check.severity,
				origin: one.origin,
				message: one.message,
				related: one.related ?? [],
				fixes: one.fixes ?? [],
			});
		}
		for (const place of places) toldPlaces.add(place);
	};
	for (const found of inPieces) add(found, false);
	// A component on its own has only to say what no piece that is made with it has said.
	for (const found of inComponents) add(found, true);
	return findings;
}

/** A figure of hundreds of digits can stop a check; it costs that check, not the others, and is told. */
function unlessTooLarge(
	check: Check,
	piece: Piece,
	find: () => readonly Found[],
): readonly Found[] {
	try {
		return find();
	} catch (error) {
		if (!(error instanceof TooLargeError)) throw error;
		const { uri } = piece.declaration.origin;
		return [
			{
				severity: "information",
				origin: { uri, span: piece.declaration.nameSpan },
				message: `A size of \`${piece.name}\` has too many digits for \`${check.id}\`: write it shorter`,
			},
		];
	}
}

/** A list that goes on and on helps nobody, and fills an editor. */
function shortened(found: readonly Found[]): readonly Found[] {
	const next = found[mostListed];
	if (!next) return found;
	return [
		...found.slice(0, mostListed),
		{
			origin: next.origin,
			message: `This is found ${found.length - mostListed} more times in this piece, not listed: mend the others first`,
		},
	];
}
