// Reads what a workspace sets for the checks: from a file `.storyrod.json`, or from an editor that has the same two objects.

import { nearest } from "../model/meaning.ts";
import type { Severity } from "../model/types.ts";
import type { CheckOptions } from "./options.ts";
import { checks } from "./registry.ts";

/** The file in which a folder of designs keeps its settings. */
export const settingsFileName = ".storyrod.json";

export const severityChoices: readonly (Severity | "off")[] = [
	"error",
	"warning",
	"information",
	"hint",
	"off",
];

export interface ReadSettings {
	/** What could be read. */
	readonly options: CheckOptions;
	/** What could not, a line each, for the maker. */
	readonly faults: readonly string[];
}

/** More than this is no slip of the hand, and nobody reads it. */
const mostFaults = 20;

const severities = new Map(checks.map(({ id }) => [id, id]));

/** By the name in the settings, `fit-mitre.opening`: whose figure it is. */
const figures = new Map(
	checks.flatMap((check) =>
		Object.keys(check.figures).map(
			(name) => [figureKey(check.id, name), { id: check.id, name }] as const,
		),
	),
);

/** `fit-mitre.opening` */
export function figureKey(id: string, name: string): string {
	return `${id}.${name}`;
}

/** The text of a settings file. */
export function readSettingsText(text: string): ReadSettings {
	let value: unknown;
	try {
		value = JSON.parse(text.replace(/^\ufeff/, ""));
	} catch (error) {
		const why = error instanceof Error ? error.message : String(error);
		return {
			options: {},
			faults: [`It is no JSON: ${why.replace(/\s+/g, " ")}`],
		};
	}
	return readSettings(value);
}

/** `{ severity, figures }`; undefined and null stand for nothing set. What cannot be read is told and left at its default. */
export function readSettings(value: unknown): ReadSettings {
	const faults: string[] = [];
	if (value === undefined || value === null) return { options: {}, faults };
	if (!isObject(value)) {
		return {
			options: {},
			faults: [`Settings are an object, not ${kindOf(value)}`],
		};
	}
	for (const key of Object.keys(value)) {
		if (["severity", "figures", "$schema"].includes(key)) continue;
		faults.push(
			`There is no setting ${quoted(key)}: there is \`severity\` and \`figures\``,
		);
	}
	const severity: Record<string, Severity | "off"> = {};
	for (const [id, set] of entriesOf(value, "severity", faults)) {
		if (!severities.has(id)) {
			faults.push(`There is no check ${quoted(id)}${hint(id, severities)}`);
			continue;
		}
		const choice = severityChoices.find((one) => one === set);
		if (choice !== undefined) severity[id] = choice;
		else {
			const near =
				typeof set === "string" ? nearest(set, severityChoices) : undefined;
			faults.push(
				`The severity of \`${id}\` cannot be ${shown(set)}${near === undefined ? `: it is ${severityChoices.join(", ")}` : `: did you mean \`${near}\`?`}`,
			);
		}
	}
	const own: Record<string, Record<string, number>> = {};
	for (const [key, set] of entriesOf(value, "figures", faults)) {
		const figure = figures.get(key);
		if (!figure) {
			faults.push(`There is no figure ${quoted(key)}${hint(key, figures)}`);
		} else if (typeof set === "number" && Number.isFinite(set) && set >= 0) {
			own[figure.id] = { ...own[figure.id], [figure.name]: set };
		} else {
			faults.push(
				`The figure \`${key}\` cannot be ${shown(set)}: it is a number, 0 or more`,
			);
		}
	}
	const more = faults.length - mostFaults;
	return {
		options: { severity, figures: own },
		faults:
			more > 0
				? [...faults.slice(0, mostFaults), `And ${more} more of the like`]
				: faults,
	};
}

/** Both, and where both say something, `over`. */
export function mergeOptions(
	under: CheckOptions,
	over: CheckOptions,
): CheckOptions {
	const merged: Record<string, Readonly<Record<string, number>>> = {
		...under.figures,
	};
	for (const [id, own] of Object.entries(over.figures ?? {})) {
		merged[id] = { ...merged[id], ...own };
	}
	return {
		severity: { ...under.severity, ...over.severity },
		figures: merged,
	};
}

function entriesOf(
	settings: Readonly<Record<string, unknown>>,
	key: "severity" | "figures",
	faults: string[],
): readonly (readonly [string, unknown])[] {
	const value = Object.hasOwn(settings, key) ? settings[key] : undefined;
	// An editor sends null for what is not set.
	if (value === undefined || value === null) return [];
	if (isObject(value)) return Object.entries(value);
	faults.push(
		`\`${key}\` is an object, not ${kindOf(value)}: ${
			key === "severity"
				? '`{ "fit-gap": "warning" }`'
				: '`{ "fit-mitre.opening": 0.2 }`'
		}`,
	);
	return [];
}

/** The nearest name, or those that begin or end like it. */
function hint(name: string, known: ReadonlyMap<string, unknown>): string {
	const names = [...known.keys()];
	const [id = ""] = name.split(".");
	const near =
		nearest(name, names) ??
		(name.length > 2
			? names.find((one) => one.startsWith(name) || one.endsWith(`.${name}`))
			: undefined);
	if (near !== undefined) return `: did you mean \`${near}\`?`;
	const siblings = names.filter((one) => one.startsWith(`${id}.`));
	if (siblings.length > 0)
		return `: there is ${siblings.map((one) => `\`${one}\``).join(", ")}`;
	const check = nearest(id, severities.keys());
	const likely = names.filter((one) => one.startsWith(`${check}.`));
	return likely.length > 0
		? `: did you mean ${likely.map((one) => `\`${one}\``).join(", ")}?`
		: ": the page of the checks lists what there is";
}

function isObject(value: unknown): value is Record<string, unknown> {
	return typeof value === "object" && value !== null && !Array.isArray(value);
}

function kindOf(value: unknown): string {
	if (Array.isArray(value)) return "a list";
	if (value === null) return "`null`";
	return typeof value === "string"
		? "a text"
		: typeof value === "number"
			? "a number"
			: `\`${String(value)}\``;
}

function shown(value: unknown): string {
	if (isObject(value)) return "an object";
	if (Array.isArray(value)) return "a list";
	return quoted(JSON.stringify(value) ?? String(value));
}

function quoted(text: string): string {
	const line = text.replace(/[\s`]+/g, " ");
	return `\`${line.length > 60 ? `${line.slice(0, 59)}…` : line}\``;
}
