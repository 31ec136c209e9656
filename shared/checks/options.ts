// What a design or workspace may set for the checks, and how it meets their defaults.

import type { Severity } from "../model/types.ts";
import type { Check } from "./check.ts";

export interface CheckOptions {
	/** By id: another severity for every finding of the check, or `off`. */
	readonly severity?: Readonly<Record<string, Severity | "off">>;
	/** By id, then by name: a figure that replaces the default, in the unit that the check's page gives. */
	readonly figures?: Readonly<Record<string, Readonly<Record<string, number>>>>;
}

/** Figures of a check as the options have them; what is no finite number or below zero is left at its default. */
export function figuresOf(
	check: Check,
	options: CheckOptions,
): Readonly<Record<string, number>> {
	const set = ownOf(options.figures, check.id);
	const figures: Record<string, number> = {};
	for (const [name, figure] of Object.entries(check.figures)) {
		const value = ownOf(set, name);
		figures[name] =
			typeof value === "number" && Number.isFinite(value) && value >= 0
				? value
				: figure.value;
	}
	return figures;
}

/** The severity that the options give to a check; undefined: its own. */
export function severityOf(
	check: Check,
	options: CheckOptions,
): Severity | "off" | undefined {
	return ownOf(options.severity, check.id);
}

function ownOf<T>(
	record: Readonly<Record<string, T>> | undefined,
	name: string,
): T | undefined {
	return record !== undefined && Object.hasOwn(record, name)
		? record[name]
		: undefined;
}
