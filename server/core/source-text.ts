// A text with what is worked out from it once: its lines and its tree.

import { type ParseResult, parse } from "../../grammar/index.ts";
import { indexLines, type LineIndex } from "../../shared/text/line-index.ts";

export class SourceText {
	/** Canonical. */
	readonly uri: string;
	readonly text: string;
	private index: LineIndex | undefined;
	private parsed: ParseResult | undefined;

	constructor(uri: string, text: string) {
		this.uri = uri;
		this.text = text;
	}

	get lines(): LineIndex {
		this.index ??= indexLines(this.text);
		return this.index;
	}

	get result(): ParseResult {
		this.parsed ??= parse(this.text);
		return this.parsed;
	}
}
