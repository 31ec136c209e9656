// The designs of the workspace as navigation needs them: who uses whom, and what each declares. Of a file that nobody has
// open only that is kept; it is read again when its stamp changes. Nothing is read before somebody asks.

import type { CancellationToken } from "vscode-languageserver";
import { parse } from "../../grammar/index.ts";
import { fileNames } from "../../shared/features/support/names/name-world.ts";
import type { Named } from "../../shared/features/support/names/named.ts";
import { isPrivate } from "../../shared/features/support/names/occurrences.ts";
import {
	type NamedThing,
	thingsIn,
} from "../../shared/features/workspace-symbols.ts";
import { rest } from "./answers.ts";
import type { Context } from "./context.ts";
import { SourceText } from "./source-text.ts";

/** After so many characters that were read, other messages come through. */
const slice = 50_000;

/** To look whether a file has changed takes as long as to read so many. */
const leastCost = 100;

/** Files of so many characters stay at hand for the next request, with their trees. */
const mostKept = 8_000_000;

interface Known {
	/** The text of an open document, the stamp of another file. */
	readonly state: string;
	/** As they stand behind `from`, once each; also those that only look like one. Those into packages. */
	readonly paths: readonly string[];
	/** Where those of them lead that lead there always. */
	readonly beside: readonly string[];
	/** What it declares; read when it is first asked for. */
	things: readonly FoundThing[] | undefined;
}

/** Of a text that need not be at hand any more. */
export interface FoundThing extends NamedThing {
	readonly range: ReturnType<typeof rangeOf>;
}

const made = new WeakMap<Context, DesignIndex>();

/** The one index of a connection. */
export function designIndex(context: Context): DesignIndex {
	const index = made.get(context) ?? new DesignIndex(context);
	made.set(context, index);
	return index;
}

export class DesignIndex {
	private readonly context: Context;
	private readonly known = new Map<string, Known>();
	/** Characters of the files that requests have brought since the last time that they were forgotten. */
	private brought = 0;

	constructor(context: Context) {
		this.context = context;
	}

	/**
	 * The files in which a thing may be mentioned by one of these names, its own first; their trees are read when this
	 * resolves. Throws if the request was cancelled.
	 */
	async mentioning(
		named: Named,
		names: readonly string[],
		token: CancellationToken,
	): Promise<readonly string[]> {
		const { session } = this.context;
		if (isPrivate(named)) return [named.uri];
		if (this.brought > mostKept) {
			this.brought = 0;
			session.forgetUnused();
		}
		const found = [named.uri];
		let read = 0;
		for (const uri of await this.reaching([named.uri], token)) {
			if (uri === named.uri) continue;
			const source = session.source(uri);
			if (!source || !names.some((name) => source.text.includes(name)))
				continue;
			// Its names are read here, where others can come in between.
			fileNames(uri, source.result.tree);
			found.push(uri);
			this.brought += source.text.length;
			read += source.text.length;
			if (read < slice) continue;
			read = 0;
			await rest(this.context, token);
		}
		return found;
	}

	/** These files and all that use one of them, directly or by others. */
	async reaching(
		uris: readonly string[],
		token: CancellationToken,
	): Promise<readonly string[]> {
		// A file that is missed here would be left behind: watchers may not have told of it yet.
		this.context.session.workspace.forget();
		const files = await this.files(token);
		const users = new Map<string, string[]>();
		for (const uri of files)
			for (const used of this.usedBy(uri)) {
				const list = users.get(used);
				if (list) list.push(uri);
				else users.set(used, [uri]);
			}
		const found = new Set(uris);
		for (const uri of found)
			for (const user of users.get(uri) ?? []) found.add(user);
		return [...found];
	}

	/** Files that use one for which it holds, or for which it holds themselves. */
	async touching(
		holds: (uri: string) => boolean,
		token: CancellationToken,
	): Promise<readonly string[]> {
		this.context.session.workspace.forget();
		return (await this.files(token)).filter(
			(uri) => holds(uri) || this.usedBy(uri).some(holds),
		);
	}

	/** All that the files declare. Throws if the request was cancelled. */
	async things(token: CancellationToken): Promise<readonly FoundThing[]> {
		const found: FoundThing[] = [];
		let read = 0;
		for (const uri of await this.files(token)) {
			const known = this.known.get(uri);
			if (!known) continue;
			if (!known.things) {
				const source = this.sourceOf(uri);
				known.things = source ? thingsOf(source) : [];
				read += source?.text.length ?? 0;
			}
			found.push(...known.things);
			if (read < slice) continue;
			read = 0;
			await rest(this.context, token);
		}
		return found;
	}

	/** The designs of the folders, the open ones, and what these use; each has been looked at. */
	private async files(token: CancellationToken): Promise<readonly string[]> {
		const { session } = this.context;
		const designs = await session.workspace.designs(() =>
			rest(this.context, token),
		);
		const all = new Set([
			...session.openUris(),
			...session.usedFiles(),
			...designs,
		]);
		let read = 0;
		for (const uri of all) {
			if (!uri.endsWith(".rod") && !session.isOpen(uri)) {
				all.delete(uri);
				continue;
			}
			read += leastCost + this.look(uri);
			if (read < slice) continue;
			read = 0;
			await rest(this.context, token);
		}
		for (const uri of this.known.keys())
			if (!all.has(uri)) this.known.delete(uri);
		// What changed meanwhile is looked at again when it matters.
		session.lookAgain(all);
		return [...all];
	}

	/** Reads a file if it has changed; answers with how much was read. */
	private look(uri: string): number {
		const { session, host } = this.context;
		const open = session.isOpen(uri) ? session.source(uri)?.text : undefined;
		const state = open ?? host.stamp(uri);
		const known = this.known.get(uri);
		if (state !== undefined && known?.state === state) return 0;
		const text = open ?? host.read(uri);
		if (text === undefined) {
			this.known.delete(uri);
			return 0;
		}
		const paths = pathsIn(text);
		this.known.set(uri, {
			state: state ?? host.stamp(uri) ?? "",
			paths: paths.filter((path) => !isBeside(path)),
			beside: paths
				.filter(isBeside)
				.flatMap((path) => session.resolve(uri, path) ?? []),
			things: undefined,
		});
		return text.length;
	}

	private usedBy(uri: string): string[] {
		const { session } = this.context;
		const { paths = [], beside = [] } = this.known.get(uri) ?? {};
		return [
			...beside,
			...paths.flatMap((path) => session.resolve(uri, path) ?? []),
		];
	}

	/** Without keeping what is not open. */
	private sourceOf(uri: string): SourceText | undefined {
		const { session, host } = this.context;
		if (session.isOpen(uri)) return session.source(uri);
		const text = host.read(uri);
		return text === undefined
			? undefined
			: new SourceText(uri, text, { encoding: session.encoding });
	}
}

function thingsOf(source: SourceText): readonly FoundThing[] {
	// Not the tree of the session: this one is thrown away.
	const { tree } = parse(source.text);
	return thingsIn(fileNames(source.uri, tree)).map((thing) => ({
		...thing,
		range: rangeOf(source, thing.span),
	}));
}

function rangeOf({ lines }: SourceText, { start, end }: NamedThing["span"]) {
	return { start: lines.positionAt(start), end: lines.positionAt(end) };
}

/** Read from the characters: quicker than a tree, and all paths that a tree has are among them. */
function pathsIn(text: string): readonly string[] {
	const paths = new Set<string>();
	for (const [, written, quoted] of text.matchAll(
		/\bfrom\s*(?:"((?:[^"\\\r\n]|\\.)*)"|['\u201c\u201d\u201e\u00ab]([^'\u201c\u201d\u00bb\r\n]*))/g,
	))
		paths.add(quoted ?? (written ?? "").replace(/\\(.)/g, "$1"));
	return [...paths];
}

/** A package may be installed elsewhere later; a path to a file beside leads to one place. */
function isBeside(path: string): boolean {
	return /^\.\.?\//.test(path);
}
