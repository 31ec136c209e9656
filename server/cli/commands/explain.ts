// `storyrod explain`: why a size is what it is.

import {
	explanationJson,
	explanationLine,
	explanationText,
	findSizes,
	type NamedSize,
	namedSizes,
} from "../../../shared/outputs/explanation.ts";
import { printableLines } from "../../../shared/outputs/findings-text.ts";
import {
	type Command,
	formatOption,
	pieceOption,
	setOption,
	stdinOption,
	UsageFault,
} from "../command.ts";
import { type LoadedDesign, loadDesigns } from "../designs.ts";
import { reportFaults } from "../report.ts";
import { settingsOption } from "../settings.ts";

export const explain: Command = {
	name: "explain",
	summary: "Tell why a size is what it is",
	operands: "FILE [NAME...]",
	least: 1,
	most: Number.POSITIVE_INFINITY,
	options: [
		formatOption(["text", "json"]),
		pieceOption,
		setOption,
		settingsOption,
		stdinOption,
	],
	details: `
NAME is a size (case.top.length, width), a part (case.top: all its sizes) or a
material's thickness (ply.three-quarter.thick). Without a name every size is
explained in one line. A size with ~ in front is rounded.`.trimStart(),
	async run(given, terminal) {
		const stdin = given.has("stdin");
		const files = stdin ? [] : given.operands.slice(0, 1);
		const names = stdin ? given.operands : given.operands.slice(1);
		const loaded = await loadDesigns(files, given, terminal);
		const sizes = loaded.designs.flatMap((one) =>
			sizesOf(one, names).map((size) => ({ file: one.file, size })),
		);
		const several = new Set(sizes.map(({ size }) => size.piece)).size > 1;
		if (given.value("format") === "json") {
			terminal.out.write(
				`${JSON.stringify(explanationJson(sizes), undefined, "\t")}\n`,
			);
		} else if (names.length > 0) {
			terminal.out.write(
				printableLines(
					sizes.map(({ size }) => explanationText(size)).join("\n"),
				),
			);
		} else {
			terminal.out.write(
				printableLines(
					sizes
						.map(
							({ size }) =>
								`${several ? `${size.piece}.` : ""}${explanationLine(size)}\n`,
						)
						.join(""),
				),
			);
		}
		return reportFaults(loaded, terminal);
	},
};

function sizesOf(
	{ design, pieces, file }: LoadedDesign,
	names: readonly string[],
): readonly NamedSize[] {
	if (names.length === 0) {
		return pieces.flatMap((piece) => namedSizes(design, piece));
	}
	return names.flatMap((name) => {
		const { found, near } = findSizes(design, pieces, name);
		if (found.length > 0) return found;
		throw new UsageFault(
			`\`${file}\` has no size or part \`${name}\`${
				near === undefined
					? `: \`storyrod explain ${file}\` lists what there is`
					: `: did you mean \`${near}\`?`
			}`,
		);
	});
}
