// Which settings file holds for a design: the same rule for the editor and the command line.

import { existsSync, statSync } from "node:fs";
import { dirname, join } from "node:path";
import { settingsFileName } from "../../shared/checks/index.ts";

/**
 * The path of the nearest `.storyrod.json` from a folder upwards; undefined if there is none. A folder with `.git` is the
 * last one that is looked into: what lies above belongs to something else.
 */
export function settingsFileAbove(folder: string): string | undefined {
	for (let at = folder; ; at = dirname(at)) {
		const candidate = join(at, settingsFileName);
		if (isFile(candidate)) return candidate;
		if (at === dirname(at) || existsSync(join(at, ".git"))) return undefined;
	}
}

function isFile(path: string): boolean {
	try {
		return statSync(path).isFile();
	} catch {
		return false;
	}
}
