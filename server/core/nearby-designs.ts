// The designs that one can take names from, each with the path by which it does: those of the open folders, those that are
// open or used, and those beside it. Texts of files that nobody has open are read again when their stamp changes.

import type { CancellationToken } from "vscode-languageserver";
import { type FileNode, parse } from "../../grammar/index.ts";
import type { NearbyFile } from "../../shared/features/support/refactoring.ts";
import { pathBetween } from "../../shared/sources/path-between.ts";
import { compareStrings } from "../../shared/text/compare.ts";
import { rest } from "./answers.ts";
import type { Context } from "./context.ts";
import type { SourceText } from "./source-text.ts";

/** So many are looked at, the nearest first. */
const most = 400;

interface Read {
	readonly stamp: string | undefined;
	readonly text: string;
	tree: FileNode | undefined;
}

export class NearbyDesigns {
	private readonly context: Context;
	private readonly read = new Map<string, Read>();

	constructor(context: Context) {
		this.context = context;
	}

	/** The shortest path first. Throws if the request was cancelled. */
	async around(
		source: SourceText,
		token: CancellationToken,
	): Promise<() => readonly NearbyFile[]> {
		const { session } = this.context;
		const designs = await session.workspace.designs(() =>
			rest(this.context, token),
		);
		const uris = new Set([
			...designs,
			...session.openUris(),
			...session.usedFiles(),
			...this.beside(source),
		]);
		uris.delete(source.uri);
		const near = [...uris]
			.filter((uri) => uri.endsWith(".rod"))
			.flatMap((uri) => {
				const path = pathBetween(source.uri, uri);
				return path !== undefined && session.resolve(source.uri, path) === uri
					? [{ uri, path }]
					: [];
			})
			.sort(
				(a, b) =>
					steps(a.path) - steps(b.path) || compareStrings(a.path, b.path),
			)
			.slice(0, most);
		let files: readonly NearbyFile[] | undefined;
		return () => {
			files ??= near.flatMap(({ uri, path }) => this.fileAt(uri, path) ?? []);
			return files;
		};
	}

	/** Files in the same folder: there may be no folder open. */
	private beside(source: SourceText): string[] {
		const { session } = this.context;
		return (session.beside(source).list("./") ?? []).flatMap((entry) =>
			entry.isFolder
				? []
				: (session.resolve(source.uri, `./${entry.name}`) ?? []),
		);
	}

	private fileAt(uri: string, path: string): NearbyFile | undefined {
		const { session } = this.context;
		const open = session.isOpen(uri) ? session.source(uri) : undefined;
		if (open)
			return {
				uri,
				path,
				mentions: (word) => open.text.includes(word),
				get tree() {
					return open.result.tree;
				},
			};
		const read = this.readAt(uri);
		return (
			read && {
				uri,
				path,
				mentions: (word) => read.text.includes(word),
				get tree() {
					read.tree ??= parse(read.text).tree;
					return read.tree;
				},
			}
		);
	}

	private readAt(uri: string): Read | undefined {
		const { host } = this.context;
		const stamp = host.stamp(uri);
		const known = this.read.get(uri);
		if (known && stamp !== undefined && known.stamp === stamp) return known;
		this.read.delete(uri);
		const text = host.read(uri);
		if (text === undefined) return undefined;
		// The oldest goes where others come.
		for (const one of this.read.keys())
			if (this.read.size >= most) this.read.delete(one);
		const made: Read = { stamp, text, tree: undefined };
		this.read.set(uri, made);
		return made;
	}
}

function steps(path: string): number {
	return path.split("/").length;
}
