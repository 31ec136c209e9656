// The designs that a command is about: read, evaluated and checked, as the options ask.

import { join } from "node:path";
import { allFindings } from "../../shared/checks/index.ts";
import { compile } from "../../shared/model/compile.ts";
import { nearest } from "../../shared/model/meaning.ts";
import type { Design, Piece } from "../../shared/model/types.ts";
import {
	type PlacedFinding,
	placeFindings,
	type Texts,
} from "../../shared/outputs/findings.ts";
import {
	decode,
	FileFault,
	nodeSources,
	pathOf,
	readTextFile,
	uriOf,
} from "../hosts/node-files.ts";
import { readSets } from "./arguments.ts";
import { type Given, UsageFault } from "./command.ts";
import { findDesigns, shownPath } from "./files.ts";
import { designSettings } from "./settings.ts";
import type { Terminal } from "./terminal.ts";

export interface LoadedDesign {
	/** As it is called in what is written. */
	readonly file: string;
	readonly design: Design;
	/** The pieces that were asked for: those of `--piece`, else all that are no mere components. */
	readonly pieces: readonly Piece[];
}

export interface Loaded {
	readonly designs: readonly LoadedDesign[];
	readonly texts: Texts;
	/** What syntax, evaluation and checks found, in order. */
	readonly findings: readonly PlacedFinding[];
	/** What could not be read in the settings, a line each. */
	readonly settingsFaults: readonly string[];
}

/**
 * Reads `files` (operands of the command line) and, with `--stdin`, the standard input. Throws `FileFault` for a file that
 * cannot be read, `UsageFault` for a piece that there is not.
 */
export async function loadDesigns(
	files: readonly string[],
	given: Given,
	terminal: Terminal,
): Promise<Loaded> {
	const sets = readSets(given.values("set"));
	const settings = designSettings(given, terminal);
	const texts = new Map<string, string>();
	for (const path of findDesigns(files, terminal.cwd)) {
		texts.set(uriOf(path), readNamed(path, terminal.cwd));
	}
	const standard = uriOf(join(terminal.cwd, "<stdin>"));
	if (given.has("stdin")) {
		texts.set(standard, decode(await terminal.readStdin()).text);
	}
	const sources = nodeSources(texts);
	const nameOf = (uri: string): string => {
		if (uri === standard) return "<stdin>";
		const path = pathOf(uri);
		return path === undefined ? uri : shownPath(path, terminal.cwd);
	};
	const wanted = given.values("piece");
	const designs = [...texts.keys()].map((uri): LoadedDesign => {
		const design = compile(sources, uri, { set: sets });
		return { file: nameOf(uri), design, pieces: pieceOf(design, wanted) };
	});
	tellMissingPieces(designs, wanted);
	const all: Texts = { nameOf, textOf: (uri) => sources.read(uri) };
	const findings = placeFindings(
		designs.flatMap(({ design }) => [
			...allFindings(design, settings.optionsFor(design.uri)),
		]),
		all,
	);
	return { designs, texts: all, findings, settingsFaults: settings.faults() };
}

function readNamed(path: string, cwd: string): string {
	try {
		return readTextFile(path).text;
	} catch (error) {
		if (!(error instanceof FileFault)) throw error;
		throw new FileFault(
			`\`${shownPath(path, cwd)}\` cannot be read: ${error.message}`,
		);
	}
}

function pieceOf(design: Design, wanted: readonly string[]): readonly Piece[] {
	return design.pieces.filter(({ name, kind }) =>
		wanted.length > 0 ? wanted.includes(name) : kind === "piece",
	);
}

function tellMissingPieces(
	designs: readonly LoadedDesign[],
	wanted: readonly string[],
): void {
	const known = designs.flatMap(({ design }) =>
		design.pieces.map((piece) => piece.name),
	);
	for (const name of wanted) {
		if (known.includes(name)) continue;
		const near = nearest(name, known);
		throw new UsageFault(
			`There is no piece \`${name}\`${
				near !== undefined
					? `: did you mean \`${near}\`?`
					: known.length > 0
						? `: there is ${known.map((one) => `\`${one}\``).join(", ")}`
						: ""
			}`,
		);
	}
}
