// What commands that are about something else tell of the findings in a design.

import {
	findingsSummary,
	findingsText,
	printableLines,
} from "../../shared/outputs/findings-text.ts";
import type { ExitCode } from "./command.ts";
import type { Loaded, LoadedDesign } from "./designs.ts";
import { type Terminal, wantsColour } from "./terminal.ts";

/** Errors in full and the rest counted, on the error output. 1 if there is an error. */
export function reportFaults(loaded: Loaded, terminal: Terminal): ExitCode {
	const { findings, texts } = loaded;
	const errors = findings.filter(({ finding }) => finding.severity === "error");
	const others = findings.filter(({ finding }) => finding.severity !== "error");
	const blocks = [
		...loaded.designs.filter(({ pieces }) => pieces.length === 0).map(noPiece),
		...(errors.length > 0
			? [
					findingsText(errors, texts, {
						colour: wantsColour(terminal, terminal.err),
						...(terminal.err.columns ? { columns: terminal.err.columns } : {}),
					}),
				]
			: []),
		...(others.length > 0
			? [`Also ${findingsSummary(others)}: \`storyrod check\` tells them\n`]
			: []),
	];
	terminal.err.write(blocks.join("\n"));
	return exitCode(loaded, terminal);
}

/** 1 if there is an error, 2 where the settings could not be read in full: that is told here. */
export function exitCode(loaded: Loaded, terminal: Terminal): ExitCode {
	const { findings, settingsFaults } = loaded;
	if (settingsFaults.length > 0) {
		terminal.err.write(printableLines(`${settingsFaults.join("\n")}\n`));
		return 2;
	}
	return findings.some(({ finding }) => finding.severity === "error") ? 1 : 0;
}

/** A stock file or a file of components has no list of its own. */
function noPiece({ file, design }: LoadedDesign): string {
	const components = design.pieces.map(({ name }) => `--piece ${name}`);
	return `\`${file}\` has no piece${components.length > 0 ? `, only components: name one, as in \`${components[0]}\`` : ""}\n`;
}

/** The width to lay a page out for: that of the terminal, within what can be read. */
export function pageColumns(terminal: Terminal): number {
	return Math.min(120, Math.max(80, terminal.out.columns ?? 100));
}
