// `storyrod buy`: what to buy, what it costs, what the piece weighs.

import { buyingList } from "../../../shared/outputs/buying-list.ts";
import { buyingListCsv } from "../../../shared/outputs/buying-list-csv.ts";
import { buyingListJson } from "../../../shared/outputs/buying-list-json.ts";
import { buyingListMarkdown } from "../../../shared/outputs/buying-list-markdown.ts";
import { buyingListText } from "../../../shared/outputs/buying-list-text.ts";
import { printableLines } from "../../../shared/outputs/findings-text.ts";
import {
	type Command,
	formatOption,
	pieceOption,
	setOption,
	stdinOption,
} from "../command.ts";
import { loadDesigns } from "../designs.ts";
import { pageColumns, reportFaults } from "../report.ts";
import { settingsOption } from "../settings.ts";

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
		const all = lists.map(({ list }) => list);
		const columns = pageColumns(terminal);
		switch (given.value("format")) {
			case "json":
				terminal.out.write(
					`${JSON.stringify(buyingListJson(lists), undefined, "\t")}\n`,
				);
				break;
			case "csv":
				terminal.out.write(buyingListCsv(all));
				break;
			case "md":
				terminal.out.write(
					printableLines(all.map(buyingListMarkdown).join("\n")),
				);
				break;
			default:
				terminal.out.write(
					printableLines(
						all.map((list) => buyingListText(list, { columns })).join("\n\n"),
					),
				);
		}
		return reportFaults(loaded, terminal);
	},
};
