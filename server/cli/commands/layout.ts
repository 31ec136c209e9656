// `storyrod layout`: how sheets and boards are sawn up, with pictures, and in which order.

import { join, resolve } from "node:path";
import { printableLines } from "../../../shared/outputs/findings-text.ts";
import { sheetPicture } from "../../../shared/outputs/pictures/sheet-picture.ts";
import { layoutJson } from "../../../shared/outputs/sawing/layout-json.ts";
import { layoutMarkdown } from "../../../shared/outputs/sawing/layout-markdown.ts";
import { layoutText } from "../../../shared/outputs/sawing/layout-text.ts";
import {
	type SawingPlan,
	sawingPlan,
} from "../../../shared/outputs/sawing/sawing-plan.ts";
import { sheetName } from "../../../shared/outputs/sawing/sawing-words.ts";
import { FileFault, writeIntoFolder } from "../../hosts/node-files.ts";
import {
	type Command,
	formatOption,
	pieceOption,
	setOption,
	stdinOption,
	UsageFault,
} from "../command.ts";
import { type LoadedDesign, loadDesigns } from "../designs.ts";
import { shownPath } from "../files.ts";
import { effortOf, effortOption, layOut } from "../lay-out.ts";
import { pageColumns, reportFaults } from "../report.ts";
import { settingsOption } from "../settings.ts";
import type { Terminal } from "../terminal.ts";

export const layout: Command = {
	name: "layout",
	summary: "Lay parts out on sheets and boards, and order the cuts",
	operands: "FILE...",
	least: 1,
	most: Number.POSITIVE_INFINITY,
	options: [
		formatOption(["text", "md", "json", "svg"]),
		{
			name: "out",
			value: "DIR",
			help: "Also write pictures and the order of cuts to DIR",
		},
		effortOption,
		pieceOption,
		{ name: "each", help: "Each piece by itself; else all share their sheets" },
		setOption,
		settingsOption,
		stdinOption,
	],
	details: `
All pieces of all files share their sheets. What lies in the shop (\`on-hand\` in the
stock file) is used first. The same design and effort give the same layouts on every
machine; a longer search may find better ones. Cuts are numbered in the order in
which they are made: edges, large cuts for a track or panel saw, then so that the
fence moves seldom. DIR gets a picture (SVG) of every sheet and board with these
numbers, and the list as layout.md; files of the same names are replaced. Without
DIR, svg writes the pictures one after the other.`.trimStart(),
	async run(given, terminal) {
		const out = given.value("out");
		if (out === "") throw new UsageFault("`--out` needs the name of a folder");
		const loaded = await loadDesigns(given.operands, given, terminal);
		const groups = groupsOf(loaded.designs, given.has("each")).map((group) => {
			const pieces = group.flatMap((one) => one.pieces);
			const layouts = layOut(pieces, effortOf(given), terminal);
			return {
				files: group.map(({ file }) => file),
				plans: layouts.map((one) => sawingPlan(one, pieces)),
			};
		});
		const pictures = picturesOf(groups.flatMap(({ plans }) => plans));
		const format = given.value("format");
		if (out !== undefined) {
			const text = groups.map(({ plans }) => layoutMarkdown(plans)).join("\n");
			writeFolder(out, [...pictures, { name: "layout.md", text }], terminal);
		}
		const write = (text: string): void => terminal.out.write(text);
		const columns = pageColumns(terminal);
		if (format === "json")
			write(`${JSON.stringify(layoutJson(groups), undefined, "\t")}\n`);
		else if (format === "md")
			write(
				printableLines(
					groups.map(({ plans }) => layoutMarkdown(plans)).join("\n"),
				),
			);
		else if (format !== "svg")
			write(
				printableLines(
					groups.map(({ plans }) => layoutText(plans, { columns })).join("\n"),
				),
			);
		else if (out === undefined)
			write(pictures.map(({ text }) => text).join(""));
		return reportFaults(loaded, terminal);
	},
};

/** Designs whose pieces share their sheets, each with those pieces. */
function groupsOf(
	designs: readonly LoadedDesign[],
	each: boolean,
): readonly (readonly LoadedDesign[])[] {
	const all = designs.filter(({ pieces }) => pieces.length > 0);
	if (!each) return all.length > 0 ? [all] : [];
	return all.flatMap((one) =>
		one.pieces.map((piece) => [{ ...one, pieces: [piece] }]),
	);
}

interface NamedText {
	readonly name: string;
	readonly text: string;
}

/** Each with a name of its own, even where two files have pieces of one name. */
function picturesOf(plans: readonly SawingPlan[]): readonly NamedText[] {
	const used = new Map<string, number>();
	return plans.flatMap((plan) =>
		plan.sheets.map((_, index) => {
			const name = fileName(plan, index);
			const count = (used.get(name) ?? 0) + 1;
			used.set(name, count);
			return {
				name: `${name}${count > 1 ? `.${count}` : ""}.svg`,
				text: sheetPicture(plan, index),
			};
		}),
	);
}

/** `record-bench.ply.three-quarter.sheet-1` */
function fileName(plan: SawingPlan, index: number): string {
	const { pieces, stock } = plan.layout;
	const piece = pieces.length === 1 ? pieces[0] : "all";
	const sheet = sheetName(plan, index).replace(" ", "-");
	// Letters, digits, hyphens and dots are good in names of files everywhere.
	return `${piece}.${stock.id}.${sheet}`.replace(/[^A-Za-z0-9.-]+/g, "-");
}

/** Names what it writes on the error output. Throws `FileFault`. */
function writeFolder(
	out: string,
	files: readonly NamedText[],
	terminal: Terminal,
): void {
	const folder = resolve(terminal.cwd, out);
	try {
		writeIntoFolder(folder, files);
	} catch (error) {
		if (!(error instanceof FileFault)) throw error;
		throw new FileFault(`\`${out}\` is not written: ${error.message}`);
	}
	for (const { name } of files)
		terminal.err.write(`${shownPath(join(folder, name), terminal.cwd)}\n`);
}
