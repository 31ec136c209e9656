// Reads texts with marks in them: cursors, selections, expected ranges and several files in one string.
//
// - `<|>` is a cursor, `<|text|>` a selection; both are taken out of the text.
// - A line `//- name.rod` begins the next file; without one there is a single file `main.rod`.
// - A comment line with carets, `//   ^^^ text`, marks the columns above it in the line before; `//<^^` marks from the
//   column of the slashes on. `// ^^^ file text` marks the whole file. These lines stay in the text: they are comments.
// - `\r` before a line end counts as part of it. Nothing is written as a number.

import type { Span } from "../../grammar/index.ts";

export interface Mark {
	readonly span: Span;
	/** What stands behind the carets. */
	readonly label: string;
	readonly wholeFile: boolean;
}

export interface FixtureFile {
	readonly uri: string;
	readonly text: string;
	readonly cursors: readonly number[];
	readonly selections: readonly Span[];
	readonly marks: readonly Mark[];
}

export interface Fixture {
	readonly files: readonly FixtureFile[];
	/** The first file. */
	readonly main: FixtureFile;
	/** Texts by uri. */
	readonly texts: ReadonlyMap<string, string>;
	/** The first cursor in any file, with its file. Throws if there is none: a fault of the test. */
	readonly cursor: { readonly file: FixtureFile; readonly offset: number };
}

const root = "file:///shop/";

export function readFixture(source: string): Fixture {
	const files = split(source).map(({ name, body }) => readFile(name, body));
	const main = files[0] as FixtureFile;
	return {
		files,
		main,
		texts: new Map(files.map((file) => [file.uri, file.text])),
		get cursor() {
			const file = files.find((one) => one.cursors.length > 0);
			if (!file) throw new Error("The fixture has no cursor");
			return { file, offset: file.cursors[0] as number };
		},
	};
}

/** The offset of the only place where `needle` stands. Throws if there is none or more than one. */
export function placeOf(text: string, needle: string): number {
	const at = text.indexOf(needle);
	if (at < 0 || text.indexOf(needle, at + 1) >= 0) {
		throw new Error(`Not exactly once in the text: ${needle}`);
	}
	return at;
}

function split(source: string): { name: string; body: string }[] {
	const found: { name: string; body: string }[] = [];
	const header = /^\/\/- (\S+)\r?\n/gm;
	const starts = [...source.matchAll(header)];
	const first = starts[0];
	if (!first || first.index > 0) {
		found.push({ name: "main.rod", body: source.slice(0, first?.index) });
	}
	starts.forEach((match, index) => {
		found.push({
			name: match[1] as string,
			body: source.slice(
				match.index + match[0].length,
				starts[index + 1]?.index ?? source.length,
			),
		});
	});
	return found;
}

function readFile(name: string, body: string): FixtureFile {
	const cursors: number[] = [];
	const selections: Span[] = [];
	let text = "";
	let open: number | undefined;
	for (let at = 0; at < body.length; ) {
		if (body.startsWith("<|>", at)) {
			cursors.push(text.length);
			at += 3;
		} else if (open === undefined && body.startsWith("<|", at)) {
			open = text.length;
			at += 2;
		} else if (open !== undefined && body.startsWith("|>", at)) {
			selections.push({ start: open, end: text.length });
			open = undefined;
			at += 2;
		} else {
			text += body[at];
			at += 1;
		}
	}
	if (open !== undefined) throw new Error("A selection is not closed");
	return { uri: root + name, text, cursors, selections, marks: marksOf(text) };
}

function marksOf(text: string): Mark[] {
	const marks: Mark[] = [];
	let lineStart = 0;
	let above = 0;
	for (const line of text.split("\n")) {
		const match = /^(\s*)\/\/(<?)(\s*)(\^+)\s*(.*?)\r?$/.exec(line);
		if (match) {
			const [, indent = "", from = "", gap = "", carets = "", label = ""] =
				match;
			const end = indent.length + 2 + from.length + gap.length + carets.length;
			const start = from === "" ? end - carets.length : indent.length;
			const file = /^file\b ?(.*)$/.exec(label);
			marks.push({
				span: file
					? { start: 0, end: text.length }
					: { start: above + start, end: above + end },
				label: file?.[1] ?? label,
				wholeFile: file !== null,
			});
		} else above = lineStart;
		lineStart += line.length + 1;
	}
	return marks;
}
