// `storyrod lsp`: the language server, for editors that start it as a command.

import type { Command } from "../command.ts";

export const lsp: Command = {
	name: "lsp",
	summary: "Run the language server, for an editor",
	operands: "",
	least: 0,
	most: 0,
	options: [{ name: "stdio", help: "Talk over the standard input and output" }],
	async run(_given, terminal) {
		// The transport is read from the arguments of the process; without one it is the usual.
		if (!process.argv.includes("--stdio")) process.argv.push("--stdio");
		const { serve } = await import("../../hosts/serve.ts");
		serve();
		// The connection ends the process itself, with the code that the protocol asks for.
		return await new Promise<never>(() => {
			terminal.err.write("");
		});
	},
};
