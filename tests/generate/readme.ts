// Fills the outputs in the README from the design that stands in it: what is shown there is what the commands print.
// With --check it writes nothing and only tells if the README is stale.

import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { run } from "../../server/cli/run.ts";

export const readmePath = fileURLToPath(
	new URL("../../README.md", import.meta.url),
);

/** `<!-- storyrod COMMAND [with "A" as "B"] -->` before a fence: what the command prints, on the design with A written as B. */
const marked =
	/(<!-- storyrod ([^"\n]*?)(?: with "([^"\n]+)" as "([^"\n]+)")? -->\n```text\n)[\s\S]*?\n?(```\n)/g;

export async function wantedReadme(text: string): Promise<string> {
	const design = /```storyrod\n([\s\S]*?)```\n/.exec(text)?.[1];
	if (design === undefined) throw new Error("The README shows no design");
	let filled = "";
	let from = 0;
	for (const match of text.matchAll(marked)) {
		const [whole, start, command = "", before, after, end] = match;
		if (before !== undefined && !design.includes(before))
			throw new Error(`The README's design does not say ${before}`);
		const changed =
			before === undefined ? design : design.replace(before, after ?? "");
		filled += text.slice(from, match.index);
		filled += `${start}${await printed(changed, command)}${end}`;
		from = match.index + whole.length;
	}
	return filled + text.slice(from);
}

/** What a command prints on the design, saved as `record-case.rod`. */
async function printed(design: string, command: string): Promise<string> {
	const folder = mkdtempSync(join(tmpdir(), "storyrod-readme-"));
	try {
		writeFileSync(join(folder, "record-case.rod"), design);
		let text = "";
		const output = {
			write: (more: string): void => {
				text += more;
			},
			isTerminal: false,
			columns: undefined,
		};
		await run(command.split(" "), {
			cwd: folder,
			env: {},
			out: output,
			err: output,
			readStdin: async () => new Uint8Array(),
		});
		return text.replace(/\n+$/, "\n");
	} finally {
		rmSync(folder, { recursive: true, force: true });
	}
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
	const text = readFileSync(readmePath, "utf8");
	const wanted = await wantedReadme(text);
	if (!process.argv.includes("--check")) writeFileSync(readmePath, wanted);
	else if (wanted !== text) {
		process.stderr.write(
			"README.md is stale: run `node tests/generate/readme.ts`\n",
		);
		process.exitCode = 1;
	}
}
