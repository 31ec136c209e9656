// `storyrod cutlist`: what to cut, when, and how large.

import { cutList } from "../../../shared/outputs/cut-list.ts";
import { cutListCsv } from "../../../shared/outputs/cut-list-csv.ts";
import { cutListJson } from "../../../shared/outputs/cut-list-json.ts";
import { cutListMarkdown } from "../../../shared/outputs/cut-list-markdown.ts";
import { cutListText } from "../../../shared/outputs/cut-list-text.ts";
import {
	type Command,
	formatOption,
	pieceOption,
	setOption,
	stdinOption,
} from "../command.ts";
import { loadDesigns } from "../designs.ts";
import { reportFaults } from "../report.ts";
import { settingsOption } from "../settings.ts";
import { writeLists } from "../write-lists.ts";

export const cutlist: Command = {
	name: "cutlist",
	summary: "List the parts to cut: now, to fit, and last",
	operands: "FILE...",
	least: 1,
	most: Number.POSITIVE_INFINITY,
	options: [
		formatOption(["text", "md", "csv", "json"]),
		pieceOption,
		setOption,
		settingsOption,
		stdinOption,
	],
	details: `
Equal parts stand in one row. Sizes are thickness x width x length, the length
along the grain, rounded to the precision of the design; where a part must enter
an opening and the nearest step would be too long, to the step below. CSV and
JSON have the exact sizes, too. Errors in the design go to the error output; what
can be read is listed all the same.`.trimStart(),
	async run(given, terminal) {
		const loaded = await loadDesigns(given.operands, given, terminal);
		const lists = loaded.designs.flatMap(({ file, pieces }) =>
			pieces.map((piece) => ({ file, list: cutList(piece) })),
		);
		writeLists(terminal, given.value("format"), lists, {
			json: cutListJson,
			csv: cutListCsv,
			markdown: cutListMarkdown,
			text: cutListText,
		});
		return reportFaults(loaded, terminal);
	},
};
