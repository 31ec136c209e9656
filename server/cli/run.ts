// Runs one command line: finds the command, reads its arguments, tells what went wrong.

import { nearest } from "../../shared/model/meaning.ts";
import { FileFault } from "../hosts/node-files.ts";
import { readArguments } from "./arguments.ts";
import { type Command, type ExitCode, UsageFault } from "./command.ts";
import { commands } from "./commands/index.ts";
import { commandHelp, generalHelp } from "./help.ts";
import { version } from "./package-files.ts";
import type { Terminal } from "./terminal.ts";

/** `args` are those behind the program's own name. Never throws for wrong use or a file that cannot be read. */
export async function run(
	args: readonly string[],
	terminal: Terminal,
): Promise<ExitCode> {
	const [first, ...rest] = args;
	try {
		if (first === "--version") {
			terminal.out.write(`storyrod ${version()}\n`);
			return 0;
		}
		if (first === undefined) {
			terminal.err.write(generalHelp(commands));
			return 2;
		}
		if (first === "--help" || first === "help") {
			const asked = commands.find(({ name }) => name === rest[0]);
			terminal.out.write(asked ? commandHelp(asked) : generalHelp(commands));
			return 0;
		}
		const command = commandNamed(first);
		const end = rest.indexOf("--");
		if (rest.slice(0, end < 0 ? undefined : end).includes("--help")) {
			terminal.out.write(commandHelp(command));
			return 0;
		}
		return await command.run(readArguments(command, rest), terminal);
	} catch (error) {
		if (error instanceof UsageFault) {
			const known = commands.some(({ name }) => name === first);
			terminal.err.write(
				`${error.message}\n\`storyrod ${known ? `${first} ` : ""}--help\` tells how it is used\n`,
			);
			return 2;
		}
		if (error instanceof FileFault) {
			terminal.err.write(`${error.message}\n`);
			return 2;
		}
		throw error;
	}
}

function commandNamed(text: string): Command {
	const command = commands.find(({ name }) => name === text);
	if (command) return command;
	const names = commands.map(({ name }) => name);
	const near = nearest(text, names);
	throw new UsageFault(
		text.startsWith("-")
			? `The command comes first: \`storyrod check ${text} ...\``
			: `There is no command \`${text}\`${near === undefined ? `: there is ${names.join(", ")}` : `: did you mean \`${near}\`?`}`,
	);
}
