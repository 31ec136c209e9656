#!/usr/bin/env node
// Entry of the command line.

import { run } from "./run.ts";
import { processTerminal } from "./terminal.ts";

// Set, not called: what is still to be written goes out first.
process.exitCode = await run(process.argv.slice(2), processTerminal());
