// Types at random into the shipped designs and looks after each edit: nothing throws, nothing takes long, and at the end of
// each run everything told is what a fresh look at the texts tells.

import { diagnose } from "../../shared/features/diagnostics.ts";
import { compile } from "../../shared/model/compile.ts";
import type { Finding } from "../../shared/model/types.ts";
import { sourcesOf } from "../../shared/sources/sources.ts";
import { indexLines } from "../../shared/text/line-index.ts";
import { designTexts } from "../harness/design-texts.ts";
import { Chance } from "./chance.ts";
import { type TypedEdit, Typist } from "./typist.ts";

/** Who is typed at: the core in this process, or a server over the protocol. */
export interface Typed {
	/** The designs as they lie on disk; nothing is open. */
	start(disk: ReadonlyMap<string, string>): Promise<void>;
	open(uri: string, text: string): Promise<void>;
	/** `text` is what the edit leaves. */
	edit(uri: string, edit: TypedEdit, text: string): Promise<void>;
	close(uri: string): Promise<void>;
	/** All that is told of a document, in the words of `toldOf`. */
	told(uri: string): Promise<readonly string[]>;
	/** Asks for something at a place. Throws on any fault. */
	ask(uri: string, offset: number, chance: Chance): Promise<void>;
	/** Throws if there was a fault on the way. */
	end(): Promise<void>;
}

export interface FuzzResult {
	readonly edits: number;
	readonly runs: number;
	readonly requests: number;
	/** Milliseconds, and where it was. */
	readonly slowest: { readonly took: number; readonly what: string };
}

/** Edits after which a run ends: the texts are then far enough from what anybody would write. */
const editsPerRun = 60;

export interface FuzzOptions {
	/** Milliseconds that nothing may take; without it, nobody asks. */
	readonly most?: number;
	/** Called after each run. */
	readonly onRun?: (result: FuzzResult) => void;
}

/** Throws at the first fault, and says by which run it comes again. */
export async function fuzz(
	typed: Typed,
	edits: number,
	seed: number,
	{ most = Number.POSITIVE_INFINITY, onRun = () => {} }: FuzzOptions = {},
): Promise<FuzzResult> {
	const uris = [...designTexts.keys()];
	let done = 0;
	let runs = 0;
	let requests = 0;
	let slowest = { took: 0, what: "nothing" };
	const timed = async <T>(what: string, work: () => Promise<T>): Promise<T> => {
		requests++;
		const start = performance.now();
		const before = process.cpuUsage();
		const answer = await work();
		const { user, system } = process.cpuUsage(before);
		// What other programs took of the machine does not count.
		const took = Math.min(performance.now() - start, (user + system) / 1000);
		if (took > slowest.took) slowest = { took, what };
		return answer;
	};
	while (done < edits) {
		const mine = seed + runs;
		runs++;
		const chance = new Chance(mine);
		const texts = new Map(designTexts);
		// The design that is typed at, and now and then a file that it uses.
		const main = chance.of(uris);
		const used = chance.of(["/designs/stock.rod", "/designs/components.rod"]);
		const open = new Map<string, Typist>();
		let last = "";
		try {
			await typed.start(designTexts);
			for (const uri of new Set([main, used])) {
				const text = texts.get(uri) as string;
				open.set(uri, new Typist(text, [...designTexts.values()], chance));
				await typed.open(uri, text);
			}
			for (let at = 0; at < Math.min(editsPerRun, edits - done); at++) {
				const uri = chance.is(0.8) ? main : used;
				const typist = open.get(uri) as Typist;
				const edit = typist.type();
				texts.set(uri, typist.text);
				last = `edit ${at} of ${uri} ${JSON.stringify(edit)}`;
				await timed(`told after ${last} in run ${mine}`, async () => {
					await typed.edit(uri, edit, typist.text);
					await typed.told(main);
				});
				if (!chance.is(0.2)) continue;
				const offset = chance.is(0.5)
					? edit.start + edit.text.length
					: chance.below(typist.text.length + 1);
				await timed(`asked at ${offset} after ${last} in run ${mine}`, () =>
					typed.ask(uri, offset, chance),
				);
			}
			const told = await typed.told(main);
			const fresh = toldFresh(main, texts, [...open.keys()]);
			if (told.join("\n") !== fresh.join("\n"))
				throw new Error(
					`Told otherwise than from scratch: ${difference(told, fresh)}`,
				);
			for (const uri of open.keys()) await typed.close(uri);
			await typed.end();
		} catch (error) {
			throw new Error(
				`Run ${mine} (--seed ${mine} --edits ${editsPerRun}), ${last}`,
				{ cause: error },
			);
		}
		done += Math.min(editsPerRun, edits - done);
		if (slowest.took > most)
			throw new Error(
				`${slowest.took.toFixed(0)} ms, more than ${most}: ${slowest.what}`,
			);
		onRun({ edits: done, runs, requests, slowest });
	}
	return { edits: done, runs, requests, slowest };
}

/** What is told about a document by all that are open, with nothing kept from before. */
function toldFresh(
	uri: string,
	texts: ReadonlyMap<string, string>,
	open: readonly string[],
): string[] {
	const findings = open.flatMap((one) => {
		const design = compile(sourcesOf(texts), one);
		return diagnose(design, (file) => {
			const text = texts.get(file);
			return text === undefined ? undefined : indexLines(text);
		});
	});
	return toldOf(uri, texts.get(uri) as string, findings);
}

/** The findings about a document, each once, as lines of text; places as an editor can name them. */
export function toldOf(
	uri: string,
	text: string,
	findings: readonly Finding[],
): string[] {
	const lines = indexLines(text);
	const placeOf = (offset: number): string => {
		const { line, character } = lines.positionAt(offset);
		return `${line}:${character}`;
	};
	const told = findings
		.filter(({ origin }) => origin.uri === uri)
		.map(
			({ id, origin: { span }, message }) =>
				`${placeOf(span.start)}-${placeOf(span.end)} ${id}: ${message}`,
		);
	return [...new Set(told)].sort();
}

function difference(told: readonly string[], fresh: readonly string[]): string {
	const more = told.filter((one) => !fresh.includes(one));
	const less = fresh.filter((one) => !told.includes(one));
	return `too much: ${JSON.stringify(more)}, missing: ${JSON.stringify(less)}`;
}
