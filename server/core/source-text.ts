// A text with what is worked out from it once: its lines and its tree.

import {
	type ParseResult,
	parse,
	type ReadText,
	reparse,
} from "../../grammar/index.ts";
import { indexLines, type LineIndex } from "../../shared/text/line-index.ts";

export class SourceText {
	/** Canonical. */
	readonly uri: string;
	readonly text: string;
	private index: LineIndex | undefined;
	private parsed: ParseResult | undefined;
	/** An older state of the text that was read: only what has changed since is read anew. */
	private before: ReadText | undefined;

	/** `older` is the state that this one takes the place of: its tree passes on to this one. */
	constructor(uri: string, text: string, older?: SourceText) {
		this.uri = uri;
		this.text = text;
		this.before = older?.handOn();
	}

	get lines(): LineIndex {
		this.index ??= indexLines(this.text);
		return this.index;
	}

	get result(): ParseResult {
		if (!this.parsed) {
			this.parsed = this.before
				? reparse(this.before, this.text)
				: parse(this.text);
			this.before = undefined;
		}
		return this.parsed;
	}

	/** The newest reading there is. It will be moved along with the text, so it is not this state's own any more. */
	private handOn(): ReadText | undefined {
		const { text, parsed, before } = this;
		this.parsed = undefined;
		this.before = undefined;
		return parsed ? { text, result: parsed } : before;
	}
}
