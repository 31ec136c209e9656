// What the settings files of designs say for the command line: one named file for all, or the nearest one of each design.

import { dirname, resolve } from "node:path";
import {
	type CheckOptions,
	type ReadSettings,
	readSettingsText,
	settingsFileName,
} from "../../shared/checks/index.ts";
import { FileFault, pathOf, readTextFile } from "../hosts/node-files.ts";
import { settingsFileAbove } from "../hosts/settings-file.ts";
import type { Given, Option } from "./command.ts";
import { shownPath } from "./files.ts";
import type { Terminal } from "./terminal.ts";

export const settingsOption: Option = {
	name: "settings",
	value: "FILE",
	help: `Settings of the checks; ${settingsFileName} if not given`,
};

/** For the help of the commands that take it. */
export const settingsDetails = `
Settings are JSON: { "severity": { "fit-gap": "warning", "trim-back": "off" },
"figures": { "fit-mitre.opening": 0.3 } }. Without --settings the nearest
${settingsFileName} holds, from the folder of the design upwards, but not above a
folder with .git. What cannot be read in it is told and the rest holds, exit 2.
The page CHECKS.md of the package has all ids and figures with their defaults.`.trimStart();

export interface DesignSettings {
	optionsFor(uri: string): CheckOptions;
	/** What could not be read, a line each. */
	faults(): readonly string[];
}

/** Throws `FileFault` for a named file that cannot be read. */
export function designSettings(
	given: Given,
	terminal: Terminal,
): DesignSettings {
	const named = given.value("settings");
	const files = new Map<string, ReadSettings>();
	const readFile = (path: string): ReadSettings => {
		const known = files.get(path);
		if (known) return known;
		const read = readSettingsText(textOf(path, terminal.cwd));
		files.set(path, read);
		return read;
	};
	const one =
		named === undefined ? undefined : readFile(resolve(terminal.cwd, named));
	const nearest = new Map<string, string | undefined>();
	const above = (folder: string): string | undefined => {
		if (!nearest.has(folder)) nearest.set(folder, settingsFileAbove(folder));
		return nearest.get(folder);
	};
	return {
		optionsFor(uri) {
			if (one) return one.options;
			const path = pathOf(uri);
			const file = path === undefined ? undefined : above(dirname(path));
			return file === undefined ? {} : readFile(file).options;
		},
		faults: () =>
			[...files].flatMap(([path, { faults }]) =>
				faults.map((fault) => `\`${shownPath(path, terminal.cwd)}\`: ${fault}`),
			),
	};
}

function textOf(path: string, cwd: string): string {
	try {
		return readTextFile(path).text;
	} catch (error) {
		if (!(error instanceof FileFault)) throw error;
		throw new FileFault(
			`\`${shownPath(path, cwd)}\` cannot be read: ${error.message}`,
		);
	}
}
