// `storyrod format`: lays designs out in the one style.

import { parse } from "../../../grammar/index.ts";
import { format as layOut } from "../../../shared/format/format.ts";
import { lineEdits } from "../../../shared/format/line-edits.ts";
import { unifiedDiff } from "../../../shared/text/unified-diff.ts";
import {
	decode,
	FileFault,
	readTextFile,
	replaceFile,
} from "../../hosts/node-files.ts";
import {
	type Command,
	type ExitCode,
	type Given,
	stdinOption,
} from "../command.ts";
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
			name: "diff",
			help: "Change nothing: show the lines that would change, exit 1 if there are any",
		},
		{
			...stdinOption,
			help: "Read the standard input, write the standard output",
		},
	],
	details: `
A file with errors of syntax is left as it is and named, exit 1; the others are
written. What is shown with --diff can be applied with \`patch -p0\` or \`git apply -p0\`.
An editor lays out what is sound around an error, where you see it and
can undo it; here nobody watches, and a brace that is missing could change what
belongs to what. Each file is replaced as a whole: none is ever left half-written.`.trimStart(),
	async run(given, terminal) {
		if (given.has("stdin")) {
			return formatStandard(modeOf(given), terminal);
		}
		let code: ExitCode = 0;
		const worst = (one: ExitCode): void => {
			if (one > code) code = one;
		};
		for (const path of findDesigns(given.operands, terminal.cwd)) {
			const shown = shownPath(path, terminal.cwd);
			try {
				worst(formatFile(path, shown, modeOf(given), terminal));
			} catch (error) {
				if (!(error instanceof FileFault)) throw error;
				terminal.err.write(`\`${shown}\` is left as it is: ${error.message}\n`);
				worst(2);
			}
		}
		return code;
	},
};

type Mode = "write" | "check" | "diff";

function modeOf(given: Given): Mode {
	if (given.has("diff")) return "diff";
	return given.has("check") ? "check" : "write";
}

function formatFile(
	path: string,
	shown: string,
	mode: Mode,
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
	if (mode === "write") replaceFile(path, { ...file, text: formatted });
	terminal.out.write(
		mode === "diff" ? diffOf(file.text, formatted, shown) : `${shown}\n`,
	);
	return mode === "write" ? 0 : 1;
}

function diffOf(before: string, after: string, name: string): string {
	return unifiedDiff(before, after, lineEdits(before, after), {
		before: name,
		after: name,
	});
}

async function formatStandard(
	mode: Mode,
	terminal: Terminal,
): Promise<ExitCode> {
	const { text } = decode(await terminal.readStdin());
	const formatted = formattedText(text);
	if (formatted === undefined) {
		if (mode === "write") terminal.out.write(text);
		terminal.err.write(
			"The standard input is left as it is: it has errors of syntax\n",
		);
		return 1;
	}
	if (mode === "write") terminal.out.write(formatted);
	else if (mode === "diff")
		terminal.out.write(diffOf(text, formatted, "standard-input.rod"));
	return mode !== "write" && formatted !== text ? 1 : 0;
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
