// From what a maker wrote on the command line to files: names, folders and patterns.

import { statSync } from "node:fs";
import { isAbsolute, relative, resolve, sep } from "node:path";
import { globSync, isDynamicPattern } from "tinyglobby";
import { compareStrings } from "../../shared/text/compare.ts";
import { FileFault } from "../hosts/node-files.ts";

/**
 * Absolute paths, sorted, each once. A folder stands for all designs in it, a pattern for what it matches; installed
 * packages are left out of both. Throws `FileFault` for what matches nothing.
 */
export function findDesigns(
	operands: readonly string[],
	cwd: string,
): readonly string[] {
	const found = new Set<string>();
	for (const operand of operands) {
		for (const path of pathsOf(operand, cwd)) found.add(path);
	}
	return [...found].sort(compareStrings);
}

function pathsOf(operand: string, cwd: string): readonly string[] {
	const path = resolve(cwd, operand);
	const kind = statSync(path, { throwIfNoEntry: false });
	if (kind?.isDirectory()) {
		const paths = glob("**/*.rod", path);
		if (paths.length > 0) return paths;
		throw new FileFault(`\`${operand}\` is a folder without \`.rod\` files`);
	}
	// A file whose name looks like a pattern is still a file.
	if (kind || !isDynamicPattern(operand)) return [path];
	const paths = glob(operand, cwd);
	if (paths.length > 0) return paths;
	throw new FileFault(`No file matches \`${operand}\``);
}

function glob(pattern: string, cwd: string): readonly string[] {
	return globSync(pattern, {
		cwd,
		absolute: true,
		onlyFiles: true,
		expandDirectories: false,
		ignore: ["**/node_modules/**"],
	}).map((path) => resolve(path));
}

/** How a file is called in what is written: from the working folder on if it is in it, with `/`. */
export function shownPath(path: string, cwd: string): string {
	const near = relative(cwd, path);
	const shown = near.startsWith("..") || isAbsolute(near) ? path : near;
	return shown.split(sep).join("/");
}
