// `npm run bench:editor`: the shipped server as an editor drives it, a process on the other end of two pipes, beside the CSS
// and the JSON language service driven in the same way, on documents of as many lines, in the same run.

import { existsSync, statSync } from "node:fs";
import { join } from "node:path";
import { textTable } from "../../shared/text/table.ts";
import { languageServer } from "./cold-start.ts";
import {
	type BenchDocument,
	designOf,
	jsonOf,
	stylesheetOf,
} from "./documents.ts";
import { StdioClient } from "./stdio-client.ts";

const root = join(import.meta.dirname, "../..");
const bundle = join(root, "dist/server/language-server.mjs");
const peer = join(import.meta.dirname, "peer-server.ts");
/** As the extension starts it. */
const flags = ["--max-semi-space-size=64"];
const sizes = [100, 1_000, 10_000];

/** Milliseconds, from the least to the most. */
type Times = readonly number[];

interface Measured {
	readonly lines: number;
	readonly key: Times;
	readonly hover: Times;
	readonly hoverAfterKey: Times;
	readonly completion: Times;
	readonly tokens: Times | undefined;
	readonly rename: Times | undefined;
}

/** Types the document's line, and takes it away again, for ever. */
class Typist {
	version = 1;
	private readonly client: StdioClient;
	private readonly document: BenchDocument;
	private at = -1;
	private step = 1;

	constructor(client: StdioClient, document: BenchDocument) {
		this.client = client;
		this.document = document;
	}

	async open(): Promise<void> {
		const { uri, languageId, text } = this.document;
		const diagnosed = this.client.diagnosed(1);
		this.client.notify("textDocument/didOpen", {
			textDocument: { uri, languageId, version: 1, text },
		});
		await diagnosed;
	}

	/** Behind what was typed last. */
	get position(): { line: number; character: number } {
		return { line: this.document.line, character: Math.max(0, this.at) };
	}

	/** One key; resolves when the diagnostics of its version are there. */
	key(): Promise<void> {
		const { uri, typed, line } = this.document;
		const here = { line, character: this.at };
		let range = { start: here, end: here };
		let text = "";
		if (this.step > 0) {
			// First a line of its own, then its characters.
			if (this.at < 0) {
				const start = { line, character: 0 };
				range = { start, end: start };
				text = "\n";
			} else text = typed.charAt(this.at);
			this.at++;
			if (this.at === typed.length) this.step = -1;
		} else if (this.at > 0) {
			range = { start: { line, character: this.at - 1 }, end: here };
			this.at--;
		} else {
			range = {
				start: { line, character: 0 },
				end: { line: line + 1, character: 0 },
			};
			this.at = -1;
			this.step = 1;
		}
		this.version++;
		const diagnosed = this.client.diagnosed(this.version);
		this.client.notify("textDocument/didChange", {
			textDocument: { uri, version: this.version },
			contentChanges: [{ range, text }],
		});
		return diagnosed;
	}
}

/** Until `most` times or `budget` milliseconds are over, at least 40 times. */
async function several(
	work: () => Promise<number>,
	most = 600,
	budget = 12_000,
): Promise<Times> {
	const times: number[] = [];
	const end = performance.now() + budget;
	while (
		times.length < 40 ||
		(times.length < most && performance.now() < end)
	) {
		times.push(await work());
	}
	return times.sort((a, b) => a - b);
}

async function timed(work: () => Promise<unknown>): Promise<number> {
	const start = performance.now();
	await work();
	return performance.now() - start;
}

async function measure(
	args: readonly string[],
	document: BenchDocument,
): Promise<Measured> {
	const client = new StdioClient(args);
	await client.initialize();
	const typist = new Typist(client, document);
	await typist.open();
	const textDocument = { uri: document.uri };
	const ask = (method: string, more: object = {}) =>
		client.request(`textDocument/${method}`, { textDocument, ...more });
	/** A key, and behind it at once a request: how long its answer takes. The next key waits for the diagnostics. */
	const afterKey = async (request: () => Promise<unknown>): Promise<number> => {
		const diagnosed = typist.key();
		const took = await timed(request);
		await diagnosed;
		return took;
	};
	// What runs for the first time is compiled first; an editor is open for hours.
	await several(() => timed(() => typist.key()), 200, 4_000);
	const key = await several(() => timed(() => typist.key()));
	const named = { position: document.name };
	const hover = await several(() => timed(() => ask("hover", named)), 400);
	const hoverAfterKey = await several(
		() => afterKey(() => ask("hover", named)),
		400,
		6_000,
	);
	const completion = await several(
		() => afterKey(() => ask("completion", { position: typist.position })),
		400,
		6_000,
	);
	const answers = async (work: () => Promise<unknown>): Promise<boolean> => {
		try {
			return (await work()) !== null;
		} catch {
			return false;
		}
	};
	const rename = () => ask("rename", { ...named, newName: "other" });
	const tokens = () => ask("semanticTokens/full");
	const measured: Measured = {
		lines: document.text.split("\n").length - 1,
		key,
		hover,
		hoverAfterKey,
		completion,
		tokens: (await answers(tokens))
			? await several(() => afterKey(tokens), 200, 6_000)
			: undefined,
		rename: (await answers(rename))
			? await several(() => timed(rename), 100, 6_000)
			: undefined,
	};
	await client.end();
	return measured;
}

const edits = 10_000;

/** Megabytes before and after many edits, when the first thousand are over: by then everything has run. */
async function memory(
	document: BenchDocument,
): Promise<readonly [number, number] | undefined> {
	const client = new StdioClient([...flags, bundle, "--stdio"]);
	await client.initialize();
	const typist = new Typist(client, document);
	await typist.open();
	for (let edit = 0; edit < 1_000; edit++) await typist.key();
	const before = client.resident();
	for (let edit = 0; edit < edits; edit++) await typist.key();
	const after = client.resident();
	await client.end();
	return before === undefined || after === undefined
		? undefined
		: [before, after];
}

function share(times: Times, part: number): number {
	return (
		times[Math.min(times.length - 1, Math.floor(times.length * part))] ?? 0
	);
}

const ms = (time: number): string => time.toFixed(time < 10 ? 2 : 0);

function print(title: string, rows: readonly (readonly string[])[]): void {
	const align = ["left" as const, "right" as const, "left" as const];
	const rest = (rows[0] ?? []).slice(3).map(() => "right" as const);
	process.stdout.write(
		`\n${title}\n\n${textTable(rows, { align: [...align, ...rest], header: true })}`,
	);
}

/** A row for each service; ratios compare our 95th part with theirs. */
function compared(
	title: string,
	all: readonly (readonly Measured[])[],
	pick: (one: Measured) => Times | undefined,
): void {
	const names = ["ours", "CSS", "JSON"];
	const rows = all.flatMap((services) => {
		const ours = services[0] && pick(services[0]);
		return services.flatMap((one, index): string[][] => {
			const times = pick(one);
			if (!times || !ours) return [];
			return [
				[
					names[index] as string,
					String(one.lines),
					"",
					ms(share(times, 0.5)),
					ms(share(times, 0.95)),
					ms(share(times, 0.99)),
					String(times.length),
					index === 0
						? ""
						: (share(ours, 0.95) / share(times, 0.95)).toFixed(2),
				],
			];
		});
	});
	print(title, [
		["service", "lines", "", "p50", "p95", "p99", "times", "ours / theirs"],
		...rows,
	]);
}

if (!existsSync(bundle)) {
	process.stderr.write(
		"There is no server to drive: run `npm run build` first\n",
	);
	process.exit(1);
}
process.stdout.write(
	`Node ${process.version}, ${process.arch}; milliseconds, seen by a client at the other end of a pipe. Each service is a process of its own.\n`,
);
const results: (readonly Measured[])[] = [];
for (const lines of sizes) {
	const ours = await measure([...flags, bundle, "--stdio"], designOf(lines));
	const css = await measure(
		[...flags, peer, "css", "--stdio"],
		stylesheetOf(lines),
	);
	const json = await measure(
		[...flags, peer, "json", "--stdio"],
		jsonOf(lines),
	);
	results.push([ours, css, json]);
}
compared("A key to the diagnostics of its version", results, (one) => one.key);
compared("Hover, nothing typed", results, (one) => one.hover);
compared("Hover, sent with a key", results, (one) => one.hoverAfterKey);
compared("Completion, sent with a key", results, (one) => one.completion);
compared("Semantic tokens, sent with a key", results, (one) => one.tokens);
compared("Rename", results, (one) => one.rename);

const starts: string[][] = [];
for (const lines of sizes) {
	const { text } = designOf(lines);
	const times: number[] = [];
	for (let run = 0; run < 7; run++) {
		const took = await languageServer(join(root, "design.rod"), text);
		if (took !== undefined) times.push(took);
	}
	times.sort((a, b) => a - b);
	starts.push([
		"ours",
		String(lines),
		"",
		ms(share(times, 0.5)),
		ms(times.at(-1) ?? 0),
	]);
}
print("Cold start to the first diagnostics, a new process each time", [
	["service", "lines", "", "p50", "most"],
	...starts,
]);
const kept = await memory(designOf(1_000));
process.stdout.write(
	kept
		? `\nMemory: ${kept[0].toFixed(0)} MB before ${edits} edits of 1000 lines, ${kept[1].toFixed(0)} MB after (${((100 * kept[1]) / kept[0] - 100).toFixed(1)} %)\n`
		: "\nMemory: this system does not tell\n",
);
process.stdout.write(
	`Bundle: ${(statSync(bundle).size / 1e6).toFixed(2)} MB\n`,
);
