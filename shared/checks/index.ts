// The door of the checks: the list of them, and the run over a design.

import type { Design, Finding, Piece } from "../model/types.ts";
import { compareStrings } from "../text/compare.ts";
import { TooLargeError } from "../units/rational.ts";
import type { Check, CheckContext, Found } from "./check.ts";
import { type CheckOptions, figuresOf, severityOf } from "./options.ts";
import { checks } from "./registry.ts";
import { remembered } from "./remembered.ts";

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
	options: CheckOptions = {},
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
	options: CheckOptions = {},
): readonly Finding[] {
	const findings: Finding[] = [];
	const pieces = design.pieces.filter(({ kind }) => kind === "piece");
	const components = design.pieces.filter(({ kind }) => kind !== "piece");
	for (const check of checks) {
		const severity = severityOf(check, options);
		if (severity === "off") continue;
		const context: CheckContext = {
			design,
			figures: figuresOf(check, options),
		};
		const told = new Set<string>();
		const toldPlaces = new Set<string>();
		const add = (found: readonly Found[], unlessToldThere: boolean): void => {
			const places: string[] = [];
			for (const one of found) {
				const { uri, span } = one.origin;
				const place = `${uri} ${span.start} ${span.end}`;
				const key = `${place} ${one.message}`;
				// A component made twice brings its findings twice.
				if (told.has(key) || (unlessToldThere && toldPlaces.has(place)))
					continue;
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
		const find = (piece: Piece): readonly Found[] =>
			remembered(check, piece, context, () =>
				unlessTooLarge(check, piece, () =>
					shortened(check.find(piece, context)),
				),
			);
		add(check.findInFile(context), false);
		for (const piece of pieces) add(find(piece), false);
		// A component on its own has only to say what no piece that is made with it has said.
		for (const component of components) add(find(component), true);
	}
	return findings.sort(
		(a, b) =>
			compareStrings(a.origin.uri, b.origin.uri) ||
			a.origin.span.start - b.origin.span.start ||
			a.origin.span.end - b.origin.span.end ||
			compareStrings(a.id, b.id),
	);
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
