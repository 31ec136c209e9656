/** Shows the editor's window in a headless Chromium. */
import { type Browser, chromium, type Page } from "playwright-core";
import { findChromium } from "../paths.ts";
import type { EditorServer } from "./server.ts";

export interface WorkbenchOptions {
	/** The folder to open, absolute. */
	readonly folder: string;
	/** The extension under development, absolute; without it, the installed ones run. */
	readonly extension?: string;
	/** The entry of tests that run inside the extension host, absolute. */
	readonly tests?: string;
	/** Console calls in the extension host, and the window's own log, while tests run. */
	readonly onLog?: (type: string, args: readonly unknown[]) => void;
	/** 0 when the tests' entry resolved, else 1. */
	readonly onExit?: (code: number) => void;
}

export interface Workbench {
	readonly browser: Browser;
	readonly page: Page;
}

/** Rejects if the browser cannot start or the page cannot be reached; closes the browser then. */
export async function openWorkbench(
	server: EditorServer,
	options: WorkbenchOptions,
): Promise<Workbench> {
	const browser = await launchBrowser();
	try {
		const page = await newPage(browser);
		// The window calls these two, if the page has them, in a run of tests.
		if (options.onLog) {
			await page.exposeFunction("codeAutomationLog", options.onLog);
		}
		if (options.onExit) {
			await page.exposeFunction("codeAutomationExit", options.onExit);
		}
		await page.goto(address(server.port, options));
		return { browser, page };
	} catch (error) {
		await browser.close();
		throw error;
	}
}

/** `extra`: further switches. */
export function launchBrowser(extra: readonly string[] = []): Promise<Browser> {
	const executablePath = findChromium();
	if (!executablePath) throw new Error("No Chromium: run install.ts");
	return chromium.launch({
		executablePath,
		args: [
			"--no-sandbox",
			"--no-first-run",
			"--disable-background-networking",
			"--disable-component-update",
			"--disable-sync",
			"--disable-quic",
			"--enable-unsafe-swiftshader", // WebGL without a graphics card
			...extra,
		],
	});
}

/** A window that looks for extensions by itself, and finds none: nothing leaves this machine. */
export async function newPage(browser: Browser): Promise<Page> {
	const page = await browser.newPage({
		viewport: { width: 1400, height: 900 },
	});
	await page.route(
		({ hostname }) => hostname !== "127.0.0.1" && !isLocal(hostname),
		(route) =>
			route.request().method() === "POST"
				? route.fulfill({
						json: { results: [{ extensions: [], resultMetadata: [] }] },
					})
				: route.abort(),
	);
	return page;
}

function isLocal(hostname: string): boolean {
	return hostname === "localhost" || hostname.endsWith(".localhost");
}

function address(port: number, options: WorkbenchOptions): string {
	const remote = (path: string): string =>
		`vscode-remote://127.0.0.1:${port}${path}`;
	const payload: [string, string][] = [];
	if (options.extension)
		payload.push(["extensionDevelopmentPath", remote(options.extension)]);
	if (options.tests)
		payload.push(["extensionTestsPath", remote(options.tests)]);
	const query = new URLSearchParams({
		folder: options.folder,
		payload: JSON.stringify(payload),
	});
	return `http://127.0.0.1:${port}/?${query}`;
}
