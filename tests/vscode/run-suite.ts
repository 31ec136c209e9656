/**
 * Runs the tests in `suite/` inside an extension host, started by @vscode/test-electron: of a VS Code that it downloads
 * (STORYROD_VSCODE=download), else of the one that the packages bring.
 */
import { cpSync, mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { runTests } from "@vscode/test-electron";
import { build } from "esbuild";
import { designs, extensionRoot, here, out } from "./paths.ts";

/** The shipped designs in a folder of their own, so that a test may change them. The caller removes it. */
export function copyDesigns(): string {
	const folder = mkdtempSync(join(tmpdir(), "storyrod-designs-"));
	cpSync(designs, folder, {
		recursive: true,
		filter: (path) => !path.endsWith(".test.ts"),
	});
	return folder;
}

/** Resolves to whether all tests passed. */
export async function runSuite(report: string): Promise<boolean> {
	const bundles = join(out, "suite");
	rmSync(bundles, { recursive: true, force: true });
	const suite = join(here, "suite");
	await build({
		entryPoints: readdirSync(suite)
			.filter((name) => name === "entry.ts" || name.endsWith(".test.ts"))
			.map((name) => join(suite, name)),
		outdir: bundles,
		outExtension: { ".js": ".cjs" },
		bundle: true,
		platform: "node",
		format: "cjs",
		target: "node20",
		external: ["vscode", "mocha"],
		sourcemap: "inline",
		logLevel: "warning",
	});
	const folder = copyDesigns();
	const download = process.env.STORYROD_VSCODE === "download";
	// The stand-in is a script: its first line finds node by the PATH.
	const path = `${dirname(process.execPath)}:${process.env.PATH}`;
	try {
		await runTests({
			...(download
				? { version: "stable" }
				: { vscodeExecutablePath: join(here, "host/adapter.ts") }),
			extensionDevelopmentPath: extensionRoot,
			extensionTestsPath: join(bundles, "entry.cjs"),
			extensionTestsEnv: {
				STORYROD_REPORT: report,
				...(download ? {} : { PATH: path }),
			},
			launchArgs: [folder],
		});
		return true;
	} catch (error) {
		console.error(String(error));
		return false;
	} finally {
		rmSync(folder, { recursive: true, force: true });
	}
}
