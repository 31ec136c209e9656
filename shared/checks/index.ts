// The door of the checks: the list of them, and the run over a design.

import type { Design, Finding, Piece } from "../model/types.ts";
import { compareStrings } from "../text/compare.ts";
import { TooLargeError } from "../units/rational.ts";
import type { Check, CheckContext, Found } from "./check.ts";
import { type CheckOptions, figuresOf, severityOf } from "./options.ts";
import { checks } from "./registry.ts";

export type { Check, CheckGroup, Figure } from "./check.ts";
export { checkGroups } from "./check.ts";
export type { CheckOptions } from "./options.ts";
export { checkAnchor, checkPage, checksPage } from "./page.ts";
export { checks } from "./registry.ts";

const byId = new Map(checks.map((check) => [check.id, check]));

/** The check of an id; undefined for a fault of syntax or evaluation that has no page. */
export function checkById(id: string): Check | undefined {
	return byId.get(id);
}

/** What the checks find in a design, in the order of its text. What syntax and evaluation found stands in the design itself. */
export function runChecks(
	design: Design,
	options: CheckOptions = {},
): readonly Finding[] {
	const findings: Finding[] = [];
	const told = new Set<string>();
	for (const check of checks) {
		const severity = severityOf(check, options);
		if (severity === "off") continue;
		const context: CheckContext = {
			design,
			figures: figuresOf(check, options),
		};
		const add = (found: readonly Found[]): void => {
			for (const one of found) {
				const { uri, span } = one.origin;
				// A component made twice brings its findings twice.
				const key = `${check.id} ${uri} ${span.start} ${span.end} ${one.message}`;
				if (told.has(key)) continue;
				told.add(key);
				findings.push({
					id: check.id,
					severity: severity ?? one.severity ?? check.severity,
					origin: one.origin,
					message: one.message,
					related: one.related ?? [],
					fixes: one.fixes ?? [],
				});
			}
		};
		add(check.findInFile(context));
		for (const piece of design.pieces)
			add(unlessTooLarge(check, piece, () => check.find(piece, context)));
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
