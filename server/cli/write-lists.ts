// Writes lists of pieces in the form that was asked for: the same for every command that makes lists.

import { printableLines } from "../../shared/outputs/findings-text.ts";
import { pageColumns } from "./report.ts";
import type { Terminal } from "./terminal.ts";

/** How a kind of list is written; the text of one list at a time, JSON and CSV for all of them. */
export interface ListWriters<List> {
	readonly json: (
		lists: readonly { readonly file: string; readonly list: List }[],
	) => unknown;
	readonly csv: (lists: readonly List[]) => string;
	readonly markdown: (list: List) => string;
	readonly text: (list: List, options: { readonly columns: number }) => string;
}

export function writeLists<List>(
	terminal: Terminal,
	format: string | undefined,
	lists: readonly { readonly file: string; readonly list: List }[],
	writers: ListWriters<List>,
): void {
	const all = lists.map(({ list }) => list);
	const columns = pageColumns(terminal);
	const write = (text: string): void => terminal.out.write(text);
	switch (format) {
		case "json":
			write(`${JSON.stringify(writers.json(lists), undefined, "\t")}\n`);
			break;
		case "csv":
			write(writers.csv(all));
			break;
		case "md":
			write(printableLines(all.map(writers.markdown).join("\n")));
			break;
		default:
			write(
				printableLines(
					all.map((list) => writers.text(list, { columns })).join("\n\n"),
				),
			);
	}
}
