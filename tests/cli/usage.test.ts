import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { commands } from "../../server/cli/commands/index.ts";
import { folderWith, smallDesign } from "../harness/cli.ts";

const root = new URL("../../", import.meta.url);

describe("help", () => {
	test("names every command", async () => {
		const { code, out } = await folderWith({}).run(["--help"]);
		expect(code).toBe(0);
		for (const { name, summary } of commands) {
			expect(out).toContain(`  ${name} `);
			expect(out).toContain(summary);
		}
		expect(out).toMatchInlineSnapshot(`
			"Storyrod: furniture as text, its parts, cut list and joint warnings

			Usage: storyrod COMMAND ...

			Commands:
			  new KIND [NAME]         Write a first design to change as you like
			  check FILE...           Tell what is wrong in designs: joints, sizes, fasteners, names
			  cutlist FILE...         List the parts to cut: now, to fit, and last
			  buy FILE...             List what to buy, what it costs and what there is to carry
			  layout FILE...          Lay parts out on sheets and boards, and order the cuts
			  explain FILE [NAME...]  Tell why a size is what it is
			  format FILE...          Lay designs out in the one style, in place
			  lsp                     Run the language server, for an editor

			Options:
			  --help     Show this help
			  --version  Show the version

			\`storyrod COMMAND --help\` tells more.

			Exit codes: 0 clean, 1 there are errors in a design, 2 wrong use or a file that
			could not be read or written.
			"
		`);
	});

	test.each(commands.map(({ name }) => name))(
		"of %s names its options and fits 90 columns",
		async (name) => {
			const { code, out } = await folderWith({}).run([name, "--help"]);
			expect(code).toBe(0);
			const command = commands.find((one) => one.name === name);
			for (const option of command?.options ?? []) {
				expect(out).toContain(`--${option.name}`);
			}
			for (const line of out.split("\n")) {
				expect(line.length, line).toBeLessThanOrEqual(90);
			}
		},
	);

	test("of one command, in full", async () => {
		const { out } = await folderWith({}).run(["help", "cutlist"]);
		expect(out).toMatchInlineSnapshot(`
			"List the parts to cut: now, to fit, and last

			Usage: storyrod cutlist [options] FILE...

			Equal parts stand in one row. Sizes are thickness x width x length, the length
			along the grain, rounded to the precision of the design; where a part must enter
			an opening and the nearest step would be too long, to the step below. CSV and
			JSON have the exact sizes, too. Errors in the design go to the error output; what
			can be read is listed all the same.

			Options:
			  --format text|md|csv|json  How to write it; text if not given
			  --piece NAME               Only this piece of the file
			  --set NAME=VALUE           Set a given: --set width=36, --set width='900 mm'
			  --settings FILE            Settings of the checks; .storyrod.json if not given
			  --stdin                    Read the design from the standard input; no FILE is needed
			  --help                     Show this help
			"
		`);
	});

	test("without a command goes to the error output", async () => {
		const { code, out, err } = await folderWith({}).run([]);
		expect([code, out]).toEqual([2, ""]);
		expect(err).toContain("Usage: storyrod COMMAND");
	});

	test("the version is that of the package", async () => {
		const { version } = JSON.parse(
			readFileSync(new URL("package.json", root), "utf8"),
		) as { version: string };
		const { code, out } = await folderWith({}).run(["--version"]);
		expect([code, out]).toEqual([0, `storyrod ${version}\n`]);
	});
});

describe("wrong use is told with what would be right, exit 2", () => {
	test.each([
		[["chek", "a.rod"], "There is no command `chek`: did you mean `check`?"],
		[["frobnicate"], "There is no command `frobnicate`: there is new, check"],
		[["--format", "csv", "cutlist"], "The command comes first"],
		[["check"], "`storyrod check` wants FILE..."],
		[["lsp", "a.rod"], "`storyrod lsp` takes nothing behind it, not 1 words"],
		[
			["cutlist", "--fromat", "csv", "a.rod"],
			"`storyrod cutlist` has no option `--fromat`: did you mean `--format`?",
		],
		[["cutlist", "-f", "a.rod"], "`storyrod cutlist` has no option `-f`"],
		[
			["cutlist", "--format", "xml", "a.rod"],
			"`--format` cannot be `xml`: it is text, md, csv, json",
		],
		[
			["check", "--format", "csv", "a.rod"],
			"`--format` cannot be `csv`: it is text, json",
		],
		[["cutlist", "a.rod", "--format"], "`--format` wants a value"],
		[["cutlist", "--set", "--piece", "a.rod"], "`--set` wants a value"],
		[["cutlist", "--set", "width", "a.rod"], "`--set width` sets nothing"],
		[["cutlist", "--stdin=yes", "a.rod"], "`--stdin` takes no value"],
		[
			["cutlist", "--piece", "trey", "a.rod"],
			"There is no piece `trey`: did you mean `tray`?",
		],
		[
			["cutlist", "gone.rod"],
			"`gone.rod` cannot be read: there is no such file",
		],
		[["cutlist", "*.rad"], "No file matches `*.rad`"],
		[["new", "benhc"], "did you mean `bench`?"],
		[["new", "bench", "3rd"], "A piece cannot be called `3rd`"],
		[["new", "bench", "floor"], "A piece cannot be called `floor`"],
		[
			["explain", "a.rod", "frame.lft.length"],
			"did you mean `frame.left.length`?",
		],
	])("%j", async (args, message) => {
		const folder = folderWith({ "a.rod": smallDesign });
		const { code, out, err } = await folder.run(args);
		expect(err).toContain(message);
		expect([code, out]).toEqual([2, ""]);
		expect(folder.list()).toEqual(["a.rod"]);
	});
});

describe("files", () => {
	test("folders and patterns stand for what is in them, sorted, each once", async () => {
		const folder = folderWith({
			"b/two.rod": smallDesign,
			"b/one.rod": smallDesign,
			"b/node_modules/other/three.rod": smallDesign,
			"a [1].rod": smallDesign,
			"notes.txt": "not a design",
		});
		const checked = async (...args: string[]) => {
			const { out } = await folder.run(["check", "--format", "json", ...args]);
			return (JSON.parse(out) as { files: string[] }).files;
		};
		expect(await checked("b")).toEqual(["b/one.rod", "b/two.rod"]);
		expect(await checked("**/*.rod", "b/two.rod")).toEqual([
			"a [1].rod",
			"b/one.rod",
			"b/two.rod",
		]);
		expect(await checked("a [1].rod")).toEqual(["a [1].rod"]);
	});

	test("what is no text in UTF-8 is told", async () => {
		const folder = folderWith({});
		const { code, err } = await folder.run(["check", "--stdin"], {
			stdin: new Uint8Array([0xff, 0xfe, 0x70, 0x00]),
		});
		expect([code, err]).toEqual([2, "it is not text in UTF-8\n"]);
	});

	test("only designs are read by `use`", async () => {
		const folder = folderWith({
			"secret.txt": "piece secret { }",
			"a.rod": 'use secret from "./secret.txt"\n',
		});
		const { code, out } = await folder.run(["check", "a.rod"]);
		expect(code).toBe(1);
		expect(out).toContain("no-file");
		expect(out).not.toContain("piece secret");
	});
});
