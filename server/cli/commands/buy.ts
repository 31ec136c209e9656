// `storyrod buy`: what to buy for some designs, what it costs and what there is to carry.

import { buyingList } from "../../../shared/outputs/buying-list.ts";
import { buyingListCsv } from "../../../shared/outputs/buying-list-csv.ts";
import { buyingListJson } from "../../../shared/outputs/buying-list-json.ts";
import { buyingListMarkdown } from "../../../shared/outputs/buying-list-markdown.ts";
import { buyingListText } from "../../../shared/outputs/buying-list-text.ts";
import type { PieceToBuy } from "../../../shared/outputs/piece-to-buy.ts";
import {
	type Command,
	formatOption,
	pieceOption,
	setOption,
	stdinOption,
} from "../command.ts";
import { loadDesigns } from "../designs.ts";
import { effortOf, effortOption, layOut } from "../lay-out.ts";
import { reportFaults } from "../report.ts";
import { settingsOption } from "../settings.ts";
import { writeLists } from "../write-lists.ts";

export const buy: Command = {
	name: "buy",
	summary: "List what to buy, what it costs and what there is to carry",
	operands: "FILE...",
	least: 1,
	most: Number.POSITIVE_INFINITY,
	options: [
		formatOption(["text", "md", "csv", "json"]),
		pieceOption,
		{
			name: "each",
			help: "A list for each piece; else all share one, and its sheets",
		},
		effortOption,
		setOption,
		settingsOption,
		stdinOption,
	],
	details: `
All pieces of all files are bought for together, so that they share sheets, boxes
and tins; each piece's share of the cost is told. Sheets, boards and battens are
those of a layout: what lies in the shop (\`on-hand\` in the stock file) first. Where
a better layout may exist, the list says so, and what it would cost at the least.
Board feet are on the thickness that is paid for. The lines for the stock file are
what lies in the shop when everything is cut. Weight is that of the wood alone.`.trimStart(),
	async run(given, terminal) {
		const loaded = await loadDesigns(given.operands, given, terminal);
		const pieces = loaded.designs.flatMap(({ file, design, pieces }) =>
			pieces.map(
				(piece): PieceToBuy => ({ piece, stocks: design.stocks, file }),
			),
		);
		const effort = effortOf(given);
		const groups = given.has("each")
			? pieces.map((piece) => [piece])
			: pieces.length > 0
				? [pieces]
				: [];
		const lists = groups.map((group) => ({
			file: group[0]?.file ?? "",
			list: buyingList(
				group,
				layOut(
					group.map(({ piece }) => piece),
					effort,
					terminal,
				),
			),
		}));
		writeLists(terminal, given.value("format"), lists, {
			json: (all) => buyingListJson(all.map(({ list }) => list)),
			csv: buyingListCsv,
			markdown: buyingListMarkdown,
			text: buyingListText,
		});
		return reportFaults(loaded, terminal);
	},
};
