// The one table of commands: what there is to run, to explain in the help and to suggest.

import type { Command } from "../command.ts";
import { buy } from "./buy.ts";
import { check } from "./check.ts";
import { cutlist } from "./cutlist.ts";
import { explain } from "./explain.ts";
import { format } from "./format.ts";
import { layout } from "./layout.ts";
import { lsp } from "./lsp.ts";
import { newCommand } from "./new.ts";

export const commands: readonly Command[] = [
	newCommand,
	check,
	cutlist,
	buy,
	layout,
	explain,
	format,
	lsp,
];
