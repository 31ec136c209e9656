// Parses each text once: the same text under the same uri gives the same tree, as long as the cache lives.

import { type ParseResult, parse } from "../../grammar/index.ts";
import type { Sources } from "./sources.ts";

export interface ParsedFile {
	readonly uri: string;
	readonly text: string;
	readonly result: ParseResult;
}

export class ParsedFiles {
	private readonly files = new Map<string, ParsedFile>();

	get(sources: Sources, uri: string): ParsedFile | undefined {
		const text = sources.read(uri);
		if (text === undefined) {
			this.files.delete(uri);
			return undefined;
		}
		const known = this.files.get(uri);
		if (known?.text === text) return known;
		const file = { uri, text, result: parse(text) };
		this.files.set(uri, file);
		return file;
	}

	/** Drops what is no longer used. */
	keepOnly(uris: ReadonlySet<string>): void {
		for (const uri of this.files.keys())
			if (!uris.has(uri)) this.files.delete(uri);
	}
}
