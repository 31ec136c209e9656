// The help, made from the table of commands.

import { textTable } from "../../shared/text/table.ts";
import type { Command, Option } from "./command.ts";

export const commonOptions: readonly Option[] = [
	{ name: "help", help: "Show this help" },
	{ name: "version", help: "Show the version" },
];

export function generalHelp(commands: readonly Command[]): string {
	return [
		"Storyrod: furniture as text, its parts, cut list and joint warnings\n",
		`Usage: storyrod COMMAND ...\n\nCommands:\n${textTable(
			commands.map(({ name, operands, summary }) => [
				"",
				`${name} ${operands}`.trim(),
				summary,
			]),
		)}`,
		`Options:\n${optionTable(commonOptions)}`,
		"`storyrod COMMAND --help` tells more.\n",
		`Exit codes: 0 clean, 1 there are errors in a design, 2 wrong use or a file that\ncould not be read or written.\n`,
	].join("\n");
}

export function commandHelp(command: Command): string {
	const { name, operands, summary, details, options } = command;
	const usage = [
		"storyrod",
		name,
		...(options.length > 0 ? ["[options]"] : []),
		operands,
	]
		.join(" ")
		.trim();
	return [
		`${summary}\n`,
		`Usage: ${usage}\n`,
		...(details === undefined ? [] : [`${details.trimEnd()}\n`]),
		`Options:\n${optionTable([...options, ...commonOptions.slice(0, 1)])}`,
	].join("\n");
}

function optionTable(options: readonly Option[]): string {
	return textTable(
		options.map(({ name, value, help }) => [
			"",
			`--${name}${value === undefined ? "" : ` ${value}`}`,
			help,
		]),
	);
}
