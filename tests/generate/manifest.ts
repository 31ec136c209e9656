// Writes the settings of the checks from the checks: their properties in package.json, and the schema of `.storyrod.json`.
// Writes there, too, which hints can be turned off, and what the words that the server colours mean.
// With --check it only tells what is stale. Nothing else in package.json is touched.

import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Check, Figure } from "../../shared/checks/index.ts";
import {
	checks,
	figureKey,
	settingsFileName,
	severityChoices,
} from "../../shared/checks/index.ts";
import { hintKinds } from "../../shared/features/support/hints/hint.ts";
import {
	type TokenModifier,
	type TokenType,
	tokenModifiers,
	tokenTypes,
} from "../../shared/features/support/tokens/legend.ts";

const manifestPath = fileURLToPath(
	new URL("../../package.json", import.meta.url),
);
const schemaPath = fileURLToPath(
	new URL("../../shared/outputs/schema/settings.json", import.meta.url),
);

type Json = Readonly<Record<string, unknown>>;

function severityProperties(): Json {
	return Object.fromEntries(
		checks.map(({ id, summary, severity }) => [
			id,
			{
				type: "string",
				enum: severityChoices,
				default: severity,
				description: `${summary}.`,
			},
		]),
	);
}

const unitWords: Readonly<Record<Figure["unit"], string>> = {
	mm: "millimetres",
	deg: "degrees",
	diameters: "diameters",
	times: "times",
	ratio: "a ratio",
	MPa: "megapascals",
	N: "newtons",
	m: "metres",
	"kg/m": "kilograms per metre",
};

function figureProperties(): Json {
	const of = (check: Check): readonly (readonly [string, Json])[] =>
		Object.entries(check.figures).map(([name, figure]) => [
			figureKey(check.id, name),
			{
				type: "number",
				minimum: 0,
				default: figure.value,
				description:
					`${figure.help}. In ${unitWords[figure.unit]}. Source: ${figure.source}.`.replace(
						"In a ratio",
						"A ratio",
					),
			},
		]);
	return Object.fromEntries(checks.flatMap(of));
}

/** By the name of the setting. */
function manifestProperties(): Json {
	return {
		"storyrod.checks.severity": {
			type: "object",
			scope: "window",
			order: 1,
			markdownDescription: `How grave a check is told, by its id; \`off\` leaves it out. Wins over a file \`${settingsFileName}\`.`,
			default: {},
			additionalProperties: false,
			properties: severityProperties(),
		},
		"storyrod.checks.figures": {
			type: "object",
			scope: "window",
			order: 2,
			markdownDescription: `Figures that the checks work with, by check and name, as in \`"fit-mitre.opening": 0.2\`. Wins over a file \`${settingsFileName}\`.`,
			default: {},
			additionalProperties: false,
			properties: figureProperties(),
		},
		...Object.fromEntries(
			Object.entries(hintKinds).map(([kind, { help, usual }], index) => [
				`storyrod.hints.${kind}`,
				{
					type: "boolean",
					scope: "window",
					order: 3 + index,
					default: usual,
					description: `${help}.`,
				},
			]),
		),
	};
}

export function wantedSchema(): string {
	return asText({
		$schema: "https://json-schema.org/draft/2020-12/schema",
		$id: "urn:storyrod:schema:settings:1",
		title: "Storyrod settings",
		description: `What a file \`${settingsFileName}\` may hold. It is read by the editor and the command line for the designs beside it and below.`,
		type: "object",
		additionalProperties: false,
		properties: {
			$schema: { type: "string", description: "Where this schema is." },
			severity: {
				type: "object",
				description:
					"How grave a check is told, by its id; `off` leaves it out.",
				additionalProperties: false,
				properties: severityProperties(),
			},
			figures: {
				type: "object",
				description: "Figures that the checks work with, by check and name.",
				additionalProperties: false,
				properties: figureProperties(),
			},
		},
	});
}

/** What coloured words mean, for themes and for those who set colours of their own. */
function tokenContributions(): Json {
	const types: readonly TokenType[] = tokenTypes;
	const modifiers: readonly TokenModifier[] = tokenModifiers;
	return {
		semanticTokenTypes: types.flatMap(({ name, help, like }) =>
			like ? [{ id: name, superType: like, description: `${help}.` }] : [],
		),
		semanticTokenModifiers: modifiers.flatMap(({ name, help, own }) =>
			own ? [{ id: name, description: `${help}.` }] : [],
		),
		semanticTokenScopes: [
			{
				language: "storyrod",
				scopes: Object.fromEntries(
					types.map(({ name, scopes }) => [name, scopes]),
				),
			},
		],
	};
}

interface Manifest {
	readonly contributes: {
		readonly configuration: { readonly properties: Json };
	};
}

/** The manifest with the settings of the checks as they are now; the others stay, in their order. */
export function wantedManifest(text: string): string {
	const manifest = JSON.parse(text) as Manifest;
	const { configuration } = manifest.contributes;
	const wanted = {
		...manifest,
		contributes: {
			...manifest.contributes,
			...tokenContributions(),
			configuration: {
				...configuration,
				properties: { ...configuration.properties, ...manifestProperties() },
			},
		},
	};
	return `${JSON.stringify(wanted, undefined, "\t")}\n`;
}

/** JSON as the house's formatter lays it out: short lists of words on one line. */
function asText(value: unknown): string {
	const text = JSON.stringify(value, undefined, "\t");
	return `${text.replace(
		/^(\t*)(.*)\[\n([^[\]{}]*?)\n\t*\]/gm,
		(all, indent: string, before: string, inner: string) => {
			const line = `${before}[${inner.replace(/\s*\n\s*/g, " ").trim()}]`;
			// A tab counts as two columns; a comma may follow.
			return indent.length * 2 + line.length + 1 <= 80 ? indent + line : all;
		},
	)}\n`;
}

export function staleFiles(): readonly string[] {
	const manifest = readFileSync(manifestPath, "utf8");
	return [
		...(wantedManifest(manifest) === manifest ? [] : ["package.json"]),
		...(textOf(schemaPath) === wantedSchema()
			? []
			: ["shared/outputs/schema/settings.json"]),
	];
}

function textOf(path: string): string | undefined {
	try {
		return readFileSync(path, "utf8");
	} catch {
		return undefined;
	}
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
	if (process.argv.includes("--check")) {
		for (const file of staleFiles()) {
			process.stderr.write(
				`${file} is stale: run \`node tests/generate/manifest.ts\`\n`,
			);
			process.exitCode = 1;
		}
	} else {
		writeFileSync(
			manifestPath,
			wantedManifest(readFileSync(manifestPath, "utf8")),
		);
		writeFileSync(schemaPath, wantedSchema());
	}
}
