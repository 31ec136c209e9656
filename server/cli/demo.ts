// What `npm run demo` shows: the main job on a shipped design, first as it is, then with a slip in it.

import {
	cpSync,
	mkdtempSync,
	readFileSync,
	rmSync,
	writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { run } from "./run.ts";
import { processTerminal } from "./terminal.ts";

const designs = fileURLToPath(
	new URL("../../shared/designs/", import.meta.url),
);
const terminal = processTerminal();
const say = (text: string): void => terminal.out.write(text);

const shown = "shared/designs/record-bench.rod";
const design = join(designs, "record-bench.rod");

async function show(
	words: string,
	args: readonly string[],
	cwd = terminal.cwd,
): Promise<void> {
	say(`\n$ storyrod ${words}\n\n`);
	await run(args, { ...terminal, cwd });
}

await show(`cutlist ${shown} --piece record-bench`, [
	"cutlist",
	design,
	"--piece",
	"record-bench",
]);
await show(`buy ${shown} --piece record-bench`, [
	"buy",
	design,
	"--piece",
	"record-bench",
]);
await show(`check ${shown}`, ["check", design]);

// The slip is made in a copy: the shipped design stays as it is.
const folder = mkdtempSync(join(tmpdir(), "storyrod-demo-"));
try {
	cpSync(designs, folder, { recursive: true });
	const copy = join(folder, "record-bench.rod");
	const text = readFileSync(copy, "utf8");
	const slipped = text.replace(
		/(divider\s+middle of ply\.three-quarter\s+centred\s+dado 3\/16)/,
		"$1 wide 3/4",
	);
	if (slipped === text)
		throw new Error("The design has no such divider any more");
	writeFileSync(copy, slipped);
	say(
		"\nNow a slip: the dado for the divider is cut as wide as the label of the sheet says, `wide 3/4`.\n",
	);
	await show("check record-bench.rod", ["check", "record-bench.rod"], folder);
} finally {
	rmSync(folder, { recursive: true, force: true });
}

say(`
The same while you type, with the cut list in a hover: make the extension with
  npm run package
install the .vsix that it names in VS Code (Extensions view, "Install from VSIX..."), and open the folder
  shared/designs
To start a piece of your own: npm run storyrod -- new bookcase
`);
