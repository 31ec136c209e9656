// Reads the command line by the table of a command, and tells what is wrong with it.

import { parseArgs } from "node:util";
import { nearest } from "../../shared/model/meaning.ts";
import {
	type Command,
	type Given,
	type Option,
	UsageFault,
} from "./command.ts";

/** Throws `UsageFault` for what the command does not know. */
export function readArguments(
	command: Command,
	args: readonly string[],
): Given {
	const options = new Map(
		command.options.map((option) => [option.name, option]),
	);
	// Not strict: our own messages name the nearest option. Tokens keep what stood there.
	const { tokens } = parseArgs({
		args: [...args],
		strict: false,
		allowPositionals: true,
		tokens: true,
		options: Object.fromEntries(
			command.options.map(({ name, value }) => [
				name,
				{
					type:
						value === undefined ? ("boolean" as const) : ("string" as const),
				},
			]),
		),
	});
	const operands: string[] = [];
	const values = new Map<string, string[]>();
	for (const token of tokens) {
		if (token.kind === "positional") operands.push(token.value);
		if (token.kind !== "option") continue;
		const option = options.get(token.name);
		if (!option || !token.rawName.startsWith("--")) {
			throw unknownOption(command, token.rawName);
		}
		const value = checked(option, token.value, token.inlineValue === true);
		const known = values.get(option.name) ?? [];
		values.set(option.name, option.many === true ? [...known, value] : [value]);
	}
	checkCount(command, operands.length, values.has("stdin"));
	return {
		operands,
		has: (name) => values.has(name),
		value: (name) => values.get(name)?.at(-1),
		values: (name) => values.get(name) ?? [],
	};
}

function checked(
	option: Option,
	value: string | undefined,
	inline: boolean,
): string {
	const { name, choices } = option;
	if (option.value === undefined) {
		if (inline) throw new UsageFault(`\`--${name}\` takes no value`);
		return "";
	}
	if (value === undefined || (!inline && value.startsWith("--"))) {
		throw new UsageFault(
			`\`--${name}\` wants a value: \`--${name} ${option.value}\``,
		);
	}
	if (choices && !choices.includes(value)) {
		throw new UsageFault(
			`\`--${name}\` cannot be \`${value}\`: it is ${choices.join(", ")}`,
		);
	}
	return value;
}

function unknownOption(command: Command, raw: string): UsageFault {
	const names = [...command.options.map(({ name }) => name), "help"];
	const near = nearest(raw.replace(/^-+/, ""), names);
	return new UsageFault(
		`\`storyrod ${command.name}\` has no option \`${raw}\`${near === undefined ? "" : `: did you mean \`--${near}\`?`}`,
	);
}

function checkCount(command: Command, count: number, stdin: boolean): void {
	const least = stdin ? Math.max(0, command.least - 1) : command.least;
	if (count < least) {
		throw new UsageFault(
			`\`storyrod ${command.name}\` wants ${command.operands}`,
		);
	}
	if (count > command.most) {
		throw new UsageFault(
			`\`storyrod ${command.name}\` takes ${command.operands || "nothing behind it"}, not ${count} words`,
		);
	}
}

/** `width=36` in two; throws `UsageFault`. */
export function readSets(values: readonly string[]): Map<string, string> {
	const sets = new Map<string, string>();
	for (const text of values) {
		const at = text.indexOf("=");
		const name = text.slice(0, Math.max(0, at)).trim();
		const value = text.slice(at + 1).trim();
		if (at < 1 || name === "" || value === "") {
			throw new UsageFault(
				`\`--set ${text}\` sets nothing: write it as \`--set width=36\``,
			);
		}
		sets.set(name, value);
	}
	return sets;
}
