// `storyrod format`: lays designs out in the one style.

import { parse } from "../../../grammar/index.ts";
import { format as layOut } from "../../../shared/format/format.ts";
import {
	decode,
	FileFault,
	readTextFile,
	replaceFile,
} from "../../hosts/node-files.ts";
import { type Command, type ExitCode, stdinOption } from "../command.ts";
import { findDesigns, shownPath } from "../files.ts";
import type { Terminal } from "../terminal.ts";

export const format: Command = {
	name: "format",
	summary: "Lay designs out in the one style, in place",
	operands: "FILE...",
	least: 1,
	most: Number.POSITIVE_INFINITY,
	options: [
		{
			name: "check",
			help: "Change nothing: list what would change, exit 1 if there is any",
		},
		{
			...stdinOption,
			help: "Read the standard input, write the standard output",
		},
	],
	details: `
A file with errors of syntax is left as it is and named, exit 1; the others are
written. An editor lays out what is sound around an error, where you see it and
can undo it; here nobody watches, and a brace that is missing could change what
belongs to what. Each file is replaced as a whole: none is ever left half-written.`.trimStart(),
	async run(given, terminal) {
		if (given.has("stdin")) {
			return formatStandard(given.has("check"), terminal);
		}
		let code: ExitCode = 0;
		const worst = (one: ExitCode): void => {
			if (one > code) code = one;
		};
		for (const path of findDesigns(given.operands, terminal.cwd)) {
			const shown = shownPath(path, terminal.cwd);
			try {
				worst(formatFile(path, shown, given.has("check"), terminal));
			} catch (error) {
				if (!(error instanceof FileFault)) throw error;
				terminal.err.write(`\`${shown}\` is left as it is: ${error.message}\n`);
				worst(2);
			}
		}
		return code;
	},
};

function formatFile(
	path: string,
	shown: string,
	checkOnly: boolean,
	terminal: Terminal,
): ExitCode {
	const file = readTextFile(path);
	const formatted = formattedText(file.text);
	if (formatted === undefined) {
		terminal.err.write(
			`\`${shown}\` is left as it is: it has errors of syntax, \`storyrod check\` tells them\n`,
		);
		return 1;
	}
	if (formatted === file.text) return 0;
	if (!checkOnly) replaceFile(path, { ...file, text: formatted });
	terminal.out.write(`${shown}\n`);
	return checkOnly ? 1 : 0;
}

async function formatStandard(
	checkOnly: boolean,
	terminal: Terminal,
): Promise<ExitCode> {
	const { text } = decode(await terminal.readStdin());
	const formatted = formattedText(text);
	if (formatted === undefined) {
		if (!checkOnly) terminal.out.write(text);
		terminal.err.write(
			"The standard input is left as it is: it has errors of syntax\n",
		);
		return 1;
	}
	if (!checkOnly) terminal.out.write(formatted);
	return checkOnly && formatted !== text ? 1 : 0;
}

/** Undefined where the text cannot be read in full. */
function formattedText(text: string): string | undefined {
	const broken = parse(text).faults.some(
		({ severity }) => severity === "error",
	);
	if (broken) return undefined;
	const formatted = layOut(text);
	return formatted.refused ? undefined : formatted.text;
}
