// The machine as Node shows it: files beside a design, and those of packages that npm installed.

import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { resolveRelative } from "../../shared/sources/sources.ts";
import { compareStrings } from "../../shared/text/compare.ts";
import type { Host } from "../core/host.ts";
import { settingsFileAbove } from "./settings-file.ts";

/** Larger files are no designs. */
const largestFile = 32 * 1024 * 1024;

/** Sources and bundle stand equally deep below the root of the package. */
const checksPage = new URL("../../shared/checks/CHECKS.md", import.meta.url);

export const nodeHost: Host = {
	read,
	stamp,
	resolve,
	list,
	settingsFile,
	canonical,
	later: (task) => void setImmediate(task),
	checkPage: (anchor) => `${checksPage.href}#${anchor}`,
};

function read(uri: string): string | undefined {
	const path = pathOf(uri);
	if (path === undefined) return undefined;
	try {
		const stat = statSync(path);
		// A device or a pipe could have no end.
		if (!stat.isFile() || stat.size > largestFile) return undefined;
		// Editors take a byte order mark away, so that offsets do not count it.
		return readFileSync(path, "utf8").replace(/^\ufeff/, "");
	} catch {
		return undefined;
	}
}

function stamp(uri: string): string | undefined {
	const path = pathOf(uri);
	if (path === undefined) return undefined;
	try {
		const { mtimeNs, size, ino } = statSync(path, { bigint: true });
		return `${mtimeNs} ${size} ${ino}`;
	} catch {
		return undefined;
	}
}

/**
 * `./stock.rod` and `../stock.rod` are beside the file; `woods/oak.rod` is in the package `woods`, in the nearest
 * `node_modules`. Absolute paths and addresses are not followed: a design means the same on every machine.
 */
function resolve(from: string, path: string): string | undefined {
	if (!isDesignPath(path)) return undefined;
	const file = pathOf(from);
	if (file === undefined) {
		// Files that only the editor has: those that it has open are there.
		return /^[\w+.-]+:\//.test(from) && !from.startsWith("file:")
			? resolveRelative(from, path)
			: undefined;
	}
	if (/^\.\.?\//.test(path)) {
		return pathToFileURL(join(dirname(file), path)).href;
	}
	if (!/^(?:@[\w.-]+\/)?[\w.-]+\/[^/]/.test(path) || path.includes("..")) {
		return undefined;
	}
	for (let folder = dirname(file); ; folder = dirname(folder)) {
		const candidate = join(folder, "node_modules", path);
		if (existsSync(candidate)) return pathToFileURL(candidate).href;
		if (folder === dirname(folder)) return undefined;
	}
}

function list(
	folder: string,
):
	| readonly { readonly name: string; readonly isFolder: boolean }[]
	| undefined {
	const path = pathOf(folder);
	if (path === undefined) return undefined;
	try {
		return readdirSync(path, { withFileTypes: true })
			.filter(({ name }) => !name.startsWith(".") && name !== "node_modules")
			.sort((a, b) => compareStrings(a.name, b.name))
			.flatMap((entry) => {
				const { name } = entry;
				const isFolder = entry.isSymbolicLink()
					? isFolderAt(join(path, name))
					: entry.isDirectory();
				return isFolder || name.endsWith(".rod") ? [{ name, isFolder }] : [];
			});
	} catch {
		return undefined;
	}
}

/** Of a link: what it leads to; what is gone meanwhile is no folder. */
function isFolderAt(path: string): boolean {
	return statSync(path, { throwIfNoEntry: false })?.isDirectory() ?? false;
}

function settingsFile(uri: string): string | undefined {
	const path = pathOf(uri);
	const found =
		path === undefined ? undefined : settingsFileAbove(dirname(path));
	return found === undefined ? undefined : pathToFileURL(found).href;
}

/** Only `.rod` files are used: a design cannot make the tools show what stands in another file. */
function isDesignPath(path: string): boolean {
	return path.endsWith(".rod") && !path.includes("\0");
}

function canonical(uri: string): string {
	const path = pathOf(uri);
	return path === undefined ? uri : pathToFileURL(path).href;
}

function pathOf(uri: string): string | undefined {
	if (!uri.startsWith("file:")) return undefined;
	try {
		return fileURLToPath(uri);
	} catch {
		return undefined;
	}
}
