// Runs the command line in this process, in a folder of its own.

import {
	mkdirSync,
	mkdtempSync,
	readdirSync,
	readFileSync,
	rmSync,
	writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { onTestFinished } from "vitest";
import { run } from "../../server/cli/run.ts";
import type { Output, Terminal } from "../../server/cli/terminal.ts";

export interface Ran {
	readonly code: number;
	readonly out: string;
	readonly err: string;
}

export interface Folder {
	readonly path: string;
	write(name: string, text: string): void;
	read(name: string): string;
	/** All files in it, sorted. */
	list(): readonly string[];
	run(
		args: readonly string[],
		more?: {
			readonly stdin?: string | Uint8Array;
			readonly env?: Terminal["env"];
			readonly isTerminal?: boolean;
			readonly columns?: number;
		},
	): Promise<Ran>;
}

/** A folder that goes when the test ends. */
export function folderWith(files: Readonly<Record<string, string>>): Folder {
	const path = mkdtempSync(join(tmpdir(), "storyrod-"));
	onTestFinished(() => rmSync(path, { recursive: true, force: true }));
	const folder: Folder = {
		path,
		write(name, text) {
			mkdirSync(dirname(join(path, name)), { recursive: true });
			writeFileSync(join(path, name), text);
		},
		read: (name) => readFileSync(join(path, name), "utf8"),
		list: () => readdirSync(path, { recursive: true }).map(String).sort(),
		async run(args, more = {}) {
			const written = { out: "", err: "" };
			const output = (which: "out" | "err"): Output => ({
				write(text) {
					written[which] += text;
				},
				isTerminal: more.isTerminal ?? false,
				columns: more.columns,
			});
			const code = await run(args, {
				cwd: path,
				env: more.env ?? {},
				out: output("out"),
				err: output("err"),
				readStdin: async () =>
					typeof more.stdin === "string"
						? new TextEncoder().encode(more.stdin)
						: (more.stdin ?? new Uint8Array()),
			});
			return { code, ...written };
		},
	};
	for (const [name, text] of Object.entries(files)) folder.write(name, text);
	return folder;
}

/** A small design that is clean, with what it needs in the same file. */
export const smallDesign = `sheet ply {
  species "birch plywood"
  size 96 x 48
  variant half { sold-as 1/2; thick 15/32; price 70 }
}

/// A tray without a lid.
piece tray {
  given width = 20 from 10 to 30

  box frame {
    outside width x 4 x 12
    panels bottom, left, right of ply.half
    caps left, right
  }
}
`;

/** A design with an error in its second line. */
export const brokenDesign = `piece shelf {
  given width = 20 mm + 3 deg
}
`;
