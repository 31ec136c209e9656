#!/usr/bin/env node
// Entry of the command line.

import { run } from "./run.ts";
import { processTerminal } from "./terminal.ts";

try {
	// Set, not called: what is still to be written goes out first.
	process.exitCode = await run(process.argv.slice(2), processTerminal());
} catch (error) {
	// A fault of our own must not look like a finding in a design.
	console.error("storyrod stumbled over a fault of its own:", error);
	process.exitCode = 2;
}
