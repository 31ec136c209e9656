/** Makes the .vsix: `node tests/vscode/package.ts [FILE]`, `storyrod-VERSION.vsix` in the root when none is named. */
import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { installEditors } from "./install.ts";
import { extensionRoot, here } from "./paths.ts";

const packer = join(here, "node_modules/@vscode/vsce/vsce");

/** Builds and packs the extension. Throws, with what the packer said on the console, if it refuses. */
export function packExtension(file: string): void {
	execFileSync(
		process.execPath,
		[
			packer,
			"package",
			"--no-dependencies", // everything is bundled
			"--allow-missing-repository",
			"--no-rewrite-relative-links", // the pages that the README links to are packed with it
			...["--out", file],
		],
		{ cwd: extensionRoot, stdio: ["ignore", "inherit", "inherit"] },
	);
}

/** The paths of what the package holds, relative to the extension's root. */
export function packedFiles(): string[] {
	const listed = execFileSync(
		process.execPath,
		[packer, "ls", "--no-dependencies"],
		{
			cwd: extensionRoot,
			encoding: "utf8",
		},
	);
	return listed.split("\n").filter((line) => line !== "");
}

if (import.meta.main) {
	installEditors();
	const manifest = JSON.parse(
		readFileSync(join(extensionRoot, "package.json"), "utf8"),
	) as { version: string };
	packExtension(
		resolve(
			process.argv[2] ??
				join(extensionRoot, `storyrod-${manifest.version}.vsix`),
		),
	);
}
