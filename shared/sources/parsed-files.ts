// Parses each text once, and after an edit only what was edited, as long as the cache lives.

import { type ParseResult, parse, reparse } from "../../grammar/index.ts";
import type { Sources } from "./sources.ts";

export interface ParsedFile {
	readonly uri: string;
	readonly text: string;
	readonly result: ParseResult;
}

/**
 * The last reading of each file. When a text has changed, statements that did not are the same objects as before, moved in
 * place: what was got before for that uri must not be used any more, and whatever kept spans of its nodes sees them move.
 * So a cache has one user, who is done with one state of the texts before going on to the next.
 */
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
		const result = known ? reparse(known, text) : parse(text);
		const file = { uri, text, result };
		this.files.set(uri, file);
		return file;
	}

	/** Drops what is no longer used. */
	keepOnly(uris: ReadonlySet<string>): void {
		for (const uri of this.files.keys())
			if (!uris.has(uri)) this.files.delete(uri);
	}
}
