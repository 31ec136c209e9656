// The package as npm installs it: another program imports the layouts from it, with their types.

import { execFileSync } from "node:child_process";
import { existsSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, onTestFinished, test } from "vitest";
import { programs } from "../harness/layouts-page.ts";

const root = fileURLToPath(new URL("../..", import.meta.url));

function npm(args: readonly string[], cwd: string): string {
	return execFileSync("npm", [...args], {
		cwd,
		encoding: "utf8",
		stdio: ["ignore", "pipe", "pipe"],
		shell: process.platform === "win32", // npm is a .cmd there
	});
}

test("an installed package lays out sheets for a program of somebody else", () => {
	if (!existsSync(join(root, "dist/layouts/index.mjs")))
		execFileSync(process.execPath, ["build.config.ts"], { cwd: root });
	const folder = mkdtempSync(join(tmpdir(), "storyrod-package-"));
	onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
	const packed = JSON.parse(
		npm(
			["pack", "--ignore-scripts", "--json", "--pack-destination", folder],
			root,
		),
	) as readonly { readonly filename: string }[];
	const tarball = packed[0]?.filename ?? "";
	writeFileSync(
		join(folder, "package.json"),
		JSON.stringify({ name: "somebody-else", private: true, type: "module" }),
	);
	npm(
		["install", "--offline", "--no-audit", "--no-fund", `./${tarball}`],
		folder,
	);
	for (const { number, text, prints } of programs()) {
		const file = `program-${number}.ts`;
		writeFileSync(join(folder, file), text);
		const out = execFileSync(process.execPath, [file], {
			cwd: folder,
			encoding: "utf8",
		});
		expect(out).toBe(prints);
	}
	// Types: the programs hold, and what is no job does not.
	writeFileSync(
		join(folder, "wrong.ts"),
		'import { layOutSheets } from "storyrod/layouts";\nlayOutSheets({ stocks: [], parts: [] });\n',
	);
	expect(faultsOf(["program-1.ts", "program-2.ts"], folder)).toBe("");
	expect(faultsOf(["wrong.ts"], folder)).toContain("kerf");
});

/** What the compiler says of a program that is as strict as can be. */
function faultsOf(files: readonly string[], folder: string): string {
	writeFileSync(
		join(folder, "tsconfig.json"),
		JSON.stringify({
			compilerOptions: {
				strict: true,
				noEmit: true,
				target: "es2022",
				lib: ["es2022", "dom"],
				module: "nodenext",
				types: [],
			},
			files,
		}),
	);
	try {
		execFileSync(
			process.execPath,
			[join(root, "node_modules/typescript/bin/tsc"), "-p", folder],
			{ encoding: "utf8", stdio: ["ignore", "pipe", "pipe"] },
		);
		return "";
	} catch (error) {
		return (error as { stdout: string }).stdout;
	}
}
