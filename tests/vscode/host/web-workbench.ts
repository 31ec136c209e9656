/** Shows VS Code for the web in a headless Chromium: the extension runs in a worker, and files lie in the editor only. */
import {
	mkdirSync,
	mkdtempSync,
	readdirSync,
	rmSync,
	symlinkSync,
	writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { open } from "@vscode/test-web";
import { codeWeb } from "../paths.ts";
import { freePort } from "./server.ts";
import { launchBrowser, newPage, type Workbench } from "./workbench.ts";

export interface WebWorkbenchOptions {
	/** The folder to open, absolute: the window sees a copy in its memory. */
	readonly folder: string;
	/** The extension under development, absolute. */
	readonly extension: string;
}

export interface WebWorkbench extends Workbench {
	/** Ends the browser and the server, and removes what they left. */
	close(): Promise<void>;
}

/** Rejects if the server or the browser cannot start. */
export async function openWebWorkbench({
	folder,
	extension,
}: WebWorkbenchOptions): Promise<WebWorkbench> {
	const build = layBuild();
	const port = await freePort();
	const server = await open({
		...build,
		browserType: "none", // it would look for a Chromium of its own
		host: "localhost",
		port,
		extensionDevelopmentPath: extension,
		folderPath: folder,
	});
	// Webviews live in a third party's frame, whose service worker Chromium refuses else.
	const browser = await launchBrowser([
		"--disable-features=TrackingProtection3pcd",
	]);
	const close = async (): Promise<void> => {
		await browser.close();
		server.dispose();
		rmSync(build.testRunnerDataDir, { recursive: true, force: true });
	};
	try {
		const page = await newPage(browser);
		await page.goto(`http://localhost:${port}`);
		return { browser, page, close };
	} catch (error) {
		await close();
		throw error;
	}
}

/** Lays the packaged editor out as what would have been downloaded for a made up commit: then nothing is. */
function layBuild() {
	const testRunnerDataDir = mkdtempSync(join(tmpdir(), "storyrod-web-"));
	const commit = "0".repeat(40);
	const build = join(testRunnerDataDir, `vscode-web-stable-${commit}`);
	mkdirSync(build);
	for (const name of readdirSync(codeWeb)) {
		symlinkSync(join(codeWeb, name), join(build, name));
	}
	writeFileSync(join(build, "version"), commit);
	return { testRunnerDataDir, commit, quality: "stable" as const };
}
