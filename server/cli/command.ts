// What a command is: a row of the table that help, the reading of arguments and the run are made from.

import type { Terminal } from "./terminal.ts";

export interface Option {
	/** Without the dashes. */
	readonly name: string;
	/** What stands for the value in the help; an option without one is a switch. */
	readonly value?: string;
	/** The values that it may have. */
	readonly choices?: readonly string[];
	/** May be given several times. */
	readonly many?: boolean;
	readonly help: string;
}

export interface Command {
	readonly name: string;
	/** One line. */
	readonly summary: string;
	/** What follows the name: `FILE...`. */
	readonly operands: string;
	/** How many operands it takes. */
	readonly least: number;
	readonly most: number;
	readonly options: readonly Option[];
	/** More for its help, lines of at most 80 columns. */
	readonly details?: string;
	readonly run: (given: Given, terminal: Terminal) => Promise<ExitCode>;
}

/** 0 = clean; 1 = findings of error grade; 2 = wrong use, or a file that could not be read or written. */
export type ExitCode = 0 | 1 | 2;

/** What stood on the command line, checked against the table. */
export interface Given {
	readonly operands: readonly string[];
	/** Whether a switch was given. */
	has(name: string): boolean;
	/** The last value of an option. */
	value(name: string): string | undefined;
	/** All values of an option, in order. */
	values(name: string): readonly string[];
}

/** Wrong use of the command line: told with a hint at the help, exit 2. */
export class UsageFault extends Error {
	override readonly name = "UsageFault";
}

export const setOption: Option = {
	name: "set",
	value: "NAME=VALUE",
	many: true,
	help: "Set a given: --set width=36, --set width='900 mm'",
};

export const pieceOption: Option = {
	name: "piece",
	value: "NAME",
	many: true,
	help: "Only this piece of the file",
};

export const stdinOption: Option = {
	name: "stdin",
	help: "Read the design from the standard input; no FILE is needed",
};

export function formatOption(choices: readonly string[]): Option {
	return {
		name: "format",
		value: choices.join("|"),
		choices,
		help: `How to write it; ${choices[0]} if not given`,
	};
}
