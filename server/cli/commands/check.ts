// `storyrod check`: what is wrong in a design, and where.

import { findingsJson } from "../../../shared/outputs/findings-json.ts";
import {
	findingsSummary,
	findingsText,
} from "../../../shared/outputs/findings-text.ts";
import {
	type Command,
	formatOption,
	setOption,
	stdinOption,
} from "../command.ts";
import { loadDesigns } from "../designs.ts";
import {
	checkMendingOptions,
	mendFiles,
	mendingDetails,
	mendingOptions,
} from "../mending.ts";
import { exitCode } from "../report.ts";
import { settingsDetails, settingsOption } from "../settings.ts";
import { wantsColour } from "../terminal.ts";

export const check: Command = {
	name: "check",
	summary: "Tell what is wrong in designs: joints, sizes, fasteners, names",
	operands: "FILE...",
	least: 1,
	most: Number.POSITIVE_INFINITY,
	options: [
		formatOption(["text", "json"]),
		...mendingOptions,
		settingsOption,
		setOption,
		stdinOption,
	],
	details: `
FILE is a design, a folder of designs or a pattern. Each finding is told as
file:line:column, grade, id and message, with the place marked, what it has to
do with elsewhere (see) and what would mend it (mend).

${mendingDetails}

${settingsDetails}`.trimStart(),
	async run(given, terminal) {
		checkMendingOptions(given);
		if (given.has("fix")) {
			const { code, errorsLeft } = mendFiles(given, terminal);
			if (code === 2) return code;
			if (given.has("dry-run")) return errorsLeft ? 1 : code;
		}
		const loaded = await loadDesigns(given.operands, given, terminal);
		const { findings, texts, designs } = loaded;
		const files = designs.map(({ file }) => file);
		if (given.value("format") === "json") {
			terminal.out.write(
				`${JSON.stringify(findingsJson(findings, files), undefined, "\t")}\n`,
			);
		} else {
			const columns = terminal.out.columns;
			const text = findingsText(findings, texts, {
				colour: wantsColour(terminal, terminal.out),
				...(columns === undefined ? {} : { columns }),
			});
			const count = files.length === 1 ? "1 file" : `${files.length} files`;
			terminal.out.write(
				`${text}${text === "" ? "" : "\n"}${count}: ${findingsSummary(findings)}\n`,
			);
		}
		return exitCode(loaded, terminal);
	},
};
