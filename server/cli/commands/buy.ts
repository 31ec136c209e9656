// `storyrod buy`: what to buy, what it costs, what the piece weighs.

import { buyingList } from "../../../shared/outputs/buying-list.ts";
import { buyingListCsv } from "../../../shared/outputs/buying-list-csv.ts";
import { buyingListJson } from "../../../shared/outputs/buying-list-json.ts";
import { buyingListMarkdown } from "../../../shared/outputs/buying-list-markdown.ts";
import { buyingListText } from "../../../shared/outputs/buying-list-text.ts";
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

export const buy: Command = {
	name: "buy",
	summary: "List what to buy, what it costs and what the piece weighs",
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
Sheets are counted by area, so that is how many are needed at the least. Board
feet are counted on rough sizes and the thickness that is paid for; what is added
for waste is told. Weight is that of the wood alone, from its solids.`.trimStart(),
	async run(given, terminal) {
		const loaded = await loadDesigns(given.operands, given, terminal);
		const lists = loaded.designs.flatMap(({ file, design, pieces }) =>
			pieces.map((piece) => ({ file, list: buyingList(piece, design.stocks) })),
		);
		writeLists(terminal, given.value("format"), lists, {
			json: buyingListJson,
			csv: buyingListCsv,
			markdown: buyingListMarkdown,
			text: buyingListText,
		});
		return reportFaults(loaded, terminal);
	},
};
