// Mends designs on disk by what their findings offer: `storyrod check --fix`.

import { parse } from "../../grammar/index.ts";
import { allFindings } from "../../shared/checks/index.ts";
import { type Mending, mendText } from "../../shared/checks/mend.ts";
import { format } from "../../shared/format/format.ts";
import { lineEdits } from "../../shared/format/line-edits.ts";
import { compile } from "../../shared/model/compile.ts";
import { printable } from "../../shared/outputs/findings-text.ts";
import { indexLines } from "../../shared/text/line-index.ts";
import {
	FileFault,
	nodeSources,
	readTextFile,
	replaceFile,
	uriOf,
} from "../hosts/node-files.ts";
import type { ExitCode, Given, Option } from "./command.ts";
import { UsageFault } from "./command.ts";
import { findDesigns, shownPath } from "./files.ts";
import { designSettings } from "./settings.ts";
import type { Terminal } from "./terminal.ts";

export const mendingOptions: readonly Option[] = [
	{
		name: "fix",
		help: "Mend what can be mended by itself, in the files, then tell the rest",
	},
	{
		name: "dry-run",
		help: "With --fix: show the lines that would change, write nothing",
	},
];

/** For the help of the command. */
export const mendingDetails = `
--fix makes the first mend that each finding offers and checks again, until
nothing more is mended. A mend is kept only if the finding is gone by it and no
other error comes; comments stay. Where a line can be read in several ways the
choice is left to you, and a file with errors of syntax is left as it is.`.trimStart();

/** Throws `UsageFault` for options that do not go together. */
export function checkMendingOptions(given: Given): void {
	if (given.has("dry-run") && !given.has("fix"))
		throw new UsageFault("`--dry-run` goes with `--fix`");
	if (!given.has("fix")) return;
	if (given.has("stdin"))
		throw new UsageFault("`--fix` mends files: name one instead of `--stdin`");
	if (given.values("set").length > 0)
		throw new UsageFault(
			"`--fix` mends what the file itself says: leave `--set` away",
		);
}

/** Mends the files that are named, and tells what it did. The worst exit code of what could not be read or written. */
export function mendFiles(
	given: Given,
	terminal: Terminal,
): { readonly code: ExitCode; readonly errorsLeft: boolean } {
	const settings = designSettings(given, terminal);
	const dry = given.has("dry-run");
	const out = given.value("format") === "json" ? terminal.err : terminal.out;
	const texts = new Map<string, string>();
	let code: ExitCode = 0;
	let mends = 0;
	let changed = 0;
	let toChoose = 0;
	let errorsLeft = false;
	const refuse = (shown: string, why: string, worst: ExitCode): void => {
		terminal.err.write(`\`${printable(shown)}\` is left as it is: ${why}\n`);
		if (worst > code) code = worst;
	};
	for (const path of findDesigns(given.operands, terminal.cwd)) {
		const shown = shownPath(path, terminal.cwd);
		const uri = uriOf(path);
		try {
			const file = readTextFile(path);
			if (
				parse(file.text).faults.some(({ severity }) => severity === "error")
			) {
				refuse(shown, "it has errors of syntax", 1);
				continue;
			}
			const mending = mendText(uri, file.text, (text) => {
				const sources = nodeSources(new Map([...texts, [uri, text]]));
				return allFindings(compile(sources, uri), settings.optionsFor(uri));
			});
			const text = laidOutLike(file.text, mending);
			texts.set(uri, text);
			toChoose += mending.toChoose;
			errorsLeft ||= mending.left.some(({ severity }) => severity === "error");
			if (text === file.text) continue;
			if (!dry) replaceFile(path, { ...file, text });
			mends += mending.mends.length;
			changed++;
			for (const { line, id, title } of mending.mends)
				out.write(`${printable(`${shown}:${line} ${id}: ${title}`)}\n`);
			if (dry) out.write(changedLines(file.text, text));
		} catch (error) {
			if (!(error instanceof FileFault)) throw error;
			refuse(shown, error.message, 2);
		}
	}
	const files = changed === 1 ? "1 file" : `${changed} files`;
	const what = `${mends === 1 ? "1 mend" : `${mends} mends`} in ${files}`;
	out.write(
		mends === 0
			? "Nothing that mends itself\n"
			: dry
				? `${what} would be made; nothing is written\n`
				: `${what}\n`,
	);
	if (toChoose > 0)
		out.write(
			`${toChoose === 1 ? "1 line" : `${toChoose} lines`} can be read in several ways: choose yourself\n`,
		);
	return { code, errorsLeft };
}

/** A file that was in the one style stays in it. */
function laidOutLike(before: string, { text, mends }: Mending): string {
	if (mends.length === 0 || format(before).text !== before) return text;
	const laidOut = format(text);
	return laidOut.refused ? text : laidOut.text;
}

/** Old and new lines, each place with its line number. */
function changedLines(before: string, after: string): string {
	const lines = indexLines(before);
	const shown: string[] = [];
	for (const { start, end, text } of lineEdits(before, after)) {
		const first = lines.positionAt(start).line;
		const from = before.lastIndexOf("\n", start - 1) + 1;
		const next = before.indexOf("\n", end);
		const to = next < 0 ? before.length : next;
		const old = before.slice(from, to);
		const now = before.slice(from, start) + text + before.slice(end, to);
		shown.push(`@ ${first + 1}`);
		for (const line of old.split("\n")) shown.push(`- ${line}`);
		for (const line of now.split("\n")) shown.push(`+ ${line}`);
	}
	return shown
		.map((line) => `  ${printable(line.replace(/\r$/, ""))}\n`)
		.join("");
}
