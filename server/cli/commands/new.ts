// `storyrod new`: a first design for people who never wrote a line.

import { existsSync } from "node:fs";
import { basename, dirname, join, resolve } from "node:path";
import { reservedNames } from "../../../grammar/index.ts";
import { nearest } from "../../../shared/model/meaning.ts";
import { createFile, FileFault } from "../../hosts/node-files.ts";
import { type Command, UsageFault } from "../command.ts";
import { shownPath } from "../files.ts";
import { starter } from "../package-files.ts";

/** The designs that there are to begin with, and what each is. */
export const kinds: Readonly<Record<string, string>> = {
	"hung-case": "a case with a shelf that hangs on the wall by a cleat",
	shelf: "a shelf on the wall",
	bench: "a bench of solid wood on four legs",
	bookcase: "a bookcase with fixed and loose shelves",
};

export const newCommand: Command = {
	name: "new",
	summary: "Write a first design to change as you like",
	operands: "KIND [NAME]",
	least: 1,
	most: 2,
	options: [],
	details: `
KIND is one of:
${Object.entries(kinds)
	.map(([kind, what]) => `  ${kind.padEnd(10)} ${what}`)
	.join("\n")}

Writes NAME.rod (KIND.rod without a name) and, if there is none, the stock.rod
that it takes its materials from. A file that is there already is never touched.`.trimStart(),
	async run(given, terminal) {
		const [kind = "", as = kind] = given.operands;
		if (!Object.hasOwn(kinds, kind)) throw unknownKind(kind);
		const name = basename(as).replace(/\.rod$/, "");
		checkName(name, kind);
		const folder = resolve(terminal.cwd, dirname(as));
		const design = join(folder, `${name}.rod`);
		const stock = join(folder, "stock.rod");
		const shown = (path: string): string => shownPath(path, terminal.cwd);
		write(design, renamed(starter(kind), kind, name), shown(design));
		terminal.out.write(`${shown(design)}\n`);
		if (!existsSync(stock)) {
			write(stock, starter("stock"), shown(stock));
			terminal.out.write(`${shown(stock)}\n`);
		}
		terminal.out.write(
			`\nNow: storyrod cutlist ${shown(design)}\n     storyrod check ${shown(design)}\n`,
		);
		return 0;
	},
};

function write(path: string, text: string, shown: string): void {
	try {
		createFile(path, text);
	} catch (error) {
		if (!(error instanceof FileFault)) throw error;
		throw new FileFault(`\`${shown}\` is not written: ${error.message}`);
	}
}

/** The starter's piece and its file are called like its kind; its comments say how it is used, in two columns. */
function renamed(text: string, kind: string, name: string): string {
	const called = text
		.replace(`\npiece ${kind} {`, `\npiece ${name} {`)
		.replaceAll(new RegExp(`(?<![\\w-])${kind}\\.rod\\b`, "g"), `${name}.rod`);
	const line = /^(\/\/ {3}storyrod \S+ \S+) +(?=\S)/gm;
	const widths = [...called.matchAll(line)].map(([, use = ""]) => use.length);
	return called.replaceAll(line, (_, use: string) =>
		use.padEnd(Math.max(...widths) + 2),
	);
}

function unknownKind(kind: string): UsageFault {
	const names = Object.keys(kinds);
	const near = nearest(kind, names);
	return new UsageFault(
		`There is no design \`${kind}\` to begin with: ${near === undefined ? `there is ${names.join(", ")}` : `did you mean \`${near}\`?`}`,
	);
}

function checkName(name: string, kind: string): void {
	if (!/^[A-Za-z][A-Za-z0-9]*(-[A-Za-z][A-Za-z0-9]*)*$/.test(name)) {
		throw new UsageFault(
			`A piece cannot be called \`${name}\`: letters, digits and single hyphens, as in \`hall-${kind}\``,
		);
	}
	if (reservedNames.has(name) || name === "stock") {
		throw new UsageFault(
			`A piece cannot be called \`${name}\`: it means something else already; try \`my-${name}\``,
		);
	}
}
