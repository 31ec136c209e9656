// Searches for the layouts of pieces, for every command that needs them; at a terminal it tells how far it is.

import type { Effort } from "../../shared/cutting/index.ts";
import {
	type MaterialLayout,
	searchLayouts,
} from "../../shared/layouts/index.ts";
import type { Piece } from "../../shared/model/types.ts";
import { pieceToCut } from "../../shared/outputs/piece-layouts.ts";
import type { Given, Option } from "./command.ts";
import type { Terminal } from "./terminal.ts";

const efforts: readonly Effort[] = ["quick", "usual", "thorough"];

export const effortOption: Option = {
	name: "effort",
	value: "EFFORT",
	choices: efforts,
	help: "How long to look for good layouts: quick, usual or thorough",
};

export function effortOf(given: Given): Effort {
	const wanted = given.value("effort");
	return efforts.find((effort) => effort === wanted) ?? "usual";
}

/** All pieces share their sheets. */
export function layOut(
	pieces: readonly Piece[],
	effort: Effort,
	terminal: Terminal,
): readonly MaterialLayout[] {
	const search = searchLayouts(pieces.map(pieceToCut), { effort });
	let told = -1;
	for (;;) {
		const step = search.next();
		const done = step.done === true;
		if (terminal.err.isTerminal) {
			const percent = done ? 100 : Math.floor(step.value.done * 100);
			if (done && told >= 0) terminal.err.write("\r\u001b[K");
			else if (!done && percent > told)
				terminal.err.write(`\rLaying out: ${percent} %`);
			told = Math.max(told, percent);
		}
		if (done) return step.value;
	}
}
