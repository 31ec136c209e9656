/**
 * Builds what is shipped: the extension, the language server, the command line and the layouts for other programs, each one
 * file in `dist/`, the last with its types.
 */
import { execFileSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { type BuildOptions, build, type Metafile } from "esbuild";

const root = import.meta.dirname;

const common: BuildOptions = {
	absWorkingDir: root,
	bundle: true,
	platform: "node",
	minify: true,
	sourcemap: "linked",
	sourcesContent: false,
	legalComments: "none", // the licences themselves go into THIRD-PARTY.txt
	metafile: true,
	logLevel: "warning",
	mainFields: ["module", "main"],
};

/** Bundled CommonJS packages ask for Node's own modules by `require`, which an ES module lacks. */
const requireBanner =
	'import { createRequire } from "node:module"; const require = createRequire(import.meta.url);';

const targets: BuildOptions[] = [
	{
		entryPoints: ["client/src/extension.ts"],
		outfile: "dist/client/extension.cjs",
		format: "cjs",
		target: "node20", // the oldest VS Code that the manifest allows runs this
		external: ["vscode"],
	},
	{
		entryPoints: ["client/src/web-extension.ts"],
		outfile: "dist/client/web-extension.cjs",
		format: "cjs",
		platform: "browser",
		target: "es2022",
		external: ["vscode"],
	},
	{
		entryPoints: ["server/hosts/worker.ts"],
		outfile: "dist/server/language-server-worker.js",
		format: "iife",
		platform: "browser",
		target: "es2022",
		mainFields: ["browser", "module", "main"],
	},
	{
		entryPoints: ["server/hosts/node.ts"],
		outfile: "dist/server/language-server.mjs",
		format: "esm",
		target: "node20",
		banner: { js: requireBanner },
	},
	{
		entryPoints: ["server/cli/main.ts"],
		outfile: "dist/server/storyrod.mjs",
		format: "esm",
		target: "node24",
		// esbuild keeps a `#!` line of the entry itself, above the banner
		banner: { js: requireBanner },
	},
	{
		entryPoints: ["shared/cutting/index.ts"],
		outfile: "dist/layouts/index.mjs",
		format: "esm",
		platform: "neutral", // a browser runs it, too
		target: "es2024",
	},
];

/** The folders of the packages that went into a bundle, relative to the root, in order of name. */
function packagesIn(metafiles: readonly Metafile[]): string[] {
	const folders = new Set<string>();
	for (const metafile of metafiles) {
		for (const path of Object.keys(metafile.inputs)) {
			const folder = /^.*node_modules\/(?:@[^/]+\/)?[^/]+/.exec(path)?.[0];
			if (folder) folders.add(folder);
		}
	}
	return [...folders].sort();
}

/** The licences of bundled packages travel with them. Throws when a package brings none: it may not be shipped then. */
function thirdPartyText(folders: readonly string[]): string {
	const entries = folders.map((folder) => {
		const { name, version, license } = JSON.parse(
			readFileSync(join(root, folder, "package.json"), "utf8"),
		) as { name: string; version: string; license?: string };
		const file = readdirSync(join(root, folder)).find((entry) =>
			/^licen[cs]e/i.test(entry),
		);
		if (!file && !license)
			throw new Error(`${name} is bundled but states no licence`);
		const text = file
			? readFileSync(join(root, folder, file), "utf8").trim()
			: `License: ${license}`;
		return `${name} ${version}\n\n${text}\n`;
	});
	const rule = `\n${"-".repeat(72)}\n\n`;
	return `Storyrod's bundles contain these packages.\n${rule}${entries.join(rule)}`;
}

/** The manifest names files by path; a wrong one shows only as a feature missing in the editor. */
function manifestPaths(value: unknown): string[] {
	if (typeof value === "string")
		return /^\.\/.+\.\w+$/.test(value) ? [value] : [];
	if (value === null || typeof value !== "object") return [];
	return Object.values(value).flatMap(manifestPaths);
}

const results = await Promise.all(
	targets.map((target) => build({ ...common, ...target })),
).catch(() => process.exit(1)); // esbuild has told what is wrong
const metafiles = results.flatMap(({ metafile }) => metafile ?? []);
writeFileSync(
	join(root, "dist/THIRD-PARTY.txt"),
	thirdPartyText(packagesIn(metafiles)),
);

/** Throws, with what is wrong on the console, if the types do not hold. */
function writeLayoutTypes(): void {
	execFileSync(
		process.execPath,
		[
			join(root, "node_modules/typescript/bin/tsc"),
			"--project",
			join(root, "shared/cutting/tsconfig.types.json"),
		],
		{ stdio: "inherit" },
	);
}
writeLayoutTypes();

const manifest: unknown = JSON.parse(
	readFileSync(join(root, "package.json"), "utf8"),
);
const missing = manifestPaths(manifest).filter(
	(path) => !existsSync(join(root, path)),
);
if (missing.length > 0)
	throw new Error(`package.json names files that are not there: ${missing}`);

for (const metafile of metafiles) {
	for (const [path, { bytes }] of Object.entries(metafile.outputs)) {
		if (!path.endsWith(".map"))
			console.log(`${path}  ${Math.ceil(bytes / 1024)} KB`);
	}
}
