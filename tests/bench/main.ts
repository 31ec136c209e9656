// `npm run bench`: how fast a text is read, evaluated and checked, beside the CSS language service at texts of the same length.

import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { getCSSLanguageService } from "vscode-css-languageservice";
import { TextDocument } from "vscode-languageserver-textdocument";
import { parse } from "../../grammar/index.ts";
import { runChecks } from "../../shared/checks/index.ts";
import { CompileCache, compile } from "../../shared/model/compile.ts";
import { sourcesOf } from "../../shared/sources/sources.ts";
import { textTable } from "../../shared/text/table.ts";
import {
	bundledCommand,
	checkCommand,
	cssService,
	languageServer,
} from "./cold-start.ts";
import { largeDesign } from "./large-design.ts";
import { stylesheet } from "./stylesheet.ts";
import { type Timed, timed } from "./timing.ts";

const uri = "/catalogue.rod";
const sizes = [100, 1_000, 10_000] as const;

/** The text with one digit changed in the middle piece, another one each time. */
function typist(text: string, anchor: string): () => string {
	const at = text.indexOf(anchor, text.length >> 1) + anchor.length;
	let stroke = 0;
	return () => {
		stroke++;
		return text.slice(0, at) + (stroke % 10) + text.slice(at + 1);
	};
}

interface Ours {
	readonly parts: number;
	readonly text: string;
	readonly parse: Timed;
	readonly evaluate: Timed;
	readonly check: Timed;
	readonly typeEvaluate: Timed;
	readonly typeCheck: Timed;
}

function measureOurs(parts: number): Ours {
	const text = largeDesign(parts);
	const once = sourcesOf(new Map([[uri, text]]));
	const type = typist(text, "clear > ");
	const kept = (work: (cache: CompileCache, text: string) => void) => {
		const cache = new CompileCache();
		work(cache, text);
		return timed(() => work(cache, type()));
	};
	const run = (cache: CompileCache, now: string) =>
		compile(sourcesOf(new Map([[uri, now]])), uri, { cache });
	return {
		parts,
		text,
		parse: timed(() => void parse(text)),
		evaluate: timed(() => void compile(once, uri)),
		check: timed(() => void runChecks(compile(once, uri))),
		typeEvaluate: kept((cache, now) => void run(cache, now)),
		typeCheck: kept((cache, now) => {
			const design = run(cache, now);
			void [...design.findings, ...runChecks(design)];
		}),
	};
}

interface Theirs {
	readonly text: string;
	readonly parse: Timed;
	readonly typeCheck: Timed;
}

function measureTheirs(length: number): Theirs {
	const text = stylesheet(length);
	const type = typist(text, "padding: calc(");
	const service = getCSSLanguageService();
	let version = 0;
	const documentOf = (now: string) =>
		TextDocument.create("file:///a.css", "css", ++version, now);
	return {
		text,
		parse: timed(() => void service.parseStylesheet(documentOf(text))),
		typeCheck: timed(() => {
			const document = documentOf(type());
			const sheet = service.parseStylesheet(document);
			service.doValidation(document, sheet);
		}),
	};
}

const ms = (time: number | undefined) =>
	time === undefined ? "not built" : time.toFixed(time < 10 ? 1 : 0);
const rate = (text: string, { median }: Timed) =>
	(text.length / 1000 / median).toFixed(1);
const times = (ours: number, theirs: number) => (ours / theirs).toFixed(2);

function print(title: string, rows: readonly (readonly string[])[]): void {
	const align = [
		"left" as const,
		...rows.map(() => "right" as const),
		"right" as const,
	];
	process.stdout.write(
		`\n${title}\n\n${textTable(rows, { align, header: true })}`,
	);
}

function median(list: number[]): number {
	return list.sort((a, b) => a - b)[list.length >> 1] as number;
}

async function severalTimes(
	work: () => Promise<number | undefined>,
): Promise<number | undefined> {
	const all: number[] = [];
	for (let run = 0; run < 5; run++) {
		const one = await work();
		if (one === undefined) return undefined;
		all.push(one);
	}
	return median(all);
}

process.stdout.write(
	`Node ${process.version}, ${process.arch}; milliseconds, median of the runs after the first\n`,
);
// Both engines are warmed by the smallest size; the largest first run is the one that a cold process pays.
const pairs = sizes.map((parts) => {
	const ours = measureOurs(parts);
	return { ours, theirs: measureTheirs(ours.text.length) };
});

print("Reading a text", [
	["parts", "kB", "ms", "MB/s", "CSS ms", "CSS MB/s", "ours / CSS"],
	...pairs.map(({ ours, theirs }) => [
		String(ours.parts),
		(ours.text.length / 1000).toFixed(0),
		ms(ours.parse.median),
		rate(ours.text, ours.parse),
		ms(theirs.parse.median),
		rate(theirs.text, theirs.parse),
		times(ours.parse.median, theirs.parse.median),
	]),
]);
print("The whole design anew (CSS: parse and validate)", [
	["parts", "evaluate", "first", "with checks", "first", "CSS", "ours / CSS"],
	...pairs.map(({ ours, theirs }) => [
		String(ours.parts),
		ms(ours.evaluate.median),
		ms(ours.evaluate.first),
		ms(ours.check.median),
		ms(ours.check.first),
		ms(theirs.typeCheck.median),
		times(ours.check.median, theirs.typeCheck.median),
	]),
]);
print("After a keystroke in one piece (CSS: parse and validate)", [
	["parts", "evaluate", "with checks", "CSS", "ours / CSS"],
	...pairs.map(({ ours, theirs }) => [
		String(ours.parts),
		ms(ours.typeEvaluate.median),
		ms(ours.typeCheck.median),
		ms(theirs.typeCheck.median),
		times(ours.typeCheck.median, theirs.typeCheck.median),
	]),
]);

const folder = mkdtempSync(join(tmpdir(), "storyrod-bench-"));
try {
	const rows: string[][] = [];
	for (const { ours, theirs } of pairs) {
		const file = join(folder, `design-${ours.parts}.rod`);
		const sheet = join(folder, `sheet-${ours.parts}.css`);
		writeFileSync(file, ours.text);
		writeFileSync(sheet, theirs.text);
		rows.push([
			String(ours.parts),
			ms(await severalTimes(() => languageServer(file, ours.text))),
			ms(await severalTimes(() => bundledCommand(file))),
			ms(await severalTimes(() => checkCommand(file))),
			ms(await severalTimes(() => cssService(sheet))),
		]);
	}
	print("Cold start to the first diagnostics, a process each time", [
		["parts", "server", "command", "command from sources", "CSS process"],
		...rows,
	]);
} finally {
	rmSync(folder, { recursive: true });
}
