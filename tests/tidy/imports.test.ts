// The rooms import one way: grammar <- shared <- server and client. Reads the import lines of every source file.

import { readdirSync, readFileSync } from "node:fs";
import { join, relative, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";

const root = fileURLToPath(new URL("../..", import.meta.url));

/** What each folder may import: folders of ours (longest prefix counts) and packages. */
const rules: readonly {
	readonly folder: string;
	readonly may: readonly string[];
	readonly packages: readonly string[];
}[] = [
	{ folder: "grammar", may: ["grammar"], packages: ["chevrotain"] },
	{ folder: "shared/text", may: ["shared/text"], packages: [] },
	{
		folder: "shared/units",
		may: ["shared/units", "shared/text", "grammar"],
		packages: [],
	},
	{ folder: "shared/tables", may: ["shared/tables"], packages: [] },
	{
		folder: "shared/mechanics",
		may: [
			"shared/mechanics",
			"shared/tables",
			"shared/units",
			"shared/geometry",
		],
		packages: [],
	},
	{
		folder: "shared/geometry",
		may: ["shared/geometry", "shared/units"],
		packages: [],
	},
	{ folder: "shared/cutting", may: ["shared/cutting"], packages: [] },
	{
		folder: "shared/layouts",
		may: [
			"shared/layouts",
			"shared/cutting",
			"shared/model",
			"shared/geometry",
			"shared/tables",
			"shared/units",
			"grammar",
		],
		packages: [],
	},
	{
		folder: "shared/sources",
		may: ["shared/sources", "shared/text", "grammar"],
		packages: [],
	},
	{
		folder: "shared/model",
		may: [
			"shared/model",
			"shared/sources",
			"shared/geometry",
			"shared/tables",
			"shared/units",
			"shared/text",
			"grammar",
		],
		packages: [],
	},
	...["checks", "format", "outputs"].map((room) => ({
		folder: `shared/${room}`,
		may: [
			`shared/${room}`,
			...(room === "checks" ? ["shared/mechanics"] : []),
			...(room === "outputs" ? ["shared/layouts", "shared/cutting"] : []),
			"shared/model",
			"shared/sources",
			"shared/geometry",
			"shared/tables",
			"shared/units",
			"shared/text",
			"grammar",
		],
		packages: [],
	})),
	{
		folder: "shared/review",
		may: [
			"shared/review",
			"shared/outputs",
			"shared/layouts",
			"shared/cutting",
			"shared/checks",
			"shared/model",
			"shared/sources",
			"shared/geometry",
			"shared/units",
			"shared/text",
			"grammar",
		],
		packages: [],
	},
	{
		folder: "shared/features",
		may: [
			"shared/features",
			"shared/checks",
			"shared/mechanics",
			"shared/outputs",
			"shared/layouts",
			"shared/cutting",
			"shared/format",
			"shared/model",
			"shared/sources",
			"shared/geometry",
			"shared/tables",
			"shared/units",
			"shared/text",
			"grammar",
		],
		packages: [],
	},
	{ folder: "shared/protocol", may: ["shared/protocol"], packages: [] },
	{
		folder: "server/hosts",
		may: ["server", "shared", "grammar"],
		packages: ["vscode-languageserver", "node:"],
	},
	{
		folder: "server/cli",
		may: ["server", "shared", "grammar"],
		packages: ["node:", "tinyglobby"],
	},
	{
		folder: "server",
		may: ["server", "shared", "grammar"],
		packages: ["vscode-languageserver"],
	},
	{
		folder: "client",
		may: ["client", "shared/protocol"],
		packages: ["vscode", "vscode-languageclient", "node:"],
	},
];

function sourceFiles(folder: string): string[] {
	return readdirSync(join(root, folder), { recursive: true, encoding: "utf8" })
		.filter((path) => path.endsWith(".ts") && !path.endsWith(".test.ts"))
		.map((path) => join(folder, path).replaceAll("\\", "/"));
}

function importsOf(file: string): string[] {
	const text = readFileSync(join(root, file), "utf8");
	return [
		...text.matchAll(/(?:^|\n)(?:import|export)\s[^;'"]*?from\s+"([^"]+)"/g),
		...text.matchAll(/(?:^|\n)import\s+"([^"]+)"/g),
		...text.matchAll(/\bimport\(\s*"([^"]+)"\s*\)/g),
	].map((match) => match[1] as string);
}

/** The lines that break a rule, each with the rule named. */
function broken(file: string): string[] {
	const rule = rules
		.filter(({ folder }) => file.startsWith(`${folder}/`))
		.sort((a, b) => b.folder.length - a.folder.length)[0];
	if (!rule) return [`${file}: no rule for this folder`];
	return importsOf(file).flatMap((specifier) => {
		if (!specifier.startsWith(".")) {
			const allowed = rule.packages.some(
				(name) =>
					specifier === name ||
					specifier.startsWith(`${name}/`) ||
					specifier.startsWith(`${name}-`) ||
					(name.endsWith(":") && specifier.startsWith(name)),
			);
			return allowed
				? []
				: [`${file}: ${rule.folder} may not import the package ${specifier}`];
		}
		const target = relative(
			root,
			resolve(root, file, "..", specifier),
		).replaceAll("\\", "/");
		const allowed = rule.may.some((folder) => target.startsWith(`${folder}/`));
		return allowed ? [] : [`${file}: ${rule.folder} may not import ${target}`];
	});
}

it.each(["grammar", "shared", "server", "client"])(
	"keeps the rooms apart in %s",
	(room) => {
		const files = sourceFiles(room);
		expect(files.length).toBeGreaterThan(0);
		expect(files.flatMap(broken)).toEqual([]);
	},
);

it("lets no feature import another feature", () => {
	const files = sourceFiles("shared/features").filter(
		(file) => !file.includes("/support/"),
	);
	const crossings = files.flatMap((file) =>
		importsOf(file)
			.filter((specifier) => /^\.\/[a-z-]+\.ts$/.test(specifier))
			.map((specifier) => `${file} imports ${specifier}`),
	);
	expect(crossings).toEqual([]);
});

it("says in the first lines of every file why it exists", () => {
	const bare = ["grammar", "shared", "server", "client"]
		.flatMap(sourceFiles)
		.filter(
			(file) =>
				!/^(\/\/ |\/\*\*|#!)/.test(readFileSync(join(root, file), "utf8")),
		);
	expect(bare).toEqual([]);
});

it("uses no clock and no chance in the core", () => {
	const offenders = ["grammar", "shared"]
		.flatMap(sourceFiles)
		.filter((file) =>
			/\b(Date\.now|new Date\(|Math\.random|performance\.now|setTimeout|setInterval|localeCompare|toLocale)/.test(
				readFileSync(join(root, file), "utf8"),
			),
		);
	expect(offenders).toEqual([]);
});
