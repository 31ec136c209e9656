// Findings for a terminal: where, what, the line with a mark under the place, and what would mend it.

import type { Severity } from "../model/types.ts";
import { indexLines, type LineIndex } from "../text/line-index.ts";
import {
	countFindings,
	type Place,
	type PlacedFinding,
	severities,
	type Texts,
} from "./findings.ts";

export interface FindingsTextOptions {
	/** ANSI colours; no by default. */
	readonly colour?: boolean;
	/** Columns of the terminal; longer source lines are cropped round the place. 100 by default. */
	readonly columns?: number;
	/** So many are told in full, the rest counted; 100 by default. */
	readonly most?: number;
}

/** `file:line:col severity id message`, the frame, related places, mends. */
export function findingsText(
	findings: readonly PlacedFinding[],
	texts: Texts,
	options: FindingsTextOptions = {},
): string {
	const { colour = false, columns = 100, most = 100 } = options;
	const paint = painter(colour);
	const indexes = new Map<string, LineIndex>();
	const told = findings.slice(0, most).map(({ finding, place, related }) => {
		const lines = [
			`${paint("bold", where(place))} ${paint(finding.severity, finding.severity)} ${printable(finding.id)} ${printable(finding.message)}`,
			...frame(place, texts, indexes, Math.max(40, columns)).map((line, at) =>
				at === 0 ? line : paint(finding.severity, line),
			),
			...related.map(
				(one) => `  see  ${where(one.place)} ${printable(one.message)}`,
			),
			...finding.fixes.map((fix) => `  mend ${printable(fix.title)}`),
		];
		return `${lines.join("\n")}\n`;
	});
	const rest = findings.length - told.length;
	if (rest > 0) told.push(`… and ${rest} more\n`);
	return told.join("\n");
}

/** `2 errors, 1 warning`; `nothing to tell` if there are none. */
export function findingsSummary(findings: readonly PlacedFinding[]): string {
	const counts = countFindings(findings);
	const words: Readonly<Record<Severity, readonly [string, string]>> = {
		error: ["error", "errors"],
		warning: ["warning", "warnings"],
		information: ["remark", "remarks"],
		hint: ["hint", "hints"],
	};
	const parts = severities
		.filter((severity) => counts[severity] > 0)
		.map((severity) => {
			const count = counts[severity];
			return `${count} ${words[severity][count === 1 ? 0 : 1]}`;
		});
	return parts.length > 0 ? parts.join(", ") : "nothing to tell";
}

function where({ file, line, column }: Place): string {
	return `${printable(file)}:${line}:${column}`;
}

/** The line of the place, and a run of `^` under it; of several lines only the first is marked. */
function frame(
	place: Place,
	texts: Texts,
	indexes: Map<string, LineIndex>,
	columns: number,
): readonly string[] {
	const text = texts.textOf(place.uri);
	if (text === undefined) return [];
	let index = indexes.get(place.uri);
	if (index === undefined) {
		index = indexLines(text);
		indexes.set(place.uri, index);
	}
	const start = index.lineStart(place.line - 1);
	const end = index.lineEnd(place.line - 1);
	const number = String(place.line);
	const gutter = `  ${number} | `;
	const room = columns - gutter.length;
	const from = place.start - start;
	const to = Math.min(place.end, end) - start;
	// A long line is shown from a little before the place on.
	const length = end - start;
	const offset =
		length <= room ? 0 : Math.max(0, Math.min(from - 20, length - room));
	const shown = text.slice(
		start + offset,
		Math.min(end, start + offset + room),
	);
	const mark = Math.max(1, Math.min(to - from, shown.length - (from - offset)));
	const before = [...shown.slice(0, from - offset)]
		.map((letter) => (letter === "\t" ? "\t" : " "))
		.join("");
	// What a terminal draws as one letter gets one mark.
	const marks = [...shown.slice(from - offset, from - offset + mark)].length;
	return [
		`${gutter}${printable(shown)}`,
		`  ${" ".repeat(number.length)} | ${before}${"^".repeat(Math.max(1, marks))}`,
	];
}

/** Text of a stranger's file with what could steer the terminal made visible; tabs stay. */
export function printable(text: string): string {
	return text.replace(
		// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters to be made visible
		/[\u0000-\u0008\u000a-\u001f\u007f-\u009f\u200e\u200f\u2028-\u202e\u2066-\u2069]/g,
		"\ufffd",
	);
}

/** `printable` for a text of many lines. */
export function printableLines(text: string): string {
	return text.split("\n").map(printable).join("\n");
}

type Style = Severity | "bold";

const styles: Readonly<Record<Style, string>> = {
	error: "31",
	warning: "33",
	information: "36",
	hint: "36",
	bold: "1",
};

function painter(colour: boolean): (style: Style, text: string) => string {
	return (style, text) =>
		colour ? `\u001b[${styles[style]}m${text}\u001b[0m` : text;
}
